package io.github.stoplag.examples.lampswap;

import static io.github.stoplag.examples.lampswap.LampSwapRunTest.number;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.github.stoplag.examples.Program;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.Lens;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Voltage;
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

class MeasuredRunTest {
    @TempDir
    Path folder;

    /** Common practice, no source: what a lamp's lag is worth in distance. */
    @ParameterizedTest
    @CsvSource({
        "0.13, 60 mph, 11.5 ft, 0.1",
        "0.2, 30 mph, 8 ft 10 in, 0.05",
        "0.2, 60 mph, 17 ft 7 in, 0.05",
        "0.2, 50 mph, 15 ft, 0.4",
        "0.2, 80 km/h, 4.5 m, 0.2"
    })
    void lagIsWorthTheDistanceThatTheTradeQuotes(String lagS, String speed, String distance, double toleranceFeet) {
        Path film =
                Program.write(folder.resolve("film.csv"), "time_s,relative_brightness\n0,0\n" + lagS + ",0.1\n0.5,1\n");
        Path scenario = Program.scenario(
                folder, "speeds", speed, "detector", "share", "led.driver-delay", "0 s", "led.rise-time", "0 s");
        Path results = folder.resolve("results");
        Program run = Program.lampSwap(results, "--measured", film.toString(), "--scenario", scenario.toString());

        assertThat(run.err()).isEmpty();
        List<NamedCsvRecord> rows = Program.summary(results);
        assertThat(rows.stream().map(row -> row.getField("lamp")))
                .containsExactly("measured", "LED", "slow LED", "mixed set");
        assertThat(number(rows.get(0), "detected_s")).isCloseTo(Double.parseDouble(lagS), within(1e-5));
        assertThat(number(rows.get(0), "extra_distance_ft"))
                .isCloseTo(Distance.parse(distance).inFeet(), within(toleranceFeet));
        assertThat(rows.get(1).getField("detector")).isEqualTo("10 % of final intensity");
    }

