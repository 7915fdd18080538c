package io.github.stoplag.worked;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.source.Caution;
import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a solution warns of: hot parts, implausible input. */
class SolutionCautionTest {
    private static final Given HEALTHY = Given.of(1.556, Unit.AMPERE);
    private static final Given NO_LED = Given.of(0, Unit.AMPERE);
    private static final Given TOLERANCE = Given.of(5, Unit.PERCENT);

    private static Step step(Solution solution, String symbol) {
        return solution.steps().stream()
                .filter(each -> each.symbol().equals(Expression.Symbol.of(symbol)))
                .findFirst()
                .orElseThrow();
    }

    // by hand: 14.5²/(8.2 × 0.95) = 210.25/7.79 = 26.99 W
    @Test
    void aLoadResistorComesWithItsHeat() {
        Solution solution =
                WorkedCircuit.loadResistor(Style.metric(), HEALTHY, NO_LED, Given.of(13.5, Unit.VOLT), TOLERANCE);
        assertThat(solution.answer().printed()).hasToString("8.2 Ω");
        assertThat(step(solution, "P").result().number().doubleValue()).isCloseTo(26.99, within(0.005));
        assertThat(solution.document().toText())
                .contains(
                        "U_m = 14.5 V",
                        "common practice, no source",
                        "turns up to 27 W into heat",
                        "Choose a part rated well above this, mount it on bare metal");
    }

    // by hand: 16²/(8.2 × 0.95) = 32.86 W
    @Test
    void theHighestSupplyCanBeStatedAndIsNeverBelowTheLowest() {
        Given lowest = Given.of(13.5, Unit.VOLT);
        Solution stated =
                WorkedCircuit.loadResistor(Style.metric(), HEALTHY, NO_LED, lowest, Given.of(16, Unit.VOLT), TOLERANCE);
        assertThat(step(stated, "P").result().number().doubleValue()).isCloseTo(32.86, within(0.005));
        assertThatThrownBy(() -> WorkedCircuit.loadResistor(
                        Style.metric(), HEALTHY, NO_LED, lowest, Given.of(12, Unit.VOLT), TOLERANCE))
                .hasMessage("highest supply voltage must be in [13.5, 100] V, got 12 V");
        for (double[] each : new double[][] {{14.5, 14.5}, {14.6, 29}, {29, 29}, {36, 36}}) {
            Solution assumed = WorkedCircuit.loadResistor(
                    Style.metric(), HEALTHY, NO_LED, Given.of(each[0], Unit.VOLT), TOLERANCE);
            assertThat(assumed.givens())
                    .filteredOn(line -> line.symbol().equals(Expression.Symbol.of("U_m")))
                    .singleElement()
                    .satisfies(line -> assertThat(line.given().in(Unit.VOLT)).isEqualTo(each[1]));
        }
    }

    @Test
    void aSheetWarnsWhereItAsksAboutCircuitsAndOnlyThere() {
        ExerciseSheet circuit = ExerciseSheet.of(7, 6).onTopic("circuit");
        assertThat(List.of(
                        circuit.questions().toText(),
                        circuit.multipleChoice().toText(),
                        circuit.key().toText()))
                .allSatisfy(text -> assertThat(text)
                        .containsOnlyOnce(
                                "Load resistors, diodes and lamps get hot enough to burn skin and start a fire"));
        assertThat(circuit.toCsv().lines().skip(1))
                .allMatch(line ->
                        line.contains("Data are invented.") && line.contains("no instruction to alter a vehicle"));
        assertThat(ExerciseSheet.of(7, 6).onTopic("stopping").questions().toText())
                .contains("Data are invented.")
                .doesNotContain("resistor");
        assertThat(circuit.exercises())
                .filteredOn(each -> each.template().equals("load-resistor"))
                .isNotEmpty()
                .allSatisfy(each -> assertThat(each.solution().cautions())
                        .extracting(Caution::topic)
                        .contains("heat", "fuses", "lamp law"));
    }

    private static List<String> implausible(Solution solution) {
        return solution.cautions().stream()
                .filter(each -> each.topic().equals("plausibility"))
                .map(Caution::text)
                .toList();
    }

    // by hand: 60 mph = 26.8224 m/s in 2 s is 13.4112 m/s² = 44 ft/s²; 1 g = 9.80665 m/s²
    @Test
    void moreThanOneGIsSaidToBeImplausible() {
        Given speed = Given.of(60, Unit.MPH);
        assertThat(implausible(WorkedBraking.decelerationFromTime(Style.metric(), speed, Given.of(2, Unit.SECOND))))
                .singleElement()
                .asString()
                .startsWith("A deceleration of 13.4 m/s² is above 1 g");
        assertThat(implausible(
                        WorkedBraking.decelerationFromTime(Style.usCustomary(), speed, Given.of(2, Unit.SECOND))))
                .singleElement()
                .asString()
                .startsWith("A deceleration of 44.0 ft/s² is above 1 g");
        assertThat(implausible(WorkedBraking.decelerationFromTime(Style.metric(), speed, Given.of(2.8, Unit.SECOND))))
                .isEmpty();
        assertThat(implausible(WorkedStop.skidSpeed(
                        Style.metric().withGravity(Given.of(12, Unit.MPS2)),
                        Given.of(20, Unit.METRE),
                        Given.of(0.7, Unit.NONE),
                        Given.of(0, Unit.NONE))))
                .as("gravity is no deceleration of the vehicle")
                .isEmpty();
    }

