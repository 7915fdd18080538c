package io.github.stoplag.worked;

import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.source.Caution;
import io.github.stoplag.worked.Expression.Num;
import io.github.stoplag.worked.Expression.Symbol;
import io.github.stoplag.worked.Solution.GivenLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is possible in a formula and implausible on a road: such a number is calculated with and said to be so.
 *
 * <p>Source of the limits: common practice, no source.
 */
final class Plausible {
    private static final double MOST_G = 1;
    private static final double STEEPEST_RATIO = 0.4;
    private static final double HOTTEST_JUNCTION_C = 150;
    private static final double HOTTEST_SURFACE_C = 350;
    private static final double FASTEST_KMH = 250;
    private static final double QUICKEST_S = 0.3;
    private static final double SLOWEST_S = 4;
    private static final Symbol GRAVITY = Symbol.of("g");

    private Plausible() {}

    /** The largest deceleration among the numbers of a working, if it is above 1 g. */
    static Optional<Caution> deceleration(UnitSystem units, Map<Symbol, Num> numbers) {
        double most = numbers.entrySet().stream()
                .filter(each ->
                        !each.getKey().equals(GRAVITY) && each.getValue().unit().measuresTheSameAs(Unit.MPS2))
                .map(Map.Entry::getValue)
                .mapToDouble(number -> number.unit().convert(number.number().doubleValue(), Unit.MPS2))
                .max()
                .orElse(0);
        // a factor above the rounding of a deceleration of just 1 g
        if (most <= 1.001 * MOST_G * Deceleration.STANDARD_GRAVITY_MPS2) {
            return Optional.empty();
        }
        return caution("A deceleration of " + text(Unit.MPS2.convert(most, units.deceleration())) + " "
                + units.deceleration().symbol()
                + " is above 1 g, more than the tyres of a road vehicle usually hold even"
                + " on a dry road (common practice, no source): check the numbers that it comes from.");
    }

    /** What is implausible among the given speeds and reaction times. */
    static List<Caution> givens(List<GivenLine> lines) {
        List<Caution> cautions = new ArrayList<>();
        for (GivenLine line : lines) {
            Amount amount = line.given().amount();
            String what = "The " + line.name() + " of " + amount;
            fast(what, amount).ifPresent(cautions::add);
            if (line.name().equals("reaction time") && amount.unit().measuresTheSameAs(Unit.SECOND)) {
                reaction(what, amount.in(Unit.SECOND)).ifPresent(cautions::add);
            }
        }
        return cautions;
    }

    /** Whether a speed is one that road vehicles do not go. */
    static Optional<Caution> fast(String what, Amount amount) {
        return amount.unit().measuresTheSameAs(Unit.MPS) && amount.in(Unit.KMH) > FASTEST_KMH
                ? caution(what + " is faster than road vehicles usually go, up to 250 km/h or 155 mph (common practice,"
                        + " no source): check the numbers and their units.")
                : Optional.empty();
    }

    private static Optional<Caution> reaction(String what, double seconds) {
        if (seconds >= QUICKEST_S && seconds <= SLOWEST_S) {
            return Optional.empty();
        }
        return caution(
                what + (seconds < QUICKEST_S ? " is quicker than drivers react" : " is slower than drivers usually are")
                        + ", 0.3 to 4 s from the event to the brake (common practice, no source): check the number, and"
                        + " that it is no gap between vehicles.");
    }

    static Optional<Caution> grade(double ratio) {
        return Math.abs(ratio) <= STEEPEST_RATIO
                ? Optional.empty()
                : caution("A grade of " + text(100 * ratio)
                        + " % is steeper than the roads that vehicles usually drive on,"
                        + " up to 40 % (common practice, no source): check the number.");
    }

    static Optional<Caution> junction(double celsius) {
        return celsius <= HOTTEST_JUNCTION_C
                ? Optional.empty()
                : caution(
                        "A junction of " + text(celsius) + " °C is above the 150 to 175 °C to which silicon diodes are"
                                + " usually limited (common practice, no source): the diode fails before it gets there.");
    }

    static Optional<Caution> surface(double celsius) {
        return celsius <= HOTTEST_SURFACE_C
                ? Optional.empty()
                : caution(
                        "A surface of " + text(celsius) + " °C is above the 350 °C or less to which power resistors are"
                                + " usually limited (common practice, no source): the part fails or starts a fire before it gets"
                                + " there.");
    }

    static Optional<Caution> spread(Given mean, Given standardDeviation) {
        return standardDeviation.in(Unit.SECOND) <= mean.in(Unit.SECOND)
                ? Optional.empty()
                : caution("A standard deviation of " + standardDeviation.amount() + " is above the mean of "
                        + mean.amount()
                        + "; that of reaction times is usually below two thirds of it (common practice, no source): check"
                        + " both.");
    }

    private static Optional<Caution> caution(String text) {
        return Optional.of(new Caution("plausibility", text));
    }

    private static String text(double number) {
        return Rounding.digits(Math.abs(number) < 1000 ? 3 : 4).apply(number).toPlainString();
    }
}
