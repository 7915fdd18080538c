package io.github.stoplag.examples.lamps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.offset;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.lampswap.LampSwap;
import io.github.stoplag.examples.lampswap.Scenario;
import io.github.stoplag.examples.sweep.run.Plans;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sight.LampSet;
import io.github.stoplag.sight.Threshold;
import io.github.stoplag.sweep.ColumnTally;
import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.Sweep;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** A lamp on one line of a file, in the program of a swap and in a plan of a sweep. */
class LampKindTest {
    private static final String SWAP = """
            title = lamps
            speeds = 60 mph
            following.gap = 30 m
            leader.deceleration = 6 m/s^2
            follower.deceleration = 6 m/s^2
            follower.reaction = 1 s
            supply.voltage = 12.8 V
            lamp.1 = filament 13.5 V, 26 W, 60 cd
            """;
    private static final String PLAN = """
            title = lamps
            scenarios = 4
            lamps = lamp
            speed = constant 60 mph
            gap = constant 30 m
            reaction = constant 1 s
            follower_decel = constant 6 m/s^2
            """;

    @TempDir
    Path folder;

    private LampSwap swap(String more) throws IOException {
        Files.writeString(folder.resolve("lamp.csv"), "time_s,relative_brightness\n0,0\n0.05,0.5\n0.1,1\n0.2,1\n");
        Path file = Files.writeString(folder.resolve("scenario.properties"), SWAP + more);
        return LampSwap.of(Scenario.of(ScenarioFile.read(file, Scenario.VOCABULARY), null));
    }

    private PlanFile plan(String more) throws IOException {
        return Plans.read(Files.writeString(folder.resolve("plan.properties"), PLAN + more));
    }

    /** The latency of a plan in which it is the same in every scenario. */
    private static double latencyS(PlanFile plan) {
        int at = plan.plan().columns().indexOf("lamp_latency_lamp_s");
        return at >= 0
                ? plan.plan().axes().get(at).levels()[0]
                : Sweep.of(plan.plan(), plan.model())
                        .run(() -> new ColumnTally("lamp_latency_lamp_s"))
                        .tally()
                        .moments()
                        .mean();
    }

    @ParameterizedTest
    @EnumSource
    void everyKindIsReadByBothPrograms(LampKind kind) throws IOException {
        LampSwap swap = swap("lamp.2 = " + kind.example() + "\n");
        assertThat(swap.lamps()).hasSize(2);
        double seenS = swap.lamps().get(1).seen().orElseThrow().inSeconds();
        boolean bulb = kind == LampKind.FILAMENT || kind == LampKind.BULB;
        PlanFile plan = plan("lamp_model_lamp = " + kind.example() + "\n" + (bulb ? "supply = constant 12.8 V\n" : ""));
        // nothing is drawn that the latency could follow: one moment, rounded to 1 ns; a bulb in lamp-swap starts at 27
        // °C,
        // 0.15 K warmer
        assertThat(plan.plan().columns()).contains("lamp_latency_lamp_s");
        assertThat(latencyS(plan)).isCloseTo(seenS, offset(bulb ? 3e-6 : 1e-9));
        if (bulb) {
            PlanFile drawn = plan("lamp_model_lamp = " + kind.example() + "\nsupply = list 12.8 V, 12.801 V\n");
            assertThat(drawn.plan().columns()).doesNotContain("lamp_latency_lamp_s");
            assertThat(latencyS(drawn)).isCloseTo(seenS, offset(5e-5));
        }
    }

    @ParameterizedTest
    @CsvSource({"day", "tail", "share"})
    void everyCriterionIsReadByBothPrograms(String word) throws IOException {
        LampSwap swap = swap("lamp.2 = led 2 ms, 1 ms, 60 cd\ndetector = " + word + "\n");
        PlanFile plan = plan("lamp_model_lamp = led 2 ms, 1 ms, 60 cd\ndetector = " + word + "\n");
        assertThat(latencyS(plan))
                .isCloseTo(swap.lamps().get(1).seen().orElseThrow().inSeconds(), offset(1e-9));
    }

