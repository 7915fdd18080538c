package io.github.stoplag.sight;

import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Arrays;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Takes a lamp as seen once an eye that sums light over a short time has gathered enough: a leaky integrator.
 *
 * <p>τ dE/dt = I(t) − E, seen when E = Eth. For a step to I this is t = τ ln(I/(I − Eth)).
 *
 * <p>Symbols: E, the stimulus, and its threshold Eth in cd; I luminous intensity in cd; τ time constant in s. Ranges: τ
 * (0, 10] s, Eth (0, 1e6] cd. A lamp whose final intensity does not exceed the threshold is never seen; one that exceeded
 * it before switch-on is seen at 0. The moment is exact to about 1e-10 s for a given curve.
 *
 * <p>Source: Allard's law of 1876 with τ = 0.2 s, as quoted in US patent application 2004/0160598 (seen). A threshold in
 * candela holds for one distance and background only.
 */
public final class IntegratingEye implements Detector {
    private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(10);
    /** Largest change on halving a panel, relative to the final light; the error left is some 2⁻²⁰ of it. */
    private static final double TOLERANCE = 1e-9;

    private static final double SHORTEST_S = 1e-12;
    private static final int DEEPEST_HALVING = 30;

    private final TimeSpan timeConstant;
    private final LuminousIntensity threshold;
    private final double tauS;
    private final double thresholdCd;

    private IntegratingEye(TimeSpan timeConstant, LuminousIntensity threshold) {
        this.timeConstant = timeConstant;
        this.threshold = threshold;
        tauS = Check.above("time constant of the eye", timeConstant.inSeconds(), 0, 10, "s");
        thresholdCd = Check.above("threshold of the eye", threshold.inCandela(), 0, 1e6, "cd");
    }

    /**
     * Makes the criterion.
     *
     * @param timeConstant the time constant τ, (0, 10] s
     * @param threshold the threshold Eth, (0, 1e6] cd
     * @return the detector
     * @throws IllegalArgumentException if either is out of range
     */
    public static IntegratingEye of(TimeSpan timeConstant, LuminousIntensity threshold) {
        return new IntegratingEye(timeConstant, threshold);
    }

    @Override
    public String criterion() {
        return "integrating eye, time constant " + timeConstant + ", threshold " + threshold;
    }

    @Override
    public Detection detect(LampSignal signal) {
        OnsetCurve onset = signal.onset();
        double finalCd = signal.finalIntensity().inCandela();
        double endCd = finalCd * onset.relativeIntensity(Double.POSITIVE_INFINITY);
        if (!(endCd > thresholdCd)) {
            return neverSeen(endCd);
        }
        Leak leak = new Leak(t -> finalCd * onset.relativeIntensity(t), tauS, TOLERANCE * endCd);
        double stimulusCd = leak.intensityCd.value(-Double.MIN_VALUE);
        if (stimulusCd >= thresholdCd) {
            return new Detection.Seen(TimeSpan.seconds(0), criterion());
        }
        double[] joinsS = joins(onset);
        double lastS = 60 * tauS + 10 * onset.settledS() + joinsS[joinsS.length - 1];
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
                double atS = leak.reachesS(thresholdCd, fromS, stimulusCd, toS);
                return new Detection.Seen(TimeSpan.seconds(atS), criterion());
            }
            stimulusCd = nextCd;
            fromS = toS;
        }
        return neverSeen(endCd);
    }

    private Detection neverSeen(double endCd) {
        return new Detection.NeverSeen(
                criterion(),
                "the final " + LuminousIntensity.candela(endCd) + " does not exceed the threshold of " + threshold);
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
    private record Leak(UnivariateFunction intensityCd, double tauS, double toleranceCd) {
        /** Carries the stimulus from one time to a later one: E e^(−Δ/τ) + ∫ I e^(−(t − s)/τ) ds/τ. */
        double stimulusCd(double fromS, double fromCd, double toS) {
            UnivariateFunction weighted = s -> intensityCd.value(s) * Math.exp((s - toS) / tauS) / tauS;
            double whole = gauss(weighted, fromS, toS);
            return fromCd * Math.exp((fromS - toS) / tauS) + halved(weighted, fromS, toS, whole, DEEPEST_HALVING);
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
                double newton = atS + tauS * (levelCd - cd) / (intensityCd.value(atS) - cd);
                if (Math.abs(newton - atS) < SHORTEST_S) {
                    return Math.min(toS, Math.max(fromS, newton));
                }
                atS = newton > loS && newton < hiS ? newton : (loS + hiS) / 2;
            }
            return hiS;
        }

        private double halved(UnivariateFunction f, double fromS, double toS, double whole, int depth) {
            double mid = (fromS + toS) / 2;
            double left = gauss(f, fromS, mid);
            double right = gauss(f, mid, toS);
            if (depth == 0 || Math.abs(left + right - whole) <= toleranceCd) {
                return left + right;
            }
            return halved(f, fromS, mid, left, depth - 1) + halved(f, mid, toS, right, depth - 1);
        }

        private static double gauss(UnivariateFunction f, double fromS, double toS) {
            double half = (toS - fromS) / 2;
            double mid = (toS + fromS) / 2;
            return half * RULE.integrate(x -> f.value(mid + half * x));
        }
    }
}
