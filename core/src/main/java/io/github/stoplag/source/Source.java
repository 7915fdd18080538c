package io.github.stoplag.source;

import java.util.Objects;

/**
 * Where a figure or a model comes from.
 *
 * @param document author, title, edition or year
 * @param place table, section, page or equation in it; empty if the document is a single figure
 * @param standing how firmly it is known
 */
public record Source(String document, String place, Standing standing) {
    /**
     * Checks that a document is named.
     *
     * @param document author, title, edition or year
     * @param place table, section, page or equation in it; empty if the document is a single figure
     * @param standing how firmly it is known
     * @throws IllegalArgumentException if the document is blank
     */
    public Source {
        Objects.requireNonNull(document, "document");
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(standing, "standing");
        if (document.isBlank()) {
            throw new IllegalArgumentException("a source must name its document, got an empty text");
        }
    }

    /**
     * Names a document that was read.
     *
     * @param document author, title, edition or year
     * @param place table, section, page or equation
     * @return the source
     */
    public static Source seen(String document, String place) {
        Objects.requireNonNull(document, "document");
        Objects.requireNonNull(place, "place");
        return new Source(document, place, Standing.SEEN);
    }

    /**
     * Names a document that is remembered.
     *
     * @param document author, title, edition or year
     * @param place table, section, page or equation
     * @return the source
     */
    public static Source fromMemory(String document, String place) {
        Objects.requireNonNull(document, "document");
        Objects.requireNonNull(place, "place");
        return new Source(document, place, Standing.FROM_MEMORY);
    }

    /**
     * Names a value chosen here.
     *
     * @param why what it is and why it is reasonable
     * @return the source
     */
    public static Source assumed(String why) {
        Objects.requireNonNull(why, "why");
        return new Source(why, "", Standing.ASSUMED);
    }

    @Override
    public String toString() {
        return document + (place.isEmpty() ? "" : ", " + place) + " (" + standing + ")";
    }
}
