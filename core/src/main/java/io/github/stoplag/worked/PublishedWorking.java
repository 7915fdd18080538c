package io.github.stoplag.worked;

import static io.github.stoplag.worked.Expression.number;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.braking.FrictionRule;
import io.github.stoplag.braking.KinematicRule;
import io.github.stoplag.braking.PublishedRule;
import io.github.stoplag.braking.QuadraticRule;
import io.github.stoplag.braking.RuleUnits;
import io.github.stoplag.braking.TableRounding;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.worked.Expression.Symbol;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** The working of one rule of the catalogue at one speed, in the rule's units and with the rounding of its table. */
final class PublishedWorking {
    private static final String TOTAL = "stopping distance";

    private final Style style;
    private final PublishedRule rule;
    private final Given speed;
    private final Working w;
    private final Rounding carried;

    PublishedWorking(Style style, PublishedRule rule, Given speed) {
        this.style = style;
        this.rule = rule;
        this.speed = speed;
        this.w = Working.of(style, rule.rule().name(), "stopping distance by the rule");
        this.carried = Rounding.digits(style.carriedDigits());
    }

    /** The two parts of a rule, with the unit they are in. */
    private record Parts(Symbol lag, Symbol braking, Unit unit) {}

    Solution solution() {
        w.assume("the rule's own: " + rule.rule().source());
        if (!rule.note().isEmpty()) {
            w.assume(rule.note());
        }
        Parts parts = rounded(parts());
        Expression sum = parts.lag.plus(parts.braking);
        Symbol total = style.units().isCoherent(parts.unit)
                ? w.step("d", TOTAL, sum)
                : w.numericalStep("d", TOTAL, sum, parts.unit, carried);
        Rounding last = last(parts.unit);
        if (last.mode() != Rounding.Mode.DIGITS) {
            total = w.numericalStep("d_D", "value of the table", total, parts.unit, last);
        }
        Speed typed = Speed.mps(speed.in(Unit.MPS));
        w.checkAgainst(
                total,
                "the rule with the rounding of its table",
                Amount.of(rule.designDistance(typed).inMetres(), Unit.METRE));
        w.caution(WorkedStop.NO_PROOF);
        Unit asked = style.units().length();
        boolean whole = last.mode() != Rounding.Mode.DIGITS && asked == parts.unit;
        return whole ? w.answer(total, asked, Rounding.nearest("1")) : w.answer(total, asked);
    }

    private Parts parts() {
        if (rule.rule() instanceof QuadraticRule quadratic) {
            return quadratic(quadratic);
        }
        if (rule.rule() instanceof KinematicRule kinematic) {
            return kinematic(kinematic);
        }
        if (rule.rule() instanceof FrictionRule friction) {
            return friction(friction);
        }
        throw new IllegalArgumentException("stopping rule " + rule.key() + " is of a form that has no working");
    }

    private Parts quadratic(QuadraticRule quadratic) {
        Unit length = length(quadratic.units());
        Symbol v = w.given("v", "speed", speed, road(quadratic.units()));
        Symbol k1 = coefficient("k_1", "coefficient of v", quadratic.linear());
        Symbol k2 = coefficient("k_2", "coefficient of v²", quadratic.square());
        assumeUnits(quadratic.units());
        Expression lag = k1.times(v);
        if (quadratic.constant().signum() != 0) {
            lag = coefficient("k_0", "constant", quadratic.constant()).plus(lag);
        }
        return new Parts(
                w.numericalStep("d_r", "part before the brakes act", lag, length, carried),
                w.numericalStep("d_b", "braking part", k2.times(v.squared()), length, carried),
                length);
    }

    private Parts friction(FrictionRule friction) {
        Unit length = length(friction.units());
        Speed typed = Speed.mps(speed.in(Unit.MPS));
        Symbol v = w.given("V", "speed", speed, road(friction.units()));
        Symbol t = w.given(
                "t", "reaction time of the rule", Given.of(friction.reaction().inSeconds(), Unit.SECOND, "the rule"));
        Symbol c = coefficient("c", "factor of the units", BigDecimal.valueOf(friction.perSpeedAndTime()));
        Symbol k = coefficient("k", "divisor", BigDecimal.valueOf(friction.squareDivisor()));
        Symbol f = coefficient(
                "f", "friction of the rule at this speed", BigDecimal.valueOf(friction.frictionRatio(typed)));
        assumeUnits(friction.units());
        return new Parts(
                w.numericalStep("d_r", "reaction distance", c.times(v).times(t), length, carried),
                w.numericalStep("d_b", "braking distance", v.squared().over(k.times(f)), length, carried),
                length);
    }

