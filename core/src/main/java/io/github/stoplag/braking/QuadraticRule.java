package io.github.stoplag.braking;

import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Source;
import java.math.BigDecimal;
import java.util.Objects;

/**
 * A rule of the form s = k₁ v + k₂ v², as regulations and driving codes write it in their own units.
 *
 * <p>It says the same as a time and a deceleration: t = k₁ and a = 1/(2 k₂) in SI units; with v in km/h and s in m, a =
 * 1/(25.92 k₂) and t = 3.6 k₁.
 *
 * <p>Symbols: s distance, v speed, k₁ [s in SI], k₂ [s²/m in SI], a mean deceleration [m/s²].
 *
 * <p>A few rules of thumb add a constant k₀, for example (v/10)² + 7 m; it counts to the lag part.
 *
 * <p>The rules shipped are those of {@link PublishedRule}.
 */
public final class QuadraticRule implements StoppingRule {
    private final String name;
    private final RuleUnits units;
    private final BigDecimal constant;
    private final BigDecimal linear;
    private final BigDecimal square;
    private final Source source;

    private QuadraticRule(
            String name, RuleUnits units, BigDecimal constant, BigDecimal linear, BigDecimal square, Source source) {
        this.name = name;
        this.units = units;
        this.constant = constant;
        this.linear = linear;
        this.square = square;
        this.source = source;
    }

    /**
     * Makes a rule from its two coefficients.
     *
     * @param name a short name with the edition or clause
     * @param units the units of speed and distance in which the coefficients are given
     * @param linear k₁, distance per speed, at least 0
     * @param square k₂, distance per speed squared, above 0
     * @param source who published it
     * @return the rule
     * @throws IllegalArgumentException if a coefficient is out of range
     */
    public static QuadraticRule of(String name, RuleUnits units, BigDecimal linear, BigDecimal square, Source source) {
        Objects.requireNonNull(linear, "linear");
        Objects.requireNonNull(square, "square");
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(units, "units");
        if (linear.signum() < 0 || square.signum() <= 0) {
            throw new IllegalArgumentException("coefficients of " + name + " must be k1 >= 0 and k2 > 0, got "
                    + linear.toPlainString() + " and " + square.toPlainString());
        }
        return new QuadraticRule(name, units, BigDecimal.ZERO, linear, square, source);
    }

    /**
     * Gives the same rule with a constant added: s = k₀ + k₁ v + k₂ v².
     *
     * @param k0 the constant in the rule's unit of length, at least 0
     * @return the rule
     * @throws IllegalArgumentException if the constant is negative
     */
    public QuadraticRule plus(BigDecimal k0) {
        Objects.requireNonNull(k0, "k0");
        if (k0.signum() < 0) {
            throw new IllegalArgumentException(
                    "constant of " + name + " must be at least 0, got " + k0.toPlainString());
        }
        return new QuadraticRule(name, units, k0, linear, square, source);
    }

    /** The same rule with k₁ times a factor, under another name. */
    QuadraticRule withLinearTimes(String newName, double ratio) {
        return new QuadraticRule(newName, units, constant, linear.multiply(BigDecimal.valueOf(ratio)), square, source);
    }

    /**
     * Finds a shipped rule of this form.
     *
     * @param key its key in {@link PublishedRule}
     * @return the rule
     * @throws IllegalArgumentException if there is no such rule or it is of another form
     */
    public static QuadraticRule published(String key) {
        Objects.requireNonNull(key, "key");
        StoppingRule rule = PublishedRule.published(key).rule();
        if (rule instanceof QuadraticRule quadratic) {
            return quadratic;
        }
        throw new IllegalArgumentException("stopping rule " + key + " is not of the form k1 v + k2 v²");
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public Source source() {
        return source;
    }

    /**
     * Gives the units in which the rule is written.
     *
     * @return the units of v, s and the coefficients
     */
    public RuleUnits units() {
        return units;
    }

    /**
     * Gives the constant k₀.
     *
     * @return k₀ in the rule's unit of length
     */
    public BigDecimal constant() {
        return constant;
    }

    /**
     * Gives the coefficient k₁ of v.
     *
     * @return k₁ in the rule's units
     */
    public BigDecimal linear() {
        return linear;
    }

    /**
     * Gives the coefficient k₂ of v².
     *
     * @return k₂ in the rule's units
     */
    public BigDecimal square() {
        return square;
    }

    @Override
    public Parts at(Speed speed) {
        BigDecimal v = units.written(speed);
        return new Parts(
                units.distance(linear.multiply(v).add(constant)),
                units.distance(square.multiply(v).multiply(v)));
    }

    /**
     * Carries a measured stop over to the prescribed speed: s_p = k₁ v_p + (s − k₁ v) (v_p/v)².
     *
     * <p>Symbols: v and s measured speed and distance, v_p and s_p those of the prescribed speed. The lag scales with
     * the speed, the braking with its square.
     *
     * <p>Source: the correction of UN Regulation No. 78 and GTR No. 3 with k₁ = 0.1, from memory.
     *
     * @param measured the stopping distance measured
     * @param from the speed at which it was measured, above 0
     * @param prescribed the speed of the rule
     * @return the distance from the prescribed speed
     * @throws IllegalArgumentException if the speed is 0 or the distance does not exceed the lag
     */
    public Distance corrected(Distance measured, Speed from, Speed prescribed) {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(measured, "measured");
        Objects.requireNonNull(prescribed, "prescribed");
        double lagS = impliedLag().inSeconds();
        double brakingM = measured.inMetres() - lagS * from.inMps();
        if (!(from.inMps() > 0 && brakingM > 0)) {
            throw new IllegalArgumentException("a measured stop must be longer than its lag, got " + measured + " from "
                    + from + " with a lag of " + impliedLag());
        }
        double ratio = prescribed.inMps() / from.inMps();
        return Distance.metres(lagS * prescribed.inMps() + brakingM * ratio * ratio);
    }

    /**
     * Gives the constant deceleration that the square term stands for: a = 1/(2 k₂) in SI units.
     *
     * @return the deceleration
     */
    public Deceleration impliedDeceleration() {
        double squareSi = square.doubleValue() * units.lengthUnitM() / (units.speedUnitMps() * units.speedUnitMps());
        return Deceleration.mps2(1 / (2 * squareSi));
    }

    /**
     * Gives the time at constant speed that the linear term stands for: t = k₁ in SI units.
     *
     * @return the time
     */
    public TimeSpan impliedLag() {
        return TimeSpan.seconds(linear.doubleValue() * units.lengthUnitM() / units.speedUnitMps());
    }

    @Override
    public String toString() {
        return name;
    }
}
