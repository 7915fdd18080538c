package io.github.stoplag.worked;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import io.github.stoplag.braking.AashtoSightDistance;
import io.github.stoplag.braking.PublishedRule;
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
                WorkedBraking.decelerationFromDistance(style, V, Given.of(48, Unit.METRE)),
                WorkedBraking.decelerationFromTime(style, Given.of(75, Unit.MPH), Given.of(8, Unit.SECOND)),
                WorkedBraking.brakingTime(style, V, A),
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
                    chain().pedalTime(style, 4),
                    chain().gapNeeded(style, 2),
                    chain().gapNeeded(style, 3),
                    chain().gapNeeded(style, 4),
                    chain().tightest(style),
                    WorkedLamp.heatingTime(
                            style,
                            lamp,
                            Given.of(13.5, Unit.VOLT),
                            Given.of(0.1, Unit.OHM),
                            Given.of(300, Unit.KELVIN),
                            Given.of(2000, Unit.KELVIN),
                            4),
                    WorkedLamp.heatingStep(
                            style,
                            lamp,
                            Given.of(13.5, Unit.VOLT),
                            Given.of(0.1, Unit.OHM),
                            Given.of(1500, Unit.KELVIN),
                            Given.of(0.5, Unit.MILLISECOND)));
        }
    }

    /** Four cars at 25 m/s; the third brakes harder than the second, the fourth less than the third. */
    static WorkedChain chain() {
        return new WorkedChain(
                Given.of(25, Unit.MPS),
                List.of(
                        member(6, 1, 200, 0),
                        member(6, 1.2, 200, 40),
                        member(8, 0.9, 50, 20),
                        member(5, 1.1, 200, 30)));
    }

    private static WorkedChain.Vehicle member(double mps2, double reactionS, double latencyMs, double gapM) {
        return new WorkedChain.Vehicle(
                Given.of(mps2, Unit.MPS2),
                Given.of(reactionS, Unit.SECOND),
                Given.of(latencyMs, Unit.MILLISECOND),
                Given.of(gapM, Unit.METRE));
    }

    // by hand: T₂ = 0.2 + 1.2 = 1.4 s, equal brakes: 25 × 1.4 = 35 m, left 5 m
    // T₃ = 0.2 + 0.9 = 1.1 s, speeds equal at 8 × 1.1/2 = 4.4 s, after 25/6 = 4.17 s: both stand,
    // 27.5 + 625/16 − 625/12 = 14.479 m, left 5.521 m
    // T₄ = 0.05 + 1.1 = 1.15 s, 28.75 + 62.5 − 39.0625 = 52.1875 m, 22.1875 m missing
    @Test
    void aChainIsWorkedLinkByLink() {
        WorkedChain chain = chain();
        assertThat(answer(chain.pedalTime(Style.metric(), 4))).isEqualTo("3.65 s");
        assertThat(answer(chain.gapNeeded(Style.metric(), 2))).isEqualTo("35.0 m");
        assertThat(answer(chain.gapNeeded(Style.metric(), 3))).isEqualTo("14.5 m");
        assertThat(answer(chain.gapNeeded(Style.metric(), 4))).isEqualTo("52.2 m");
        Solution tightest = chain.tightest(Style.metric());
        assertThat(answer(tightest)).isEqualTo("\u221222.2 m");
        assertThat(tightest.document().toText())
                .contains(
                        "vehicle 4 lacks most: it touches vehicle 3",
                        "From the first contact on the others move otherwise.");
        assertThat(chain.firstContact()).contains(4);
        assertThatThrownBy(() -> chain.pedalTime(Style.metric(), 1))
                .hasMessage("vehicle of the chain must be in [2, 4], got 1");
        assertThatThrownBy(() -> new WorkedChain(V, List.of(member(6, 1, 0, 0))))
                .hasMessage("number of vehicles in a chain must be in [2, 20], got 1");
    }

    // a second way for a follower that brakes harder: 8 × 6 × 0.5²/(2 × 2) = 3 m, at 8 × 0.5/2 = 2 s, both still moving
    @Test
    void aChainSeesTheClosestApproachWhileBothMove() {
        WorkedChain chain =
                new WorkedChain(Given.of(25, Unit.MPS), List.of(member(6, 0, 100, 0), member(8, 0.4, 0, 10)));
        Solution solution = chain.gapNeeded(Style.metric(), 2);
        assertThat(answer(solution)).isEqualTo("3.00 m");
        assertThat(solution.document().toText()).contains("gap it needs while both move, which is more");
    }

    @Test
    void moreStepsComeCloserToTheHeatingOfTheLamp() {
        FilamentLamp lamp =
                FilamentLamp.builder(Voltage.volts(13.5), Power.watts(21)).build();
        double exact = Double.NaN;
        double before = Double.POSITIVE_INFINITY;
        for (int steps : new int[] {1, 2, 4, 8}) {
            Solution solution = WorkedLamp.heatingTime(
                    Style.metric().withDigits(9, 3),
                    lamp,
                    Given.of(12, Unit.VOLT),
                    Given.of(0.1, Unit.OHM),
                    Given.of(300, Unit.KELVIN),
                    Given.of(2000, Unit.KELVIN),
                    steps);
            exact = 1000 * solution.checks().get(0).step().result().number().doubleValue();
            double off = Math.abs(solution.answer().carried().number().doubleValue() - exact);
            assertThat(off).as(steps + " steps").isLessThan(before);
            before = off;
        }
        assertThat(before / exact).isLessThan(0.005);
        assertThatThrownBy(() -> WorkedLamp.heatingTime(
                        Style.metric(),
                        lamp,
                        Given.of(6, Unit.VOLT),
                        Given.of(0.1, Unit.OHM),
                        Given.of(300, Unit.KELVIN),
                        Given.of(2900, Unit.KELVIN),
                        1))
                .hasMessageStartingWith("temperature at the end must be in (300, ");
    }

    /**
     * Every rule of the catalogue at the speeds of its own printed rows and at round ones, in both systems of units.
     */
    @TestFactory
    Stream<DynamicTest> everyPublishedRuleHasAWorking() {
        return PublishedRule.published().stream()
                .map(rule -> DynamicTest.dynamicTest(rule.key(), () -> {
                    for (Style style : List.of(Style.metric(), Style.usCustomary())) {
                        for (Given speed : List.of(
                                Given.of(30, Unit.KMH),
                                Given.of(80, Unit.KMH),
                                Given.of(100, Unit.KMH),
                                Given.of(60, Unit.MPH))) {
                            Solution solution = WorkedRule.published(style, rule, speed);
                            assertThat(solution.checks())
                                    .as(solution.document().toText())
                                    .isNotEmpty()
                                    .allMatch(Solution.Verification::agrees);
                            RenderedArithmetic.check(solution, digits(solution));
                            assertThat(solution.answer().printed().unit())
                                    .isEqualTo(style.units().length());
                        }
                    }
                }));
    }

    /** The working falls back on twelve digits where a table's rounding hangs on them. */
    private static int digits(Solution solution) {
        return solution.steps().stream().anyMatch(step -> step.result().number().precision() > 6) ? 12 : 6;
    }

    // printed: AASHTO 60 mph 570 ft; Highway Code 70 mph 96 m; UK TD 9/93 desirable minimum at 120 km/h 295 m
    @Test
    void thePublishedWorkingEndsInThePrintedFigure() {
        assertThat(answer(WorkedRule.published(
                        Style.usCustomary(), PublishedRule.published("aashto-us"), Given.of(60, Unit.MPH))))
                .isEqualTo("570 ft");
        assertThat(answer(WorkedRule.published(
                        Style.metric(), PublishedRule.published("uk-highway-code"), Given.of(70, Unit.MPH))))
                .isEqualTo("96.0 m");
        assertThat(answer(WorkedRule.published(
                        Style.metric(), PublishedRule.published("uk-td9-desirable"), Given.of(120, Unit.KMH))))
                .isEqualTo("295 m");
    }

    @Test
    void rulesAnswerInTheUnitsOfTheReader() {
        Solution mfdd = WorkedRule.meanFullyDeveloped(
                Style.usCustomary(), Given.of(60, Unit.MPH), Given.of(80, Unit.FOOT), Given.of(190, Unit.FOOT));
        // 0.63 (88 ft/s)²/(2 × 110 ft) = 22.176 ft/s²
        assertThat(answer(mfdd)).isEqualTo("22.2 ft/s²");
        assertThat(mfdd.document().toText())
                .contains("v_0 = 60 mph = 60 × 1.609344 ≈ 96.5606", "s_b = 80 ft = 80 × 0.3048 = 24.384 m");
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
        Solution solution = WorkedBraking.brakingTime(Style.metric(), V, A);
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
        assertThat(tooLong.checks())
                .extracting(Solution.Verification::agrees)
                .as("energy over heat capacity, integrated heat balance")
                .containsExactly(true, false);
        assertThat(tooLong.document().toText()).contains("% above it: a linear step is an approximation)");
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

    /** The inputs of {@link #all} are mixed; what is calculated and answered is of the reader's system alone. */
    @Test
    void everySolutionKeepsToTheUnitsOfTheReader() {
        for (Style style : List.of(Style.metric(), Style.usCustomary())) {
            for (Solution solution : all(style)) {
                String text = solution.document().toText();
                assertThat(isForeign(style, solution.answer().carried().unit()))
                        .as(text)
                        .isFalse();
                // a published rule calculates in the units it is written in, and says so
                if (solution.assumptions().stream().anyMatch(each -> each.matches("(v|V|speeds) in (km/h|mph).*"))) {
                    continue;
                }
                assertThat(solution.steps())
                        .as(text)
                        .noneMatch(step -> isForeign(style, step.result().unit()));
                for (Solution.GivenLine line : solution.givens()) {
                    boolean foreign = isForeign(style, line.given().amount().unit());
                    assertThat(!foreign || text.contains("  " + line.name() + " in "))
                            .as("conversion of " + line.name() + " in " + text)
                            .isTrue();
                }
            }
        }
    }

    private static boolean isForeign(Style style, Unit unit) {
        List<Unit> metric = List.of(Unit.METRE, Unit.KILOMETRE, Unit.MPS, Unit.KMH, Unit.MPS2, Unit.MPS_SQUARED);
        List<Unit> customary = List.of(Unit.FOOT, Unit.FTPS, Unit.MPH, Unit.FTPS2, Unit.FTPS_SQUARED);
        return (style.units() == UnitSystem.METRIC ? customary : metric).contains(unit);
    }

    @Test
    void everySolutionStandsBesideTheOneInOtherUnits() {
        List<Solution> metric = all(Style.metric());
        List<Solution> customary = all(Style.usCustomary());
        for (int i = 0; i < metric.size(); i++) {
            Document both = metric.get(i).beside(customary.get(i));
            Html.checkPage(both.toHtml());
            assertThat(both.toText()).contains("In metric units", "In US customary units");
        }
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
        assertThatThrownBy(() -> Unit.of("furlong")).hasMessageContaining("unit \"furlong\" is not known");
        assertThatThrownBy(() -> Given.of(3, Unit.METRE).in(Unit.SECOND))
                .hasMessage("a number in m cannot be converted to s");
        assertThatThrownBy(() -> Style.metric().withDigits(3, 4)).hasMessage("answer digits must be in [1, 3], got 4");
        assertThatThrownBy(() -> Amount.parse("1,234 m"))
                .hasMessageContaining("may be a decimal sign or part thousands");
    }

    private static String answer(Solution solution) {
        return solution.answer().printed().toString();
    }
}