    @Test
    void lampFittedNowComesFirst() throws IOException {
        LampSwap swap = swap(
                "lamp.2 = led 2 ms, 1 ms, 60 cd\nlamp.2.name = new\nlamp.7 = bulb P21W, 60 cd\nlamp.present = 7\n");
        assertThat(swap.lamps()).extracting(LampSwap.Lamp::name).isEqualTo(List.of("lamp 7", "lamp 1", "new"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            lamp.2 = neon 2 ms, 60 cd | lamp.2 = neon 2 ms, 60 cd: must start with one of filament, bulb, led, filmed, set
            lamp.2 = led 2 ms, 60 cd  | must be delay until current flows, rise from 10 % to 90 %, intensity, as in: led 2 ms, 1 ms, 60 cd
            lamp.2 = led 2 s, 1 ms, 60 cd | lamp.2 = 2 s: must be in [0, 1] s, got 2 s
            lamp.2 = bulb P99W, 60 cd | lamp.2 = P99W: bulb must be one of
            lamp.2 = filmed none.csv, 60 cd | none.csv: cannot be read: no such file
            lamp.2 = set led 2 ms, 1 ms, 60 cd + | must be lamps that signal together
            lamp.2 = set led 2 ms, 1 ms, 60 cd + set led 2 ms, 1 ms, 60 cd | must be lamps that signal together
            lamp.2 = set led 2 ms, 1 ms, 60 cd + neon 1 cd | must start with one of
            lamp.2 = set 9 x led 2 ms, 1 ms, 60 cd + led 2 ms, 1 ms, 60 cd | a set must have at most 9 lamps, got 10
            lamp.2 = set led 2 ms, 1 ms, 60 cd after 11 s | lamp.2 = 11 s: must be in [0, 10] s, got 11 s
            lamp.2 = led 2 ms, 1 ms, 60 cd flashing 40 Hz for 1 s | lamp.2 = 40 Hz: must be in [0.5, 20] Hz, got 40 Hz
            lamp.2 = filmed lamp.csv, 60 cd flashing 4 Hz for 1 s | a filmed lamp has its own course
            lamp.2.name = x | lamp.1: must be two lamps or more to compare, got 1
            lamp.0 = led 2 ms, 1 ms, 60 cd | unknown key
            """)
    void badLampIsNamed(String line, String complaint) {
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> swap(line + "\n"))
                .withMessageContaining(complaint);
    }

    private double seenS(String lamp) throws IOException {
        return swap("lamp.2 = " + lamp + "\n")
                .lamps()
                .get(1)
                .seen()
                .orElseThrow()
                .inSeconds();
    }

    @Test
    void setIsSeenWithItsFirstLampAndDarkWithItsLast() throws IOException {
        String bulb = "filament 13.5 V, 26 W, 60 cd";
        String led = "led 2 ms, 1 ms, 60 cd";
        assertThat(seenS("set 2 x " + bulb + " + " + led)).isEqualTo(seenS(led));
        assertThat(seenS("set " + led + " after 5 ms + " + bulb)).isCloseTo(seenS(led) + 0.005, offset(1e-9));
        assertThat(seenS("set 3 x " + bulb)).isEqualTo(seenS(bulb));
        LampSwap swap = swap("lamp.2 = set 2 x " + bulb + " + " + led + "\n");
        IntegratingEye eye = IntegratingEye.of(TimeSpan.seconds(0.1), Threshold.contrast(0.25));
        LuminousIntensity none = LuminousIntensity.candela(0);
        assertThat(swap.lamps().get(1).light().seenDark(eye, none).orElseThrow().time())
                .isEqualTo(swap.lamps()
                        .get(0)
                        .light()
                        .seenDark(eye, none)
                        .orElseThrow()
                        .time());
        LampSet set = swap.lamps().get(1).light().set().orElseThrow();
        assertThat(set.members())
                .extracting(LampSet.Member::name)
                .isEqualTo(List.of("filament 1", "filament 2", "led 3"));
        // light over light at the design voltage, three times 60 cd less what the supply takes from two
        double onSupply = swap.lamps().get(0).light().endCd();
        assertThat(swap.lamps().get(1).light().endCd()).isCloseTo(2 * onSupply + 60, offset(1e-9));
    }

    @Test
    void setOfFilmedLampsHasNoKnownEnd() throws IOException {
        LampSwap swap = swap("lamp.2 = set filmed lamp.csv, 60 cd + led 2 ms, 1 ms, 60 cd\n");
        assertThat(swap.lamps()
                        .get(1)
                        .light()
                        .seenDark(
                                IntegratingEye.of(TimeSpan.seconds(0.1), Threshold.contrast(0.25)),
                                LuminousIntensity.candela(0)))
                .isEmpty();
    }

    @Test
    void flashingLampIsSeenByItsFirstFlashOrLater() throws IOException {
        assertThat(seenS("led 2 ms, 1 ms, 60 cd flashing 4 Hz for 1 s"))
                .isCloseTo(seenS("led 2 ms, 1 ms, 60 cd"), offset(1e-9));
        // 3.2 cd take 277 ms to gather to 3 cd, more than a flash of 125 ms
        assertThat(seenS("led 2 ms, 1 ms, 3.2 cd flashing 4 Hz for 1 s"))
                .isGreaterThan(seenS("led 2 ms, 1 ms, 3.2 cd") + 0.5);
        assertThat(seenS("bulb P21W, 10 cd flashing 4 Hz for 1 s")).isGreaterThan(seenS("bulb P21W, 10 cd"));
    }

    @Test
    void planRefusesWhatFollowsTheSupplyButIsNoSteadyBulb() {
        for (String lamp : List.of(
                "set filament 13.5 V, 26 W, 60 cd + led 2 ms, 1 ms, 60 cd", "bulb P21W, 60 cd flashing 4 Hz for 1 s")) {
            assertThatExceptionOfType(InputException.class)
                    .isThrownBy(() -> plan("lamp_model_lamp = " + lamp + "\nsupply = constant 12.8 V\n"))
                    .withMessageContaining("a plan takes no set with a filament lamp, and none that flashes");
        }
    }

    @Test
    void sameNameTwiceAndUnknownPresentLampAreRefused() {
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> swap("lamp.2 = led 2 ms, 1 ms, 60 cd\nlamp.2.name = Lamp 1\n"))
                .withMessageContaining("lamp.2.name = Lamp 1: another lamp has this name");
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> swap("lamp.2 = led 2 ms, 1 ms, 60 cd\nlamp.present = 3\n"))
                .withMessageContaining("lamp.present = 3: must be one of 1, 2");
    }
}
