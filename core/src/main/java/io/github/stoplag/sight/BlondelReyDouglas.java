package io.github.stoplag.sight;

import io.github.stoplag.quantity.TimeSpan;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * The Blondel-Rey-Douglas method: the best mean of a flash over an interval, lengthened by a constant; as a detector,
 * the best of the light so far.
 *
 * <p>Ie = max over t1, t2 of ∫ I dt/((t2 − t1) + a), the integral from t1 to t2; at the best interval I(t1) = I(t2) =
 * Ie. For a rectangle Ie = I T/(a + T). A lamp that comes on and stays on is seen when ∫ (I − Ith) dt = a Ith from the
 * moment it passes Ith; one that flashes when the greatest such integral so far reaches it.
 *
 * <p>Symbols: I, Ie, Ith in cd; t1, t2, T, a in s; a in (0, 10] s, printed as 0.21 s in 1911, 0.2 s in later practice,
 * in use 0.1 to 0.3 s. The law was measured from 0.001 to 3 s. The maximum is exact for a {@link Flash}: Ie is the
 * level J at which the best of ∫ (I − J) dt equals a J.
 *
 * <p>Sources: Blondel and Rey, J. Phys. Theor. Appl. 1 (1911) 530 (seen); IES definition 11.1.10.1 (seen).
 */
public final class BlondelReyDouglas implements EffectiveIntensityMethod {
    private static final int MOST_STEPS = 200;

    private final TimeSpan constant;
    private final double aS;

    private BlondelReyDouglas(TimeSpan constant) {
        this.constant = constant;
        aS = Gathering.checkConstantS(constant);
    }

    /**
     * Makes the method.
     *
     * @param constant the constant a, (0, 10] s
     * @return the method
     * @throws IllegalArgumentException if it is out of range
     */
    public static BlondelReyDouglas of(TimeSpan constant) {
        Objects.requireNonNull(constant, "constant");
        return new BlondelReyDouglas(constant);
    }

    /**
     * The interval over which a flash counts most.
     *
     * @param from its start t1 on the time scale of the flash
     * @param to its end t2
     */
    public record Interval(TimeSpan from, TimeSpan to) {

        /**
         * Refuses nulls.
         *
         * @param from its start t1 on the time scale of the flash
         * @param to its end t2
         * @throws NullPointerException if one that is required is null
         */
        public Interval {
            Objects.requireNonNull(from, "from");
            Objects.requireNonNull(to, "to");
        }
    }

    @Override
    public String name() {
        return "Blondel-Rey-Douglas, a = " + constant;
    }

    @Override
    public EffectiveIntensity of(Flash flash) {
        return EffectiveIntensity.of(best(flash).meanCd(aS), name(), constant, flash);
    }

    /**
     * Gives the interval that makes the effective intensity greatest.
     *
     * @param flash the flash
     * @return t1 and t2
     */
    public Interval optimalInterval(Flash flash) {
        Part best = best(flash);
        return new Interval(TimeSpan.seconds(best.fromS), TimeSpan.seconds(best.toS));
    }

    /**
     * Asks when the light so far, over its best interval, reaches a threshold.
     *
     * @param threshold the effective intensity needed
     * @return the detector
     */
    public Detector detector(Threshold threshold) {
        Objects.requireNonNull(threshold, "threshold");
        return new Running(this, threshold);
    }

    /** Raises the level to the best mean found with it until it stays (Dinkelbach's rule for a quotient). */
    private Part best(Flash flash) {
        Part part = new Part(flash.timeS(0), flash.timeS(flash.nodes() - 1), flash.integralCdS());
        for (int i = 0; i < MOST_STEPS; i++) {
            double levelCd = part.meanCd(aS);
            part = mostAbove(flash, levelCd);
            if (!(part.meanCd(aS) > levelCd)) {
                break;
            }
        }
        return part;
    }

    /** Finds the interval with the greatest ∫ (I − J) dt, which starts and ends where I passes J. */
    private static Part mostAbove(Flash flash, double levelCd) {
        Walk walk = new Walk(flash.timeS(0), levelCd);
        for (int i = 1; i < flash.nodes(); i++) {
            double fromS = flash.timeS(i - 1);
            double toS = flash.timeS(i);
            double startCd = flash.rightCd(i - 1) - levelCd;
            double endCd = flash.leftCd(i) - levelCd;
            if (startCd * endCd < 0) {
                double crossS = (toS - fromS) * startCd / (startCd - endCd);
                walk.to(fromS + crossS, startCd / 2 * crossS);
                walk.to(toS, endCd / 2 * (toS - fromS - crossS));
            } else {
                walk.to(toS, (startCd + endCd) / 2 * (toS - fromS));
            }
        }
        return walk.best;
    }

    @Override
    public String toString() {
        return name();
    }

    /** An interval and the light in it. */
    private record Part(double fromS, double toS, double lightCdS) {
        double meanCd(double aS) {
            return lightCdS / (toS - fromS + aS);
        }
    }

    /** Adds up ∫ (I − J) dt along the flash and keeps the greatest rise from any earlier low. */
    private static final class Walk {
        private final double levelCd;
        private double sum;
        private double lowest;
        private double lowestS;
        private double greatest;
        private Part best;

        Walk(double startS, double levelCd) {
            this.levelCd = levelCd;
            lowestS = startS;
            best = new Part(startS, startS, 0);
        }

        void to(double timeS, double aboveCdS) {
            sum += aboveCdS;
            if (sum - lowest > greatest) {
                greatest = sum - lowest;
                best = new Part(lowestS, timeS, greatest + levelCd * (timeS - lowestS));
            }
            if (sum < lowest) {
                lowest = sum;
                lowestS = timeS;
            }
        }
    }

    private record Running(BlondelReyDouglas method, Threshold threshold) implements Detector {
        @Override
        public String criterion() {
            return method.name() + ", light so far, threshold " + threshold;
        }

        @Override
        public Detection detect(LampSignal signal) {
            return Gathering.detect(criterion(), method.constant, threshold, signal, this::reachesS);
        }

        /** Adds up the excess over the threshold from the moment that makes it greatest, as long as it takes. */
        private OptionalDouble reachesS(Course course, double requiredCd) {
            double neededCdS = method.aS * requiredCd;
            double sum = 0;
            for (Course.Span span : course.spans(requiredCd)) {
                double sumCdS = sum;
                double leastS = (neededCdS - sum) / (course.peakCd() - requiredCd);
                if (span.above() && span.fromS() + leastS <= span.toS()) {
                    OptionalDouble atS = Quadrature.firstAtS(
                            t -> sumCdS + excessCdS(course, requiredCd, span.fromS(), t),
                            neededCdS,
                            span.fromS() + leastS,
                            method.aS / 8);
                    if (atS.isPresent() && atS.getAsDouble() <= span.toS()) {
                        return atS;
                    }
                }
                if (span.endless()) {
                    break;
                }
                sum = Math.max(0, sum + excessCdS(course, requiredCd, span.fromS(), span.toS()));
            }
            return OptionalDouble.empty();
        }

        private static double excessCdS(Course course, double levelCd, double fromS, double toS) {
            return fromS == toS
                    ? 0
                    : Quadrature.integral(
                            s -> course.changeCd(s) - levelCd,
                            fromS,
                            toS,
                            Quadrature.TOLERANCE * course.peakCd() * (toS - fromS));
        }
    }
}
