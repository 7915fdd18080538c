package io.github.stoplag.worked;

import io.github.stoplag.quantity.Check;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A page as data, written as plain text, Markdown with LaTeX mathematics, or HTML with MathML.
 *
 * <p>The HTML is one file without script, style sheet or picture from elsewhere, and well-formed as XML.
 *
 * @param title the title of the page
 * @param blocks what stands on it
 */
public record Document(String title, List<Block> blocks) {
    private static final String OPEN = "<math displaystyle=\"true\"><mrow>";
    private static final Pattern POWER = Pattern.compile("10\\^(\u2212?[0-9]+)");
    private static final String PLAIN = "\u22120123456789";
    private static final String RAISED = "⁻⁰¹²³⁴⁵⁶⁷⁸⁹";
    private static final String CLOSE = "</mrow></math>";

    /** A piece of a page. */
    public sealed interface Block {}

    /**
     * A heading.
     *
     * @param level 1 for the page, 2 and 3 below
     * @param text its text
     */
    public record Heading(int level, String text) implements Block {

        /**
         * Refuses nulls.
         *
         * @param level 1 for the page, 2 and 3 below
         * @param text its text
         * @throws NullPointerException if one that is required is null
         */
        public Heading {
            Objects.requireNonNull(text, "text");
        }
    }

    /**
     * A paragraph.
     *
     * @param text its text
     */
    public record Paragraph(String text) implements Block {

        /**
         * Refuses nulls.
         *
         * @param text its text
         * @throws NullPointerException if one that is required is null
         */
        public Paragraph {
            Objects.requireNonNull(text, "text");
        }
    }

    /**
     * A list of lines.
     *
     * @param lines the lines
     */
    public record Bullets(List<String> lines) implements Block {

        /**
         * Refuses nulls.
         *
         * @param lines the lines
         * @throws NullPointerException if one that is required is null
         */
        public Bullets {
            Objects.requireNonNull(lines, "lines");
        }
    }

    /**
     * The choices of a question, marked A, B, C and so on.
     *
     * @param lines the choices in order
     */
    public record Choices(List<String> lines) implements Block {

        /**
         * Refuses nulls.
         *
         * @param lines the choices in order
         * @throws NullPointerException if one that is required is null
         */
        public Choices {
            Objects.requireNonNull(lines, "lines");
        }
    }

    /**
     * A chain of equal sides.
     *
     * @param label what it is, in words
     * @param sides symbol, formula, substitution, result
     * @param exact false if the last side is rounded
     * @param note what is said behind it, possibly empty
     */
    public record Equation(String label, List<Expression> sides, boolean exact, String note) implements Block {

        /**
         * Refuses nulls.
         *
         * @param label what it is, in words
         * @param sides symbol, formula, substitution, result
         * @param exact false if the last side is rounded
         * @param note what is said behind it, possibly empty
         * @throws NullPointerException if one that is required is null
         */
        public Equation {
            Objects.requireNonNull(label, "label");
            Objects.requireNonNull(note, "note");
            Objects.requireNonNull(sides, "sides");
        }

        String render(Notation notation) {
            String text = notation.render(sides.get(0));
            for (int i = 1; i < sides.size(); i++) {
                text = notation.equation(text, exact || i + 1 < sides.size(), notation.render(sides.get(i)));
            }
            return text;
        }

        /** Several formulas, one a side and a term, for a browser breaks a line between formulas and not within one. */
        String mathml() {
            StringBuilder out = new StringBuilder();
            for (int i = 0; i < sides.size(); i++) {
                String sign = exact || i + 1 < sides.size() ? "=" : "\u2248";
                out.append(i == 0 ? OPEN : i == 1 ? "<mo>" + sign + "</mo>" : CLOSE + " " + OPEN);
                out.append(i < 2 ? "" : infix(sign));
                for (Notation.Term term : MathmlNotation.INSTANCE.terms(sides.get(i))) {
                    out.append(term.sign().isEmpty() ? "" : CLOSE + " " + OPEN + infix(term.sign()));
                    out.append(term.text());
                }
            }
            return out.append(CLOSE).toString();
        }

