package io.github.stoplag.worked;

import static io.github.stoplag.worked.Expression.number;

import io.github.stoplag.braking.AashtoSightDistance;
import io.github.stoplag.braking.PublishedRule;
import io.github.stoplag.braking.QuadraticRule;
import io.github.stoplag.braking.RuleUnits;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Source;
import io.github.stoplag.worked.Expression.Symbol;
import java.math.BigDecimal;
import java.util.Objects;

/**
 * Worked solutions by published rules, their rounding included.
 *
 * <p>Such rules are equations between numbers in fixed units; the substitution therefore shows numbers without units,
 * and the given quantities are first converted into the units of the rule.
 *
 * <p>Sources: those of {@link PublishedRule} and, for the mean fully developed deceleration, UN Regulation No. 13.
 */
public final class WorkedRule {
    private static final Rounding TENTH = Rounding.nearest("0.1");
    private static final PublishedRule HIGHWAY_CODE = PublishedRule.published("uk-highway-code");

    private WorkedRule() {}

    /**
     * Works the AASHTO stopping sight distance on the level: 1.47 V t + 1.075 V²/a in mph and ft, 0.278 V t + 0.039
     * V²/a in km/h and m; parts to 0.1, the design value the next multiple of 5 up.
     *
     * @param style its units choose the form of the rule
     * @param speed the design speed V
     * @return the solution
     */
    public static Solution aashto(Style style, Given speed) {
        Objects.requireNonNull(speed, "speed");
        boolean metric = style.units().isMetric();
        AashtoSightDistance rule = metric ? AashtoSightDistance.METRIC : AashtoSightDistance.US_CUSTOMARY;
        Unit length = style.units().length();
        Working w = Working.of(style, rule.name(), "design stopping sight distance");
        Symbol v = w.given("V", "design speed", speed, metric ? Unit.KMH : Unit.MPH);
        Symbol t = w.given("t", "reaction time of the rule", Given.of(2.5, Unit.SECOND, "the rule"));
        Symbol a = w.given(
                "a",
                "deceleration of the rule",
                Given.of(metric ? 3.4 : 11.2, style.units().deceleration(), "the rule"));
        w.assume("the rule's own: " + rule.source());
        w.assume("V in " + (metric ? "km/h" : "mph") + ", t in s, a in "
                + style.units().deceleration().symbol() + ", distances in " + length.symbol());
        Symbol reacting = w.numericalStep(
                "d_r",
                "brake reaction distance",
                number(metric ? "0.278" : "1.47").times(v).times(t),
                length,
                TENTH);
        Symbol braking = w.numericalStep(
                "d_b",
                "braking distance",
                number(metric ? "0.039" : "1.075").times(v.squared()).over(a),
                length,
                TENTH);
        Symbol sum = w.step("d", "calculated distance", reacting.plus(braking));
        Symbol design = w.numericalStep("d_D", "design value", sum, length, Rounding.up("5"));
        Speed typed = Speed.mps(speed.in(Unit.MPS));
        w.checkAgainst(
                design, "the rule's table", Amount.of(rule.designDistance(typed).inMetres(), Unit.METRE));
        w.caution(WorkedStop.NO_PROOF);
        return w.answer(design, length, Rounding.nearest("1"));
    }

    /**
     * Works the typical stopping distance of the UK Highway Code: thinking 1 ft per mph, braking V²/20 ft; in metric
     * units each part is converted, rounded to whole metres and then added.
     *
     * @param style its units choose feet or metres
     * @param speed the speed V
     * @return the solution
     */
    public static Solution highwayCode(Style style, Given speed) {
        Objects.requireNonNull(speed, "speed");
        PublishedRule rule = HIGHWAY_CODE;
        Working w = Working.of(style, rule.rule().name(), "typical stopping distance");
        Symbol v = w.given("V", "speed", speed, Unit.MPH);
        w.assume("the rule's own: " + rule.rule().source());
        w.assume("V in mph, distances in ft");
        Rounding none = Rounding.digits(style.carriedDigits());
        Symbol thinking = w.numericalStep("d_t", "thinking distance", number(1).times(v), Unit.FOOT, none);
        Symbol braking = w.numericalStep("d_b", "braking distance", v.squared().over(number(20)), Unit.FOOT, none);
        Speed typed = Speed.mps(speed.in(Unit.MPS));
        if (style.units() == UnitSystem.US_CUSTOMARY) {
            Symbol total = w.step("d", "stopping distance", thinking.plus(braking));
            w.checkAgainst(
                    total,
                    "the rule in exact numbers",
                    Amount.of(rule.rule().at(typed).total().inMetres(), Unit.METRE));
            w.caution(WorkedStop.NO_PROOF);
            return w.answer(total, Unit.FOOT, Rounding.nearest("1"));
        }
        Rounding whole = Rounding.nearest("1");
        Symbol thinkingM =
                w.numericalStep("m_t", "thinking distance in m", thinking.times(number("0.3048")), Unit.METRE, whole);
        Symbol brakingM =
                w.numericalStep("m_b", "braking distance in m", braking.times(number("0.3048")), Unit.METRE, whole);
        Symbol total = w.step("m", "stopping distance", thinkingM.plus(brakingM));
        w.checkAgainst(
                total,
                "the rule as its table rounds it",
                Amount.of(rule.asPublished(typed).total().inMetres(), Unit.METRE));
        w.caution(WorkedStop.NO_PROOF);
        return w.answer(total, Unit.METRE, whole);
    }

