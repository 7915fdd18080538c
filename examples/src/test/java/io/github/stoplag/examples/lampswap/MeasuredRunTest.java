package io.github.stoplag.examples.lampswap;

import static io.github.stoplag.examples.lampswap.LampSwapRunTest.number;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.github.stoplag.examples.Program;
import io.github.stoplag.quantity.Distance;
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
        assertThat(rows.stream().map(row -> row.getField("lamp"))).containsExactly("measured", "LED");
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

    @Test
    void filmIsNeitherInventedNorMixedWithTheModelledFilament() throws IOException {
        Path film = Program.write(
                folder.resolve("film.csv"), "time_s,relative_brightness\n-1e-1,0\n0.0,+.0\n0.1,0.2\n0.2,0.5\n");
        Path results = folder.resolve("results");
        Program run = Program.lampSwap(results, "--measured", film.toString());
        assertThat(run.err()).isEmpty();
        // the scenario's 60 cd times the half at which the film ends
        assertThat(run.out()).containsPattern("(?m)^  measured .* 30 cd$").containsPattern("(?m)^  LED .* 60 cd$");
        String page = Files.readString(results.resolve("report.html"));
        assertThat(page)
                .contains("the measured lamp is the one filmed", "30 cd = 60 cd times 0.5, where the film ends")
                .doesNotContain("traffic and lamps of this scenario are made up");
        Matcher unused = Pattern.compile("<td>([a-z.-]+)</td><td>[^<]*</td><td>not used: a filmed lamp takes its place")
                .matcher(page.replaceAll(">\\s+<", "><"));
        assertThat(unused.results().map(row -> row.group(1)))
                .containsExactlyInAnyOrder(
                        "filament.bulb",
                        "filament.design-voltage",
                        "filament.design-power",
                        "filament.temperature",
                        "filament.gas-loss-share",
                        "filament.coil-factor",
                        "filament.lens",
                        "supply.voltage",
                        "supply.series-resistance",
                        "ambient.temperature");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            time;brightness                  | line 1: header must be "time_s,relative_brightness", got "time;brightness"
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
