package io.github.stoplag.lamp;

import io.github.stoplag.source.Evidence;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * How a lamp goes dark after switch-off, as the share of its light that is gone: d(t) = 1 − I(t)/I(0).
 *
 * <p>It rises from 0 to 1 as an onset does, so that whatever looks at onsets looks at it too. A filmed or measured fall
 * is a {@link MeasuredLamp} of the same share.
 *
 * <pre>{@code
 * OnsetCurve dark = Darkening.of(LaboratoryLamps.bulb().switchOff(LaboratoryLamps.conditions()));
 * dark.timeToLevelS(0.9).orElseThrow() < 0.2; // true
 * }</pre>
 */
public final class Darkening implements OnsetCurve {
    private final String label;
    private final DoubleUnaryOperator litRatio;
    private final DoubleUnaryOperator timeToLitS;
    private final Evidence evidence;

    private Darkening(String label, DoubleUnaryOperator litRatio, DoubleUnaryOperator timeToLitS, Evidence evidence) {
        this.label = label;
        this.litRatio = litRatio;
        this.timeToLitS = timeToLitS;
        this.evidence = evidence;
    }

    /**
     * Follows a filament that cools.
     *
     * @param decay the decay, to no light: no supply is left on it that it glows by
     * @return the share of light gone
     * @throws IllegalArgumentException if the supply left on it keeps more than a thousandth of the light
     */
    public static Darkening of(FilamentDecay decay) {
        if (decay.timeToLevelS(1e-3).isEmpty()) {
            throw new IllegalArgumentException("a lamp that goes dark must lose its light, got " + decay
                    + ", which keeps more than a thousandth of it");
        }
        return new Darkening(
                decay.toString(),
                decay::relativeIntensity,
                lit -> decay.timeToLevelS(lit).orElse(Double.POSITIVE_INFINITY),
                decay.evidence());
    }

    /**
     * Follows an LED lamp after switch-off.
     *
     * @param led the lamp, lit for long
     * @return the share of light gone
     */
    public static Darkening of(LedLamp led) {
        return new Darkening(
                led.label() + " going out",
                led.switched(false, 1)::relativeIntensity,
                lit -> -led.fallTauS() * Math.log(lit),
                led.evidence());
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public double relativeIntensity(double timeS) {
        OnsetCurve.checkTimeS("time since switch-off", timeS);
        // at the very moment of switching a lamp that falls at once is dark
        return timeS < 0 ? 0 : Math.max(0, 1 - litRatio.applyAsDouble(Math.max(Double.MIN_VALUE, timeS)));
    }

    @Override
    public OptionalDouble timeToLevelS(double levelRatio) {
        double timeS = timeToLitS.applyAsDouble(1 - OnsetCurve.checkLevel(levelRatio));
        return timeS < Double.POSITIVE_INFINITY ? OptionalDouble.of(timeS) : OptionalDouble.empty();
    }

    @Override
    public double settledS() {
        return timeToLitS.applyAsDouble(1e-3);
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public String toString() {
        return label;
    }
}
