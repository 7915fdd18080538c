package io.github.stoplag.worked;

import static io.github.stoplag.worked.Expression.number;

import io.github.stoplag.driver.LogNormalReaction;
import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caution;
import io.github.stoplag.worked.Expression.Exp;
import io.github.stoplag.worked.Expression.Ln;
import io.github.stoplag.worked.Expression.Num;
import io.github.stoplag.worked.Expression.Symbol;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** Worked solutions on what varies: the percentile of a reaction time, the uncertainty of a stopping distance. */
public final class WorkedDriver {
    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);
    private static final Expression SECOND = new Num(BigDecimal.ONE, Unit.SECOND);

    private WorkedDriver() {}

    /**
     * Works a percentile of a log-normal reaction time from its mean and standard deviation: σ² = ln(1 + (s/m)²),
     * μ = ln(m/1 s) − σ²/2, t_p = exp(μ + z σ) · 1 s.
     *
     * <p>Source: {@link LogNormalReaction}.
     *
     * @param style units and digits
     * @param mean the mean m, above 0
     * @param standardDeviation the standard deviation s, above 0
     * @param percentile the percentile, in [1, 99] %
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution percentile(Style style, Given mean, Given standardDeviation, Given percentile) {
        Objects.requireNonNull(mean, "mean");
        Objects.requireNonNull(percentile, "percentile");
        Objects.requireNonNull(standardDeviation, "standardDeviation");
        Objects.requireNonNull(style, "style");
        double p = Check.inRange("percentile", percentile.in(Unit.PERCENT), 1, 99, "%") / 100;
        LogNormalReaction model = LogNormalReaction.ofMeanAndSd(
                TimeSpan.seconds(mean.in(Unit.SECOND)), TimeSpan.seconds(standardDeviation.in(Unit.SECOND)));
        Working w = Working.of(
                style, "Percentile of the reaction time", "time within which " + percentile.amount() + " have reacted");
        Symbol m = w.given("m", "mean", mean);
        Symbol s = w.given("s", "standard deviation", standardDeviation);
        Symbol z = w.given(
                "z",
                "standard normal quantile of " + percentile.amount(),
                new Given(
                        new Amount(
                                Rounding.nearest("0.0001").apply(STANDARD.inverseCumulativeProbability(p)), Unit.NONE),
                        "table of the normal distribution"));
        w.assume("reaction times are log-normally distributed");
        w.assume("every driver of the population does react; those who do not are not in it");
        Symbol variance = w.step(
                "q",
                "variance σ² of the logarithm",
                new Ln(number(1).plus(s.over(m).squared())));
        Symbol sigma = w.step("σ", "standard deviation of the logarithm", variance.root());
        Symbol mu = w.step("μ", "mean of the logarithm", new Ln(m.over(SECOND)).minus(variance.over(number(2))));
        Symbol t = w.step("t_p", "percentile", new Exp(mu.plus(z.times(sigma))).times(SECOND));
        w.checkAgainst(
                t, "quantile of the distribution", Amount.of(model.quantile(p).inSeconds(), Unit.SECOND));
        Plausible.spread(mean, standardDeviation).ifPresent(w::caution);
        w.caution(new Caution(
                "drivers", "A percentile of one study holds for its drivers and task; a surprised driver is slower."));
        return w.answer(t, Unit.SECOND);
    }

    /**
     * Works the reaction time from a ruler that is let go and caught: t = √(2 h/g).
     *
     * @param style units and digits
     * @param drop the way h that the ruler fell, in [0.001, 5] m
     * @return the solution
     * @throws IllegalArgumentException if the way is out of range
     */
    public static Solution rulerDrop(Style style, Given drop) {
        double metres = Check.inRange("way of the ruler", drop.in(Unit.METRE), 0.001, 5, "m");
        Working w = Working.of(style, "Reaction time from a falling ruler", "reaction time");
        Symbol h = w.given("h", "way that the ruler fell", drop);
        Symbol g = w.given(
                "g",
                "standard acceleration of gravity",
                Given.of(Deceleration.STANDARD_GRAVITY_MPS2, Unit.MPS2, "ISO 80000-3:2006, item 3-9.2"));
        w.assume("the ruler falls from rest, without air drag; the catcher does not know when");
        Symbol t = w.step("t", "reaction time", number(2).times(h).over(g).root());
        w.checkAgainst(
                t,
                "way fallen, two half steps",
                Amount.of(Math.sqrt(metres / Deceleration.STANDARD_GRAVITY_MPS2) * Math.sqrt(2), Unit.SECOND));
        w.caution(new Caution(
                "drivers",
                "A hand that waits for a ruler is faster than a foot that does not wait for a brake lamp:"
                        + " do not take it for a driver's reaction time."));
        return w.answer(t, Unit.SECOND);
    }

    /**
     * Works a percentile of all drivers where a share of them never responds: t_p is the percentile p/r of those who
     * do.
     *
     * @param style units and digits
     * @param mean the mean m of those who respond, above 0
     * @param standardDeviation the standard deviation s of those who respond, above 0
     * @param percentile the percentile p of all drivers, in [1, 99] %, below the responding share
     * @param responding the share r of drivers who respond, in (0, 100] %
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range or so many drivers never respond
     */
    public static Solution percentileOfAll(
            Style style, Given mean, Given standardDeviation, Given percentile, Given responding) {
        Objects.requireNonNull(mean, "mean");
        Objects.requireNonNull(percentile, "percentile");
        Objects.requireNonNull(responding, "responding");
        Objects.requireNonNull(standardDeviation, "standardDeviation");
        Objects.requireNonNull(style, "style");
        double r = Check.above("share of drivers who respond", responding.in(Unit.PERCENT), 0, 100, "%");
        double p = Check.inRange("percentile", percentile.in(Unit.PERCENT), 1, 99, "%");
        if (!(p < r)) {
            throw new IllegalArgumentException("no time is long enough for " + percentile.amount()
                    + " of all drivers: only " + responding.amount() + " respond at all; ask for less, or for a"
                    + " percentile of those who respond");
        }
        double ofResponding = 100 * p / r;
        Check.inRange("percentile of the drivers who respond", ofResponding, 1, 99, "%");
        Given among = Given.of(
                Rounding.digits(style.carriedDigits()).apply(ofResponding).doubleValue(),
                Unit.PERCENT,
                percentile.amount() + " of all over the " + responding.amount() + " who respond");
        Solution worked = percentile(style, mean, standardDeviation, among);
        List<String> assumptions = new ArrayList<>(worked.assumptions());
        assumptions.add(percentile.amount() + " of all drivers are " + among.amount() + " of those who respond");
        return new Solution(
                "Percentile of the reaction time of all drivers",
                worked.units(),
                worked.givens(),
                "time within which " + percentile.amount() + " of all drivers have reacted",
                assumptions,
                worked.steps(),
                worked.answer(),
                worked.checks(),
                worked.cautions());
    }

    /**
     * Works the uncertainty budget of a stopping distance s = v t + v²/(2a) to first order: U = k √((c_v u_v)² + (c_t
     * u_t)² + (c_a u_a)²), c_v = t + v/a, c_t = v, c_a = −v²/(2a²).
     *
     * <p>Source: JCGM 100:2008 (GUM), 5.1.2, law of propagation of uncertainty, from memory.
     *
     * @param style units and digits
     * @param speed the speed v with its standard uncertainty
     * @param reaction the reaction time t with its standard uncertainty
     * @param deceleration the deceleration a, above 0, with its standard uncertainty
     * @param coverageFactor the coverage factor k, in [1, 4]
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution uncertainty(
            Style style, Uncertain speed, Uncertain reaction, Uncertain deceleration, double coverageFactor) {
        Objects.requireNonNull(deceleration, "deceleration");
        Objects.requireNonNull(reaction, "reaction");
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(style, "style");
        Check.inRange("coverage factor", coverageFactor, 1, 4, "");
        Ranges.BRAKING.check(deceleration.value.in(Unit.MPS2));
        Working w = Working.of(
                style, "Uncertainty of a stopping distance", "expanded uncertainty of the stopping distance");
        Symbol v = w.given("v", "speed", speed.value);
        Symbol uv = w.given("u_v", "standard uncertainty of the speed", speed.uncertainty);
        Symbol t = w.given("t", "reaction time", reaction.value);
        Symbol ut = w.given("u_t", "standard uncertainty of the reaction time", reaction.uncertainty);
        Symbol a = w.given("a", "deceleration", deceleration.value);
        Symbol ua = w.given("u_a", "standard uncertainty of the deceleration", deceleration.uncertainty);
        Symbol k = w.given("k", "coverage factor", Given.of(coverageFactor, Unit.NONE, "chosen"));
        w.assume("the three vary independently and little enough for a first-order law (JCGM 100:2008, 5.1.2)");
        w.step(
                "s",
                "stopping distance",
                v.times(t).plus(v.squared().over(number(2).times(a))));
        Symbol cv = w.step("c_v", "sensitivity to the speed", t.plus(v.over(a)));
        Symbol ca = w.step(
                "c_a",
                "sensitivity to the deceleration, negative",
                v.squared().over(number(2).times(a.squared())));
        Symbol partV = w.step("u_1", "part of the speed", cv.times(uv));
        Symbol partT = w.step("u_2", "part of the reaction time, whose sensitivity is v", v.times(ut));
        Symbol partA = w.step("u_3", "part of the deceleration", ca.times(ua));
        Symbol combined = w.step(
                "u",
                "combined standard uncertainty",
                partV.squared().plus(partT.squared()).plus(partA.squared()).root());
        Symbol expanded = w.step("U", "expanded uncertainty", k.times(combined));
        w.checkAgainst(
                expanded,
                "half differences of the distance itself, each quantity shifted by a little",
                Amount.of(byDifferencesM(speed, reaction, deceleration) * coverageFactor, Unit.METRE));
        w.caution(WorkedStop.NO_PROOF);
        return w.answer(expanded, style.units().length());
    }

    /**
     * A quantity and its standard uncertainty.
     *
     * @param value the quantity
     * @param uncertainty its standard uncertainty, at least 0
     */
    public record Uncertain(Given value, Given uncertainty) {
        /**
         * Checks the uncertainty.
         *
         * @param value the quantity
         * @param uncertainty its standard uncertainty, at least 0
         * @throws IllegalArgumentException if the uncertainty is negative
         */
        public Uncertain {
            Objects.requireNonNull(uncertainty, "uncertainty");
            Objects.requireNonNull(value, "value");
            if (uncertainty.amount().number().signum() < 0) {
                throw new IllegalArgumentException(
                        "standard uncertainty must be at least 0, got " + uncertainty.amount());
            }
        }

        private double shiftedBy(double share, Unit unit) {
            return value.in(unit) + share * uncertainty.in(unit);
        }
    }

    private static double byDifferencesM(Uncertain speed, Uncertain reaction, Uncertain deceleration) {
        double h = 1e-3;
        double square = 0;
        for (int i = 0; i < 3; i++) {
            double differenceM =
                    distanceM(speed, reaction, deceleration, i, h) - distanceM(speed, reaction, deceleration, i, -h);
            square += Math.pow(differenceM / (2 * h), 2);
        }
        return Math.sqrt(square);
    }

    private static double distanceM(
            Uncertain speed, Uncertain reaction, Uncertain deceleration, int shifted, double share) {
        return StopKernel.stoppingDistanceM(
                speed.shiftedBy(shifted == 0 ? share : 0, Unit.MPS),
                reaction.shiftedBy(shifted == 1 ? share : 0, Unit.SECOND),
                0,
                deceleration.shiftedBy(shifted == 2 ? share : 0, Unit.MPS2));
    }
}
