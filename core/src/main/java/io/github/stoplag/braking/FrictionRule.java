package io.github.stoplag.braking;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Source;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.TreeMap;

/**
 * A rule of road design with a friction factor, which may fall with speed, and a grade: d = c V t + V²/(k (f(V) + G)).
 *
 * <p>Symbols: d distance [m or ft], V speed [km/h or mph], t reaction time [s], f friction factor (or deceleration as a
 * share of gravity), G grade, positive uphill; c and k turn the units: c = 1/3.6 and k = 2 g/(1/3.6)² = 254.19 in km/h
 * and m, c = 22/15 and k = 29.91 in mph and ft. Published rules carry them rounded: 0.278 and 254, 1.47 and 30. The
 * grade is added to the friction as it is, without cos θ.
 *
 * <p>Range: t [0, 30] s, f (0, 2]; the friction is linear between the speeds given and constant beyond them.
 *
 * <p>Source: constant speed, then constant deceleration; the form stands in AASHTO, IRC:66 and Austroads.
 */
public final class FrictionRule implements GradedStoppingRule {
    private final String name;
    private final RuleUnits units;
    private final double perSpeedAndTime;
    private final double squareDivisor;
    private final TimeSpan reaction;
    private final NavigableMap<Double, Double> frictionBySpeed;
    private final Source source;

    private FrictionRule(
            String name,
            RuleUnits units,
            double perSpeedAndTime,
            double squareDivisor,
            TimeSpan reaction,
            Map<Double, Double> frictionBySpeed,
            Source source) {
        Ranges.REACTION.check(reaction.inSeconds());
        Check.above("coefficient c of " + name, perSpeedAndTime, 0, 10, "");
        Check.above("divisor k of " + name, squareDivisor, 0, 1000, "");
        if (frictionBySpeed.isEmpty()) {
            throw new IllegalArgumentException("friction of " + name + " needs at least one speed, got none");
        }
        frictionBySpeed.forEach((speed, friction) -> {
            Check.inRange("speed in the friction table of " + name, speed, 0, 1000, "");
            Ranges.GRIP.check("friction of " + name, friction);
        });
        this.name = name;
        this.units = units;
        this.perSpeedAndTime = perSpeedAndTime;
        this.squareDivisor = squareDivisor;
        this.reaction = reaction;
        this.frictionBySpeed = new TreeMap<>(frictionBySpeed);
        this.source = source;
    }

    /**
     * Makes a rule with the exact unit factors and standard gravity.
     *
     * @param name a short name with the edition or clause
     * @param units the units of the speeds in the friction table
     * @param reaction the reaction time t, in [0, 30] s
     * @param frictionBySpeed the friction factor f at one or more speeds, in the rule's speed unit
     * @param source who published it
     * @return the rule
     * @throws IllegalArgumentException if a value is out of range or there is no friction
     */
    public static FrictionRule exact(
            String name, RuleUnits units, TimeSpan reaction, Map<Double, Double> frictionBySpeed, Source source) {
        Objects.requireNonNull(frictionBySpeed, "frictionBySpeed");
        Objects.requireNonNull(reaction, "reaction");
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(source, "source");
        double perSpeed = units.speedUnitMps() / units.lengthUnitM();
        double divisor = 2 * Deceleration.STANDARD_GRAVITY_MPS2 / (perSpeed * units.speedUnitMps());
        return new FrictionRule(name, units, perSpeed, divisor, reaction, frictionBySpeed, source);
    }

    /**
     * Gives the same rule with the rounded unit factors of its publication.
     *
     * @param c distance per speed and time, for example 0.278 or 1.47
     * @param k the divisor of the square term, for example 254 or 30
     * @return the rule as published
     * @throws IllegalArgumentException if a factor is not above 0
     */
    public FrictionRule withFactors(double c, double k) {
        return new FrictionRule(name, units, c, k, reaction, frictionBySpeed, source);
    }

    /** The same rule with another reaction time, under another name. */
    FrictionRule withReaction(String newName, TimeSpan newReaction) {
        return new FrictionRule(newName, units, perSpeedAndTime, squareDivisor, newReaction, frictionBySpeed, source);
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public Source source() {
        return source;
    }

    @Override
    public Parts at(Speed speed) {
        return at(speed, Grade.ratio(0));
    }

    @Override
    public Parts at(Speed speed, Grade grade) {
        double v = units.written(speed).doubleValue();
        double friction = frictionAt(v);
        double slowing = friction + grade.inRatio();
        if (!(slowing > 0)) {
            throw new IllegalArgumentException("friction " + Numbers.text(friction)
                    + " does not slow a vehicle on a grade of " + grade + ": the rule gives no distance");
        }
        return new Parts(
                Distance.metres(perSpeedAndTime * v * reaction.inSeconds() * units.lengthUnitM()),
                Distance.metres(v * v / (squareDivisor * slowing) * units.lengthUnitM()));
    }

    /**
     * Gives the units in which the rule is written.
     *
     * @return the units of V and d
     */
    public RuleUnits units() {
        return units;
    }

    /**
     * Gives the reaction time t.
     *
     * @return t
     */
    public TimeSpan reaction() {
        return reaction;
    }

    /**
     * Gives the factor c of V t.
     *
     * @return c in the rule's units, s taken for the time
     */
    public double perSpeedAndTime() {
        return perSpeedAndTime;
    }

    /**
     * Gives the divisor k of V².
     *
     * @return k in the rule's units
     */
    public double squareDivisor() {
        return squareDivisor;
    }

    /**
     * Gives the friction factor f that the rule takes at a speed.
     *
     * @param speed the speed
     * @return the friction factor
     */
    public double frictionRatio(Speed speed) {
        return frictionAt(units.written(speed).doubleValue());
    }

    private double frictionAt(double v) {
        Map.Entry<Double, Double> below = frictionBySpeed.floorEntry(v);
        Map.Entry<Double, Double> above = frictionBySpeed.ceilingEntry(v);
        if (below == null) {
            return frictionBySpeed.firstEntry().getValue();
        }
        if (above == null || above.getKey().equals(below.getKey())) {
            return below.getValue();
        }
        double share = (v - below.getKey()) / (above.getKey() - below.getKey());
        return below.getValue() + share * (above.getValue() - below.getValue());
    }

    @Override
    public String toString() {
        return name;
    }
}
