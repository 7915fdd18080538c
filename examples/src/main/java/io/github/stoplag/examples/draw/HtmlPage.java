package io.github.stoplag.examples.draw;

import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** A page that needs nothing else: no script, no network, no other file. */
public final class HtmlPage {
    private static final String STYLE = """
            :root{color-scheme:light dark;--ink:#1c232b;--page:#ffffff;--line:#d5dae0;--warn:#fff4d6}
            @media (prefers-color-scheme:dark){:root{--ink:#eef2f6;--page:#14191f;--line:#36404a;--warn:#3a2f12}}
            p,li{overflow-wrap:anywhere}
            body{margin:0 auto;max-width:52rem;padding:1rem;background:var(--page);color:var(--ink);
            font:1rem/1.5 system-ui,"Segoe UI","DejaVu Sans",Arial,sans-serif}
            h1{font-size:1.6rem;line-height:1.25}h2{font-size:1.25rem;margin-top:2.2rem}
            .mark{display:inline-block;border:2px solid;border-radius:.3rem;padding:0 .5rem;font-weight:600}
            figure{margin:1.2rem 0;border:1px solid var(--line);border-radius:.4rem;overflow:hidden}
            figure svg{display:block;width:100%;height:auto}
            .wide{overflow-x:auto}
            table{border-collapse:collapse;width:100%;font-size:.92rem}
            .answer{border-left:.35rem solid #2585cf;padding:.2rem 1rem;margin:1rem 0}
            .answer p,.answer ul{margin:.4rem 0}.answer ul{padding-left:1.1rem}.answer strong{font-size:1.12em}
            .pair{break-inside:avoid}
            summary{cursor:pointer;font-weight:600;margin:1rem 0}
            th,td{border-bottom:1px solid var(--line);padding:.35rem .6rem .35rem 0;text-align:left;vertical-align:top}
            .warn{background:var(--warn);border-radius:.4rem;padding:.6rem 1rem .6rem 2rem}
            .warn li{margin:.5rem 0}
            pre{overflow-x:auto;border:1px solid var(--line);border-radius:.4rem;padding:.6rem .8rem;font-size:.8rem;
            line-height:1.4}
            @media screen and (max-width:44rem){h1{font-size:1.3rem}.answer{padding:.1rem .7rem;margin:.7rem 0}
            table.many,table.many tbody,table.many tr,table.many td{display:block}
            table.many thead{position:absolute;left:-9999px}
            table.many tr{border-bottom:2px solid var(--line);padding:.5rem 0}
            table.many td{border:0;padding:.1rem 0 .1rem 8.2rem;text-indent:-8.2rem}
            table.many td::before{content:attr(data-of);display:inline-block;width:8.2rem;text-indent:0;font-weight:600}}
            @media print{table.whole{break-inside:avoid}figure,tr{break-inside:avoid}h2,h3{break-after:avoid}
            pre{white-space:pre-wrap}figure svg{max-height:11cm}figure{margin:.5rem 0}body{font-size:.9rem;padding:0}
            th,td{padding-top:.15rem;padding-bottom:.15rem}}
            """;

    /** A table of so many rows is kept on one printed page. */
    private static final int ON_ONE_PAGE = 24;

    private static final String NO_BREAK_SPACE = "\u00a0";

    private final Markup out;

    public HtmlPage(Markup out) {
        this.out = out;
    }

    /** Gives the text of a page whose body something writes. */
    public static String text(String title, Consumer<Markup> body) {
        return text(title, "", body);
    }

    /** Gives the text of a page with a style of its own on top of that of all pages. */
    public static String text(String title, String style, Consumer<Markup> body) {
        return "<!DOCTYPE html>\n" + Markup.text(out -> write(out, title, style, body)) + "\n";
    }

    private static void write(Markup out, String title, String style, Consumer<Markup> body) {
        out.open("html", "lang", "en", "xmlns", "http://www.w3.org/1999/xhtml")
                .line()
                .open("head")
                .line();
        out.empty("meta", "charset", "utf-8").line();
        out.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1")
                .line();
        out.element("title", title).line();
        out.element("style", "\n" + STYLE + Figure.STYLE + style)
                .line()
                .close()
                .line()
                .open("body")
                .line();
        body.accept(out);
        out.close().close();
    }

    public void figure(Figure figure) {
        out.open("figure").line();
        figure.writeInto(out);
        out.line().close().line();
    }

    public void heading(String text) {
        out.element("h2", text).line();
    }

    public void paragraph(String text) {
        out.element("p", text).line();
    }

    /** Writes program text as it is. */
    public void code(String text) {
        out.open("pre", "tabindex", "0").element("code", text).close().line();
    }

    public void list(Stream<String> items) {
        List<String> texts = items.toList();
        if (!texts.isEmpty()) {
            out.open("ul").line();
            texts.forEach(text -> out.element("li", text).line());
            out.close().line();
        }
    }

    /**
     * Writes a table; on a narrow screen one of many columns becomes a block for each row, so that no column is out of
     * sight.
     */
    public void table(List<String> header, Stream<List<String>> rows) {
        List<List<String>> all = rows.toList();
        boolean many = header.size() > 4;
        out.open("div", "class", "wide", "tabindex", "0")
                .open("table", "class", (many ? "many" : "few") + (all.size() <= ON_ONE_PAGE ? " whole" : ""))
                .line()
                .open("thead")
                .open("tr");
        header.forEach(name -> out.element("th", name, "scope", "col"));
        out.close().close().line().open("tbody").line();
        for (List<String> row : all) {
            out.open("tr");
            for (int i = 0; i < row.size(); i++) {
                if (many) {
                    out.element("td", unbroken(row.get(i)), "data-of", header.get(i));
                } else {
                    out.element("td", unbroken(row.get(i)));
                }
            }
            out.close().line();
        }
        out.close().close().close().line();
    }

    /** Keeps a number and its unit, and feet and their inches, on one line. */
    public static String unbroken(String text) {
        return text.replaceAll("(?<=[0-9]) (?=(km/h|mph|m|ft|in|ms|s)\\b)", NO_BREAK_SPACE)
                .replaceAll("(?<=ft) (?=[0-9])", NO_BREAK_SPACE);
    }
}
