package io.github.stoplag.examples.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.github.stoplag.examples.Pictures;
import io.github.stoplag.examples.Program;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.file.Resource;
import io.github.stoplag.examples.lamps.FilamentInput;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The program {@code circuit} as a user runs it; expected numbers are worked by hand in the comments. */
class CircuitRunTest {
    @TempDir
    Path folder;

    private Path results() {
        return folder.resolve("results");
    }

    private Program run(String... keysAndValues) {
        return keysAndValues.length == 0
                ? Program.into(results(), "circuit")
                : Program.into(
                        results(),
                        "circuit",
                        "--scenario",
                        scenario(keysAndValues).toString());
    }

    private Path scenario(String... keysAndValues) {
        return Program.changed(folder, CircuitScenario.SHIPPED, keysAndValues);
    }

    private Map<String, String> figures() {
        return Program.csv(results().resolve("circuit.csv")).stream()
                .collect(Collectors.toMap(row -> row.getField("quantity"), row -> row.getField("value")));
    }

    private double figure(String quantity) {
        return Double.parseDouble(figures().getOrDefault(quantity, "nothing"));
    }

    @Test
    void shippedScenarioGivesTheTableAndBothPictures() throws Exception {
        Program run = run();
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).isZero();
        try (Stream<Path> files = Files.list(results())) {
            assertThat(files.map(file -> String.valueOf(file.getFileName())))
                    .containsExactlyInAnyOrder("circuit.csv", "current.svg", "diode_onset.svg");
        }
        assertThat(Files.readAllLines(results().resolve("circuit.csv")).get(0))
                .isEqualTo("quantity,value,unit,basis,standing");
        for (NamedCsvRecord row : Program.csv(results().resolve("circuit.csv"))) {
            assertThat(row.getField("basis")).as("%s", row).isNotBlank();
            assertThat(row.getField("standing")).isEqualTo("derived from invented data");
        }
        for (String picture : new String[] {"current.svg", "diode_onset.svg"}) {
            String svg = Files.readString(results().resolve(picture));
            Pictures.assertGood(svg);
            assertThat(Pictures.title(svg)).contains("invented data");
        }
    }

    @Test
    void figuresAreThoseWorkedByHand() {
        run();
        // by the power law 25 W/13.5 V (9/13.5)^0.55 = 1.482 A, by heat balance 1 % more; threshold 0.9 A ± 25 %
        assertThat(figure("least current of the filament bulb")).isCloseTo(1.482, within(0.02));
        assertThat(figure("monitor surely reports healthy from")).isEqualTo(1.125);
        assertThat(figures()).containsEntry("monitor with the LED lamp alone", "reports a failed lamp");
        // 9 V/(1.125 - 0.22) A/1.05 = 9.471 ohm, next E12 value 8.2 ohm
        assertThat(figure("greatest load resistance that surely keeps the monitor content"))
                .isCloseTo(9.471, within(0.001));
        assertThat(figure("load resistance fitted")).isEqualTo(8.2);
        // 16²/(8.2 × 0.95) = 32.86 W; 50 + 3.5 × 32.86 = 165 °C; allowed 50 (200 - 50)/175 = 42.86 W
        assertThat(figure("heat of the resistor while on")).isCloseTo(32.86, within(0.01));
        assertThat(figure("surface temperature under a held brake")).isCloseTo(165, within(0.1));
        assertThat(figure("power its rating allows without pause")).isCloseTo(42.86, within(0.01));
        // 25 - 0.22 × 13.5 - 13.5²/8.2 = -0.196 W, 120 h: the resistor takes more than the LED lamp saves
        assertThat(figure("energy saved by one lamp in a year")).isCloseTo(-23.5, within(0.1));
        // 2 × 6 m × 26 mohm/m (1 + 0.00393 × 20) + 30 mohm = 0.3665 ohm; × 1.852 A
        assertThat(figure("resistance there and back with contacts")).isCloseTo(0.3665, within(0.0001));
        assertThat(figure("drop with the filament bulb")).isCloseTo(0.6787, within(0.0005));
        // by the power law 3 × 25/13.5 (16/13.5)^0.55 = 6.100 A of 7.5 A; 9 V/0.3665 ohm = 24.6 A
        assertThat(figure("the same of bulbs as rated")).isCloseTo(6.100, within(0.05));
        // a fuse must bear bulbs of 26.5 W, the most the sheet of the P21W allows
        assertThat(figure("most steady load with filament stop lamps")).isCloseTo(6.100 * 26.5 / 25, within(0.05));
        assertThat(figure("current of a short circuit at the lamp")).isCloseTo(24.55, within(0.01));
    }

    @Test
    void printedReportAnswersInSentencesWithBasisCaveatsAndCautions() {
        String report = run().out();
        assertThat(report.replaceAll("\\s+", " "))
                .contains("Community minibus: the circuit of its stop lamps (invented data)")
                .contains("UN Regulation No. 37, sheet P21W (from memory)")
                .contains("With the LED lamp alone it reports a failed lamp.")
                .contains("it no longer watches the lamp.")
                .contains("With 2 LED lamps alone it signals a failure by its rate, 170 per minute; not surely lawful.")
                .contains("What it rests on", "Caveats", "Cautions")
                .contains(
                        "lamp law: A lamp is type-approved", "The surface of the load resistor is estimated at 165 °C.")
                .contains("Never fit a larger one", "not a proof of safety");
        assertThat(report.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(125));
    }

    @Test
    void monitorThatIsContentNeedsNoResistor() {
        assertThat(run("monitor.threshold", "100 mA").out()).contains("The monitor needs no load resistor.");
        assertThat(figures())
                .containsEntry("monitor with the LED lamp alone", "reports a healthy lamp")
                .doesNotContainKey("load resistance fitted");
    }

    @Test
    void givenPartsAreTakenAsTheyAre() {
        // AWG 18 solid: 20.95 mohm/m at 20 °C; 6.8 ohm given
        Program run = run(
                "resistor.resistance", "6.8 ohm",
                "harness.conductor", "awg",
                "harness.gauge", "18",
                "harness.temperature", "20 °C",
                "harness.return", "body",
                "flasher.kind", "thermal");
        assertThat(run.err()).startsWith(folder.resolve("scenario.properties") + ": ");
        Program.write(
                folder.resolve("scenario.properties"),
                text().replaceAll("(?m)^(harness.area|flasher.error-rate|resistor.series) .*$", ""));
        run = Program.into(
                results(),
                "circuit",
                "--scenario",
                folder.resolve("scenario.properties").toString());
        assertThat(run.err()).isEmpty();
        assertThat(figure("load resistance fitted")).isEqualTo(6.8);
        assertThat(figure("resistance there and back with contacts")).isCloseTo(6 * 0.02095 + 0.03, within(0.0002));
        assertThat(run.out()).contains("With 2 LED lamps alone it does not flash; not surely lawful.");
    }

    private String text() {
        try {
            return Files.readString(folder.resolve("scenario.properties"));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void resistorWithoutItsHeatSinkIsBeyondItsRating() {
        // 200 - 50 K over 17 K/W: 8.82 W allowed, 32.9 W drawn
        assertThat(run("resistor.surface-to-ambient", "13 K/W", "resistor.element-to-surface", "4 K/W")
                        .out())
                .contains("beyond its rating");
        assertThat(figure("power its rating allows without pause")).isCloseTo(8.82, within(0.01));
        assertThat(figures()).containsEntry("rating under a held brake", "beyond its rating");
    }

    static Stream<String> keys() {
        return Stream.of(Heading.KEYS, FilamentInput.RATING, CircuitKeys.KEYS).flatMap(keys -> keys.names().stream());
    }

    @ParameterizedTest
    @MethodSource("keys")
    void shippedScenarioShowsEachKey(String key) {
        assertThat(Pattern.compile("(?m)^(# )?" + Pattern.quote(key) + " = \\S")
                        .matcher(Resource.text(CircuitScenario.SHIPPED))
                        .results())
                .hasSize(1);
    }

    @Test
    void printedScenarioIsTheShippedOne() {
        assertThat(Program.run("circuit", "--print-scenario").out()).isEqualTo(Resource.text(CircuitScenario.SHIPPED));
        assertThat(Program.run("circuit", "--help").out()).contains("load resistor", "stoplag-results/circuit");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        led.current        | 220 V     | current "220 V": "V" is a unit of voltage; use one of A, mA, µA (uA), nA (allowed: [0.001, 20] A)
        monitor.tolerance  | 120 %     | must be in [0, 0.9], got 1.2
        supply.nominal     | 8 V       | must lie between supply.lowest = 9 V and supply.highest = 16 V
        stop-lamps         | 2.5       | must be a whole number
        stop-lamps         | two       | number "two": not a number; write it like 1.5 or 1.5e-3; use a plain number (allowed: [1, 20])
        resistor.surface-to-ambient | 3.5 | thermal resistance "3.5": missing unit; use K/W (allowed: (0, 1000] K/W)
        filament.bulb      | P99W      | bulb must be one of
        harness.conductor  | string    | must be one of iec-60228-class-2, iec-60228-class-5, iso-6722, solid, awg
        flasher.kind       | clockwork | must be one of load-measuring, thermal, load-independent
        flasher.gears      | 3         | unknown key; the keys are
        harness.gauge      | 18        | is not used: it does not belong to the harness.conductor of this file
        filament.design-power | 26 W   | is not used: filament.bulb names a bulb of the catalogue, which has its own rating
        """)
    void badValueIsOneLineAndNothingIsWritten(String key, String value, String complaint) {
        Program run = run(key, value);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err())
                .startsWith(folder.resolve("scenario.properties") + ": " + key + " = " + value + ": " + complaint)
                .hasLineCount(1);
        assertThat(run.out()).isEmpty();
        assertThat(results()).doesNotExist();
    }

    @Test
    void diodeTooHotForAnyTemperatureNamesItsKeys() {
        Program run = run(
                "diode.junction-to-ambient", "1000 K/W", "diode.currents", "0.1 A, 0.2 A", "diode.drops", "9 V, 9.9 V");
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err())
                .startsWith(folder.resolve("scenario.properties")
                        + ": diode.junction-to-ambient and diode.drops: temperature must be in (0, 20000] K, got ")
                .hasLineCount(1);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        harness.area   | 0.8 mm^2    | harness.conductor = iec-60228-class-5, harness.area = 0.8 mm^2: cross-section of IEC 60228 class 5 must be one of 0.5, 0.75, 1, 1.5, 2.5, 4, 6 mm², got 0.8 mm²
        diode.currents | 3 A, 2 A    | diode.currents = 3 A, 2 A, diode.drops = 0.525 V, 0.95 V: diode current 1 must be in (3, 100000] A, got 2 A
        resistor.element-to-surface | 1000 K/W | resistor.element-to-surface = 1000 K/W, resistor.surface-to-ambient = 3.5 K/W: temperature must be in (0, 20000] K, got 33
        resistor.surface-to-ambient | 1000 K/W | resistor.element-to-surface = 0 K/W, resistor.surface-to-ambient = 1000 K/W: temperature must be in (0, 20000] K, got 33
        harness.contacts | 100 ohm   | supply.highest = 16 V through harness.length and harness.contacts, 100.
        diode.currents | 3 A         | diode.currents = 3 A, diode.drops = 0.525 V, 0.95 V: a diode table needs as many voltages as currents
        """)
    void partsThatDoNotGoTogetherAreNamed(String key, String value, String complaint) {
        Program run = run(key, value);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err())
                .startsWith(folder.resolve("scenario.properties") + ": " + complaint)
                .hasLineCount(1);
        assertThat(results()).doesNotExist();
    }
}
