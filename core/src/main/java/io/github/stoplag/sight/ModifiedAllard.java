package io.github.stoplag.sight;

import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * The modified Allard method: the greatest response of an eye that forgets hyperbolically; as a detector, the running
 * response reaching a threshold.
 *
 * <p>i(t) = ∫ I(t − u) q(u) du, q(u) = a/(a + u)², Ie = max i. For a rectangle Ie = I T/(a + T).
 *
 * <p>Symbols: I, i, Ie in cd; q in 1/s; a time constant in s, (0, 10] s, usually 0.2 s by night and 0.1 s by day, in
 * use 0.1 to 0.3 s. A step to I reaches Ith after a Ith/(I − Ith). The detector's moment is exact
 * to about 1e-9 s for a given curve that never falls; it refuses others. Ie of a flash misses the greatest response by
 * less than 1e-11 of it at the points tried, two or more a sample, whatever the number of samples.
 *
 * <p>It lies between {@link BlondelReyDouglas} and {@link FormFactor} for symmetric and rising triangles; for a flash
 * that is brightest at its start it falls up to 10 % below the former.
 *
 * <p>Source: named in CIE 229:2018 as the convolutional method with an infinite time window, not yet an official
 * recommendation (seen); the kernel from memory, verified by its rectangle.
 */
public final class ModifiedAllard implements EffectiveIntensityMethod {
    private final TimeSpan timeConstant;
    private final double aS;

    private ModifiedAllard(TimeSpan timeConstant) {
        this.timeConstant = timeConstant;
        aS = Gathering.checkConstantS(timeConstant);
    }

    /**
     * Makes the method.
     *
     * @param timeConstant the time constant a, (0, 10] s
     * @return the method
     * @throws IllegalArgumentException if it is out of range
     */
    public static ModifiedAllard of(TimeSpan timeConstant) {
        Objects.requireNonNull(timeConstant, "timeConstant");
        return new ModifiedAllard(timeConstant);
    }

    @Override
    public String name() {
        return "modified Allard, a = " + timeConstant;
    }

    @Override
    public EffectiveIntensity of(Flash flash) {
        return EffectiveIntensity.of(SummationKernel.HYPERBOLIC.greatestCd(flash, aS), name(), timeConstant, flash);
    }

    /**
     * Gives the response of the eye at a time.
     *
     * @param flash the flash
     * @param time on the time scale of the flash
     * @return i(t)
     */
    public LuminousIntensity responseAt(Flash flash, TimeSpan time) {
        return LuminousIntensity.candela(SummationKernel.HYPERBOLIC.responseCd(flash, time.inSeconds(), aS));
    }

    /**
     * Asks when the running response to a lamp that comes on and stays on reaches a threshold.
     *
     * @param threshold the response needed
     * @return the detector
     */
    public Detector detector(Threshold threshold) {
        Objects.requireNonNull(threshold, "threshold");
        return new Running(this, threshold);
    }

    /**
     * Gives the running response to an onset: with w = u/(a + u) the convolution is the mean of I(t − a w/(1 − w)) over
     * w from 0 to 1, cut where the curve bends.
     */
    private double runningCd(Course course, double timeS) {
        double[] cutsS = course.cutsS(timeS);
        double sum = 0;
        for (int i = 1; i < cutsS.length; i++) {
            sum += Quadrature.integral(
                    w -> course.changeCd(timeS - aS * w / (1 - w)),
                    SummationKernel.HYPERBOLIC.step(timeS - cutsS[i], aS),
                    SummationKernel.HYPERBOLIC.step(timeS - cutsS[i - 1], aS),
                    Quadrature.TOLERANCE * course.peakCd());
        }
        return sum;
    }

    @Override
    public String toString() {
        return name();
    }

    private record Running(ModifiedAllard eye, Threshold threshold) implements Detector {
        private OptionalDouble reachesS(Course course, double requiredCd) {
            course.requireRising(criterion());
            double passesS = course.passesS(requiredCd).orElseThrow();
            return Quadrature.firstAtS(t -> eye.runningCd(course, t), requiredCd, passesS, eye.aS / 8);
        }

        @Override
        public String criterion() {
            return eye.name() + ", running response, threshold " + threshold;
        }

        @Override
        public Detection detect(LampSignal signal) {
            return Gathering.detect(
                    criterion(),
                    eye.timeConstant,
                    threshold,
                    signal,
                    (course, requiredCd) -> reachesS(course, requiredCd));
        }
    }
}
