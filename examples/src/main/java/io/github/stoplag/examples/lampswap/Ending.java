package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.lamps.Estimated;
import io.github.stoplag.following.Pair;
import io.github.stoplag.quantity.Distance;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * How a following ends with a lamp, and at both ends of the interval that is left to the moment seen.
 *
 * @param verdict for the moment itself
 * @param early for the early end
 * @param late for the late end
 * @param pair both vehicles, for the moment itself; nothing if the lamp is never seen
 */
record Ending(Verdict verdict, Verdict early, Verdict late, Optional<Pair> pair) {
    static Ending of(Optional<Estimated> seen, DoubleFunction<Pair> pairAtS) {
        Optional<Pair> pair = seen.map(at -> pairAtS.apply(at.value()));
        Verdict verdict = Verdict.of(pair);
        if (seen.isEmpty() || seen.get().exact()) {
            return new Ending(verdict, verdict, verdict, pair);
        }
        double lateS = seen.get().hi();
        return new Ending(
                verdict,
                Verdict.of(Optional.of(pairAtS.apply(Math.max(0, seen.get().lo())))),
                Verdict.of(Double.isInfinite(lateS) ? Optional.empty() : Optional.of(pairAtS.apply(lateS))),
                pair);
    }

    /** Gives the gap needed in metres with its interval. */
    Optional<Estimated> gapNeededM() {
        return verdict.gapNeeded()
                .map(gap -> new Estimated(
                        gap.inMetres(),
                        early.gapNeeded().map(Distance::inMetres).orElse(gap.inMetres()),
                        late.gapNeeded().map(Distance::inMetres).orElse(Double.POSITIVE_INFINITY)));
    }

    /** Says it in one short phrase, and whether it may end otherwise within the interval. */
    String shortly() {
        return verdict.phrase()
                + Stream.of(early.word(), late.word())
                        .filter(word -> !word.equals(verdict.word()))
                        .map(word -> word.equals("no contact") ? " (or none)" : " (or " + word + ")")
                        .distinct()
                        .collect(Collectors.joining());
    }

    /** Says it in one phrase, with the interval of the decisive figure, or how it may end otherwise. */
    String phrase() {
        if (!early.word().equals(late.word())) {
            return verdict.phrase() + "; in the interval from " + early.phrase() + ", to " + late.phrase();
        }
        boolean touches = verdict.closingSpeed().isPresent();
        double value = verdict.figure().orElse(0.0);
        double a = early.figure().orElse(value);
        double b = late.figure().orElse(value);
        String interval =
                new Estimated(value, Math.min(a, b), Math.max(a, b)).between(touches ? 1 : 2, touches ? "km/h" : "m");
        return verdict.phrase() + interval;
    }
}
