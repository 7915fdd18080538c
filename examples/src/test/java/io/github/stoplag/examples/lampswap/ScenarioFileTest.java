package io.github.stoplag.examples.lampswap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.examples.Program;
import io.github.stoplag.examples.file.Resource;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.sight.IntegratingEye;
import java.nio.file.Path;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ScenarioFileTest {
    @TempDir
    Path folder;

    static Stream<String> keys() {
        return Scenario.KEYS.stream().flatMap(keys -> keys.names().stream()).distinct();
    }

    @ParameterizedTest
    @MethodSource("keys")
    void shippedScenarioShowsEachKey(String key) {
        assertThat(Pattern.compile("(?m)^(# )?" + Pattern.quote(key) + " = \\S")
                        .matcher(Resource.text(Scenario.SHIPPED))
                        .results())
                .hasSize(1);
    }

    @Test
    void printedScenarioIsTheShippedOneAndCanBeReadBack() {
        Program printed = Program.run("lamp-swap", "--print-scenario");
        assertThat(printed.exitCode()).isZero();
        Path copy = Program.write(folder.resolve("copy.properties"), printed.out());
        assertThat(Scenario.of(ScenarioFile.read(copy, Scenario.VOCABULARY), null)
                        .inputs())
                .isEqualTo(Scenario.shipped().inputs());
    }

    @Test
    void shippedEyeAndTheDefaultEyeAreThoseOfTheLaboratory() {
        Path without = Program.write(
                folder.resolve("without.properties"),
                Resource.text(Scenario.SHIPPED).replaceAll("(?m)^detector.eye.*$", ""));
        String laboratory = IntegratingEye.of(LaboratoryLamps.EYE_TIME_CONSTANT, LaboratoryLamps.EYE_THRESHOLD)
                .criterion();
        assertThat(Scenario.shipped().criterion().criterion()).isEqualTo(laboratory);
        assertThat(Scenario.of(ScenarioFile.read(without, Scenario.VOCABULARY), null)
                        .criterion()
                        .criterion())
                .isEqualTo(laboratory);
        assertThat(Resource.text(Scenario.SHIPPED))
                .contains("Defaults " + LaboratoryLamps.EYE_TIME_CONSTANT + " and " + LaboratoryLamps.EYE_THRESHOLD);
    }

    @Test
    void byteOrderMarkIsSkipped() {
        Path marked = Program.write(folder.resolve("marked.properties"), "\ufeff" + Resource.text(Scenario.SHIPPED));
        assertThat(Scenario.of(ScenarioFile.read(marked, Scenario.VOCABULARY), null)
                        .heading()
                        .title())
                .startsWith("Community minibus");
    }

    @Test
    void speedsAreSortedAndGapsStayWithTheirSpeeds() {
        Path file = Program.scenario(
                folder, "speeds", "60 mph, 50 km/h, 30 mph", "following.gap", "100 ft, 2 s, 65 ft 6 in");
        Scenario scenario = Scenario.of(ScenarioFile.read(file, Scenario.VOCABULARY), null);
        assertThat(scenario.legs()).hasSize(3);
        assertThat(scenario.legs().get(0).speed().inMph()).isCloseTo(30, within(1e-9));
        assertThat(scenario.legs().get(0).gap().inFeet()).isCloseTo(65.5, within(1e-9));
        assertThat(scenario.legs().get(1).speed().inKmh()).isCloseTo(50, within(1e-9));
        assertThat(scenario.legs().get(1).gap().inMetres()).isCloseTo(100 / 3.6, within(1e-9));
        assertThat(scenario.legs().get(2).gap().inFeet()).isCloseTo(100, within(1e-9));
    }

    /** Source: kinematics, a = g (μ cos θ + sin θ) on a grade; on the level a = μ g. */
    @Test
    void roadGivesTheDecelerationWhereTheFileSaysSo() {
        Path file = Program.scenario(folder, "follower.deceleration", "road", "road.friction", "0.6");
        Scenario scenario = Scenario.of(ScenarioFile.read(file, Scenario.VOCABULARY), null);
        assertThat(scenario.follower().deceleration().inMps2()).isCloseTo(0.6 * 9.80665, within(1e-12));
        assertThat(scenario.leader().deceleration().inMps2()).isEqualTo(5.8);
        assertThat(scenario.inputs()).contains(new ScenarioFile.Used("road.grade", "0 %", true));
    }
}
