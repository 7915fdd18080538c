package io.github.stoplag.sight;

import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * Takes a lamp as seen once an eye that sums light over a short time has gathered enough: a leaky integrator.
 *
 * <p>τ dE/dt = I∞ (r(t) − r(0−)) − E, E(0) = 0, seen when E = Ith, Ith by {@link Threshold}. For a step to I
 * this is t = τ ln(I/(I − Ith)).
 *
 * <p>Symbols: E, the stimulus the switched light makes, and its threshold Ith in cd; I∞ and r of {@link LampSignal}; τ
 * time constant in s, (0, 10] s, in use 0.1 to 0.3 s. The light before switch-on, of a lit tail lamp or of a filament
 * that glows already, has been gathered long before: it only raises the threshold, if that has a contrast. A lamp that
 * never adds more than the threshold is never seen. The moment is the first and exact to about 1e-10 s for a given
 * curve, one that flashes included; its cost does not depend on τ.
 *
 * <p>Source: Allard's law of 1876 with τ = 0.2 s, as quoted in US patent application 2004/0160598 (seen). A threshold
 * in candela holds for one distance and background only.
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
        Objects.requireNonNull(threshold, "threshold");
        Objects.requireNonNull(timeConstant, "timeConstant");
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
        Objects.requireNonNull(timeConstant, "timeConstant");
        Objects.requireNonNull(threshold, "threshold");
        return new IntegratingEye(timeConstant, threshold);
    }

    @Override
    public String criterion() {
        return "integrating eye, time constant " + timeConstant + ", threshold " + threshold;
    }

    @Override
    public Detection detect(LampSignal signal) {
        return Gathering.detect(criterion(), timeConstant, threshold, signal, this::reachesS);
    }

    /**
     * Carries the stimulus along the course. It can only rise to the threshold while the light is above it, and does
     * nothing but rise there, so the first crossing is found in the first such span at whose end it would be over.
     */
    private OptionalDouble reachesS(Course course, double thresholdCd) {
        Leak leak = new Leak(course::changeCd, tauS, Quadrature.TOLERANCE * course.peakCd());
        double stimulusCd = 0;
        for (Course.Span span : course.spans(thresholdCd)) {
            if (span.above()) {
                OptionalDouble atS = leak.firstAtS(thresholdCd, span, stimulusCd);
                if (atS.isPresent()) {
                    return atS;
                }
            }
            if (span.endless()) {
                break;
            }
            stimulusCd = leak.carriedCd(span.fromS(), stimulusCd, span.toS());
        }
        return OptionalDouble.empty();
    }

    @Override
    public String toString() {
        return criterion();
    }

    /**
     * The integrator for one signal, marching in panels of half a time constant; panels of the quadrature are halved
     * until they agree to the tolerance. Light older than the memory counts for e^−45 = 3e-20 of itself, so a march
     * needs no more than some hundred panels, however short the time constant.
     */
    private record Leak(DoubleUnaryOperator changeCd, double tauS, double toleranceCd) {
        private static final double MEMORY = 45;

        double nextS(double fromS, double toS) {
            return Math.min(toS, Math.max(Math.nextUp(fromS), fromS + tauS / 2));
        }

        /** Carries the stimulus over a stretch without bends. */
        double carriedCd(double fromS, double fromCd, double toS) {
            double atS = fromS;
            double cd = fromCd;
            if (toS - fromS > MEMORY * tauS) {
                atS = toS - MEMORY * tauS;
                cd = changeCd.applyAsDouble(atS);
            }
            while (atS < toS) {
                double nextS = nextS(atS, toS);
                cd = stimulusCd(atS, cd, nextS);
                atS = nextS;
            }
            return cd;
        }

        /** Finds when the stimulus passes a level that the light is above, within the memory if the span lasts. */
        OptionalDouble firstAtS(double levelCd, Course.Span span, double startCd) {
            double fromS = span.fromS();
            if (tauS < SHORTEST_S) {
                return OptionalDouble.of(fromS);
            }
            double lastS = Math.min(span.toS(), fromS + 2 * MEMORY * tauS);
            double cd = startCd;
            while (fromS < lastS) {
                double toS = nextS(fromS, lastS);
                double nextCd = stimulusCd(fromS, cd, toS);
                if (nextCd >= levelCd) {
                    return OptionalDouble.of(reachesS(levelCd, fromS, cd, toS));
                }
                cd = nextCd;
                fromS = toS;
            }
            return lastS < span.toS() ? OptionalDouble.of(lastS) : OptionalDouble.empty();
        }

        /** Carries the stimulus from one time to a later one: E e^(−Δ/τ) + ∫ I(t − τ u) e^(−u) du. */
        double stimulusCd(double fromS, double fromCd, double toS) {
            // in u = (t − s)/τ, which keeps its digits however short τ is
            double panel = (toS - fromS) / tauS;
            DoubleUnaryOperator weighted = u -> changeCd.applyAsDouble(Math.max(fromS, toS - tauS * u)) * Math.exp(-u);
            return fromCd * Math.exp(-panel) + Quadrature.integral(weighted, 0, panel, toleranceCd);
        }

        /**
         * Finds when the stimulus passes a level, by Newton's rule with dE/dt = (I − E)/τ, halving where that leaves
         * the bracket.
         */
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
                double newton = atS + tauS * (levelCd - cd) / (changeCd.applyAsDouble(atS) - cd);
                if (Math.abs(newton - atS) < SHORTEST_S) {
                    return Math.min(toS, Math.max(fromS, newton));
                }
                atS = newton > loS && newton < hiS ? newton : (loS + hiS) / 2;
            }
            return hiS;
        }
    }
}
