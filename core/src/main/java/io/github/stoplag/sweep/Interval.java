package io.github.stoplag.sweep;

import io.github.stoplag.chance.StandardNormal;
import io.github.stoplag.chance.StudentT;
import io.github.stoplag.quantity.Numbers;
import java.util.Objects;

/**
 * A confidence interval.
 *
 * @param lo its lower end
 * @param hi its upper end
 * @param confidence the share of such intervals that cover the true value
 */
public record Interval(double lo, double hi, double confidence) {
    /**
     * Checks the confidence.
     *
     * @param lo its lower end
     * @param hi its upper end
     * @param confidence the share of such intervals that cover the true value
     * @throws IllegalArgumentException if the confidence is not in [0.5, 1)
     */
    public Interval {
        z(confidence);
    }

    static double z(double confidence) {
        if (!(confidence >= 0.5 && confidence < 1)) {
            throw new IllegalArgumentException("confidence must be in [0.5, 1), got " + Numbers.text(confidence));
        }
        return StandardNormal.quantile(0.5 + 0.5 * confidence);
    }

    /**
     * Gives the factor by which a standard uncertainty is multiplied for an interval (JCGM 100:2008, table G.2).
     *
     * @param confidence the coverage probability p, [0.5, 1)
     * @param degreesOfFreedom ν, at least 1; from 1e6 on, infinity included, the normal
     * @return t_p(ν), the quantile (1 + p)/2 of Student's t
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static double coverageFactor(double confidence, double degreesOfFreedom) {
        double z = z(confidence);
        return degreesOfFreedom >= 1e6 ? z : new StudentT(0, 1, degreesOfFreedom).upperQuantile(0.5 * (1 - confidence));
    }

    /**
     * Gives the interval of a mean from independent repetitions of nearly normal spread: m ± t s/√n.
     *
     * @param repetitions the results of the repetitions, at least two
     * @param confidence the confidence, [0.5, 1)
     * @return the interval, t with n − 1 degrees of freedom
     * @throws IllegalArgumentException if there are fewer than two, or the confidence is out of range
     */
    public static Interval ofRepetitions(Moments repetitions, double confidence) {
        Objects.requireNonNull(repetitions, "repetitions");
        if (repetitions.count() < 2) {
            throw new IllegalArgumentException("repetitions must be at least 2, got " + repetitions.count());
        }
        double half = coverageFactor(confidence, repetitions.count() - 1.0)
                * repetitions.standardDeviation()
                / Math.sqrt((double) repetitions.count());
        return new Interval(repetitions.mean() - half, repetitions.mean() + half, confidence);
    }

    /**
     * Says whether a value lies inside.
     *
     * @param value the value
     * @return true if lo ≤ value ≤ hi
     */
    public boolean contains(double value) {
        return value >= lo && value <= hi;
    }

    @Override
    public String toString() {
        return "[" + Numbers.text(lo, 4) + ", " + Numbers.text(hi, 4) + "] at " + Numbers.text(100 * confidence, 4)
                + " %";
    }
}