        private static String infix(String sign) {
            return "<mo form=\"infix\" lspace=\"0\">" + sign + "</mo>";
        }
    }

    /**
     * Parts that stand side by side where the page is wide enough.
     *
     * @param parts the parts
     */
    public record Columns(List<List<Block>> parts) implements Block {

        /**
         * Refuses nulls.
         *
         * @param parts the parts
         * @throws NullPointerException if one that is required is null
         */
        public Columns {
            Objects.requireNonNull(parts, "parts");
        }
    }

    /**
     * Makes the list immutable.
     *
     * @param title the title of the page
     * @param blocks what stands on it
     */
    public Document {
        Objects.requireNonNull(title, "title");
        blocks = Check.copyOf("blocks", blocks);
    }

    /**
     * Writes plain Unicode text.
     *
     * @return the text
     */
    public String toText() {
        StringBuilder out = new StringBuilder();
        text(out, blocks);
        return out.toString();
    }

    /**
     * Writes Markdown with LaTeX mathematics between dollar signs.
     *
     * @return the Markdown
     */
    public String toMarkdown() {
        StringBuilder out = new StringBuilder();
        markdown(out, blocks);
        return out.toString();
    }

    /**
     * Writes one HTML page with MathML.
     *
     * @return the page
     */
    public String toHtml() {
        StringBuilder out = new StringBuilder("""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8"/>
            <meta name="viewport" content="width=device-width, initial-scale=1"/>
            <title>%s</title>
            <style>
            :root{color-scheme:light dark;--ink:#1c232b;--page:#ffffff;--quiet:#4d5761}
            @media (prefers-color-scheme:dark){:root{--ink:#eef2f6;--page:#14191f;--quiet:#b3bdc7}}
            body{font:1rem/1.5 system-ui,"Segoe UI","DejaVu Sans",Arial,sans-serif;margin:1rem auto;padding:0 1rem;
            max-width:72rem;background:var(--page);color:var(--ink)}
            h1{font-size:1.6rem;line-height:1.25}h2{font-size:1.3rem}h3{font-size:1.1rem}
            .columns{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%%,26rem),1fr));gap:0 2rem}
            .columns>section{min-width:0}
            .equation{margin:.6rem 0;padding:.2rem 0;overflow-x:auto}
            .label,.note{color:var(--quiet)}.label{display:block}
            math{font-family:"Latin Modern Math","STIX Two Math","Cambria Math","DejaVu Math TeX Gyre",math}
            math{font-size:1.1em;margin:.2rem 0}
            ol.choices{list-style-type:upper-alpha}
            @media print{
            :root{color-scheme:light;--ink:#000000;--page:#ffffff;--quiet:#333333}
            body{max-width:none;margin:0;padding:0;font-size:10pt;line-height:1.35}.columns{display:block}
            h1{font-size:1.4rem}h2{font-size:1.1rem}h3{font-size:1rem}h1,h2,h3,p{margin:.5rem 0 .3rem}
            .equation{overflow:visible;margin:.2rem 0;padding:.1rem 0}math{font-size:1em}
            ul,ol.choices{columns:2;column-gap:2rem;margin:.3rem 0}li:only-child{column-span:all}.label{display:inline}
            h1,h2,h3,h2+p,p:has(+ol.choices){break-after:avoid}
            p,.equation,li,ol.choices{break-inside:avoid}}
            </style>
            </head>
            <body>
            """.formatted(escape(title)));
        html(out, blocks);
        return out.append("</body>\n</html>\n").toString();
    }

    private static void text(StringBuilder out, List<Block> blocks) {
        for (Block block : blocks) {
            if (block instanceof Heading e) {
                out.append(out.length() == 0 ? "" : "\n").append(e.text).append('\n');
                if (e.level < 3) {
                    out.append((e.level == 1 ? "=" : "-").repeat(e.text.length()))
                            .append('\n');
                }
            } else if (block instanceof Paragraph e) {
                out.append(e.text).append('\n');
            } else if (block instanceof Bullets e) {
                e.lines.forEach(line -> out.append("- ").append(line).append('\n'));
            } else if (block instanceof Choices e) {
                for (int i = 0; i < e.lines.size(); i++) {
                    out.append("  ")
                            .append(mark(i))
                            .append(") ")
                            .append(e.lines.get(i))
                            .append('\n');
                }
            } else if (block instanceof Equation e) {
                out.append("  ").append(e.label).append(": ").append(e.render(TextNotation.INSTANCE));
                out.append(e.note.isEmpty() ? "" : "   (" + e.note + ")").append('\n');
            } else if (block instanceof Columns e) {
                e.parts.forEach(part -> text(out, part));
            }
        }
    }