    @Test
    void heatBeyondThePartsIsSaidToBeImplausible() {
        Given air = Given.of(40, Unit.CELSIUS);
        // by hand: 14.5²/(1 × 0.95) × 6 + 40 = 1367.9 °C; 0.8 × 9 × 40 + 85 = 373 °C
        Solution resistor = WorkedCircuit.resistorHeat(
                Style.metric(),
                Given.of(1, Unit.OHM),
                TOLERANCE,
                Given.of(14.5, Unit.VOLT),
                Given.of(6, Unit.KELVIN_PER_WATT),
                air);
        assertThat(implausible(resistor))
                .singleElement()
                .asString()
                .startsWith("A surface of 1368 °C is above the 350 °C");
        assertThat(resistor.document().toText())
                .contains("estimated at 1368 °C")
                .doesNotContain("1370");
        assertThat(implausible(diode(Style.metric(), 9, Given.of(85, Unit.CELSIUS))))
                .singleElement()
                .asString()
                .startsWith("A junction of 373 °C is above the 150 to 175 °C");
        assertThat(implausible(diode(Style.metric(), 2, air))).isEmpty();
    }

    private static Solution diode(Style style, double amperes, Given air) {
        return WorkedCircuit.diodeHeat(
                style,
                Given.of(0.8, Unit.VOLT),
                Given.of(amperes, Unit.AMPERE),
                Given.of(40, Unit.KELVIN_PER_WATT),
                air);
    }

    @Test
    void aSpreadAboveTheMeanAndAWallOfARoadAreSaidToBeImplausible() {
        Given mean = Given.of(1.2, Unit.SECOND);
        Given high = Given.of(85, Unit.PERCENT);
        assertThat(implausible(WorkedDriver.percentile(Style.metric(), mean, Given.of(6, Unit.SECOND), high)))
                .singleElement()
                .asString()
                .startsWith("A standard deviation of 6 s is above the mean of 1.2 s");
        assertThat(implausible(WorkedDriver.percentile(Style.metric(), mean, Given.of(0.6, Unit.SECOND), high)))
                .isEmpty();
        assertThat(implausible(WorkedStop.stoppingOnRoad(
                        Style.metric(),
                        Given.of(50, Unit.KMH),
                        mean,
                        Given.of(0.3, Unit.NONE),
                        Given.of(60, Unit.PERCENT))))
                .singleElement()
                .asString()
                .startsWith("A grade of 60.0 % is steeper");
    }

    // 104 °F = 40 °C; by hand 0.8 × 2 × 40 + 40 = 104 °C = 219.2 °F
    @Test
    void aTemperatureReadInFahrenheitIsAnsweredInIt() {
        Given air = Given.of(104, Unit.FAHRENHEIT);
        Solution customary = diode(Style.usCustomary(), 2, air);
        assertThat(customary.answer().printed()).hasToString("219 °F");
        assertThat(customary.checks()).allMatch(Solution.Verification::agrees);
        RenderedArithmetic.check(customary, 6);
        assertThat(customary.document().toText()).contains("T_a = 104 °F = (104 + 459.67) / 1.8 = 313.15 K");
        assertThat(customary.document().toMarkdown()).contains("219\\,^{\\circ}\\mathrm{F}");
        assertThat(diode(Style.metric(), 2, air).answer().printed()).hasToString("104 °C");
        assertThat(diode(Style.usCustomary(), 2, Given.of(40, Unit.CELSIUS))
                        .answer()
                        .printed())
                .hasToString("104 °C");
        assertThat(Amount.parse("212 degF").in(Unit.CELSIUS)).isCloseTo(100, within(1e-10));
        assertThat(Amount.of(-40, Unit.CELSIUS).in(Unit.FAHRENHEIT)).isCloseTo(-40, within(1e-10));
        assertThat(Unit.FAHRENHEIT
                        .conversion(BigDecimal.valueOf(212), Unit.CELSIUS)
                        .value())
                .isCloseTo(100, within(1e-10));
        assertThat(Unit.CELSIUS
                        .conversion(BigDecimal.valueOf(100), Unit.FAHRENHEIT)
                        .value())
                .isCloseTo(212, within(1e-10));
    }

    // the knot is 1852 m/h by definition: 25 kn = 12.8611 m/s
    @Test
    void aKnotIsConvertedExactly() {
        Solution solution =
                WorkedStop.reactionDistance(Style.metric(), Given.of(25, Unit.KNOT), Given.of(1.5, Unit.SECOND));
        assertThat(solution.document().toText()).contains("v = 25 kn = 25 × 463 / 900 ≈ 12.8611 m/s");
    }

    @Test
    void theHighwayCodeCarriesNoMoreDigitsThanTheStyle() {
        Solution solution = WorkedRule.highwayCode(Style.usCustomary(), Given.of(100, Unit.KMH));
        assertThat(solution.steps()).allMatch(step -> step.result().number().precision() <= 6);
    }

    /** A browser breaks no line within a formula: the terms of a sum must be formulas of their own. */
    @Test
    void theTermsOfASumAreFormulasThatALineCanBreakBetween() {
        Expression sum = Expression.number(7)
                .plus(Expression.number(2).times(Expression.number(3)))
                .minus(Expression.number(4).plus(Expression.number(5)));
        assertThat(MathmlNotation.INSTANCE.terms(sum))
                .extracting(Notation.Term::sign)
                .containsExactly("", "+", "−");
        assertThat(TextNotation.INSTANCE.terms(sum))
                .extracting(Notation.Term::text)
                .containsExactly("7", "2 × 3", "(4 + 5)");
        String page = WorkedStop.stoppingDistance(
                        Style.metric(),
                        Given.of(100, Unit.KMH),
                        Given.of(1, Unit.SECOND),
                        Given.of(0.3, Unit.SECOND),
                        Given.of(7, Unit.MPS2))
                .document()
                .toHtml();
        Html.checkPage(page);
        assertThat(page)
                .contains("</mrow></math> <math displaystyle=\"true\"><mrow><mo form=\"infix\" lspace=\"0\">+</mo>");
    }
}
