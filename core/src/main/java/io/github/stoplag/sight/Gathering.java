package io.github.stoplag.sight;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caveat;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** What the detectors that gather light over time share in telling their outcome. */
final class Gathering {
    private Gathering() {}

    static List<Caveat> caveats(TimeSpan timeConstant, Threshold threshold, LampSignal signal) {
        List<Caveat> caveats = new ArrayList<>(EffectiveIntensity.timeConstantCaveats(timeConstant));
        caveats.addAll(threshold.caveats(signal));
        return caveats;
    }

    static Detection outcome(OptionalDouble atS, String criterion, double requiredCd, List<Caveat> caveats) {
        return atS.isPresent()
                ? new Detection.Seen(TimeSpan.seconds(atS.getAsDouble()), criterion, caveats)
                : new Detection.NeverSeen(
                        criterion,
                        "the light does not gather to the threshold of " + Numbers.text(requiredCd) + " cd within "
                                + Numbers.text(Quadrature.LONGEST_S) + " s",
                        caveats);
    }
}
