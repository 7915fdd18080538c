package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.lamp.Lens;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Range;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.Detector;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sight.ShareOfFinal;
import io.github.stoplag.source.Evidence;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The table against the simulation it stands for, and against moments in closed form. */
class LatencyTableTest {
    private static final TimeSpan MICROSECOND = TimeSpan.seconds(1e-6);
    private static final TimeSpan TEN_MICROSECONDS = TimeSpan.seconds(1e-5);
    private static final FilamentLamp BULB =
            FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26.5)).build();
    private static final SupplyConditions CONDITIONS =
            SupplyConditions.of(Voltage.volts(13.5)).withLens(Lens.RED);
    private static final Detector EYE =
            IntegratingEye.of(LaboratoryLamps.EYE_TIME_CONSTANT, LaboratoryLamps.EYE_THRESHOLD);

    private static FilamentUnknowns lamp(Detector eye) {
        return FilamentUnknowns.of(BULB, CONDITIONS, LuminousIntensity.candela(60), eye);
    }

    private static double[] random(LatencyTable table, SplittableRandom random) {
        return table.axes().stream()
                .mapToDouble(axis ->
                        random.nextDouble(axis.range().lo(), axis.range().hi()))
                .toArray();
    }

    private static double exactS(FilamentUnknowns lamp, double... at) {
        return lamp.simulate(at).time().map(TimeSpan::inSeconds).orElse(Double.NaN);
    }

    @Test
    void fourUnknownsAgreeWithTheSimulation() {
        FilamentUnknowns lamp = lamp(EYE)
                .coilFactor(0.6, 0.85)
                .supply(Voltage.volts(11), Voltage.volts(14.5))
                .seriesResistance(Resistance.ohms(0), Resistance.ohms(0.4))
                .ambientTemperature(Temperature.celsius(-20), Temperature.celsius(40));
        LatencyTable table = lamp.table(TEN_MICROSECONDS);
        assertThat(table.inputs()).containsExactly("coil_factor", "supply_v", "series_resistance_ohm", "ambient_k");
        assertThat(table.onsets()).isLessThan(2000);
        assertThat(table.simulatedRatio()).isZero();
        assertThat(table.largestError().inSeconds()).isLessThanOrEqualTo(1e-5);
        LatencyTable.Evaluator evaluator = table.evaluator();
        SplittableRandom random = new SplittableRandom(7);
        for (int i = 0; i < 200; i++) {
            double[] at = random(table, random);
            assertThat(evaluator.latencyS(at)).as(Arrays.toString(at)).isCloseTo(exactS(lamp, at), within(1e-5));
        }
        assertThat(table.basis()).last().asString().startsWith("tabulated over coil factor [0.6, 0.85], supply");
    }

    @Test
    void moreVoltsAreSeenSooner() {
        FilamentUnknowns lamp = lamp(EYE).supply(Voltage.volts(9), Voltage.volts(15));
        LatencyTable table = lamp.table(MICROSECOND);
        LatencyTable.Evaluator evaluator = table.evaluator();
        double beforeS = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= 1000; i++) {
            double nowS = evaluator.latencyS(new double[] {9 + 0.006 * i});
            assertThat(nowS).isLessThan(beforeS);
            beforeS = nowS;
        }
    }

    @Test
    void notSeenIsExactAtTheBorder() {
        FilamentUnknowns lamp = lamp(EYE).supply(Voltage.volts(2), Voltage.volts(15));
        LatencyTable table = lamp.table(TEN_MICROSECONDS);
        assertThat(table.neverSeenRatio()).isBetween(0.2, 0.5);
        assertThat(table.simulatedRatio()).isBetween(0.0001, 0.005);
        LatencyTable.Evaluator evaluator = table.evaluator();
        double darkV = 2;
        double seenV = 15;
        while (Math.nextUp(darkV) < seenV) {
            double middle = 0.5 * (darkV + seenV);
            boolean seen = lamp.simulate(middle).time().isPresent();
            darkV = seen ? darkV : middle;
            seenV = seen ? middle : seenV;
        }
        assertThat(evaluator.latencyS(new double[] {darkV})).isNaN();
        assertThat(evaluator.latencyS(new double[] {seenV})).isCloseTo(exactS(lamp, seenV), within(1e-9));
        assertThat(evaluator.latencyS(new double[] {seenV + 1e-3})).isCloseTo(exactS(lamp, seenV + 1e-3), within(1e-5));
    }

    /** t = τ ln(I/(I − E)) for a step, over intensity and time constant: unknowns of one's own. */
    @Test
    void closedFormOfAStepOverTwoUnknownsOfTheEye() {
        List<TableAxis> axes = List.of(
                new TableAxis("intensity_cd", Range.closed("intensity", 2, 60, "cd")),
                new TableAxis("time_constant_s", Range.closed("time constant", 0.05, 0.3, "s")));
        LatencyTable table = LatencyTable.of(axes, at -> step(at[0], at[1]), MICROSECOND);
        LatencyTable.Evaluator evaluator = table.evaluator();
        SplittableRandom random = new SplittableRandom(3);
        int dark = 0;
        for (int i = 0; i < 20_000; i++) {
            double[] at = random(table, random);
            double gotS = evaluator.latencyS(at);
            if (at[0] <= 3) {
                assertThat(gotS).isNaN();
                dark++;
            } else {
                assertThat(gotS).isCloseTo(at[1] * Math.log(at[0] / (at[0] - 3)), within(2e-6));
            }
        }
        assertThat(dark).isGreaterThan(200);
        assertThat(table.cells()).isGreaterThan(3);
        assertThat(table.digest())
                .isEqualTo(LatencyTable.of(axes, at -> step(at[0], at[1]), MICROSECOND)
                        .digest());
        assertThat(table.digest())
                .isNotEqualTo(LatencyTable.of(axes, at -> step(at[0], at[1] + 1e-6), MICROSECOND)
                        .digest());
    }

    private static Detection step(double cd, double tauS) {
        return cd <= 3
                ? new Detection.NeverSeen("eye", "dim", Evidence.none())
                : new Detection.Seen(TimeSpan.seconds(tauS * Math.log(cd / (cd - 3))), "eye", Evidence.none());
    }

    @Test
    void anIntervalOfNoWidthIsAValue() {
        FilamentUnknowns open = lamp(ShareOfFinal.of(0.1)).supply(Voltage.volts(11), Voltage.volts(14.5));
        FilamentUnknowns fixed = open.coilFactor(0.8, 0.8)
                .seriesResistance(Resistance.ohms(0.2), Resistance.ohms(0.2))
                .gasLossShare(0.25, 0.25);
        LatencyTable table = fixed.table(MICROSECOND);
        assertThat(table.inputs()).containsExactly("supply_v");
        FilamentLamp built = FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26.5))
                .coilFactor(0.8)
                .gasLossShare(0.25)
                .build();
        double directS = built.switchOn(
                        CONDITIONS.withSupply(Voltage.volts(12)).withSeriesResistance(Resistance.ohms(0.2)))
                .timeToLevelS(0.1)
                .orElseThrow();
        assertThat(exactS(fixed, 12)).isCloseTo(directS, within(1e-12));
        assertThat(table.evaluator().latencyS(new double[] {12})).isCloseTo(directS, within(1e-6));
    }

    @Test
    void columnsEqualSingleRowsAndRejectWhatLiesOutside() {
        LatencyTable table = lamp(ShareOfFinal.of(0.1))
                .supply(Voltage.volts(11), Voltage.volts(14.5))
                .coilFactor(0.6, 0.85)
                .table(MICROSECOND);
        LatencyTable.Evaluator evaluator = table.evaluator();
        double[] latencyS = new double[3];
        double[][] columns = {{11, 13, 15}, {0.85, 0.7, 0.7}};
        Rejects rejects = new Rejects(table.inputs(), 3);
        rejects.beginRows(0, columns);
        evaluator.latenciesS(3, columns, latencyS, rejects);
        assertThat(latencyS[0]).isEqualTo(evaluator.latencyS(new double[] {11, 0.85}));
        assertThat(latencyS[1]).isEqualTo(evaluator.latencyS(new double[] {13, 0.7}));
        assertThat(latencyS[2]).isNaN();
        assertThat(rejects.entries())
                .hasToString("[1 x supply voltage must be in [11, 14.5] V of the table of detection, first scenario 2:"
                        + " supply_v=15, coil_factor=0.7]");
    }

    @Test
    void refusals() {
        FilamentUnknowns lamp = lamp(ShareOfFinal.of(0.1)).supply(Voltage.volts(11), Voltage.volts(14.5));
        LatencyTable.Evaluator evaluator = lamp.table(TEN_MICROSECONDS).evaluator();
        assertThatThrownBy(() -> evaluator.latencyS(new double[] {14.6}))
                .hasMessage("supply voltage must be in [11, 14.5] V, got 14.6 V");
        assertThatThrownBy(() -> evaluator.latencyS(new double[] {Double.NaN}))
                .hasMessage("supply voltage must be in [11, 14.5] V, got NaN V");
        assertThatThrownBy(() -> evaluator.latencyS(new double[] {12, 1}))
                .hasMessageStartingWith("values of one row of detection by supply_v must be 1, got 2");
        assertThatThrownBy(() -> lamp.supply(Voltage.volts(11), Voltage.volts(12)))
                .hasMessage("supply voltage must be given once, got another interval");
        assertThatThrownBy(() -> lamp.coilFactor(0.8, 0.7))
                .hasMessage("coil factor must be given from its lowest to its highest value, got 0.8 to 0.7");
        assertThatThrownBy(() -> lamp.coilFactor(0.4, 0.7)).hasMessage("coil factor must be in [0.5, 1], got 0.4");
        assertThatThrownBy(() -> lamp.table(TimeSpan.seconds(1e-9)))
                .hasMessage("accuracy of a table of detection must be in [1e-7, 1] s, got 1e-9 s");
        assertThatThrownBy(() -> lamp(EYE).table(MICROSECOND))
                .hasMessage("unknowns of a table must be in [1, 8], got 0");
    }

    /** A course full of jumps cannot be tabulated, and the message says so instead of a table that is wrong. */
    @Test
    void aCourseWithoutAShapeIsRefused() {
        List<TableAxis> axes = List.of(
                new TableAxis("a", Range.closed("a", 0, 1, "")), new TableAxis("b", Range.closed("b", 0, 1, "")));
        assertThatThrownBy(() -> LatencyTable.of(
                        axes,
                        at -> new Detection.Seen(
                                TimeSpan.seconds(Math.floorMod((long) (1e6 * at[0] + 1e5 * at[1]), 97) / 97.0),
                                "eye",
                                Evidence.none()),
                        MICROSECOND))
                .hasMessageMatching("table of detection must reach its accuracy within 20000 onsets in all but 6.25 %"
                        + " of its box, got .* % left: narrow the intervals, or allow a larger error");
    }

    @Test
    void caveatsOfTheMiddleAndOfTheCornersAreKept() {
        LatencyTable table = lamp(ShareOfFinal.of(0.1))
                .supply(Voltage.volts(11), Voltage.volts(17.5))
                .table(TEN_MICROSECONDS);
        assertThat(table.caveats()).anyMatch(caveat -> caveat.toString().contains("1000 h (assumed)"));
        // only the upper end of the supply shortens the bulb's life
        assertThat(table.caveats().size())
                .isGreaterThan(lamp(ShareOfFinal.of(0.1)).simulate().caveats().size());
    }
}
