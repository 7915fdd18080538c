package io.github.stoplag.source;

import java.util.Objects;

/**
 * A reservation that travels with a result: an input outside the range a model was validated in, or a caution.
 *
 * @param text the reservation in one sentence, with quantity, range, unit and value where they apply
 */
public record Caveat(String text) {

    /**
     * Refuses nulls.
     *
     * @param text the reservation in one sentence, with quantity, range, unit and value where they apply
     * @throws NullPointerException if one that is required is null
     */
    public Caveat {
        Objects.requireNonNull(text, "text");
    }

    @Override
    public String toString() {
        return text;
    }
}
