package io.github.stoplag.source;

import java.util.Objects;

/** How firmly a figure is known: whether its published text was read, remembered or only assumed. */
public enum Standing {
    /** Read in the source's own text or a faithful copy of it. */
    SEEN("seen"),
    /** Remembered, not read; to be confirmed before anything rests on it. */
    FROM_MEMORY("from memory"),
    /** A fact of the trade without a published source. */
    COMMON_PRACTICE("common practice, no source"),
    /** Worked out from figures of the standing that the note names. */
    DERIVED("derived"),
    /** Chosen here as a reasonable value; a caller with better knowledge replaces it. */
    ASSUMED("assumed"),
    /** Made up for a demonstration. */
    INVENTED("invented");

    private final String text;

    Standing(String text) {
        this.text = text;
    }

    /**
     * Finds the standing by the words used for it in tables.
     *
     * @param text the words, for example {@code from memory}
     * @return the standing
     * @throws IllegalArgumentException if no standing has these words
     */
    public static Standing of(String text) {
        Objects.requireNonNull(text, "text");
        for (Standing standing : values()) {
            if (standing.text.equals(text)) {
                return standing;
            }
        }
        throw new IllegalArgumentException(
                "standing must be one of seen, from memory, common practice, no source, derived,"
                        + " assumed, invented; got \"" + text + "\"");
    }

    @Override
    public String toString() {
        return text;
    }
}
