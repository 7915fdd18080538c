package io.github.stoplag.worked;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import io.github.stoplag.braking.AashtoSightDistance;
import io.github.stoplag.braking.RuleUnits;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Source;
import io.github.stoplag.worked.WorkedDriver.Uncertain;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every kind of solution in both systems of units: recalculated from its text, checked, well-formed. */
class SolutionTest {
    private static final Given V = Given.of(100, Unit.KMH);
    private static final Given T = Given.of(1.5, Unit.SECOND);
    private static final Given A = Given.of(7, Unit.MPS2);
    private static final Given NO_GRADE = Given.of(0, Unit.PERCENT);

    static List<Solution> all(Style style) {
        List<Solution> all = new ArrayList<>(List.of(
                WorkedStop.stoppingDistance(style, V, T, A),
                WorkedStop.stoppingDistance(style, V, T, Given.of(300, Unit.MILLISECOND), A),
                WorkedStop.stoppingOnRoad(
                        style, Given.of(60, Unit.MPH), T, Given.of(0.55, Unit.NONE), Given.of(-3, Unit.PERCENT)),
                WorkedStop.stoppingOnRoad(style, V, T, Given.of(0.7, Unit.NONE), NO_GRADE),
                WorkedStop.skidSpeed(style, Given.of(30.5, Unit.METRE), Given.of(0.55, Unit.NONE), NO_GRADE),
                WorkedStop.skidSpeed(
                        style, Given.of(80, Unit.FOOT), Given.of(0.6, Unit.NONE), Given.of(2, Unit.PERCENT)),
                WorkedStop.lampLagDistance(style, V, T, Given.of(200, Unit.MILLISECOND)),
                WorkedStop.decelerationFromDistance(style, V, Given.of(48, Unit.METRE)),
                WorkedStop.decelerationFromTime(style, Given.of(75, Unit.MPH), Given.of(8, Unit.SECOND)),
                WorkedStop.brakingTime(style, V, A),
                WorkedRule.aashto(style, Given.of(60, Unit.MPH)),
                WorkedRule.aashto(style, Given.of(90, Unit.KMH)),
                WorkedRule.highwayCode(style, Given.of(40, Unit.MPH)),
                WorkedRule.quadratic(
                        style,
                        "rule of the form k₁ v + k₂ v²",
                        RuleUnits.KMH_M,
                        new BigDecimal("0.1"),
                        new BigDecimal("0.0060"),
                        Source.seen("UN Regulation No. 13-H", "annex 3"),
                        V),
                WorkedRule.meanFullyDeveloped(style, V, Given.of(25, Unit.METRE), Given.of(58, Unit.METRE))));
        for (double follower : new double[] {20, 25, 32}) {
            for (double deceleration : new double[] {4, 6, 8}) {
                WorkedPair pair = new WorkedPair(
                        Given.of(25, Unit.MPS),
                        Given.of(6, Unit.MPS2),
                        Given.of(follower, Unit.MPS),
                        Given.of(deceleration, Unit.MPS2),
                        Given.of(1.2, Unit.SECOND));
                all.add(pair.gapNeeded(style));
                for (double gap : new double[] {1, 5, 11, 40, 120}) {
                    all.add(pair.outcome(style, Given.of(gap, Unit.METRE)));
                }
            }
        }
        all.addAll(new WorkedCircuitCases(style).all());
        return all;
    }

