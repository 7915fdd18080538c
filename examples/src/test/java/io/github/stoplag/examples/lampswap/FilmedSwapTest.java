package io.github.stoplag.examples.lampswap;

import static io.github.stoplag.examples.lampswap.LampSwapRunTest.number;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.github.stoplag.examples.Program;
import io.github.stoplag.lamp.Darkening;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lamps of the program {@code film} in a swap: here modelled lamps with a band of known width. */
class FilmedSwapTest {
    private static final FilamentOnset FILAMENT = FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26))
            .build()
            .switchOn(SupplyConditions.of(Voltage.volts(12.8)));
    private static final LedLamp LED = LedLamp.of(TimeSpan.millis(10), TimeSpan.millis(2));
    private static final double HALF_S = 0.003;
    private static final double MPS = 26.8224;
    private static final String SCENARIO = """
        title = filmed lamps
        speeds = 60 mph
        following.gap = 40 m
        leader.deceleration = 6 m/s^2
        follower.deceleration = 6 m/s^2
        follower.reaction = 1 s
        """;

    @TempDir
    Path folder;

    @BeforeEach
    void film() throws IOException {
        Path film = Files.createDirectory(folder.resolve("my film"));
        StringBuilder curves = new StringBuilder("lamp,direction,level,time_s,lo_s,hi_s\n");
        curve(curves, "filament", FILAMENT);
        curve(curves, "led", LED);
        goingOut(curves, Darkening.of(FILAMENT.lamp().switchOff(FILAMENT.conditions())));
        Files.writeString(film.resolve("curves.csv"), curves.append("led,off,0.5,0.001,0,0.002\n"));
        Files.writeString(
                film.resolve("caveats.csv"),
                "lamp,caveat\n,the film is short\nfilament,\"the filament lamp, alone, clips\"\nled,led is quick\n");
    }

    private static void curve(StringBuilder curves, String lamp, OnsetCurve onset) {
        for (double level = 0.002; level < 0.999; level += 0.004) {
            double timeS = onset.timeToLevelS(level).orElseThrow();
            curves.append(String.format(
                    Locale.ROOT, "%s,on,%.4f,%.7f,%.7f,%.7f\n", lamp, level, timeS, timeS - HALF_S, timeS + HALF_S));
        }
    }

    private static void goingOut(StringBuilder curves, OnsetCurve dark) {
        for (double gone = 0.002; gone < 0.999; gone += 0.004) {
            double timeS = dark.timeToLevelS(gone).orElseThrow();
            curves.append(String.format(
                    Locale.ROOT,
                    "filament,off,%.4f,%.7f,%.7f,%.7f\n",
                    1 - gone,
                    timeS,
                    timeS - HALF_S,
                    timeS + HALF_S));
        }
    }

    /** A lamp whose film shows it going out is seen dark when the model is that the film was made of. */
    @Test
    void filmedLampGoesOutAsItsFilmShows() {
        Program run = run("""
            lamp.1 = filmed my film, filament, 60 cd
            lamp.2 = filmed my film, led, 60 cd
            supply.voltage = 12.8 V
            filament.lens = clear
            filament.design-voltage = 13.5 V
            filament.design-power = 26 W
            filament.intensity = 72.1 cd
            lamp.present = filament
            """);
        assertThat(run.err()).isEmpty();
        String out = run.out().replaceAll("\\s+", " ");
        assertThat(out)
                // the film's band is 3 ms to both sides at every level, so that of the moment seen dark is too
                .containsPattern(
                        " filament ([0-9]+ ms) 74 ms 79 ms lamp 1 \\1 74 ms .71 ms to 77 ms. 79 ms .76 ms to 82 ms.")
                .contains("lamp 2 not known not known", "Of a filmed lamp the 95 % interval");
    }

    private Program run(String lamps) {
        Path file = Program.write(folder.resolve("scenario.properties"), SCENARIO + lamps);
        return Program.lampSwap(folder.resolve("results"), "--scenario", file.toString());
    }

    /** The gap needed of two vehicles that brake alike is speed times delay, so that its interval is the moment's. */
    @Test
    void intervalOfTheFilmGoesThroughToMetres() throws IOException {
        Program run = run("""
            lamp.1 = filmed my film, filament, 60 cd
            lamp.2 = filmed my film/moments.csv, led, 60 cd
            lamp.3 = led 20 ms, 2 ms, 60 cd
            """);
        assertThat(run.err()).isEmpty();
        List<NamedCsvRecord> rows = Program.csv(folder.resolve("results").resolve("uncertainty.csv"));
        for (NamedCsvRecord row : rows.subList(0, 2)) {
            double seenS = number(row, "detected_s");
            assertThat(number(row, "detected_lo_s")).isCloseTo(seenS - HALF_S, within(2e-5));
            assertThat(number(row, "detected_hi_s")).isCloseTo(seenS + HALF_S, within(2e-5));
            assertThat(number(row, "detected_standard_uncertainty_s")).isCloseTo(HALF_S / 1.96, within(2e-5));
            assertThat(number(row, "gap_needed_hi_m") - number(row, "gap_needed_lo_m"))
                    .isCloseTo(MPS * 2 * HALF_S, within(2e-3));
        }
        // both lamps are filmed: nothing common is assumed
        assertThat(number(rows.get(0), "extra_distance_hi_m") - number(rows.get(0), "extra_distance_lo_m"))
                .isCloseTo(MPS * 2 * HALF_S * Math.sqrt(2), within(2e-3));
        // the modelled lamp has no interval, and is seen when its film is
        assertThat(rows.get(2).getField("detected_hi_s")).isEmpty();
        assertThat(number(rows.get(2), "detected_s")).isCloseTo(number(rows.get(1), "detected_s") + 0.01, within(1e-4));
        assertThat(run.out())
                .containsPattern("seen [0-9.]+ ms earlier, [0-9.]+ to [0-9.]+ ms, standard uncertainty 2.2 ms")
                .contains("Caveat: the film: it is short", "Caveat: the film: the filament lamp, alone, clips");
        for (String page : List.of("summary.html", "report.html")) {
            assertThat(Files.readString(folder.resolve("results").resolve(page)))
                    .contains(
                            "lamp 1: the film: the filament lamp, alone, clips",
                            "lamp 1, lamp 2: the film: it is short")
                    .doesNotContain("lamp 1: the film: led is quick");
        }
    }

    /** A gap between those needed at both ends of the interval: the outcome may be either. */
    @Test
    void anOutcomeThatTheFilmDoesNotSettleIsSaidAsBoth() {
        run("lamp.1 = filmed my film, filament, 60 cd\nlamp.2 = led 10 ms, 2 ms, 60 cd\n");
        double neededM = number(Program.summary(folder.resolve("results")).get(0), "gap_needed_m");
        Path file = Program.write(
                folder.resolve("edge.properties"),
                SCENARIO.replace("40 m", neededM + 0.01 + " m")
                        + "lamp.1 = filmed my film, filament, 60 cd\nlamp.2 = led 10 ms, 2 ms, 60 cd\n");
        assertThat(Program.lampSwap(folder.resolve("edge"), "--scenario", file.toString())
                        .out()
                        .replaceAll("\\s+", " "))
                .contains("left (or contact)")
                .containsPattern("no contact, 0.01 m .* in the interval from no contact, 0.0[0-9] m .* left,"
                        + " to contact, closing at");
    }

    /** The rise is the film's, the candela the lamp's own: at design voltage, on the supply, for a bulb. */
    @Test
    void anyLampMayTakeItsRiseFromAFilm() {
        String rest = """
            supply.voltage = 12 V
            filament.design-voltage = 13.5 V
            filament.design-power = 26 W
            filament.intensity = 60 cd
            led.rise-time = 1 ms
            led.intensity = 40 cd
            lamp.1 = filament 13.5 V, 26 W, 60 cd
            """;
        Program modelled = run(rest);
        Program filmed = run(rest + "led.film = my film, led\nlamp.1.film = my film, filament\n");
        assertThat(filmed.err()).isEmpty();
        String bulb = "(?m)^  lamp 1 .* ([0-9.]+) cd$";
        assertThat(filmed.out().replaceAll("(?s).*" + bulb + ".*", "$1"))
                .isEqualTo(modelled.out().replaceAll("(?s).*" + bulb + ".*", "$1"));
        assertThat(filmed.out()).containsPattern("(?m)^  LED .* 40 cd$");
        NamedCsvRecord led = Program.summary(folder.resolve("results")).get(1);
        assertThat(number(led, "time_to_10pct_s"))
                .isCloseTo(LED.timeToLevelS(0.1).orElseThrow(), within(1e-4));
    }

    @ParameterizedTest
    @CsvSource({"20, 0.02", "0, 0"})
    void timeZeroCanBeMovedToTheClosingCircuit(String delayMs, double laterS) {
        String lamps = "lamp.1 = filmed my film, filament, 60 cd\nlamp.2 = led 10 ms, 2 ms, 60 cd\n";
        run(lamps);
        double seenS = number(Program.summary(folder.resolve("results")).get(0), "detected_s");
        run(lamps + "film.zero-delay = " + delayMs + " ms\n");
        assertThat(number(Program.summary(folder.resolve("results")).get(0), "detected_s"))
                .isCloseTo(seenS + laterS, within(2e-5));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        my film, 60 cd            | which lamp must be said behind the file, one of filament, led
        my film, brake, 60 cd     | the film has no lamp "brake" that comes on; it has filament, led
        none, led, 60 cd          | none: cannot be read: no such file
        scenario.properties, 60 cd | scenario.properties: line
        """)
    void badFilmIsNamed(String lamp, String complaint) {
        Program run = run("lamp.1 = led 10 ms, 2 ms, 60 cd\nlamp.2 = filmed " + lamp + "\n");
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains(complaint).hasLineCount(1);
        assertThat(folder.resolve("results")).doesNotExist();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        led,on,0.5,x,0,1      | line 2: time_s must be a number, got "x"
        led,up,0.5,0.1,0,1    | line 2: direction must be on or off, got "up"
        led,on,0.5,0.1        | line 2: must be 6 fields
        led,on,0.5,0.1,0,1    | levels of a banded onset must be in [3, 10000], got 1
        led,on,0.5,NaN,0,1    | got 1
        led,off,0.5,0.1,0,1   | no lamp of the film comes on
        """)
    void badCurveNamesLineAndValue(String row, String complaint) throws IOException {
        Files.writeString(folder.resolve("my film/curves.csv"), "lamp,direction,level,time_s,lo_s,hi_s\n" + row + "\n");
        Program run = run("lamp.1 = led 10 ms, 2 ms, 60 cd\nlamp.2 = filmed my film, led, 60 cd\n");
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("curves.csv: ", complaint).hasLineCount(1);
    }

    @Test
    void aFilmWithoutItsReservationsSaysSo() throws IOException {
        Files.delete(folder.resolve("my film/caveats.csv"));
        assertThat(run("lamp.1 = filmed my film, filament, 60 cd\nlamp.2 = led 10 ms, 2 ms, 60 cd\n")
                        .out())
                .contains("Caveat: the film's own reservations, caveats.csv, are not beside curves.csv");
    }
}
