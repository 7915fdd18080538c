package io.github.stoplag.examples.sweep;

import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.sweep.run.SweepOutcome;
import io.github.stoplag.sweep.GapIntegrated;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.SamplingError;
import io.github.stoplag.sweep.Sensitivities;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * A finished sweep and what its result depends on.
 *
 * @param outcome the sweep
 * @param sensitivities of each lamp in order
 * @param gapIntegrated the contact probabilities with the gap integrated out, where the plan allows it
 */
record SweepStudy(SweepOutcome outcome, List<Sensitivities> sensitivities, Optional<GapIntegrated> gapIntegrated) {
    static final double CONFIDENCE = 0.95;

    static SweepStudy of(SweepOutcome outcome, int threads) {
        boolean any = outcome.result().scenarios() > outcome.result().rejected();
        return new SweepStudy(
                outcome,
                any ? Sensitivities.of(outcome.plan(), threads) : List.of(),
                any ? GapIntegrated.of(outcome.plan(), threads) : Optional.empty());
    }

    PlanFile plan() {
        return outcome.plan();
    }

    PairTally tally() {
        return outcome.result().tally();
    }

    List<String> lamps() {
        return outcome.plan().lamps();
    }

    /** Gives the lamp that the others are compared with. */
    String reference() {
        return plan().pairModel().reference();
    }

    /** Gives the lamps that are compared with it. */
    List<String> others() {
        return plan().pairModel().others();
    }

    SamplingError samplingError() {
        return SamplingError.of(plan().plan());
    }

    /** Says whether any scenario was possible. */
    boolean anyValid() {
        return outcome.result().scenarios() > outcome.result().rejected();
    }

    /** Gives the lamps that led to a contact at all. */
    Stream<String> lampsWithContact() {
        return anyValid() ? lamps().stream().filter(hasContact()) : Stream.empty();
    }

    Predicate<String> hasContact() {
        return lamp -> tally().lamp(lamp).closingSpeedMps().count() > 0;
    }

    /** Gives the notes for charts: what the figures are conditional on, and whether data are invented. */
    List<String> marks() {
        String given = "given that the leader brakes; not a crash rate";
        return plan().invented() ? List.of(Heading.INVENTED_DATA + "; " + given) : List.of(given);
    }
}