    /**
     * Works any rule of the catalogue {@link PublishedRule} on the level, the rounding of its table included.
     *
     * @param style units and digits; a rule with other units than the style's is worked in its own and its result
     *     converted
     * @param rule the rule
     * @param speed the speed
     * @return the solution
     * @throws IllegalArgumentException if the rule is of a form unknown here
     */
    public static Solution published(Style style, PublishedRule rule, Given speed) {
        Objects.requireNonNull(speed, "speed");
        Solution solution = new PublishedWorking(style, rule, speed).solution();
        boolean agrees = solution.checks().stream().allMatch(Solution.Verification::agrees)
                && solution.answer().carriesEnough();
        // a table's rounding at a tie can hang on a digit that the reader's style does not carry
        return agrees ? solution : new PublishedWorking(style.withDigits(12, 3), rule, speed).solution();
    }

    /**
     * Works a rule of the form s = k₁ v + k₂ v².
     *
     * @param style the digits, and the units of the answer; the rule fixes the units it is worked in
     * @param name a short name with the edition or clause
     * @param units the units of the rule
     * @param linear k₁, at least 0
     * @param square k₂, above 0
     * @param source who published it
     * @param speed the speed
     * @return the solution
     * @throws IllegalArgumentException if a coefficient is out of range
     */
    public static Solution quadratic(
            Style style,
            String name,
            RuleUnits units,
            BigDecimal linear,
            BigDecimal square,
            Source source,
            Given speed) {
        Objects.requireNonNull(linear, "linear");
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(square, "square");
        Objects.requireNonNull(name, "name");
        QuadraticRule rule = QuadraticRule.of(name, units, linear, square, source);
        boolean metric = units == RuleUnits.KMH_M;
        Unit length = metric ? Unit.METRE : Unit.FOOT;
        Working w = Working.of(style, name, "distance by the rule");
        Symbol v = w.given("v", "speed", speed, metric ? Unit.KMH : Unit.MPH);
        Symbol k1 = w.given("k_1", "coefficient of v", new Given(new Amount(linear, Unit.NONE), source.toString()));
        Symbol k2 = w.given("k_2", "coefficient of v²", new Given(new Amount(square, Unit.NONE), source.toString()));
        w.assume("v in " + (metric ? "km/h" : "mph") + ", distance in " + length.symbol());
        Symbol s = w.numericalStep(
                "s",
                "distance",
                k1.times(v).plus(k2.times(v.squared())),
                length,
                Rounding.digits(style.carriedDigits()));
        w.checkAgainst(
                s,
                "the rule in exact numbers",
                Amount.of(rule.at(Speed.mps(speed.in(Unit.MPS))).total().inMetres(), Unit.METRE));
        w.caution(WorkedStop.NO_PROOF);
        return w.answer(s, style.units().length());
    }

    /**
     * Works the mean fully developed deceleration of a braking run: d_m = (v_b² − v_e²)/(25.92 (s_e − s_b)), speeds in
     * km/h, distances in m, v_b = 0.8 v₀, v_e = 0.1 v₀.
     *
     * @param style the digits, and the unit of the answer; the rule fixes the units it is worked in
     * @param speed the speed v₀ at the start of the run, above 0
     * @param atBegin the distance s_b at which 0.8 v₀ is passed, at least 0
     * @param atEnd the distance s_e at which 0.1 v₀ is passed, above s_b
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution meanFullyDeveloped(Style style, Given speed, Given atBegin, Given atEnd) {
        Objects.requireNonNull(atBegin, "atBegin");
        Objects.requireNonNull(atEnd, "atEnd");
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(style, "style");
        double beginM = Check.inRange("distance to 0.8 of the speed", atBegin.in(Unit.METRE), 0, 1e4, "m");
        double endM = Check.above("distance to 0.1 of the speed", atEnd.in(Unit.METRE), beginM, 1e4, "m");
        double speedMps = Ranges.MOVING.check(speed.in(Unit.MPS));
        Working w = Working.of(style, "Mean fully developed deceleration", "mean fully developed deceleration");
        Symbol v = w.given("v_0", "initial speed", speed, Unit.KMH);
        Symbol sb = w.given("s_b", "distance to 0.8 of the initial speed", atBegin, Unit.METRE);
        Symbol se = w.given("s_e", "distance to 0.1 of the initial speed", atEnd, Unit.METRE);
        w.assume("speeds in km/h, distances in m, deceleration in m/s² (UN Regulation No. 13, annex 4)");
        Rounding carry = Rounding.digits(style.carriedDigits());
        Symbol vb = w.numericalStep("v_b", "speed at s_b", number("0.8").times(v), Unit.KMH, carry);
        Symbol ve = w.numericalStep("v_e", "speed at s_e", number("0.1").times(v), Unit.KMH, carry);
        Symbol dm = w.numericalStep(
                "d_m",
                "mean fully developed deceleration",
                vb.squared().minus(ve.squared()).over(number("25.92").times(se.minus(sb))),
                Unit.MPS2,
                carry);
        double squares = 0.63 * speedMps * speedMps;
        w.checkAgainst(
                dm,
                "loss of the square of the speed in SI units over twice the distance",
                Amount.of(squares / (2 * (endM - beginM)), Unit.MPS2));
        return w.answer(dm, style.units().deceleration());
    }
}
