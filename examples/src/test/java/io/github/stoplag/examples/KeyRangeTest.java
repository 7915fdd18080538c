package io.github.stoplag.examples;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.examples.circuit.CircuitKeys;
import io.github.stoplag.examples.circuit.CircuitScenario;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.Resource;
import io.github.stoplag.examples.following.FollowingScenario;
import io.github.stoplag.examples.lampswap.Scenario;
import io.github.stoplag.quantity.Numbers;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each key at both ends of its range: a result, or one line that names file and key. */
class KeyRangeTest {
    @TempDir
    Path folder;

    record End(String program, String shipped, String key, String value, String range) {
        @Override
        public String toString() {
            return program + " " + key + " = " + value + " of " + range;
        }
    }

    private static Stream<Key<?>> allKeys() {
        return Stream.concat(Scenario.KEYS.stream(), Stream.of(CircuitKeys.KEYS, FollowingScenario.OF_A_VEHICLE))
                .flatMap(keys -> keys.quantities().stream());
    }

    static Stream<End> ends() {
        Stream<Key<?>> lampSwap = Scenario.KEYS.stream().flatMap(keys -> keys.quantities().stream());
        return Stream.of(
                        lampSwap.flatMap(key -> ends("lamp-swap", Scenario.SHIPPED, key)),
                        CircuitKeys.KEYS.quantities().stream()
                                .flatMap(key -> ends("circuit", CircuitScenario.SHIPPED, key)),
                        FollowingScenario.OF_A_VEHICLE.quantities().stream()
                                .flatMap(key -> ends("following", FollowingScenario.PAIR, key)))
                .flatMap(ends -> ends);
    }

    private static Stream<End> ends(String program, String shipped, Key<?> key) {
        String unit = ascii(key.range().unit());
        return Stream.of(key.range().lo(), key.range().hi())
                .map(end -> new End(
                        program,
                        shipped,
                        key.name(),
                        (Numbers.text(end) + " " + unit).strip(),
                        key.range().toString()));
    }

    /** What the vehicles of several programs have, and their lamps, has one range in all files. */
    @Test
    void oneRangeForOneQuantity() {
        Map<String, Set<String>> ranges = new TreeMap<>();
        allKeys()
                .filter(key -> !key.name().matches("harness\\..*|resistor.tolerance"))
                .forEach(key -> ranges.computeIfAbsent(
                                key.name().replaceAll(".*\\.", "") + " "
                                        + key.range().unit(),
                                name -> new TreeSet<>())
                        .add(key.range().toString()));
        assertThat(ranges)
                .hasSizeGreaterThan(40)
                .allSatisfy((name, all) -> assertThat(all).as(name).hasSize(1));
    }

    /** The shipped files tell each range as a message would. */
    @Test
    void shippedFilesTellTheRanges() {
        assertThat(ends().filter(end -> !ascii(Resource.text(end.shipped())).contains(ascii(end.range()))))
                .isEmpty();
    }

    private static String ascii(String text) {
        return text.replace("²", "^2").replace("Ω", "ohm");
    }

    @ParameterizedTest
    @MethodSource("ends")
    void endOfTheRangeGivesAResultOrOneLine(End end) {
        List<String> changes = end.key().startsWith("road.")
                ? List.of(end.key(), end.value(), "leader.deceleration", "road")
                : List.of(end.key(), end.value());
        Path scenario = Program.changed(folder, end.shipped(), changes.toArray(String[]::new));
        Program run = Program.into(folder.resolve("results"), end.program(), "--scenario", scenario.toString());
        if (run.exitCode() == 0) {
            assertThat(run.err()).isEmpty();
            assertThat(run.out()).contains("Written to");
        } else {
            assertThat(run.err().lines()).hasSize(1);
            assertThat(run.err())
                    .startsWith(scenario + ": ")
                    .contains(whole(end) ? end.key() + " = " + end.value() : "")
                    .doesNotContain("Exception");
            assertThat(run.exitCode()).isEqualTo(2);
            assertThat(folder.resolve("results")).doesNotExist();
        }
    }

    /**
     * Says whether the value by itself is what does not fit; else the line names another key or the part worked out.
     */
    private static boolean whole(End end) {
        return end.program().equals("circuit")
                ? end.key().matches("harness.area|supply.*|diode.*")
                : !end.key().matches("road.*|.*intensity");
    }
}
