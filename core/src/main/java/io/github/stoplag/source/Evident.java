package io.github.stoplag.source;

import java.util.List;
import java.util.Objects;

/**
 * Something that says what it rests on: a result, a curve, a model, a rule or a row of a published table.
 *
 * <p>One face for all: whoever makes a result of another joins the other's evidence to its own, so that a reservation
 * about a lamp's curve still stands beside the number of metres worked out from it.
 */
public interface Evident {
    /**
     * Says what this rests on, how far it may be trusted and what to mind when acting on it.
     *
     * @return the evidence
     */
    Evidence evidence();

    /**
     * Joins what several things rest on, worked out only when it is asked for.
     *
     * @param parts the things
     * @return their evidence together, each statement once
     */
    static Evident joined(Evident... parts) {
        Objects.requireNonNull(parts, "parts");
        return new Joined(List.of(parts));
    }

    /**
     * Gives the models, parameters, sources and assumptions.
     *
     * @return the basis of {@link #evidence}, one statement each
     */
    default List<String> basis() {
        return evidence().basis();
    }

    /**
     * Gives the reservations.
     *
     * @return the caveats of {@link #evidence}, empty if there are none
     */
    default List<Caveat> caveats() {
        return evidence().caveats();
    }
}
