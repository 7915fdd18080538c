package io.github.stoplag.examples.file;

import java.util.List;

/**
 * What a scenario calls itself.
 *
 * @param title what it is
 * @param invented whether its figures are made up
 */
public record Heading(String title, boolean invented) {
    /** The mark of every output that made-up data went into. */
    public static final String INVENTED_DATA = "invented data";

    private static final int LONGEST_TITLE = 120;

    public static final Keys KEYS = new Keys();
    public static final String TITLE = KEYS.add("title");
    private static final String INVENTED = KEYS.add("invented");

    /**
     * Reads it from a scenario.
     *
     * @throws InputException if the title is missing or too long
     */
    public static Heading of(ScenarioFile file) {
        String title = file.text(TITLE, null);
        if (title.length() > LONGEST_TITLE) {
            throw file.bad(TITLE, title, "must have 1 to " + LONGEST_TITLE + " characters, got " + title.length());
        }
        return new Heading(
                title, file.word(INVENTED, "no", List.of("yes", "no")).equals("yes"));
    }

    /** Gives the notes for charts and tables: the mark, or nothing. */
    public List<String> marks() {
        return invented ? List.of(INVENTED_DATA) : List.of();
    }

    @Override
    public String toString() {
        return title + (invented ? " (" + INVENTED_DATA + ")" : "");
    }
}
