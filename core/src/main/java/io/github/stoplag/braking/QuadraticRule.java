package io.github.stoplag.braking;

import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;

/**
 * A rule of the form s = k₁ v + k₂ v², as regulations and driving codes write it in their own units.
 *
 * <p>It says the same as a time and a deceleration: t = k₁ and a = 1/(2 k₂) in SI units; with v in km/h and s in m, a =
 * 1/(25.92 k₂) and t = 3.6 k₁.
 *
 * <p>Symbols: s distance, v speed, k₁ [s in SI], k₂ [s²/m in SI], a mean deceleration [m/s²].
 *
 * <p>The rules shipped stand in the table {@code quadratic-rules.csv}, each with its source; a further rule is a further row.
 */
public final class QuadraticRule implements StoppingRule {
    private static final String TABLE = "quadratic-rules.csv";

    private final String key;
    private final String name;
    private final RuleUnits units;
    private final BigDecimal linear;
    private final BigDecimal square;
    private final Source source;
    private final String roundingM;

    private QuadraticRule(
            String key,
            String name,
            RuleUnits units,
            BigDecimal linear,
            BigDecimal square,
            Source source,
            String roundingM) {
        this.key = key;
        this.name = name;
        this.units = units;
        this.linear = linear;
        this.square = square;
        this.source = source;
        this.roundingM = roundingM;
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
        return checked(name, name, units, linear, square, source, "");
    }

    /**
     * Finds a shipped rule.
     *
     * @param key its key, one of those of {@link #shipped()}
     * @return the rule
     * @throws IllegalArgumentException if there is no such rule
     */
    public static QuadraticRule named(String key) {
        List<QuadraticRule> rules = shipped();
        return rules.stream()
                .filter(rule -> rule.key.equals(key))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("stopping rule must be one of "
                        + String.join(
                                ", ", rules.stream().map(QuadraticRule::key).toList()) + "; got \"" + key
                        + "\""));
    }

    /**
     * Gives the shipped rules.
     *
     * @return the rules of the table in its order
     */
    public static List<QuadraticRule> shipped() {
        return Table.read(QuadraticRule.class, TABLE).rows().stream()
                .map(QuadraticRule::fromRow)
                .toList();
    }

    private static QuadraticRule fromRow(Map<String, String> row) {
        Source source = new Source(field(row, "document"), field(row, "place"), Standing.of(field(row, "standing")));
        return checked(
                field(row, "key"),
                field(row, "name"),
                RuleUnits.valueOf(field(row, "units")),
                // a fraction keeps a published coefficient such as 1/130 exact
                fraction(field(row, "k1")),
                fraction(field(row, "k2")),
                source,
                field(row, "part_rounding_m"));
    }

    private static String field(Map<String, String> row, String column) {
        String text = row.get(column);
        if (text == null) {
            throw new IllegalArgumentException("table " + TABLE + " has no column " + column);
        }
        return text;
    }

    private static BigDecimal fraction(String text) {
        int slash = text.indexOf('/');
        return slash < 0
                ? new BigDecimal(text)
                : new BigDecimal(text.substring(0, slash))
                        .divide(new BigDecimal(text.substring(slash + 1)), MathContext.DECIMAL64);
    }

    private static QuadraticRule checked(
            String key,
            String name,
            RuleUnits units,
            BigDecimal linear,
            BigDecimal square,
            Source source,
            String roundingM) {
        if (linear.signum() < 0 || square.signum() <= 0) {
            throw new IllegalArgumentException("coefficients of " + name + " must be k1 >= 0 and k2 > 0, got "
                    + linear.toPlainString() + " and " + square.toPlainString());
        }
        return new QuadraticRule(key, name, units, linear, square, source, roundingM);
    }

    /**
     * Gives the key by which {@link #named} finds the rule; for a rule of one's own, its name.
     *
     * @return the key
     */
    public String key() {
        return key;
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
        BigDecimal v = units.written(speed);
        return new Parts(
                units.distance(linear.multiply(v)),
                units.distance(square.multiply(v).multiply(v)));
    }

    /**
     * Applies the rule with the rounding of its published table: each part to the table's step, halves up. A rule without
     * a stated rounding gives the same as {@link #at}.
     *
     * @param speed the speed
     * @return the distance in parts as printed
     */
    public Parts asPublished(Speed speed) {
        Parts exact = at(speed);
        return roundingM.isEmpty()
                ? exact
                : new Parts(rounded(exact.lag(), roundingM), rounded(exact.braking(), roundingM));
    }

    private static Distance rounded(Distance distance, String stepM) {
        BigDecimal step = new BigDecimal(stepM);
        return Distance.metres(BigDecimal.valueOf(distance.inMetres())
                .divide(step, 0, RoundingMode.HALF_UP)
                .multiply(step)
                .doubleValue());
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