    /** Cases that differ from the others by their units. */
    private record WorkedCircuitCases(Style style) {
        List<Solution> all() {
            FilamentLamp lamp =
                    FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26.5)).build();
            return List.of(
                    WorkedDriver.percentile(
                            style, Given.of(1.3, Unit.SECOND), Given.of(0.6, Unit.SECOND), Given.of(95, Unit.PERCENT)),
                    WorkedDriver.percentile(
                            style, Given.of(0.9, Unit.SECOND), Given.of(0.3, Unit.SECOND), Given.of(5, Unit.PERCENT)),
                    WorkedDriver.uncertainty(
                            style,
                            new Uncertain(V, Given.of(2, Unit.KMH)),
                            new Uncertain(T, Given.of(0.3, Unit.SECOND)),
                            new Uncertain(A, Given.of(0.5, Unit.MPS2)),
                            2),
                    WorkedCircuit.loadResistor(
                            style,
                            Given.of(1.3, Unit.AMPERE),
                            Given.of(300, Unit.MILLIAMPERE),
                            Given.of(11, Unit.VOLT),
                            Given.of(5, Unit.PERCENT)),
                    WorkedCircuit.resistorHeat(
                            style,
                            Given.of(8.2, Unit.OHM),
                            Given.of(5, Unit.PERCENT),
                            Given.of(14.5, Unit.VOLT),
                            Given.of(3.5, Unit.KELVIN_PER_WATT),
                            Given.of(40, Unit.CELSIUS)),
                    WorkedCircuit.diodeHeat(
                            style,
                            Given.of(0.8, Unit.VOLT),
                            Given.of(2, Unit.AMPERE),
                            Given.of(30, Unit.KELVIN_PER_WATT),
                            Given.of(60, Unit.CELSIUS)),
                    WorkedCircuit.diodeVoltage(
                            style,
                            Given.of(2, Unit.AMPERE),
                            Given.of(2e-8, Unit.AMPERE),
                            Given.of(1.8, Unit.NONE),
                            Given.of(60, Unit.CELSIUS)),
                    WorkedLamp.heatingStep(
                            style,
                            lamp,
                            Given.of(13.5, Unit.VOLT),
                            Given.of(0.1, Unit.OHM),
                            Given.of(1500, Unit.KELVIN),
                            Given.of(0.5, Unit.MILLISECOND)));
        }
    }

    @TestFactory
    Stream<DynamicTest> everyStepCanBeRecalculatedFromItsText() {
        return Stream.of(Style.metric(), Style.usCustomary(), Style.metric().withDigits(4, 2))
                .map(style -> DynamicTest.dynamicTest(
                        style.units() + " " + style.carriedDigits(),
                        () -> assertThat(all(style).stream()
                                        .mapToInt(each -> RenderedArithmetic.check(each, style.carriedDigits()))
                                        .sum())
                                .isGreaterThan(300)));
    }

    @Test
    void aWrongRenderingIsNoticed() {
        Solution solution = WorkedStop.brakingTime(Style.metric(), V, A);
        String text = solution.document().toText();
        assertThat(text).contains("v / a = 27.7778 m/s / (7 m/s²) ≈ 3.96826 s");
        assertThat(Arithmetic.of("27.7778 m/s / (7 m/s²)")).isCloseTo(3.96826, offset(1e-5));
        assertThat(Arithmetic.of("27.7778 m/s × (7 m/s²)")).isGreaterThan(100);
        assertThatThrownBy(() -> Arithmetic.of("27.7778 m/s / v")).isInstanceOf(AssertionError.class);
    }

    @Test
    void everyCheckAgrees() {
        for (Style style : List.of(Style.metric(), Style.usCustomary())) {
            for (Solution solution : all(style)) {
                assertThat(solution.checks()).as(solution.title()).isNotEmpty();
                assertThat(solution.checks()).as(solution.document().toText()).allMatch(Solution.Verification::agrees);
            }
        }
    }

    @Test
    void aCheckThatDoesNotAgreeSaysSo() {
        FilamentLamp lamp =
                FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26.5)).build();
        Solution tooLong = WorkedLamp.heatingStep(
                Style.metric(),
                lamp,
                Given.of(13.5, Unit.VOLT),
                Given.of(0, Unit.OHM),
                Given.of(300, Unit.KELVIN),
                Given.of(50, Unit.MILLISECOND));
        assertThat(tooLong.checks()).noneMatch(Solution.Verification::agrees);
        assertThat(tooLong.document().toText()).contains("(differs from ");
    }

    @Test
    void pagesAreWellFormedAndHoldTheirMathematics() {
        for (Style style : List.of(Style.metric(), Style.usCustomary())) {
            for (Solution solution : all(style)) {
                String html = solution.document().toHtml();
                Html.checkPage(html);
                int equations = solution.givens().size()
                        + solution.steps().size()
                        + solution.checks().size()
                        + 1;
                assertThat(html.split("<div class=\"equation\">", -1)).hasSize(equations + 1);
                assertThat(Html.read(html).getElementsByTagName("math").getLength())
                        .isGreaterThanOrEqualTo(equations);
                String markdown = solution.document().toMarkdown();
                assertThat(markdown.chars().filter(c -> c == '$').count()).isEqualTo(2L * equations);
                assertThat(markdown).doesNotContain("_{\\mathrm{}}");
            }
        }
    }

    @Test
    void bothSystemsStandSideBySide() {
        Solution metric = WorkedStop.stoppingDistance(Style.metric(), V, T, A);
        Solution us = WorkedStop.stoppingDistance(Style.usCustomary(), V, T, A);
        Document both = metric.beside(us);
        Html.checkPage(both.toHtml());
        assertThat(both.toText())
                .contains(
                        "In metric units",
                        "In US customary units",
                        "100 / 3.6 ≈ 27.7778 m/s",
                        "100 / 1.09728 ≈ 91.1344 ft/s");
        assertThat(us.answer().carried().in(Unit.METRE))
                .isCloseTo(metric.answer().carried().in(Unit.METRE), offset(1e-3));
    }

    @Test
    void publishedRulesComeOutAsTheirTables() {
        // AASHTO design table, level road: 60 mph 570 ft (220.5 + 345.5), 80 mph 910 ft
        assertThat(answer(WorkedRule.aashto(Style.usCustomary(), Given.of(60, Unit.MPH))))
                .isEqualTo("570 ft");
        assertThat(answer(WorkedRule.aashto(Style.usCustomary(), Given.of(80, Unit.MPH))))
                .isEqualTo("910 ft");
        for (int mph = 15; mph <= 80; mph += 5) {
            assertThat(WorkedRule.aashto(Style.usCustomary(), Given.of(mph, Unit.MPH))
                            .answer()
                            .carried()
                            .in(Unit.METRE))
                    .isCloseTo(
                            AashtoSightDistance.US_CUSTOMARY
                                    .designDistance(Speed.mph(mph))
                                    .inMetres(),
                            offset(1e-9));
        }
        // UK Highway Code, rule 126: 23, 36, 53, 73, 96 m at 30 to 70 mph; exact 40 mph would be 36.58 m
        int[] metres = {12, 23, 36, 53, 73, 96};
        for (int i = 0; i < metres.length; i++) {
            assertThat(answer(WorkedRule.highwayCode(Style.metric(), Given.of(20 + 10 * i, Unit.MPH))))
                    .isEqualTo(metres[i] + " m");
        }
        assertThat(answer(WorkedRule.highwayCode(Style.usCustomary(), Given.of(40, Unit.MPH))))
                .isEqualTo("120 ft");
    }

    @Test
    void mixedInputsShowTheirConversion() {
        String text = WorkedStop.stoppingDistance(
                        Style.usCustomary(), Given.of(60, Unit.MPH), T, Given.of(7, Unit.MPS2))
                .document()
                .toText();
        assertThat(text).contains("v = 60 mph = 60 × 22 / 15 = 88 ft/s", "a = 7 m/s² = 7 / 0.3048 ≈ 22.9659 ft/s²");
    }

    @Test
    void badInputIsNamed() {
        assertThatThrownBy(() -> WorkedStop.stoppingDistance(Style.metric(), V, T, Given.of(0, Unit.MPS2)))
                .hasMessageContaining("has no finite value");
        assertThatThrownBy(() -> WorkedStop.stoppingDistance(Style.metric(), V, Given.of(-1, Unit.SECOND), A))
                .hasMessage("reaction time must be in [0, 30] s, got -1 s");
        assertThatThrownBy(() -> WorkedStop.stoppingDistance(Style.metric(), T, T, A))
                .hasMessage("speed must be in m/s or a unit of the same kind, got 1.5 s");
        assertThatThrownBy(() -> Expression.Symbol.of("t").value()).hasMessage("symbol t has no number yet");
        Expression second = new Expression.Num(BigDecimal.ONE, Unit.SECOND);
        assertThatThrownBy(() -> second.plus(Expression.number(1)).value())
                .hasMessage("only like quantities can be added or subtracted, got s and a plain number in 1 s + 1");
        assertThatThrownBy(() -> second.root().value()).hasMessage("a square root needs a square under it, got s");
        assertThatThrownBy(() -> new Expression.Ln(second).value())
                .hasMessage("a logarithm or exponential needs a plain number, got s in ln(1 s)");
        assertThatThrownBy(() -> WorkedStop.stoppingOnRoad(
                        Style.metric(), V, T, Given.of(0.05, Unit.NONE), Given.of(-6, Unit.PERCENT)))
                .hasMessage("friction coefficient less the downgrade must be in (0, 20], got -0.01");
        assertThatThrownBy(() -> Unit.of("furlong")).hasMessageContaining("unit must be one of %, m, km, ft");
        assertThatThrownBy(() -> Given.of(3, Unit.METRE).in(Unit.SECOND))
                .hasMessage("a number in m cannot be converted to s");
        assertThatThrownBy(() -> Style.metric().withDigits(3, 4)).hasMessage("answer digits must be in [1, 3], got 4");
        assertThatThrownBy(() -> Amount.parse("79,3 m")).hasMessageContaining("a number with a decimal point");
    }

    private static String answer(Solution solution) {
        return solution.answer().printed().toString();
    }
}
