package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.lamp.BulbCatalogue;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.lamp.TungstenTables;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Standing;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

class FilamentUncertaintyTest {
    private static final FilamentLamp BULB = LaboratoryLamps.bulb();
    private static final ToDoubleFunction<FilamentLamp> HALF = toLevel(0.5);

    private static ToDoubleFunction<FilamentLamp> toLevel(double level) {
        return lamp -> lamp.switchOn(SupplyConditions.of(Voltage.volts(13.5)))
                .timeToLevelS(level)
                .orElseThrow();
    }

    @Test
    void coilFactorEntersByItsExactScaling() {
        // every time goes as f^(-4/3)
        double u = 0.14 / Math.sqrt(3);
        double timeS = HALF.applyAsDouble(BULB);
        assertThat(contribution("coil_factor_ratio"))
                .isCloseTo(
                        0.5 * timeS * (Math.pow(1 + u, -4 / 3.0) - Math.pow(1 - u, -4 / 3.0)),
                        Percentage.withPercentage(1e-3));
    }

    @Test
    void choiceOfTungstenTablesIsAnEntryOfItsOwn() {
        FilamentLamp classic = BULB.varied(new FilamentLamp.Variation(1, 1, 1, 1), TungstenTables.CLASSIC);
        double shiftS = HALF.applyAsDouble(classic) - HALF.applyAsDouble(BULB);
        assertThat(shiftS / HALF.applyAsDouble(BULB)).isBetween(-0.13, -0.07);
        assertThat(contribution("tungsten_tables")).isCloseTo(shiftS / Math.sqrt(3), Percentage.withPercentage(1e-3));
        assertThat(FilamentUncertainty.of(classic)
                        .budget("half_s", HALF)
                        .contributions()
                        .get(4)
                        .contribution())
                .isCloseTo(-shiftS / Math.sqrt(3), Percentage.withPercentage(1e-3));
    }

    @Test
    void squaresOfTheEntriesAddUp() {
        FilamentUncertainty.Budget budget = FilamentUncertainty.of(BULB).budget("half_s", HALF);
        double square = budget.contributions().stream()
                .mapToDouble(Measurand.Contribution::contribution)
                .map(c -> c * c)
                .sum();
        assertThat(budget.time().standardUncertainty()).isCloseTo(Math.sqrt(square), within(1e-15));
        assertThat(budget.basis()).anyMatch(line -> line.contains("power drawn ±6 %, light ±15 %"));
    }

    /** The second method of the guides: whole distributions, by draws. */
    @Test
    void monteCarloAgreesWithinAFewPercent() {
        FilamentUncertainty unknowns = FilamentUncertainty.of(BULB);
        Measurand.Estimate first = unknowns.budget("half_s", HALF).time();
        Measurand.Estimate drawn = unknowns.measurand(HALF).monteCarlo(0.95, 1000, 7);
        assertThat(drawn.standardUncertainty()).isCloseTo(first.standardUncertainty(), Percentage.withPercentage(12));
        assertThat(drawn.value()).isCloseTo(first.value(), Percentage.withPercentage(6));
    }

    /** Sources as in {@code published_lamp_figures.csv}: 35 to 60 ms and 200 to 300 ms. */
    @Test
    void publishedTimesLieInTheIntervals() {
        Interval first =
                FilamentUncertainty.of(BULB).budget("s", toLevel(0.01)).time().coverage();
        assertThat(0.0475).isBetween(first.lo(), first.hi());
        Interval late =
                FilamentUncertainty.of(BULB).budget("s", toLevel(0.9)).time().coverage();
        assertThat(0.25).isBetween(late.lo(), late.hi());
    }

    @Test
    void bulbWithoutARatedFluxIsLessCertainAndSmallOnesDrawLessCertainly() {
        FilamentLamp unlit = BulbCatalogue.published("P21W")
                .major()
                .unlit(BULB.fill(), Standing.SEEN)
                .build();
        assertThat(FilamentUncertainty.of(unlit).basis()).anyMatch(line -> line.contains("light ±25 %"));
        assertThat(FilamentUncertainty.of(
                                BulbCatalogue.published("R5W").majorLamp().build())
                        .basis())
                .anyMatch(line -> line.contains("power drawn ±10 %"));
        FilamentUncertainty.Budget narrow =
                FilamentUncertainty.of(BULB).withTolerances(0.001, 0.001).budget("half_s", HALF);
        assertThat(Math.abs(narrow.contributions().get(0).contribution())).isLessThan(2e-4);
        assertThatThrownBy(() -> FilamentUncertainty.of(BULB).withTolerances(0, 0.1))
                .hasMessage("tolerance of the power drawn must be in (0, 0.5], got 0");
    }

    private static double contribution(String input) {
        List<Measurand.Contribution> all =
                FilamentUncertainty.of(BULB).budget("half_s", HALF).contributions();
        return all.stream()
                .filter(c -> c.input().equals(input))
                .findFirst()
                .orElseThrow()
                .contribution();
    }

    /** The ends of the first-order interval, met by lamps that exist; the curvature moves both ends alike. */
    @Test
    void lampsAtTheEndsHaveTheTimesOfTheEnds() {
        FilamentUncertainty unknowns = FilamentUncertainty.of(BULB);
        for (double level : new double[] {0.1, 0.5, 0.9}) {
            Interval all = unknowns.budget("s", toLevel(level)).time().coverage();
            double early = toLevel(level).applyAsDouble(unknowns.end(HALF, true));
            double late = toLevel(level).applyAsDouble(unknowns.end(HALF, false));
            assertThat(late - early).isCloseTo(all.hi() - all.lo(), Percentage.withPercentage(15));
        }
    }
}
