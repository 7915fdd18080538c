package io.github.stoplag.examples.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.examples.Program;
import io.github.stoplag.examples.file.InputException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tables of grey values as users have them. */
class FilmTableTest {
    private static final int FRAMES = 90;

    @TempDir
    Path folder;

    private static String table(String header, String separator, double unit, String decimal) {
        StringBuilder text = new StringBuilder(header + "\n");
        for (int i = 0; i < FRAMES; i++) {
            String row = String.format(
                    Locale.ROOT, "%.3f%s%d%s%.1f\n", unit * i / 100, separator, i < 40 ? 20 : 200, separator, i + 0.5);
            text.append(row.replace(".", decimal));
        }
        return text.toString();
    }

    private Path file(String content) throws IOException {
        return Files.write(folder.resolve("grey.csv"), content.getBytes(StandardCharsets.UTF_8));
    }

    /** Frame 50 is at 0.5 s whatever the unit, and the second lamp shows 50.5 there. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        time_s,led,lamp           | 1       | ,
        time (s),led [grey],lamp  | 1       | ,
        Time [ms],led,lamp        | 1000    | ,
        time_ms;led;lamp          | 1000    | ;
        time_us,led,lamp          | 1000000 | ,
        t (s),led,lamp            | 1       | ,
        """)
    void unitsAndSeparatorsOfTheHeaderAreRead(String header, double unit, String separator) throws IOException {
        String text = table(header, separator, unit, separator.equals(";") ? "," : ".");
        for (String variant : new String[] {
            text,
            "\uFEFF" + text,
            text.replace("\n", "\r\n"),
            "# a comment\n\n" + text,
            text.replace(separator, " " + separator + " ")
        }) {
            GreyTable table = GreyTable.read(file(variant), List.of());
            assertThat(table.lamps()).extracting(LampSeries::name).containsExactly("led", "lamp");
            assertThat(table.lamps().get(1).series().stampS(50)).isCloseTo(0.5, within(1e-9));
            assertThat(table.lamps().get(1).series().grey(50)).isEqualTo(50.5);
        }
    }

    @Test
    void columnsThatAreNoLampsAreLeftOut() throws IOException {
        Path file = file(table("time_s,note,lamp", ",", 1, ".").replaceAll("(?m)^([0-9.]+),[0-9.]+,", "$1,ok,"));
        assertThat(GreyTable.read(file, List.of("lamp")).lamps())
                .extracting(LampSeries::name)
                .containsExactly("lamp");
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> GreyTable.read(file, List.of()))
                .withMessageContaining("got \"ok\"; name the columns that are lamps by --lamp");
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> GreyTable.read(file, List.of("led")))
                .withMessageContaining("has the columns note, lamp; of a table give only the name of a column");
    }

    @Test
    void tabulatorsSeparateToo() throws IOException {
        GreyTable table = GreyTable.read(file(table("time_s\tled\tlamp", "\t", 1, ".")), List.of());
        assertThat(table.lamps().get(0).series().size()).isEqualTo(FRAMES);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        0.500,200,50.5 | 0.500,200,      | line 52: grey value must be a number, got ""
        0.500,200,50.5 | 0.500,NaN,50.5  | line 52: grey value must be a number, got "NaN"
        0.500,200,50.5 | 0.500,1e400,1   | line 52: grey of frame 50 must be in [-1e9, 1e9], got Infinity
        0.500,200,50.5 | 0.500,1.200,00,1 | line 52: must have 3 fields, got 4
        0.500,200,50.5 | 0.490,200,50.5  | line 52: time stamp of frame 50 must be after that of frame 49, 0.49 s, got 0.49 s
        0.500,200,50.5 | 0.100,200,50.5  | line 52: time stamp of frame 50 must be after that of frame 49, 0.49 s, got 0.1 s
        time_s,led     | 0.000,20        | line 1: name of a lamp must be
        time_s,led     | time_s,lamp     | line 1: two columns have the name "lamp"
        time_s,led     | hours,led       | line 1: header must be "frame" or "time_s"
        """)
    void badCellNamesLineAndValue(String good, String bad, String complaint) throws IOException {
        Path file = file(table("time_s,led,lamp", ",", 1, ".").replace(good, bad));
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> GreyTable.read(file, List.of()))
                .withMessageContaining("grey.csv: " + complaint);
    }

    private static String lamps(IntToDoubleFunction lamp) {
        StringBuilder text = new StringBuilder("frame,lamp\n");
        for (int i = 0; i < 60; i++) {
            if (i < 10 || i > 14) {
                text.append(String.format(Locale.ROOT, "%d,%.2f\n", i, lamp.applyAsDouble(i)));
            }
        }
        return text.toString();
    }

    /** A lamp that rises from the first frame on and until the last, with frames missing. */
    @Test
    void whatAFilmDoesNotShowStandsBesideItsNumbers() throws IOException {
        Path film = file(lamps(i -> 200 - 180 * Math.exp(-i / 15.0)));
        Program run = Program.into(
                folder.resolve("results"),
                "film",
                "--film",
                film.toString(),
                "--taken-at",
                "480",
                "--black",
                "0",
                "--white",
                "255");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out().replaceAll("\\s+", " "))
                .contains(
                        "before lamp comes on: it may have begun earlier",
                        "after lamp comes on the film shows it for ",
                        "of frames 0 to 59 only 55 are there; the longest gap is from frame 9 to 15");
        assertThat(Files.readString(folder.resolve("results/caveats.csv"))).contains("it may have begun earlier");
    }

    @Test
    void regionsThatOverlapAreTold() {
        assertThat(LampRegion.overlaps(List.of(
                        LampRegion.parse("a=0,0,10,10"),
                        LampRegion.parse("b=10,0,5,5"),
                        LampRegion.parse("c=9,9,3,3"))))
                .containsExactly("the regions of lamps a and c overlap: each counts light of the other");
    }
}
