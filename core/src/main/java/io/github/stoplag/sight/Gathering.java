package io.github.stoplag.sight;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/** What the criteria that gather light over time share. */
final class Gathering {
    private Gathering() {}

    /** When the light gathered reaches what is required. */
    @FunctionalInterface
    interface Rule {
        /** Gives the time, or nothing; the light alone passes the required intensity at {@code passesS}. */
        OptionalDouble reachesS(double requiredCd, double passesS);
    }

    static double checkConstantS(TimeSpan timeConstant) {
        return Check.above("time constant of the eye", timeConstant.inSeconds(), 0, 10, "s");
    }

    static Detection detect(
            String criterion, TimeSpan timeConstant, Threshold threshold, LampSignal signal, Rule rule) {
        double requiredCd = threshold.requiredCd(signal);
        Evidence evidence =
                threshold.evidence(signal).withCaveats(EffectiveIntensity.timeConstantCaveats(timeConstant));
        OptionalDouble passesS = InstantEye.passesS(signal, requiredCd);
        if (passesS.isEmpty()) {
            return threshold.tooDim(criterion, signal, evidence);
        }
        OptionalDouble atS = signal.switchedBeforeCd() >= requiredCd
                ? OptionalDouble.of(0)
                : rule.reachesS(requiredCd, passesS.getAsDouble());
        return atS.isPresent()
                ? new Detection.Seen(TimeSpan.seconds(atS.getAsDouble()), criterion, evidence)
                : new Detection.NeverSeen(
                        criterion,
                        "the light does not gather to the threshold of " + Numbers.text(requiredCd) + " cd within "
                                + Numbers.text(Quadrature.LONGEST_S) + " s",
                        evidence);
    }

    /** Gives both ends and the times between at which an integral over the signal must be cut, increasing. */
    static double[] cutsS(LampSignal signal, double fromS, double toS) {
        return DoubleStream.concat(
                        Arrays.stream(signal.onset().breakpointsS()),
                        DoubleStream.of(fromS, toS, signal.onset().settledS()))
                .filter(s -> s >= fromS && s <= toS)
                .sorted()
                .distinct()
                .toArray();
    }
}