    @Test
    void filmThatEndsTooEarlyLeavesTheNinetyPercentFieldEmpty() {
        Path film = Program.write(
                folder.resolve("film.csv"),
                "# filmed at dusk, invented\ntime_s,relative_brightness\n0,0\n0.1,0.4\n\n0.2,0.7\n");
        Path results = folder.resolve("results");
        Program run = Program.lampSwap(results, "--measured", film.toString());
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).contains("Caveat: samples end at 0.7 of the final intensity");
        NamedCsvRecord row = Program.summary(results).get(0);
        assertThat(number(row, "time_to_10pct_s")).isCloseTo(0.025, within(1e-5));
        assertThat(row.getField("time_to_90pct_s")).isEmpty();
    }

    /** The same film as a spreadsheet may save it. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            time_s,relative_brightness~0,0~0.1,0.4~0.3,1
            time_ms,relative_brightness (%)~0,0~100,40~300,100
            time (s);relative_brightness~0;0~0,1;0,4~0,3;1
            """)
    void spreadsheetsAreReadByTheirHeader(String content) {
        Path film = Program.write(folder.resolve("film.csv"), "\uFEFF" + content.replace("~", "\r\n"));
        Path results = folder.resolve("results");
        assertThat(Program.lampSwap(results, "--measured", film.toString()).err())
                .isEmpty();
        NamedCsvRecord row = Program.summary(results).get(0);
        assertThat(number(row, "time_to_10pct_s")).isCloseTo(0.025, within(1e-5));
        assertThat(number(row, "time_to_90pct_s")).isCloseTo(0.1 + 0.2 * 5 / 6, within(1e-5));
    }

    @Test
    void filmIsNeitherInventedNorMixedWithTheModelledFilament() throws IOException {
        Path film = Program.write(
                folder.resolve("film.csv"), "time_s,relative_brightness\n-1e-1,0\n0.0,+.0\n0.1,0.2\n0.2,0.5\n");
        Path results = folder.resolve("results");
        Program run = Program.lampSwap(results, "--measured", film.toString());
        assertThat(run.err()).isEmpty();
        // the scenario's 60 cd at design voltage, on its supply, times the half at which the film ends
        double onSupplyCd = candela(Program.lampSwap(folder.resolve("modelled")), "filament");
        assertThat(onSupplyCd).isBetween(30.0, 60.0);
        assertThat(candela(run, "measured")).isCloseTo(onSupplyCd / 2, within(0.1));
        assertThat(run.out()).containsPattern("(?m)^  LED .* 60 cd$");
        assertThat(Files.readString(results.resolve("report.html")))
                .contains(
                        "filmed: measured.",
                        "at design voltage times the model's light on this supply, times 0.5, where the film ends")
                .doesNotContain("traffic and lamps of this scenario are made up");
    }

    /** The stated intensity means the same whether the lamp is modelled or filmed. */
    @Test
    void theSameLampFilmedGainsWhatTheModelGains() {
        FilamentOnset lamp = FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26))
                .build()
                .switchOn(SupplyConditions.of(Voltage.volts(12)).withLens(Lens.RED));
        StringBuilder film = new StringBuilder("time_s,relative_brightness\n");
        for (int ms = 0; ms <= 1000; ms++) {
            film.append(ms / 1000.0)
                    .append(',')
                    .append(lamp.relativeIntensity(ms / 1000.0))
                    .append('\n');
        }
        Path scenario = Program.scenario(
                folder,
                "filament.design-voltage",
                "13.5 V",
                "filament.design-power",
                "26 W",
                "supply.voltage",
                "12 V",
                "supply.series-resistance",
                "0 ohm",
                "ambient.temperature",
                "300 K");
        Path csv = Program.write(folder.resolve("film.csv"), film.toString());
        Path modelled = folder.resolve("modelled");
        Path filmed = folder.resolve("filmed");
        assertThat(Program.lampSwap(modelled, "--scenario", scenario.toString()).err())
                .isEmpty();
        assertThat(Program.lampSwap(filmed, "--scenario", scenario.toString(), "--measured", csv.toString())
                        .err())
                .isEmpty();
        assertThat(number(Program.summary(filmed).get(0), "detected_s"))
                .isCloseTo(number(Program.summary(modelled).get(0), "detected_s"), within(2e-5));
    }

    private static double candela(Program run, String lamp) {
        Matcher row = Pattern.compile("(?m)^  " + lamp + " .* ([0-9.]+) cd$").matcher(run.out());
        assertThat(row.find()).isTrue();
        return Double.parseDouble(row.group(1));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            time;brightness                  | line 1: header must be "time_s,relative_brightness", got "time,brightness"
            time_s,relative_brightness;0     | line 2: must have 2 fields (time_s, relative_brightness), got 1 in "0"
            time_s,relative_brightness;0,x   | line 2: relative_brightness must be a number in [-0.2, 1.2], got "x"
            time_s,relative_brightness;0,0;0.1,55 | line 3: relative_brightness must be a number in [-0.2, 1.2], got "55"
            time_s,relative_brightness;0,0x1p-2 | line 2: relative_brightness must be a number in [-0.2, 1.2], got "0x1p-2"
            time_s,relative_brightness;0,0.5d | line 2: relative_brightness must be a number in [-0.2, 1.2], got "0.5d"
            time_s,relative_brightness;1f,0  | line 2: time_s must be a number in [-60, 60], got "1f"
            time_s,relative_brightness;0,NaN | line 2: relative_brightness must be a number in [-0.2, 1.2], got "NaN"
            time_s,relative_brightness;0.1,0;0.1,1 | line 3: time_s must be later than in the row before, 0.1 s, got 0.1 s
            time_s,relative_brightness;0,0   | a measured onset must have at least 2 samples, got 1
            """)
    void badRowNamesFileLineValueAndRange(String content, String complaint) {
        String text = content.startsWith("time;") ? content : content.replace(';', '\n');
        Path film = Program.write(folder.resolve("film.csv"), text);
        Program run = Program.lampSwap(folder.resolve("results"), "--measured", film.toString());
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).isEqualTo(film + ": " + complaint + System.lineSeparator());
        assertThat(run.out()).isEmpty();
        assertThat(folder.resolve("results")).doesNotExist();
    }
}