    private Parts kinematic(KinematicRule kinematic) {
        UnitSystem units = style.units();
        BrakeResponse response = kinematic.response();
        Symbol v = w.given("v", "speed", speed, units.speed());
        Symbol t = time("t", "reaction time of the rule", kinematic.reaction().inSeconds());
        Symbol a = w.given("a", "deceleration of the rule", deceleration(kinematic), units.deceleration());
        Expression lag = v.times(t);
        if (response.deadTime().inSeconds() > 0) {
            lag = v.times(t.plus(
                    time("t_d", "dead time of the brakes", response.deadTime().inSeconds())));
        }
        Expression braking = v.squared().over(number(2).times(a));
        if (response.buildUp().inSeconds() > 0) {
            Symbol tb = time(
                    "t_b", "build-up time of the brakes", response.buildUp().inSeconds());
            braking = v.times(tb)
                    .over(number(2))
                    .plus(braking)
                    .minus(a.times(tb.squared()).over(number(24)));
        }
        return new Parts(
                w.step("d_r", "distance before the brakes act", lag),
                w.step("d_b", "braking distance", braking),
                units.length());
    }

    private Symbol time(String symbol, String name, double seconds) {
        return w.given(symbol, name, Given.of(seconds, Unit.SECOND, "the rule"));
    }

    /** The deceleration in the unit in which the rule gives it: the one in which it has fewer digits. */
    private static Given deceleration(KinematicRule kinematic) {
        Amount metric = shortened(kinematic.deceleration().inMps2(), Unit.MPS2);
        Amount customary = shortened(
                Amount.of(kinematic.deceleration().inMps2(), Unit.MPS2).in(Unit.FTPS2), Unit.FTPS2);
        return new Given(customary.number().precision() < metric.number().precision() ? customary : metric, "the rule");
    }

    private static Amount shortened(double number, Unit unit) {
        return new Amount(Rounding.digits(9).apply(number).stripTrailingZeros(), unit);
    }

    private Symbol coefficient(String symbol, String name, BigDecimal value) {
        BigDecimal written = value.signum() == 0
                ? BigDecimal.ZERO
                : shortened(value.doubleValue(), Unit.NONE).number();
        return w.given(symbol, name, new Given(new Amount(written, Unit.NONE), "the rule"));
    }

    private void assumeUnits(RuleUnits units) {
        w.assume("speed in " + road(units).symbol() + ", distance in "
                + length(units).symbol());
    }

    private static Unit road(RuleUnits units) {
        return units == RuleUnits.KMH_M ? Unit.KMH : Unit.MPH;
    }

    private static Unit length(RuleUnits units) {
        return units == RuleUnits.KMH_M ? Unit.METRE : Unit.FOOT;
    }

    /** The parts as the table rounds them, in the unit in which it does. */
    private Parts rounded(Parts exact) {
        Distance step = rule.rounding().partStep();
        Unit unit = unit(step, exact.unit);
        Symbol lag = exact.lag;
        Symbol braking = exact.braking;
        if (unit != exact.unit) {
            String factor = unit == Unit.METRE ? "0.3048" : "3.28083989501";
            lag = w.numericalStep("m_r", "in " + unit.symbol(), lag.times(number(factor)), unit, carried);
            braking = w.numericalStep("m_b", "in " + unit.symbol(), braking.times(number(factor)), unit, carried);
        }
        if (step.inMetres() > 0) {
            Rounding nearest = Rounding.nearest(text(step, unit));
            lag = w.numericalStep("r_r", "as the table rounds it", lag, unit, nearest);
            braking = w.numericalStep("r_b", "as the table rounds it", braking, unit, nearest);
        }
        return new Parts(lag, braking, unit);
    }

    private Rounding last(Unit unit) {
        TableRounding rounding = rule.rounding();
        if (rounding.totalStep().inMetres() == 0) {
            return Rounding.digits(style.answerDigits());
        }
        String step = text(rounding.totalStep(), unit);
        return rounding.totalMode() == RoundingMode.CEILING
                ? Rounding.up(step)
                : rounding.totalMode() == RoundingMode.FLOOR ? Rounding.down(step) : Rounding.nearest(step);
    }

    /** The unit in which a step of rounding is a short number. */
    private Unit unit(Distance partStep, Unit otherwise) {
        Distance step = partStep.inMetres() > 0 ? partStep : rule.rounding().totalStep();
        if (step.inMetres() == 0) {
            return otherwise;
        }
        return shortened(step.inMetres(), Unit.METRE).number().precision() == 1 ? Unit.METRE : Unit.FOOT;
    }

    private static String text(Distance step, Unit unit) {
        return shortened(Amount.of(step.inMetres(), Unit.METRE).in(unit), unit)
                .number()
                .toPlainString();
    }
}
