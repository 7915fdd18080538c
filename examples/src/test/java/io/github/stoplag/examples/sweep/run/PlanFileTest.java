package io.github.stoplag.examples.sweep.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.data.Offset.offset;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.Empirical;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.Lens;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sight.LampSignal;
import io.github.stoplag.sweep.Axis;
import io.github.stoplag.sweep.ColumnTally;
import io.github.stoplag.sweep.Design;
import io.github.stoplag.sweep.LampLatency;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.Plan;
import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.RowBlock;
import io.github.stoplag.sweep.Sweep;
import io.github.stoplag.sweep.SweepResult;
import io.github.stoplag.sweep.Tally;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Plans as text files. */
class PlanFileTest {
    private static final String SMALL = """
            title = small
            design = grid
            scenarios = 3
            seed = 7
            lamps = bulb
            speed = list 36 km/h, 72 km/h
            gap = range 10 m, 30 m, 3
            reaction = log-normal 0.17, 0.44
            follower_decel = uniform 4 m/s^2, 8 m/s^2
            leader_decel = empirical 8 m/s^2, 5 m/s^2, 6 m/s^2
            lamp_latency_bulb = constant 100 ms
            correlations = reaction follower_decel -0.5
            """;

    private static final String SUPPLIED = SMALL.replace(
            "lamp_latency_bulb = constant 100 ms",
            "lamp_model_bulb = 13.5 V, 26 W, 60 cd\nsupply = list 11 V, 14 V\neye = 0.1 s, 3 cd");

