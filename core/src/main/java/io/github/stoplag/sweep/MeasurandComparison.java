package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Numbers;
import java.util.Locale;
import java.util.Objects;

/**
 * Both ways side by side.
 *
 * @param firstOrder by the law of propagation
 * @param monteCarlo by propagation of distributions
 * @param tolerance half a unit of the last of two significant digits of the Monte Carlo's standard uncertainty, δ
 * @param loScatter the standard error of the lower end of the Monte Carlo interval, from order statistics
 * @param hiScatter that of the upper end
 * @param draws how many draws the Monte Carlo had
 */
public record MeasurandComparison(
        Measurand.Estimate firstOrder,
        Measurand.Estimate monteCarlo,
        double tolerance,
        double loScatter,
        double hiScatter,
        int draws) {
    /** What a comparison of both ways says. */
    public enum Verdict {
        /** Both ends of the first-order interval lie within the tolerance. */
        AGREE,
        /** One end lies outside the tolerance. */
        DISAGREE,
        /** The ends of the Monte Carlo interval scatter too much to say; more draws are needed. */
        UNDECIDED
    }

    private static final double STABLE_SHARE = 5;
    private static final double MARGIN = 3;

    /**
     * Refuses nulls.
     *
     * @param firstOrder by the law of propagation
     * @param monteCarlo by propagation of distributions
     * @param tolerance half a unit of the last of two significant digits of the Monte Carlo's standard uncertainty, δ
     * @param loScatter the standard error of the lower end of the Monte Carlo interval, from order statistics
     * @param hiScatter that of the upper end
     * @param draws how many draws the Monte Carlo had
     * @throws NullPointerException if one that is required is null
     */
    public MeasurandComparison {
        Objects.requireNonNull(firstOrder, "firstOrder");
        Objects.requireNonNull(monteCarlo, "monteCarlo");
    }

    /**
     * Says whether the first-order interval is validated: both ends within the tolerance δ (JCGM 101, 8.1). JCGM 101,
     * 8.2 wants the Monte Carlo ends stable to δ/5 for that, two standard errors being at most that much; with fewer
     * draws the answer is given only if it would be the same three standard errors to either side.
     *
     * @return the verdict
     */
    public Verdict verdict() {
        double lo = Math.abs(firstOrder.coverage().lo() - monteCarlo.coverage().lo());
        double hi = Math.abs(firstOrder.coverage().hi() - monteCarlo.coverage().hi());
        boolean stable = 2 * Math.max(loScatter, hiScatter) <= tolerance / STABLE_SHARE;
        double loMargin = stable ? 0 : MARGIN * loScatter;
        double hiMargin = stable ? 0 : MARGIN * hiScatter;
        if (lo + loMargin <= tolerance && hi + hiMargin <= tolerance) {
            return Verdict.AGREE;
        }
        return lo - loMargin > tolerance || hi - hiMargin > tolerance ? Verdict.DISAGREE : Verdict.UNDECIDED;
    }

    /**
     * Gives how many draws make the Monte Carlo ends stable to δ/5.
     *
     * @return about how many; infinite if the result does not vary
     */
    public double drawsForStableEnds() {
        double factor = 2 * Math.max(loScatter, hiScatter) * STABLE_SHARE / tolerance;
        return tolerance > 0 ? draws * factor * factor : Double.POSITIVE_INFINITY;
    }

    @Override
    public String toString() {
        String why = verdict() == Verdict.UNDECIDED
                ? ": the Monte Carlo ends scatter by " + Numbers.text(Math.max(loScatter, hiScatter), 2) + ", about "
                        + Numbers.text(drawsForStableEnds(), 2) + " draws are needed"
                : "";
        return "first order " + firstOrder + "; Monte Carlo " + monteCarlo + "; tolerance " + Numbers.text(tolerance, 2)
                + ", " + verdict().name().toLowerCase(Locale.ROOT) + why;
    }
}
