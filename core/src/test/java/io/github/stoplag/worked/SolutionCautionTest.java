package io.github.stoplag.worked;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.source.Caution;
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
}
