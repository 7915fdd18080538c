package io.github.stoplag.source;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;

/**
 * What a result rests on, how far it may be trusted and what to mind when acting on it.
 *
 * @param basis models, parameters, sources and assumptions, one statement each
 * @param caveats the reservations about the numbers
 * @param cautions the warnings about acting on them
 */
public record Evidence(List<String> basis, List<Caveat> caveats, List<Caution> cautions) {
    /**
     * Copies the lists.
     *
     * @param basis models, parameters, sources and assumptions, one statement each
     * @param caveats the reservations about the numbers
     * @param cautions the warnings about acting on them
     */
    public Evidence {
        basis = List.copyOf(basis);
        caveats = List.copyOf(caveats);
        cautions = List.copyOf(cautions);
    }

    /**
     * Starts from statements of what a result rests on.
     *
     * @param basis the statements
     * @return the evidence, without caveats and cautions
     */
    public static Evidence of(String... basis) {
        return new Evidence(List.of(basis), List.of(), List.of());
    }

    /**
     * Adds a reservation.
     *
     * @param text the reservation in one sentence
     * @return the longer evidence
     */
    public Evidence withCaveat(String text) {
        return with(new Evidence(List.of(), List.of(new Caveat(text)), List.of()));
    }

    /**
     * Adds a reservation if there is reason for it.
     *
     * @param applies whether it applies
     * @param text the reservation in one sentence
     * @return the evidence, longer if it applies
     */
    public Evidence withCaveatIf(boolean applies, String text) {
        return applies ? withCaveat(text) : this;
    }

    /**
     * Adds warnings.
     *
     * @param more the warnings
     * @return the longer evidence
     */
    public Evidence withCautions(Caution... more) {
        return with(new Evidence(List.of(), List.of(), List.of(more)));
    }

    /**
     * Joins two evidences, each statement kept once.
     *
     * @param other the other evidence
     * @return both, this one's statements first
     */
    public Evidence with(Evidence other) {
        return new Evidence(
                joined(basis, other.basis), joined(caveats, other.caveats), joined(cautions, other.cautions));
    }

    private static <T> List<T> joined(List<T> first, List<T> second) {
        LinkedHashSet<T> all = new LinkedHashSet<>(first);
        all.addAll(second);
        return new ArrayList<>(all);
    }
}
