package io.github.stoplag.source;

import io.github.stoplag.quantity.Check;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * What a result rests on, how far it may be trusted and what to mind when acting on it.
 *
 * @param basis models, parameters, sources and assumptions, one statement each
 * @param caveats the reservations about the numbers
 * @param cautions the warnings about acting on them
 */
public record Evidence(List<String> basis, List<Caveat> caveats, List<Caution> cautions) {
    private static final Evidence NONE = new Evidence(List.of(), List.of(), List.of());

    /**
     * Copies the lists.
     *
     * @param basis models, parameters, sources and assumptions, one statement each
     * @param caveats the reservations about the numbers
     * @param cautions the warnings about acting on them
     */
    public Evidence {
        basis = Check.copyOf("basis", basis);
        caveats = Check.copyOf("caveats", caveats);
        cautions = Check.copyOf("cautions", cautions);
    }

    /**
     * Starts from statements of what a result rests on.
     *
     * @param basis the statements
     * @return the evidence, without caveats and cautions
     */
    public static Evidence of(String... basis) {
        Objects.requireNonNull(basis, "basis");
        return new Evidence(List.of(basis), List.of(), List.of());
    }

    /**
     * Gives the evidence of what needs none.
     *
     * @return no statements, caveats or cautions
     */
    public static Evidence none() {
        return NONE;
    }

    /**
     * Starts from the source of a published figure or formula.
     *
     * @param what the figure or formula
     * @param source who published it
     * @return the evidence, without caveats and cautions
     */
    public static Evidence of(String what, Source source) {
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(what, "what");
        return of(what + ": " + source);
    }

    /**
     * Adds reservations.
     *
     * @param more the reservations
     * @return the longer evidence
     */
    public Evidence withCaveats(Collection<Caveat> more) {
        Objects.requireNonNull(more, "more");
        return more.isEmpty() ? this : with(new Evidence(List.of(), List.copyOf(more), List.of()));
    }

    /**
     * Gives the reservations alone, for a result that tells its basis in its own words.
     *
     * @return the caveats and cautions, without the basis
     */
    public Evidence reservations() {
        return new Evidence(List.of(), caveats, cautions);
    }

    /**
     * Adds a reservation.
     *
     * @param text the reservation in one sentence
     * @return the longer evidence
     */
    public Evidence withCaveat(String text) {
        Objects.requireNonNull(text, "text");
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
        Objects.requireNonNull(text, "text");
        return applies ? withCaveat(text) : this;
    }

    /**
     * Adds warnings.
     *
     * @param more the warnings
     * @return the longer evidence
     */
    public Evidence withCautions(Caution... more) {
        Objects.requireNonNull(more, "more");
        return with(new Evidence(List.of(), List.of(), List.of(more)));
    }

    /**
     * Joins two evidences, each statement kept once.
     *
     * @param other the other evidence
     * @return both, this one's statements first
     */
    public Evidence with(Evidence other) {
        Objects.requireNonNull(other, "other");
        return other.equals(NONE) ? this : joined(List.of(this, other));
    }

    /**
     * Joins any number of evidences, each statement kept once.
     *
     * @param parts the evidences
     * @return all of them, the first one's statements first
     */
    public static Evidence joined(Collection<Evidence> parts) {
        Objects.requireNonNull(parts, "parts");
        Set<String> basis = new LinkedHashSet<>();
        Set<Caveat> caveats = new LinkedHashSet<>();
        Set<Caution> cautions = new LinkedHashSet<>();
        for (Evidence part : parts) {
            basis.addAll(part.basis);
            caveats.addAll(part.caveats);
            cautions.addAll(part.cautions);
        }
        return new Evidence(List.copyOf(basis), List.copyOf(caveats), List.copyOf(cautions));
    }
}
