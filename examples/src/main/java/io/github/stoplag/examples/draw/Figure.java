package io.github.stoplag.examples.draw;

import java.util.function.Consumer;

/**
 * A picture as SVG, to stand alone as a file or inside the report: text stays text, a title and a description come
 * first, colours follow a light or dark background, and lines differ by dashes as well as by colour.
 *
 * @param id a name unique in the report, also the file's name
 * @param title what the picture shows
 * @param description the same for someone who cannot see it, with the decisive figures
 * @param width the width of the drawing in its own units
 * @param height the height of the drawing in its own units
 * @param content writes the drawing
 */
public record Figure(String id, String title, String description, int width, int height, Consumer<Markup> content) {
    /** The page's and the pictures' own colours; both backgrounds keep a contrast of at least 4.5 with text. */
    public static final String STYLE = """
            .sl-page{fill:#ffffff}
            .sl-ink,.sl text{fill:#1c232b}
            .sl text{font-family:system-ui,"Segoe UI","DejaVu Sans",Arial,sans-serif;font-size:17px}
            .sl .sl-title{font-size:19px;font-weight:600}
            .sl .sl-note{font-size:15px;fill:#4a5561}
            .sl-axis{stroke:#4a5561;stroke-width:1.5;fill:none}
            .sl-grid{stroke:#d5dae0;stroke-width:1;fill:none}
            .sl-line{fill:none;stroke-width:3.2;stroke-linejoin:round}
            .sl-0{stroke:#8f3b00}.sl-1{stroke:#2585cf}.sl-2{stroke:#4a5561}
            .sl-3{stroke:#1b7a57}.sl-4{stroke:#8a3fa0}.sl-5{stroke:#6b6400}
            .sl-1.sl-line{stroke-dasharray:10 5}
            .sl-3.sl-line{stroke-dasharray:3 4}.sl-4.sl-line{stroke-dasharray:14 4 3 4}.sl-5.sl-line{stroke-dasharray:6 3}
            .sl-cross{stroke:#d3122c;stroke-width:3.2;fill:none}
            .sl-band{fill:#e7e2b8}
            .sl-thin{stroke-width:1.8;fill:none;stroke-dasharray:2 5}
            .sl-open{fill:#ffffff;stroke-width:2.5}
            .sl-body{fill:#c9d1da;stroke:#1c232b;stroke-width:1.2}
            .sl-glass{fill:#ffffff;stroke:#1c232b;stroke-width:.8}
            .sl-lit{fill:#d3122c;stroke:#d3122c}
            .sl-area{stroke:none;fill-opacity:.24}
            .sl-area.sl-0{fill:#8f3b00}.sl-area.sl-1{fill:#2585cf}
            .sl-area.sl-3{fill:#1b7a57}.sl-area.sl-4{fill:#8a3fa0}.sl-area.sl-5{fill:#6b6400}
            .sl-cell{stroke:#ffffff;stroke-width:1}
            .sl-none{fill:#ffffff;stroke:#d5dae0;stroke-width:1}
            .sl-r0{fill:#f8eecb}.sl-r1{fill:#f0c36d}.sl-r2{fill:#dd8d3c}.sl-r3{fill:#b3541e}.sl-r4{fill:#6e2413}
            .sl .sl-in{font-size:15px;text-anchor:middle}
            .sl .sl-on3,.sl .sl-on4{fill:#ffffff}
            .sl-rim{stroke:#1c232b;stroke-width:2.4;fill:none;stroke-linecap:round}
            .sl-whisker{stroke:#1c232b;stroke-width:1.6;fill:none}
            .sl-over{stroke:#ffffff;stroke-width:5;paint-order:stroke}
            @media (prefers-color-scheme:dark){
            .sl-page{fill:#14191f}
            .sl-ink,.sl text{fill:#eef2f6}
            .sl .sl-note{fill:#b9c3cd}
            .sl-axis{stroke:#b9c3cd}
            .sl-grid{stroke:#36404a}
            .sl-0{stroke:#f2a65e}.sl-1{stroke:#64b7f6}.sl-2{stroke:#b9c3cd}
            .sl-3{stroke:#5fd3a8}.sl-4{stroke:#d9a0ea}.sl-5{stroke:#d6cf6a}
            .sl-cross{stroke:#ff5a6e}
            .sl-band{fill:#46431f}
            .sl-open{fill:#14191f}
            .sl-body{fill:#55616d;stroke:#eef2f6}
            .sl-glass{fill:#14191f;stroke:#eef2f6}
            .sl-lit{fill:#ff5a6e;stroke:#ff5a6e}
            .sl-area.sl-0{fill:#f2a65e}.sl-area.sl-1{fill:#64b7f6}
            .sl-area.sl-3{fill:#5fd3a8}.sl-area.sl-4{fill:#d9a0ea}.sl-area.sl-5{fill:#d6cf6a}
            .sl-cell{stroke:#14191f}
            .sl-none{fill:#14191f;stroke:#36404a}
            .sl-r0{fill:#4a2a12}.sl-r1{fill:#7d4518}.sl-r2{fill:#c47a30}.sl-r3{fill:#e8a355}.sl-r4{fill:#ffe2a6}
            .sl .sl-on2,.sl .sl-on3,.sl .sl-on4{fill:#14191f}
            .sl-rim,.sl-whisker{stroke:#eef2f6}
            .sl-over{stroke:#14191f}
            }
            """;

    /** Gives the title without the notes behind it. */
    public String heading() {
        return title.split(";", 2)[0];
    }

    public String fileName() {
        return id + ".svg";
    }

    /** Gives the same picture under another name. */
    public Figure named(String newId) {
        return new Figure(newId, title, description, width, height, content);
    }

    /** Gives the picture as a file of its own. */
    public String svg() {
        return Markup.text(out -> write(out, true)) + "\n";
    }

    /** Writes the picture inside a page that carries {@link #STYLE} itself. */
    void writeInto(Markup page) {
        write(page, false);
    }

    private void write(Markup out, boolean alone) {
        out.open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "class",
                "sl",
                "viewBox",
                "0 0 " + width + " " + height,
                "role",
                "img",
                "aria-labelledby",
                id + "-title " + id + "-desc");
        out.line().element("title", title, "id", id + "-title");
        out.line().element("desc", description, "id", id + "-desc").line();
        if (alone) {
            out.element("style", "\n" + STYLE).line();
        }
        out.empty("rect", "class", "sl-page", "width", "100%", "height", "100%").line();
        content.accept(out);
        out.close();
    }
}
