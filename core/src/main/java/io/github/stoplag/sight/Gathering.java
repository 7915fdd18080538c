package io.github.stoplag.sight;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import java.util.OptionalDouble;

/** What the criteria that gather light over time share. */
final class Gathering {
    private Gathering() {}

    /** When the light gathered reaches what is required. */
    @FunctionalInterface
    interface Rule {
        /** Gives the time, or nothing; the greatest change exceeds what is required. */
        OptionalDouble reachesS(Course course, double requiredCd);
    }

    static double checkConstantS(TimeSpan timeConstant) {
        return Check.above("time constant of the eye", timeConstant.inSeconds(), 0, 10, "s");
    }

    static Detection detect(
            String criterion, TimeSpan timeConstant, Threshold threshold, LampSignal signal, Rule rule) {
        double requiredCd = threshold.requiredCd(signal);
        Evidence evidence =
                threshold.evidence(signal).withCaveats(EffectiveIntensity.timeConstantCaveats(timeConstant));
        Course course = new Course(signal);
        if (!(course.peakCd() > requiredCd)) {
            return threshold.tooDim(criterion, signal, course, evidence);
        }
        OptionalDouble atS = rule.reachesS(course, requiredCd);
        return atS.isPresent()
                ? new Detection.Seen(TimeSpan.seconds(atS.getAsDouble()), criterion, evidence)
                : new Detection.NeverSeen(
                        criterion,
                        "the light does not gather to the threshold of " + Numbers.text(requiredCd) + " cd within "
                                + Numbers.text(Quadrature.LONGEST_S) + " s",
                        evidence);
    }
}
