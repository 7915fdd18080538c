package io.github.stoplag.worked;

import static io.github.stoplag.worked.Expression.number;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import io.github.stoplag.worked.Expression.Symbol;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Worked examples of open textbooks, to the printed digits, their rounding traps included. */
class TextbookExamplesTest {
    private static final Given TEXTBOOK_GRAVITY = Given.of(9.8, Unit.MPS2, "the book");

    @TestFactory
    Stream<DynamicTest> printedAnswersComeOut() {
        Table table = Table.read(TextbookExamplesTest.class, "textbook_examples.csv");
        return table.rows().stream()
                .map(row -> DynamicTest.dynamicTest(table.text(row, "case"), () -> {
                    assertThat(Standing.of(table.text(row, "standing"))).isNotNull();
                    Solution solution = solve(table, row);
                    assertThat(solution.answer().printed().toString())
                            .as(table.text(row, "source"))
                            .isEqualTo(table.text(row, "printed"));
                    RenderedArithmetic.check(solution, 6);
                    assertThat(solution.checks()).allMatch(Solution.Verification::agrees);
                }));
    }

    private static Solution solve(Table table, Map<String, String> row) {
        Style style = Style.in(UnitSystem.valueOf(table.text(row, "units")))
                .withDigits(6, (int) table.number(row, "digits"))
                .withGravity(TEXTBOOK_GRAVITY);
        Given first = given(table.text(row, "first"));
        Given second = given(table.text(row, "second"));
        return switch (table.text(row, "kind")) {
            case "braking distance" -> WorkedStop.brakingDistance(style, first, second);
            case "stopping distance" ->
                WorkedStop.stoppingDistance(style, first, second, given(table.text(row, "third")));
            case "braking time" -> WorkedBraking.brakingTime(style, first, second);
            case "deceleration from distance" -> WorkedBraking.decelerationFromDistance(style, first, second);
            case "deceleration from time" -> WorkedBraking.decelerationFromTime(style, first, second);
            case "skid speed" -> WorkedStop.skidSpeed(style, first, second, Given.of(0, Unit.NONE));
            default -> throw new IllegalArgumentException(table.text(row, "kind"));
        };
    }

    private static Given given(String text) {
        return new Given(Amount.parse(text), "the book");
    }

    // OpenStax University Physics vol 1, impulse: 860 N, 27 m/s, 0.20 s and 2.5 s, g 9.8 m/s²; printed 11853 N and 948
    // N
    @Test
    void aMassRoundedOnTheWayExplainsThePrintedForce() {
        assertThat(force(5, 0.20, false)).isEqualTo("11847 N");
        assertThat(force(5, 0.20, true)).isEqualTo("11853 N");
        assertThat(force(3, 2.5, false)).isEqualTo("948 N");
        assertThat(force(3, 2.5, true)).isEqualTo("948 N");
    }

    private static String force(int digits, double seconds, boolean roundMass) {
        Working w = Working.of(Style.metric().withDigits(6, digits), "Mean force", "force");
        Symbol weight = w.given("W", "weight", Given.of(860, Unit.NEWTON));
        Symbol g = w.given("g", "acceleration of free fall", TEXTBOOK_GRAVITY);
        Symbol v = w.given("v", "speed", Given.of(27, Unit.MPS));
        Symbol t = w.given("t", "time", Given.of(seconds, Unit.SECOND));
        Symbol mass = w.step("m", "mass", weight.over(g));
        Symbol used = roundMass
                ? w.choose("m_r", "mass rounded on the way", given("87.8 kg").amount())
                : mass;
        return w.answer(w.step("F", "force", used.times(v).over(t)), Unit.NEWTON)
                .answer()
                .printed()
                .toString();
    }

    // OpenStax College Physics 2e m42162, m42164, m42156; University Physics vol 1 m58287
    @Test
    void workingsOfOnesOwnComeOutTheSame() {
        assertThat(joined(150000, 0.300, 110000, -0.120)).isEqualTo("0.122 m/s");
        assertThat(joined(1.20e4, 25.0, 80.0, 0)).isEqualTo("24.8 m/s");

        Working stop = Working.of(Style.metric().withDigits(6, 2), "Stop under a force", "time");
        Symbol m = stop.given("m", "mass", Given.of(15000, Unit.KILOGRAM));
        Symbol v = stop.given("v", "speed", Given.of(5.4, Unit.MPS));
        Symbol f = stop.given("F", "force", Given.of(1500, Unit.NEWTON));
        Symbol t = stop.step("t", "time", m.times(v).over(f));
        assertThat(stop.answer(t, Unit.SECOND).answer().printed()).hasToString("54 s");

        Working chase = Working.of(Style.metric().withDigits(6, 2), "Catching up", "time");
        Symbol fast = chase.given("v", "speed of the one ahead", Given.of(40, Unit.MPS));
        Symbol a = chase.given("a", "acceleration from rest", Given.of(4, Unit.MPS2));
        Symbol meet = chase.step("t", "time", number(2).times(fast).over(a));
        assertThat(chase.answer(meet, Unit.SECOND).answer().printed()).hasToString("20 s");
    }

