package io.github.stoplag.sight;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

class LampSetProperties {
    private static final OnsetCurve FILAMENT = LaboratoryLamps.standard();
    private static final OnsetCurve STEP = LaboratoryLamps.led();

    @Property(tries = 40, seed = "2026")
    void mixedSetLiesBetweenItsParts(
            @ForAll @IntRange(max = 8) int exchanged,
            @ForAll @DoubleRange(min = 5, max = 90) double dimmestCd,
            @ForAll @DoubleRange(max = 0.03) double laterS,
            @ForAll @DoubleRange(min = 0.02, max = 0.3) double tauS) {
        Detector eye = IntegratingEye.of(TimeSpan.seconds(tauS), LuminousIntensity.candela(3));
        LampSet.Outcome none = set(0, dimmestCd, laterS).detect(eye, Distance.metres(30));
        LampSet.Outcome some = set(exchanged, dimmestCd, laterS).detect(eye, Distance.metres(30));
        LampSet.Outcome all = set(7, dimmestCd, laterS).detect(eye, Distance.metres(30));
        between(all.detection(), some.detection(), none.detection());
        between(all.together(), some.together(), none.together());
        between(all.lookedAtOne(), some.lookedAtOne(), none.lookedAtOne());
        between(some.together(), some.detection(), some.lookedAtOne());
    }

    private static void between(Detection first, Detection middle, Detection last) {
        assertThat(seenS(middle)).isBetween(seenS(first) - 1e-9, seenS(last) + 1e-9);
    }

    private static double seenS(Detection detection) {
        return detection.orElseThrow().inSeconds();
    }

    /** Three lamps, the bits of a number telling which are exchanged for LED lamps. */
    private static LampSet set(int exchanged, double dimmestCd, double laterS) {
        List<LampSet.Member> lamps = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            OnsetCurve onset = (exchanged >> i & 1) == 1 ? STEP : FILAMENT;
            lamps.add(LampSet.Member.of(
                            "lamp " + i, LampSignal.of(onset, LuminousIntensity.candela(dimmestCd + 10 * i)))
                    .after(TimeSpan.seconds(i * laterS))
                    .at(0.6 * i, 1));
        }
        return LampSet.of(lamps);
    }
}
