package io.github.stoplag.worked;

import static io.github.stoplag.worked.Expression.number;
import static org.assertj.core.api.Assertions.assertThat;

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
            case "braking time" -> WorkedStop.brakingTime(style, first, second);
            case "deceleration from distance" -> WorkedStop.decelerationFromDistance(style, first, second);
            case "deceleration from time" -> WorkedStop.decelerationFromTime(style, first, second);
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