    // OpenStax University Physics vol 1 (m58297): 1000 kg from 90.0 km/h within 40.0 m; printed 7.80 m/s² and 7.80e3 N,
    // where
    // the arithmetic gives 7.8125: the deceleration was cut to two digits on the way and the force taken from it
    @Test
    void aDecelerationCutToTwoDigitsExplainsThePrintedZeros() {
        Given v = given("90.0 km/h");
        Given s = given("40.0 m");
        assertThat(WorkedBraking.decelerationFromDistance(Style.metric(), v, s)
                        .answer()
                        .printed())
                .hasToString("7.81 m/s²");
        Working w = Working.of(Style.metric(), "Braking force", "force");
        Symbol m = w.given("m", "mass", Given.of(1000, Unit.KILOGRAM));
        Symbol cut = w.choose(
                "a",
                "two digits",
                WorkedBraking.decelerationFromDistance(Style.metric().withDigits(6, 2), v, s)
                        .answer()
                        .printed());
        assertThat(w.answer(w.step("F", "force", m.times(cut)), Unit.NEWTON)
                        .answer()
                        .printed()
                        .in(Unit.NEWTON))
                .isEqualTo(7.80e3);
    }

    // OpenStax University Physics vol 1 (m58321): 1200 kg at 27.57 m/s hit 3000 kg, which slide off at 11.03 m/s;
    // printed
    // 4.5e5 J before, 1.8e5 J after, 2.7e5 J lost; before the contact it is 4.56e5 J, which the book cuts instead of
    // rounding
    @Test
    void anEnergyCutInsteadOfRoundedExplainsThePrintedBalance() {
        Working w = Working.of(Style.metric().withDigits(6, 2), "Energy lost in a contact", "energy lost");
        Symbol car = w.given("m_1", "mass of the car", given("1200 kg"));
        Symbol truck = w.given("m_2", "mass of the truck", given("3000 kg"));
        Symbol v = w.given("v", "speed of the car before", given("27.57 m/s"));
        Symbol u = w.given("u", "speed of the truck after", given("11.03 m/s"));
        Symbol before = w.step("E_1", "energy before", car.times(v.squared()).over(number(2)));
        Symbol after = w.step("E_2", "energy after", truck.times(u.squared()).over(number(2)));
        Solution lost = w.answer(w.step("E", "energy lost", before.minus(after)), Unit.JOULE);
        RenderedArithmetic.check(lost, 6);
        assertThat(w.amount(before).in(Unit.JOULE)).isEqualTo(456063);
        assertThat(Rounding.digits(2).apply(w.amount(after).in(Unit.JOULE))).isEqualByComparingTo("1.8e5");
        assertThat(lost.answer().printed().number()).isEqualByComparingTo("2.7e5");
    }

    // OpenStax College Physics 2e (m42139): largest deceleration 6° downhill, all wheels, friction 1.0, 0.7 and 0.1, g
    // 9.8 m/s²;
    // the book prints no answer: 8.7219 and 5.7980 m/s² are derived, on ice nothing stops
    @Test
    void aDownhillStopUsesTheDecelerationOfTheSlope() {
        assertThat(downhill(1.0)).isEqualTo("8.722 m/s²");
        assertThat(downhill(0.7)).isEqualTo("5.798 m/s²");
        assertThatThrownBy(() -> downhill(0.1))
                .hasMessageStartingWith("friction coefficient less the downgrade must be in (0, 20], got -0.005");
    }

    private static String downhill(double friction) {
        Solution solution = WorkedStop.stoppingOnRoad(
                Style.metric().withDigits(4, 4).withGravity(TEXTBOOK_GRAVITY),
                given("20 m/s"),
                given("1 s"),
                Given.of(friction, Unit.NONE),
                Given.of(-100 * Math.tan(Math.toRadians(6)), Unit.PERCENT));
        Step a = solution.steps().stream()
                .filter(step -> step.symbol().equals(Symbol.of("a")))
                .findFirst()
                .orElseThrow();
        return new Amount(a.result().number(), a.result().unit()).toString();
    }

    private static String joined(double kg1, double mps1, double kg2, double mps2) {
        Working w = Working.of(Style.metric(), "Coupling", "common speed");
        Symbol m1 = w.given("m_1", "first mass", Given.of(kg1, Unit.KILOGRAM));
        Symbol v1 = w.given("v_1", "first velocity", Given.of(mps1, Unit.MPS));
        Symbol m2 = w.given("m_2", "second mass", Given.of(kg2, Unit.KILOGRAM));
        Symbol v2 = w.given("v_2", "second velocity", Given.of(mps2, Unit.MPS));
        Symbol v =
                w.step("v", "common velocity", m1.times(v1).plus(m2.times(v2)).over(m1.plus(m2)));
        Solution solution = w.answer(v, Unit.MPS);
        RenderedArithmetic.check(solution, 6);
        return solution.answer().printed().toString();
    }
}
