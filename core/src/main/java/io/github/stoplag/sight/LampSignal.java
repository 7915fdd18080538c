package io.github.stoplag.sight;

import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;

/**
 * What the driver behind can see: the light that is switched on, and the light that was there before and stays.
 *
 * <p>I(t) = Is + I∞ r(t); seen is the change since switch-on, c(t) = I∞ (r(t) − r(0−)), against the light before,
 * Is + I∞ r(0−): a lamp whose filament glows already, or a film with light in its dark level, adds that much less.
 *
 * <p>Symbols: I luminous intensity towards the observer in cd; r the onset curve; I∞ the intensity the switched light
 * alone ends at, to which the curve is relative; Is the steady intensity of a lamp already lit, such as the tail lamp
 * at night, 0 by day. A regulation that compares stop with tail lamp means I∞/Is, one that compares both together with
 * the tail lamp (I∞ + Is)/Is. Possible: I∞ + Is at most 1e7 cd.
 *
 * @param onset the rise r of the switched light
 * @param finalIntensity the intensity I∞ of the switched light alone once fully lit
 * @param steadyIntensity the intensity Is there before switch-on and after
 */
public record LampSignal(OnsetCurve onset, LuminousIntensity finalIntensity, LuminousIntensity steadyIntensity)
        implements Evident {
    private static final double NOTICEABLE_GLOW = 1e-3;

    /**
     * Checks that both lights together are a possible intensity.
     *
     * @param onset the rise r of the switched light
     * @param finalIntensity the intensity I∞ of the switched light alone once fully lit
     * @param steadyIntensity the intensity Is there before switch-on and after
     * @throws IllegalArgumentException if the sum of the intensities exceeds 1e7 cd
     */
    public LampSignal {
        Objects.requireNonNull(finalIntensity, "finalIntensity");
        Objects.requireNonNull(steadyIntensity, "steadyIntensity");
        Objects.requireNonNull(onset, "onset");
        Ranges.INTENSITY.check(
                "switched and steady intensity together", finalIntensity.inCandela() + steadyIntensity.inCandela());
    }

    /**
     * Makes the signal of a lamp that is dark before it is switched on.
     *
     * @param onset the rise of the light
     * @param finalIntensity the intensity once fully lit
     * @return the signal
     * @throws IllegalArgumentException if the intensity exceeds 1e7 cd
     */
    public static LampSignal of(OnsetCurve onset, LuminousIntensity finalIntensity) {
        Objects.requireNonNull(finalIntensity, "finalIntensity");
        Objects.requireNonNull(onset, "onset");
        return new LampSignal(onset, finalIntensity, LuminousIntensity.candela(0));
    }

    /**
     * Lets the tail lamp burn beside the switched light.
     *
     * @param tailIntensity its steady intensity Is
     * @return the signal with the tail lamp lit
     * @throws IllegalArgumentException if the sum of the intensities exceeds 1e7 cd
     */
    public LampSignal withTailLit(LuminousIntensity tailIntensity) {
        Objects.requireNonNull(tailIntensity, "tailIntensity");
        return new LampSignal(onset, finalIntensity, tailIntensity);
    }

    /**
     * Gives all the light seen at a time.
     *
     * @param time the time since switch-on
     * @return I(t) = Is + I∞ r(t)
     */
    public LuminousIntensity intensityAt(TimeSpan time) {
        return LuminousIntensity.candela(steadyIntensity.inCandela() + switchedCd(time.inSeconds()));
    }

    @Override
    public Evidence evidence() {
        double steadyCd = steadyIntensity.inCandela();
        double glowRatio = glowRatio();
        return onset.evidence()
                .with(Evidence.of("light towards the observer: " + finalIntensity + " once fully lit"
                        + (steadyCd == 0 ? "" : ", beside a steady " + steadyIntensity) + ", as given"))
                .withCaveatIf(
                        glowRatio > NOTICEABLE_GLOW,
                        "before switch-on the lamp already gives " + Numbers.text(100 * glowRatio, 3)
                                + " % of its final light: only what is added to it counts; take the dark level of a"
                                + " film off its curve first");
    }

    /** Gives all the light before switch-on. */
    double beforeCd() {
        return steadyIntensity.inCandela() + finalIntensity.inCandela() * glowRatio();
    }

    /** Gives the share of the switched light there before switch-on: 0 unless its source glowed already. */
    double glowRatio() {
        return onset.relativeIntensity(-Double.MIN_VALUE);
    }

    private double switchedCd(double timeS) {
        return finalIntensity.inCandela() * onset.relativeIntensity(timeS);
    }
}
