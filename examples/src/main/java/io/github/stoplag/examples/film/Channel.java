package io.github.stoplag.examples.film;

import java.util.Locale;

/** What of a picture is taken for brightness. */
enum Channel {
    /** The brightness as the film codes it. */
    LUMA,
    /** Red. */
    RED,
    /** Green. */
    GREEN,
    /** Blue. */
    BLUE;

    String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
