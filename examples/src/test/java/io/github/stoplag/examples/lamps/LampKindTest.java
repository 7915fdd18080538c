package io.github.stoplag.examples.lamps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.offset;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.lampswap.LampSwap;
import io.github.stoplag.examples.lampswap.Scenario;
import io.github.stoplag.examples.sweep.run.PlanFile;
import io.github.stoplag.sweep.ColumnTally;
import io.github.stoplag.sweep.Sweep;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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

    private static final Pattern CONSTANT = Pattern.compile("lamp_latency_lamp_s = constant (\\S+)");

    @TempDir
    Path folder;

    private LampSwap swap(String more) throws IOException {
        Files.writeString(folder.resolve("lamp.csv"), "time_s,relative_brightness\n0,0\n0.05,0.5\n0.1,1\n0.2,1\n");
        Path file = Files.writeString(folder.resolve("scenario.properties"), SWAP + more);
        return LampSwap.of(Scenario.of(ScenarioFile.read(file, Scenario.VOCABULARY), null));
    }

    private PlanFile plan(String more) throws IOException {
        return PlanFile.read(Files.writeString(folder.resolve("plan.properties"), PLAN + more));
    }

    /** The latency of a plan in which it is the same in every scenario. */
    private static double latencyS(PlanFile plan) {
        Matcher constant = CONSTANT.matcher(plan.text());
        return constant.find()
                ? Double.parseDouble(constant.group(1))
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
        assertThat(plan.plan().columns().contains("lamp_latency_lamp_s")).isEqualTo(!bulb);
        double latencyS = latencyS(plan);
        // a table of the supply is joined linearly; without one the latency is rounded to 1 ns
        assertThat(latencyS).isCloseTo(seenS, offset(bulb ? 2e-5 : 1e-9));
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
            lamp.2 = neon 2 ms, 60 cd | lamp.2 = neon 2 ms, 60 cd: must start with one of filament, bulb, led, filmed
            lamp.2 = led 2 ms, 60 cd  | must be delay until current flows, rise from 10 % to 90 %, intensity, as in: led 2 ms, 1 ms, 60 cd
            lamp.2 = led 2 s, 1 ms, 60 cd | lamp.2 = 2 s: must be in [0, 1] s, got 2 s
            lamp.2 = bulb P99W, 60 cd | lamp.2 = P99W: bulb must be one of
            lamp.2 = filmed none.csv, 60 cd | none.csv: cannot be read: no such file
            lamp.2.name = x | lamp.1: must be two lamps or more to compare, got 1
            lamp.0 = led 2 ms, 1 ms, 60 cd | unknown key
            """)
    void badLampIsNamed(String line, String complaint) {
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> swap(line + "\n"))
                .withMessageContaining(complaint);
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