    private static void markdown(StringBuilder out, List<Block> blocks) {
        for (Block block : blocks) {
            if (block instanceof Heading e) {
                out.append("#".repeat(e.level))
                        .append(' ')
                        .append(plain(e.text))
                        .append("\n\n");
            } else if (block instanceof Paragraph e) {
                out.append(plain(e.text)).append("\n\n");
            } else if (block instanceof Bullets e) {
                e.lines.forEach(line -> out.append("- ").append(plain(line)).append('\n'));
                out.append('\n');
            } else if (block instanceof Choices e) {
                for (int i = 0; i < e.lines.size(); i++) {
                    out.append("- ")
                            .append(mark(i))
                            .append(") ")
                            .append(plain(e.lines.get(i)))
                            .append('\n');
                }
                out.append('\n');
            } else if (block instanceof Equation e) {
                out.append(plain(e.label))
                        .append(": $")
                        .append(e.render(LatexNotation.INSTANCE))
                        .append('$');
                out.append(e.note.isEmpty() ? "" : " (" + plain(e.note) + ")").append("\n\n");
            } else if (block instanceof Columns e) {
                e.parts.forEach(part -> markdown(out, part));
            }
        }
    }

    private static void html(StringBuilder out, List<Block> blocks) {
        for (Block block : blocks) {
            if (block instanceof Heading e) {
                element(out, "h" + e.level, escape(e.text));
            } else if (block instanceof Paragraph e) {
                element(out, "p", prose(e.text));
            } else if (block instanceof Bullets e) {
                out.append("<ul>\n");
                e.lines.forEach(line -> element(out, "li", prose(line)));
                out.append("</ul>\n");
            } else if (block instanceof Choices e) {
                out.append("<ol class=\"choices\">\n");
                e.lines.forEach(line -> element(out, "li", prose(line)));
                out.append("</ol>\n");
            } else if (block instanceof Equation e) {
                out.append("<div class=\"equation\"><span class=\"label\">").append(escape(e.label));
                out.append(":</span> ").append(e.mathml());
                out.append(e.note.isEmpty() ? "" : " <span class=\"note\">(" + escape(e.note) + ")</span>");
                out.append("</div>\n");
            } else if (block instanceof Columns e) {
                out.append("<div class=\"columns\">\n");
                for (List<Block> part : e.parts) {
                    out.append("<section>\n");
                    html(out, part);
                    out.append("</section>\n");
                }
                out.append("</div>\n");
            }
        }
    }

    private static void element(StringBuilder out, String name, String content) {
        out.append('<')
                .append(name)
                .append('>')
                .append(content)
                .append("</")
                .append(name)
                .append(">\n");
    }

    static String mark(int index) {
        return String.valueOf((char) ('A' + index));
    }

    /** Keeps Markdown from reading stars, underscores and dollars as marks. */
    private static String plain(String text) {
        return raised(text).replaceAll("([\\\\`*_$<>\\[\\]#|])", "\\\\$1");
    }

    /** Writes the exponents of powers of ten with raised digits, for formats that have no other way to raise them. */
    static String raised(String text) {
        return POWER.matcher(text)
                .replaceAll(power -> "10"
                        + power.group(1)
                                .chars()
                                .mapToObj(each -> RAISED.substring(PLAIN.indexOf(each), PLAIN.indexOf(each) + 1))
                                .collect(Collectors.joining()));
    }

    /** Raises the exponents of powers of ten in running text. */
    static String prose(String text) {
        return escape(text).replaceAll("10\\^(\u2212?[0-9]+)", "10<sup>$1</sup>");
    }

    static String escape(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