    private static final FilamentLamp BULB =
            FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26)).build();

    @TempDir
    Path folder;

    private static Criterion eye() {
        return new Criterion(
                "eye",
                "an eye",
                List.of(),
                IntegratingEye.of(TimeSpan.seconds(0.1), LuminousIntensity.candela(3)),
                LuminousIntensity.candela(0));
    }

    private PlanFile read(String text) {
        try {
            return Plans.read(Files.writeString(folder.resolve("plan.properties"), text));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static double[][] values(Plan plan, int count) {
        double[][] columns = new double[plan.columns().size()][count];
        plan.scenarios().fill(0, count, columns);
        return columns;
    }

    @Test
    void drawsWhatThePlanInCodeDraws() {
        Plan inCode = Plan.of(Design.grid(3), 7)
                .axis(Axis.list("speed", "mps", 10, 20))
                .axis(Axis.range("gap", "m", 10, 30, 3))
                .axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(0.17, 0.44)))
                .axis(Axis.drawn("leader_decel", "mps2", Empirical.of(5, 6, 8)))
                .axis(Axis.drawn("follower_decel", "mps2", new Distribution.Uniform(4, 8)))
                .axis(Axis.constant("lamp_latency_bulb", "s", 0.1))
                .correlate("reaction_s", "follower_decel_mps2", -0.5);
        PlanFile file = read(SMALL);
        assertThat(file.plan().columns()).isEqualTo(inCode.columns());
        assertThat(file.plan().size()).isEqualTo(18);
        assertThat(values(file.plan(), 18)).isDeepEqualTo(values(inCode, 18));
        assertThat(file.lamps()).containsExactly("bulb");
        assertThat(file.invented()).isFalse();
    }

    @Test
    void textHoldsEveryDigitInSiUnits() {
        PlanFile file = read(SMALL);
        assertThat(file.text()).isEqualTo("""
                title = small
                design = grid
                scenarios = 3
                seed = 7
                lamps = bulb
                speed = list 10 m/s, 20 m/s
                gap = range 10 m, 30 m, 3
                reaction = log-normal 0.17, 0.44
                leader_decel = empirical 5 m/s², 6 m/s², 8 m/s²
                follower_decel = uniform 4 m/s², 8 m/s²
                lamp_latency_bulb = constant 0.1 s
                correlations = reaction follower_decel -0.5
                """);
        assertThat(file.digest()).hasSize(64);
    }

    @Test
    void orderOfLinesAndTitleDoNotMatterButValuesDo() {
        String turned = String.join("\n", SMALL.lines().sorted().toList()).replace("title = small", "title = other");
        assertThat(read(turned).digest()).isEqualTo(read(SMALL).digest());
        assertThat(read(SMALL.replace("0.44", "0.45")).digest())
                .isNotEqualTo(read(SMALL).digest());
        assertThat(read(SMALL).withSeed(8).digest())
                .isEqualTo(read(SMALL.replace("seed = 7", "seed = 8")).digest());
        assertThat(read(SMALL).withScenarios(4).plan().size()).isEqualTo(24);
        PlanFile small = read(SMALL);
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> small.withScenarios(1L << 48))
                .withMessageStartingWith("a grid must have at most 2^48 scenarios, got more with axes [");
    }

    @Test
    void shippedPlanSaysWhatItRestsOn() {
        PlanFile shipped = Plans.shipped();
        assertThat(shipped.invented()).isTrue();
        assertThat(shipped.plan().size()).isEqualTo(10_000_000);
        assertThat(shipped.pairModel().lamps()).containsExactly("filament", "led");
        assertThat(shipped.notes())
                .anySatisfy(note -> assertThat(note)
                        .isEqualTo("reaction_s: Sivak, Olson & Farmer, Perceptual and Motor Skills 55, 1982, abstract"
                                + " (seen)."))
                .anySatisfy(note -> assertThat(note).contains("a share of 0.28 did not respond within 3 s"));
        // 28 % of them did not respond: they are scenarios too
        assertThat(shipped.pairModel().respondingRatio()).isCloseTo(0.72, offset(1e-12));
        assertThat(shipped.plan().columns()).endsWith("lamp_latency_led_s", "responds_ratio");
        // Sivak, Olson & Farmer: mean 1.21 s, standard deviation 0.63 s
        Distribution.LogNormal reaction = (Distribution.LogNormal)
                shipped.plan().axes().get(2).distribution().orElseThrow();
        double variance = Math.log(1 + 0.63 * 0.63 / (1.21 * 1.21));
        assertThat(reaction.sigma() * reaction.sigma()).isCloseTo(variance, offset(1e-11));
        assertThat(Math.exp(reaction.mu() + variance / 2)).isCloseTo(1.21, offset(1e-11));
    }

    @Test
    void shareOfDriversWhoRespondIsWrittenOrThatOfTheStudy() {
        String study = SMALL.replace("log-normal 0.17, 0.44", "study sivak-1982");
        assertThat(read(study).text()).contains("\nresponds = share 0.72\n");
        assertThat(read(study + "\nresponds = share 100 %\n").pairModel().population())
                .isEqualTo("100 % of the drivers respond to the lamp, as the plan says.");
        assertThat(read(SMALL).pairModel().population())
                .isEqualTo(
                        "100 % of the drivers respond to the lamp, because the plan says nothing of drivers who do not: all"
                                + " shares are of those who respond.");
        PlanFile half = read(SMALL.replace("design = grid\nscenarios = 3", "design = latin-hypercube\nscenarios = 5000")
                + "\nresponds = share 0.5\n");
        double[][] columns = values(half.plan(), 5000);
        assertThat(DoubleStream.of(columns[columns.length - 1]).sum()).isEqualTo(2500);
    }

    @Test
    void meanAndStandardDeviationAreThoseOfTheDraws() {
        PlanFile file = read(SMALL.replace("log-normal 0.17, 0.44", "log-normal-mean-sd 1.2 s, 0.6 s")
                .replace("design = grid\nscenarios = 3", "design = latin-hypercube\nscenarios = 20000")
                .replace("correlations = reaction follower_decel -0.5\n", ""));
        double[] reaction = values(file.plan(), 20_000)[2];
        double mean = DoubleStream.of(reaction).average().orElseThrow();
        double square = DoubleStream.of(reaction)
                .map(x -> (x - mean) * (x - mean))
                .average()
                .orElseThrow();
        assertThat(mean).isCloseTo(1.2, offset(1e-3));
        assertThat(Math.sqrt(square)).isCloseTo(0.6, offset(5e-3));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            speed = list 36 km/h, 72 km/h | speed = list 36 km/h, 900 km/h | speed = 900 km/h: speed must be in [0, 150] m/s, got 250 m/s
            seed = 7 | seed = 7.5 | seed = 7.5: not a whole number; write it like 1000000
            scenarios = 3 | scenarios = 0 | design = grid, scenarios = 0: scenarios of a GRID design must be in [1, 281474976710656], got 0
            design = grid | design = spiral | design = spiral: must be one of grid, random, latin-hypercube, sobol
            log-normal 0.17, 0.44 | log-normal 0.17, 9 | reaction = log-normal 0.17, 9: standard deviation of the logarithm must be in (0, 5], got 9
            log-normal 0.17, 0.44 | log-normal 0.17 | reaction = log-normal 0.17: log-normal must have 2 values separated by commas, got 1
            log-normal 0.17, 0.44 | gamma 0.17, 0.44 | reaction = gamma 0.17, 0.44: must start with one of constant, list, range, uniform, triangular, log-normal, log-normal-mean-sd, truncated-normal, empirical or, for reaction, leader_decel and follower_decel, study; for responds share
            log-normal 0.17, 0.44 | study brake-lamps-in-traffic-1993 | reaction = study brake-lamps-in-traffic-1993: the study must give a log-normal, as these do: johansson-rumar-1965, sivak-1982, lerner-1993, fambro-1998, olson-sivak-1986, schweitzer-1995, koppa-1997-surprise, koppa-1997-expected, taoka-1989-gazis, taoka-1989-wortman, taoka-1989-chang
            uniform 4 m/s^2, 8 m/s^2 | uniform 8 m/s^2, 4 m/s^2 | follower_decel = uniform 8 m/s^2, 4 m/s^2: a uniform distribution must have finite lo < hi, got 8 and 4
            uniform 4 m/s^2, 8 m/s^2 | study koppa | follower_decel = study koppa: study must have 2 values separated by commas, got 1
            range 10 m, 30 m, 3 | study koppa | gap = study koppa: study is for reaction, leader_decel and follower_decel only
            range 10 m, 30 m, 3 | range 10 m, 30 m, 2.5 | gap = range 10 m, 30 m, 2.5: the number of levels must be whole and in [2, 1000000], got 2.5
            range 10 m, 30 m, 3 | range 10 m, 30 km, 1 | gap = range 10 m, 30 km, 1: the number of levels must be whole and in [2, 1000000], got 1
            constant 100 ms | constant 100 | lamp_latency_bulb = 100: time "100": missing unit; use one of s, ms, min, h
            lamps = bulb | lamps = Bulb | lamps = Bulb: must be different names of lower-case letters, digits and _, got Bulb
            reaction follower_decel -0.5 | reaction gap 0.5 | correlations = reaction gap 0.5: a correlation must join two drawn axes of [speed_mps, gap_m, reaction_s, leader_decel_mps2, follower_decel_mps2, lamp_latency_bulb_s] that are in no other, got reaction_s and gap_m
            reaction follower_decel -0.5 | reaction follower_decel 2 | correlations = reaction follower_decel 2: correlation of reaction_s and follower_decel_mps2 must be in [-1, 1], got 2
            reaction follower_decel -0.5 | reaction mood 0.5 | correlations = reaction mood 0.5: an axis must be one of [speed, follower_speed, gap, time_gap, reaction, leader_decel, follower_decel, brake_dead_time, brake_build_up, friction, grade, supply, series_resistance, ambient, coil_factor, gas_loss, lamp_latency_bulb, responds], got mood
            title = small | responds = constant 1 | responds = constant 1: must be the share of drivers who respond, as in: share 72 %
            title = small | responds = share 120 % | responds = 120 %: responds must be in [0, 1], got 1.2
            log-normal 0.17, 0.44 | share 0.5 | reaction = share 0.5: share is for responds only
            title = small | titel = small | titel = small: unknown key; the keys are title, invented, design, scenarios, seed, lamps, correlations, speed, follower_speed, gap, time_gap, reaction, leader_decel, follower_decel, brake_dead_time, brake_build_up, friction, grade, supply, series_resistance, ambient, coil_factor, gas_loss, lamp_latency_<lamp>, responds, .source behind the name of an axis, eye, detector, detector.share.level, detector.eye.time-constant, detector.eye.threshold, viewing.distance, viewing.visibility, tail.intensity, filament.temperature, filament.flux, filament.gas-loss-share, filament.coil-factor, film.zero-delay, lamp_model_<lamp>
            title = small | speed.source = hearsay: someone | speed.source = hearsay: someone: standing must be one of seen, from memory, common practice, no source, derived, assumed, invented; got "hearsay"
            """)
    void badValueNamesFileKeyRangeAndValue(String line, String bad, String complaint) {
        String text = SMALL.replace(line, bad);
        // a title is needed to get as far as the others
        String titled = text.contains("title = ") || bad.startsWith("titel") ? text : "title = t\n" + text;
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> read(titled))
                .withMessage(folder.resolve("plan.properties") + ": " + complaint);
    }

    @Test
    void missingAndUselessAxesAreNamed() {
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> read(SMALL.replace("gap = range 10 m, 30 m, 3\n", "")))
                .withMessageContaining("plan.properties: lamps = bulb: a pair needs at least one lamp, the columns")
                .withMessageContaining("one of gap_m and time_gap_s");
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> read(SMALL + "lamp_latency_led = constant 1 ms\n"))
                .withMessage(folder.resolve("plan.properties")
                        + ": lamp_latency_led = constant 1 ms: is not used: its lamp is not among lamps");
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> read(SMALL + "friction.source = seen: x\n"))
                .withMessage(folder.resolve("plan.properties")
                        + ": friction.source = seen: x: is not used: there is no such axis");
    }

    @Test
    void latencyFollowsTheSupplyWithinTheErrorStated() {
        PlanFile file = read(SUPPLIED);
        assertThat(file.plan().columns()).contains("supply_v").doesNotContain("lamp_latency_bulb_s");
        SweepResult<ColumnTally> latency =
                Sweep.of(file.plan(), file.model()).run(() -> new ColumnTally("lamp_latency_bulb_s"));
        FilamentLamp bulb = BULB;
        Criterion eye = eye();
        // the lowest supply drawn is the slowest: 11 V exactly, the highest 14 V
        double slowest = simulatedS(bulb, SupplyConditions.of(Voltage.volts(11)), eye);
        double fastest = simulatedS(bulb, SupplyConditions.of(Voltage.volts(14)), eye);
        assertThat(latency.tally().moments().max()).isCloseTo(slowest, offset(2e-5));
        assertThat(latency.tally().moments().min()).isCloseTo(fastest, offset(2e-5));
        assertThat(slowest).isGreaterThan(1.2 * fastest);
        assertThat(file.notes())
                .anySatisfy(note -> assertThat(note)
                        .startsWith("lamp_latency_bulb_s: from supply_v by a table of ")
                        .contains(" µs of the simulation at places held out; 13.5 V, 26 W, 60 cd; seen by "
                                + eye.criterion() + "; behind a red lens."));
        assertThat(file.text()).contains("lamp_model_bulb = 13.5 V, 26 W, 60 cd\n");
    }

    private static double simulatedS(FilamentLamp bulb, SupplyConditions conditions, Criterion eye) {
        FilamentOnset onset = bulb.switchOn(conditions.withLens(Lens.RED));
        return eye.detect(LampSignal.of(onset, LuminousIntensity.candela(60 * onset.relativeToRated())))
                .orElseThrow()
                .inSeconds();
    }

    /** Keeps a column. */
    private static final class Column implements Tally<Column> {
        private final String name;
        private final List<Double> values = new ArrayList<>();

        Column(String name) {
            this.name = name;
        }

        @Override
        public void add(RowBlock rows) {
            DoubleStream.of(rows.column(name)).limit(rows.count()).forEach(values::add);
        }

        @Override
        public void absorb(Column later) {
            values.addAll(later.values);
        }

        @Override
        public void clear() {
            values.clear();
        }
    }

    @Test
    void lampPhysicsAreAxesSeveralAtOnce() {
        PlanFile file = read(SUPPLIED.replace("design = grid\nscenarios = 3", "design = random\nscenarios = 400")
                .replace("supply = list 11 V, 14 V", """
                supply = truncated-normal 12.8 V, 0.5 V, 11.5 V, 14.4 V
                series_resistance = uniform 0 ohm, 0.4 ohm
                ambient = truncated-normal 10 °C, 10 K, -15 °C, 35 °C
                coil_factor = uniform 0.6, 0.9
                gas_loss = constant 12 %
                """));
        assertThat(file.plan().columns())
                .contains("supply_v", "series_resistance_ohm", "ambient_k", "coil_factor", "gas_loss_ratio");
        assertThat(file.model().inputs()).contains("coil_factor").doesNotContain("lamp_latency_bulb_s");
        double[][] drawn = values(file.plan(), 400);
        double[] latencyS = Sweep.of(file.plan(), file.model())
                .withThreads(1)
                .run(() -> new Column("lamp_latency_bulb_s"))
                .tally()
                .values
                .stream()
                .mapToDouble(value -> value)
                .toArray();
        Criterion eye = eye();
        for (int i = 0; i < 400; i += 13) {
            int row = i;
            ToDoubleFunction<String> at = column -> drawn[file.plan().columns().indexOf(column)][row];
            double exactS = simulatedS(
                    BULB.withCoilFactor(at.applyAsDouble("coil_factor")).withGasLossShare(0.12),
                    SupplyConditions.of(Voltage.volts(at.applyAsDouble("supply_v")))
                            .withSeriesResistance(Resistance.ohms(at.applyAsDouble("series_resistance_ohm")))
                            .withAmbientTemperature(Temperature.kelvin(at.applyAsDouble("ambient_k"))),
                    eye);
            assertThat(latencyS[i]).isCloseTo(exactS, offset(LampLatency.ACCURACY.inSeconds()));
        }
        assertThat(DoubleStream.of(latencyS).max().orElseThrow())
                .isGreaterThan(1.2 * DoubleStream.of(latencyS).min().orElseThrow());
        assertThat(file.leftOut()).containsExactly("bulb: gas-loss share held at one value");
    }

    @Test
    void lampThatIsNeverSeenIsRejectedAndCounted() {
        PlanFile file = read(SUPPLIED.replace("list 11 V, 14 V", "list 3 V, 12 V"));
        SweepResult<PairTally> result = Sweep.of(file.plan(), file.model()).run(() -> new PairTally(file.pairModel()));
        assertThat(result.rejects())
                .singleElement()
                .satisfies(entry -> assertThat(entry.reason()).isEqualTo("the lamp bulb must be seen at all"));
        assertThat(result.rejected()).isEqualTo(18);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            supply = list 11 V, 14 V | gap.source = seen: x | lamp_model_bulb = 13.5 V, 26 W, 60 cd: needs the axis supply
            lamp_model_bulb = 13.5 V, 26 W, 60 cd | lamp_latency_bulb = constant 1 ms | eye = 0.1 s, 3 cd: is not used: no lamp_model_<lamp> needs it
            lamp_model_bulb = 13.5 V, 26 W, 60 cd | lamp_model_bulb = led 2 ms, 1 ms, 60 cd | supply = list 11 V, 14 V: is not used: no lamp of the plan follows it
            supply = list 11 V, 14 V | supply = list 11 V, 14 V;coil_factor = uniform 0.4, 0.9 | coil_factor = 0.4: coil factor must be in [0.5, 1], got 0.4
            supply = list 11 V, 14 V | supply = list 11 V, 14 V;ambient = truncated-normal 10 °C, 5 °C, 0 °C, 20 °C | ambient = 5 °C: a spread of temperatures must be in K
            supply = list 11 V, 14 V | supply = list 11 V, 14 V;lamp_latency_bulb = constant 1 ms | lamp_latency_bulb = constant 1 ms: the lamp is described too; one of the two must go
            13.5 V, 26 W, 60 cd | 13.5 V, 26 W | lamp_model_bulb = 13.5 V, 26 W: must be design voltage, power drawn there, intensity there, as in: filament 13.5 V, 26 W, 60 cd
            13.5 V, 26 W, 60 cd | 350 V, 26 W, 60 cd | lamp_model_bulb = 350 V: must be in [0.5, 300] V, got 350 V
            eye = 0.1 s, 3 cd | eye = 0.1 s | eye = 0.1 s: must be time constant and threshold, as in: 0.1 s, 3 cd
            """)
    void badLampModelIsNamed(String line, String bad, String complaint) {
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> read(SUPPLIED.replace(line, bad.replace(';', '\n'))))
                .withMessage(folder.resolve("plan.properties") + ": " + complaint);
    }
}
