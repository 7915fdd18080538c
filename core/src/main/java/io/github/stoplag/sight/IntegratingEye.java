package io.github.stoplag.sight;

import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * Takes a lamp as seen once an eye that sums light over a short time has gathered enough: a leaky integrator.
 *
 * <p>τ dE/dt = I∞ r(t) − E, seen when E = Ith, Ith by {@link Threshold}. For a step to I this is t = τ ln(I/(I − Ith)).
 *
 * <p>Symbols: E, the stimulus the switched light makes, and its threshold Ith in cd; I∞ and r of {@link LampSignal}; τ time
 * constant in s, (0, 10] s, in use 0.1 to 0.3 s. The steady light of a lit tail lamp has been gathered long before switch-on:
 * it only raises the threshold, if that has a contrast. A lamp whose final intensity does not exceed the threshold is never
 * seen; one that exceeded it before switch-on is seen at 0. The moment is exact to about 1e-10 s for a given curve.
 *
 * <p>Source: Allard's law of 1876 with τ = 0.2 s, as quoted in US patent application 2004/0160598 (seen). A threshold in
 * candela holds for one distance and background only.
 */
public final class IntegratingEye implements Detector {
    private static final double SHORTEST_S = 1e-12;

    private final TimeSpan timeConstant;
    private final Threshold threshold;
    private final double tauS;

    private IntegratingEye(TimeSpan timeConstant, Threshold threshold) {
        this.timeConstant = timeConstant;
        this.threshold = threshold;
        tauS = Gathering.checkConstantS(timeConstant);
    }

    /**
     * Makes the criterion.
     *
     * @param timeConstant the time constant τ, (0, 10] s
     * @param threshold the threshold Ith, (0, 1e6] cd
     * @return the detector
     * @throws IllegalArgumentException if either is out of range
     */
    public static IntegratingEye of(TimeSpan timeConstant, LuminousIntensity threshold) {
        return new IntegratingEye(timeConstant, Threshold.intensity(threshold));
    }

    /**
     * Makes the criterion with a threshold that depends on distance, background or the lit tail lamp.
     *
     * @param timeConstant the time constant τ, (0, 10] s
     * @param threshold the threshold Ith
     * @return the detector
     * @throws IllegalArgumentException if the time constant is out of range
     */
    public static IntegratingEye of(TimeSpan timeConstant, Threshold threshold) {
        return new IntegratingEye(timeConstant, threshold);
    }

    @Override
    public String criterion() {
        return "integrating eye, time constant " + timeConstant + ", threshold " + threshold;
    }

    @Override
    public Detection detect(LampSignal signal) {
        return Gathering.detect(
                criterion(), timeConstant, threshold, signal, (requiredCd, passesS) -> reachesS(signal, requiredCd));
    }

    /** Marches the stimulus through panels of half a time constant, cut where the curve bends. */
    private OptionalDouble reachesS(LampSignal signal, double thresholdCd) {
        Leak leak = new Leak(signal::switchedCd, tauS, Quadrature.TOLERANCE * signal.switchedEndCd());
        double stimulusCd = signal.switchedBeforeCd();
        double[] joinsS = joins(signal.onset());
        double lastS = 60 * tauS + 10 * signal.onset().settledS() + joinsS[joinsS.length - 1];
        int join = 0;
        double fromS = 0;
        while (fromS < lastS) {
            while (join < joinsS.length && joinsS[join] <= fromS) {
                join++;
            }
            double toS = fromS + tauS / 2;
            toS = join < joinsS.length ? Math.min(toS, joinsS[join]) : toS;
            double nextCd = leak.stimulusCd(fromS, stimulusCd, toS);
            if (nextCd >= thresholdCd) {
                return OptionalDouble.of(leak.reachesS(thresholdCd, fromS, stimulusCd, toS));
            }
            stimulusCd = nextCd;
            fromS = toS;
        }
        return OptionalDouble.empty();
    }

    /** Gives the times at which the march must stop: bends of the curve, and where a fast rise is over. */
    private static double[] joins(OnsetCurve onset) {
        double[] bends = onset.breakpointsS();
        double[] result = Arrays.copyOf(bends, bends.length + 1);
        result[bends.length] = onset.settledS();
        Arrays.sort(result);
        return result;
    }

    @Override
    public String toString() {
        return criterion();
    }

    /** The integrator for one signal; panels of the quadrature are halved until they agree to the tolerance. */
    private record Leak(DoubleUnaryOperator intensityCd, double tauS, double toleranceCd) {
        /** Carries the stimulus from one time to a later one: E e^(−Δ/τ) + ∫ I e^(−(t − s)/τ) ds/τ. */
        double stimulusCd(double fromS, double fromCd, double toS) {
            DoubleUnaryOperator weighted = s -> intensityCd.applyAsDouble(s) * Math.exp((s - toS) / tauS) / tauS;
            return fromCd * Math.exp((fromS - toS) / tauS) + Quadrature.integral(weighted, fromS, toS, toleranceCd);
        }

        /** Finds when the stimulus passes a level, by Newton's rule with dE/dt = (I − E)/τ, halving where that leaves the bracket. */
        double reachesS(double levelCd, double fromS, double fromCd, double toS) {
            double loS = fromS;
            double hiS = toS;
            double atS = toS;
            while (hiS - loS > SHORTEST_S) {
                double cd = stimulusCd(fromS, fromCd, atS);
                if (cd < levelCd) {
                    loS = atS;
                } else {
                    hiS = atS;
                }
                double newton = atS + tauS * (levelCd - cd) / (intensityCd.applyAsDouble(atS) - cd);
                if (Math.abs(newton - atS) < SHORTEST_S) {
                    return Math.min(toS, Math.max(fromS, newton));
                }
                atS = newton > loS && newton < hiS ? newton : (loS + hiS) / 2;
            }
            return hiS;
        }
    }
}
