package io.github.stoplag.examples.sweep.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.data.Offset.offset;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.Empirical;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sweep.Axis;
import io.github.stoplag.sweep.ColumnTally;
import io.github.stoplag.sweep.Design;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.Plan;
import io.github.stoplag.sweep.Sweep;
import io.github.stoplag.sweep.SweepResult;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
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

    @TempDir
    Path folder;

    private PlanFile read(String text) {
        try {
            return PlanFile.read(Files.writeString(folder.resolve("plan.properties"), text));
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
    void textHoldsEveryDigitInSiUnits() throws Exception {
        PlanFile file = read(SMALL);
        assertThat(file.text()).isEqualTo("""
                plan of pairs, form 1
                design = grid
                scenarios = 3
                seed = 7
                lamps = bulb
                speed_mps = list 10.0, 20.0
                gap_m = range 10.0, 30.0, 3.0
                reaction_s = log-normal 0.17, 0.44
                leader_decel_mps2 = empirical 5.0, 6.0, 8.0
                follower_decel_mps2 = uniform 4.0, 8.0
                lamp_latency_bulb_s = constant 0.1
                correlation = reaction_s follower_decel_mps2 -0.5
                """);
        byte[] digest = MessageDigest.getInstance("SHA-256").digest(file.text().getBytes(StandardCharsets.UTF_8));
        assertThat(file.hash()).isEqualTo(HexFormat.of().formatHex(digest));
    }

    @Test
    void orderOfLinesAndTitleDoNotMatterButValuesDo() {
        String turned = String.join("\n", SMALL.lines().sorted().toList()).replace("title = small", "title = other");
        assertThat(read(turned).hash()).isEqualTo(read(SMALL).hash());
        assertThat(read(SMALL.replace("0.44", "0.45")).hash())
                .isNotEqualTo(read(SMALL).hash());
        assertThat(read(SMALL).withSeed(8).hash())
                .isEqualTo(read(SMALL.replace("seed = 7", "seed = 8")).hash());
        assertThat(read(SMALL).withScenarios(4).plan().size()).isEqualTo(24);
        PlanFile small = read(SMALL);
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> small.withScenarios(1L << 48))
                .withMessageStartingWith("a grid must have at most 2^48 scenarios, got more with axes [");
    }

    @Test
    void shippedPlanSaysWhatItRestsOn() {
        PlanFile shipped = PlanFile.shipped();
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
        assertThat(read(study).text()).contains("\nresponds_ratio = share 0.72\n");
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
            speed = list 36 km/h, 72 km/h | speed = list 36 km/h, 900 km/h | speed = 900 km/h: speed must be in [0, 150] m/s, got 250 m/s (allowed: [0, 150] m/s)
            seed = 7 | seed = 7.5 | seed = 7.5: not a whole number; write it like 1000000
            scenarios = 3 | scenarios = 0 | design = grid, scenarios = 0: scenarios of a GRID design must be in [1, 281474976710656], got 0
            design = grid | design = spiral | design = spiral: must be one of grid, random, latin-hypercube, sobol
            log-normal 0.17, 0.44 | log-normal 0.17, 9 | reaction = 9: must be in [0, 5], got 9
            log-normal 0.17, 0.44 | log-normal 0.17 | reaction = log-normal 0.17: log-normal must have 2 values separated by commas, got 1
            log-normal 0.17, 0.44 | gamma 0.17, 0.44 | reaction = gamma 0.17, 0.44: must start with one of constant, list, range, uniform, log-normal, log-normal-mean-sd, truncated-normal, empirical or, for reaction, study; for responds share
            log-normal 0.17, 0.44 | study brake-lamps-in-traffic-1993 | reaction = study brake-lamps-in-traffic-1993: the study must give a log-normal, as these do: johansson-rumar-1965, sivak-1982, lerner-1993, fambro-1998, olson-sivak-1986, schweitzer-1995, koppa-1997-surprise, koppa-1997-expected, taoka-1989-gazis, taoka-1989-wortman, taoka-1989-chang
            uniform 4 m/s^2, 8 m/s^2 | uniform 8 m/s^2, 4 m/s^2 | follower_decel = uniform 8 m/s^2, 4 m/s^2: a uniform distribution must have finite lo < hi, got 8 and 4
            uniform 4 m/s^2, 8 m/s^2 | study koppa | follower_decel = study koppa: study is for reaction only
            range 10 m, 30 m, 3 | range 10 m, 30 m, 2.5 | gap = range 10 m, 30 m, 2.5: the number of levels must be whole, got 2.5
            range 10 m, 30 m, 3 | range 10 m, 30 km, 1 | gap = 1: must be in [2, 1000000], got 1
            constant 100 ms | constant 100 | lamp_latency_bulb = 100: time "100": missing unit; use one of s, ms, min, h (allowed: [0, 30] s)
            lamps = bulb | lamps = Bulb | lamps = Bulb: must be different names of lower-case letters, digits and _, got Bulb
            reaction follower_decel -0.5 | reaction gap 0.5 | correlations = reaction gap 0.5: a correlation must join two drawn axes of [speed_mps, gap_m, reaction_s, leader_decel_mps2, follower_decel_mps2, lamp_latency_bulb_s] that are in no other, got reaction_s and gap_m
            reaction follower_decel -0.5 | reaction follower_decel 2 | correlations = 2: must be in [-1, 1], got 2
            reaction follower_decel -0.5 | reaction mood 0.5 | correlations = mood: must be one of [speed, follower_speed, gap, time_gap, reaction, leader_decel, follower_decel, brake_dead_time, brake_build_up, friction, grade, supply, lamp_latency_bulb, responds]
            title = small | responds = constant 1 | responds = constant 1: must be the share of drivers who respond, as in: share 72 %
            title = small | responds = share 120 % | responds = 120 %: must be in [0, 1], got 1.2
            log-normal 0.17, 0.44 | share 0.5 | reaction = share 0.5: share is for responds only
            title = small | titel = small | titel = small: unknown key; the keys are title, invented, design, scenarios, seed, lamps, eye, correlations, speed, follower_speed, gap, time_gap, reaction, leader_decel, follower_decel, brake_dead_time, brake_build_up, friction, grade, supply, responds, detector, detector.share.level, detector.eye.time-constant, detector.eye.threshold, viewing.distance, viewing.visibility, tail.intensity, filament.temperature, filament.flux, filament.gas-loss-share, filament.coil-factor, film.zero-delay, lamp_latency_<lamp> or lamp_model_<lamp>, and .source behind the name of an axis
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
        FilamentLamp bulb =
                FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26)).build();
        Criterion eye = new Criterion(
                "eye",
                "an eye",
                List.of(),
                IntegratingEye.of(TimeSpan.seconds(0.1), LuminousIntensity.candela(3)),
                LuminousIntensity.candela(0));
        // the lowest supply drawn is the slowest: 11 V exactly, the highest 14 V
        double slowest = SupplyLamp.exactS(bulb, LuminousIntensity.candela(60), eye, 11);
        double fastest = SupplyLamp.exactS(bulb, LuminousIntensity.candela(60), eye, 14);
        assertThat(latency.tally().moments().max()).isCloseTo(slowest, offset(2e-5));
        assertThat(latency.tally().moments().min()).isCloseTo(fastest, offset(2e-5));
        assertThat(slowest).isGreaterThan(1.2 * fastest);
        SupplyLamp table = SupplyLamp.of(bulb, LuminousIntensity.candela(60), eye);
        assertThat(table.largestErrorS()).isLessThan(5e-5);
        for (double volts = 9; volts < 15.5; volts += 0.317) {
            assertThat(table.latencyS(volts))
                    .isCloseTo(
                            SupplyLamp.exactS(bulb, LuminousIntensity.candela(60), eye, volts),
                            offset(1.1 * table.largestErrorS() + 1e-9));
        }
        assertThat(file.notes())
                .anySatisfy(note -> assertThat(note)
                        .startsWith(
                                "lamp_latency_bulb_s: from supply_v by a table of the filament model behind a red lens over"
                                        + " [8.775, 15.525] V, within ")
                        .endsWith(" µs of the model; seen by: " + eye.criterion() + "."));
        assertThat(file.text()).contains("lamp_latency_bulb_s = table of supply_v from 8.775");
    }

    @Test
    void supplyBeyondTheTableIsRejectedAndCounted() {
        PlanFile file = read(SUPPLIED.replace("list 11 V, 14 V", "list 5 V, 12 V"));
        SweepResult<PairTally> result = Sweep.of(file.plan(), file.model()).run(() -> new PairTally(file.pairModel()));
        assertThat(result.rejects())
                .singleElement()
                .satisfies(entry -> assertThat(entry.reason())
                        .isEqualTo("supply voltage must be in [8.775, 15.525] V of the lamp's table"));
        assertThat(result.rejected()).isEqualTo(18);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            supply = list 11 V, 14 V | gap.source = seen: x | lamp_model_bulb = 13.5 V, 26 W, 60 cd: needs the axis supply and no axis lamp_latency_bulb
            lamp_model_bulb = 13.5 V, 26 W, 60 cd | lamp_latency_bulb = constant 1 ms | supply = list 11 V, 14 V: is not used: no lamp_model_<lamp> follows it
            13.5 V, 26 W, 60 cd | 13.5 V, 26 W | lamp_model_bulb = 13.5 V, 26 W: must be design voltage, power drawn there, intensity there, as in: filament 13.5 V, 26 W, 60 cd
            13.5 V, 26 W, 60 cd | 350 V, 26 W, 60 cd | lamp_model_bulb = 350 V: must be in [0.5, 300] V, got 350 V
            eye = 0.1 s, 3 cd | eye = 0.1 s | eye = 0.1 s: must be time constant and threshold, as in: 0.1 s, 3 cd
            """)
    void badLampModelIsNamed(String line, String bad, String complaint) {
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> read(SUPPLIED.replace(line, bad)))
                .withMessage(folder.resolve("plan.properties") + ": " + complaint);
    }
}
