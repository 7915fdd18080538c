package io.github.stoplag.worked;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.lamp.FilamentDecay;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Gaps in seconds, times to collision, drag factors, speeds left, water, silent drivers, lamps that go out. */
class WorkedSubjectsTest {
    private static final double MPH = 0.44704;

    private static double answer(Solution solution, Unit unit) {
        assertThat(solution.checks()).isNotEmpty().allMatch(Solution.Verification::agrees);
        return solution.answer().carried().in(unit);
    }

    private static Given g(double number, Unit unit) {
        return Given.of(number, unit);
    }

    @ParameterizedTest
    @EnumSource(UnitSystem.class)
    void areThoseOfTheFormulas(UnitSystem system) {
        Style style = Style.in(system);
        Given sixty = g(60, Unit.MPH);
        double v = 60 * MPH;
        assertThat(answer(WorkedGap.ofTime(style, sixty, g(2, Unit.SECOND)), Unit.METRE))
                .isCloseTo(2 * v, within(1e-3));
        assertThat(answer(WorkedGap.inTime(style, sixty, g(150, Unit.FOOT)), Unit.SECOND))
                .isCloseTo(150 * 0.3048 / v, within(1e-5));
        assertThat(answer(WorkedGap.timeToCollision(style, sixty, g(40, Unit.MPH), g(100, Unit.FOOT)), Unit.SECOND))
                .isCloseTo(100 * 0.3048 / (20 * MPH), within(1e-4));
        assertThat(answer(WorkedBraking.dragFactor(style, g(30, Unit.MPH), g(45, Unit.FOOT)), Unit.NONE))
                .isCloseTo(Math.pow(30 * MPH, 2) / (2 * 9.80665 * 45 * 0.3048), within(1e-5));
        assertThat(answer(
                        WorkedBraking.speedLeft(style, g(50, Unit.KMH), g(7, Unit.MPS2), g(10, Unit.METRE)), Unit.MPS))
                .isCloseTo(Math.sqrt(Math.pow(50 / 3.6, 2) - 140), within(1e-3));
        assertThat(answer(WorkedBraking.stoppingTime(style, sixty, g(1.5, Unit.SECOND), g(6, Unit.MPS2)), Unit.SECOND))
                .isCloseTo(1.5 + v / 6, within(1e-4));
        assertThat(answer(WorkedDriver.rulerDrop(style, g(20, Unit.of("cm"))), Unit.SECOND))
                .isCloseTo(Math.sqrt(0.4 / 9.80665), within(1e-5));
        assertThat(answer(WorkedBraking.kineticEnergy(style, g(1500, Unit.of("kg")), sixty), Unit.of("J")))
                .isCloseTo(750 * v * v, within(10.0));
        // 10.35 mph for every root of a psi, as the formula is printed too
        assertThat(answer(WorkedRoad.hydroplaning(style, g(32, Unit.of("psi"))), Unit.MPH))
                .isCloseTo(10.35 * Math.sqrt(32), within(0.04));
    }

    /** The uk system takes lengths in metres and speeds in miles per hour. */
    @Test
    void anAnswerForTheUnitedKingdomIsInMilesPerHourAndMetres() {
        Style uk = Style.in(UnitSystem.BRITISH);
        Given grade = g(0, Unit.PERCENT);
        Solution skid = WorkedStop.skidSpeed(uk, g(25, Unit.METRE), g(0.7, Unit.NONE), grade);
        assertThat(skid.answer().printed().unit()).isEqualTo(Unit.MPH);
        assertThat(answer(skid, Unit.MPS)).isCloseTo(Math.sqrt(2 * 0.7 * 9.80665 * 25), within(1e-3));
        assertThat(WorkedStop.reactionDistance(uk, g(60, Unit.MPH), g(1, Unit.SECOND))
                        .answer()
                        .printed())
                .hasToString("26.8 m");
    }

    @Test
    void aPercentileOfAllDriversCountsThoseWhoNeverRespond() {
        Given mean = g(1.21, Unit.SECOND);
        Given sd = g(0.63, Unit.SECOND);
        Given share = g(72, Unit.PERCENT);
        Solution half = WorkedDriver.percentileOfAll(Style.metric(), mean, sd, g(36, Unit.PERCENT), share);
        // 36 % of all are half of 72 %: the median exp(μ) = m/√(1 + (s/m)²)
        assertThat(answer(half, Unit.SECOND)).isCloseTo(1.21 / Math.sqrt(1 + Math.pow(0.63 / 1.21, 2)), within(1e-4));
        assertThatThrownBy(() -> WorkedDriver.percentileOfAll(Style.metric(), mean, sd, g(72, Unit.PERCENT), share))
                .hasMessageContaining("no time is long enough for 72 % of all drivers: only 72 % respond at all");
    }

    @Test
    void coolingComesNearerToTheModelWithMoreSteps() {
        FilamentLamp lamp =
                FilamentLamp.builder(Voltage.volts(13.5), Power.watts(21)).build();
        double from = 2700;
        FilamentDecay decay = FilamentDecay.of(
                lamp, SupplyConditions.of(Voltage.volts(0)).withInitialTemperature(Temperature.kelvin(from)));
        double exactMs = 1000 * decay.timeToLevelS(0.1).orElseThrow();
        double to = decay.temperatureAt(TimeSpan.seconds(exactMs / 1000)).inKelvin();
        double before = Double.POSITIVE_INFINITY;
        for (int steps = 1; steps <= 16; steps *= 2) {
            Solution worked =
                    WorkedLamp.coolingTime(Style.metric(), lamp, g(from, Unit.KELVIN), g(to, Unit.KELVIN), steps);
            double off = Math.abs(worked.answer().carried().in(Unit.SECOND) * 1000 - exactMs);
            assertThat(off).isLessThan(before);
            before = Math.max(off, 1e-3 * exactMs);
        }
        assertThat(before).isLessThan(0.01 * exactMs);
    }

    @Test
    void whatIsImplausibleIsSaid() {
        Style style = Style.metric();
        assertThat(WorkedStop.reactionDistance(style, g(300, Unit.MPH), g(15, Unit.SECOND))
                        .cautions())
                .extracting(each -> each.text().replaceFirst(",.*", ""))
                .contains(
                        "The speed of 300 mph is faster than road vehicles usually go",
                        "The reaction time of 15 s is slower than drivers usually are");
        assertThat(WorkedStop.skidSpeed(style, g(500, Unit.METRE), g(0.7, Unit.NONE), g(0, Unit.PERCENT))
                        .cautions())
                .anyMatch(each -> each.text().startsWith("The answer of 298 km/h is faster than road vehicles"));
        assertThat(WorkedStop.reactionDistance(style, g(100, Unit.KMH), g(1.5, Unit.SECOND))
                        .cautions())
                .noneMatch(each -> each.topic().equals("plausibility"));
    }
}
