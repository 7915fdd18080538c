package io.github.stoplag.examples.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.github.stoplag.examples.Pictures;
import io.github.stoplag.examples.Program;
import io.github.stoplag.film.Camera;
import io.github.stoplag.film.GreySeries;
import io.github.stoplag.film.LightCourse;
import io.github.stoplag.film.Sensor;
import io.github.stoplag.film.SimulatedCamera;
import io.github.stoplag.film.TransferCurve;
import io.github.stoplag.quantity.TimeSpan;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/** The program {@code film} from its options to its files. */
class FilmRunTest {
    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path folder;

    private static double truthS(double level) {
        return InventedFilm.FILAMENT.timeToLevelS(level).orElseThrow()
                - InventedFilm.LED.timeToLevelS(0.01).orElseThrow();
    }

    private static NamedCsvRecord row(Path results, String lamp, String direction, String moment) {
        return Program.csv(results.resolve("moments.csv")).stream()
                .filter(row -> row.getField("lamp").equals(lamp)
                        && row.getField("direction").equals(direction)
                        && row.getField("moment").equals(moment))
                .findFirst()
                .orElseThrow();
    }

    private static double number(NamedCsvRecord row, String column) {
        return Double.parseDouble(row.getField(column));
    }

    /** Of so many intervals of 95 % one may well miss, and all of a direction with it: here by less than u. */
    private static void assertCovered(Path results, String direction, String moment, double truthS) {
        NamedCsvRecord row = row(results, "filament", direction, moment);
        double u = number(row, "standard_uncertainty_s");
        assertThat(truthS).as("%s %s", direction, moment).isBetween(number(row, "lo_s") - u, number(row, "hi_s") + u);
    }

    /**
     * The truths are the moments of the modelled lamps' own curves when the film was made, of which the reading knows
     * nothing.
     */
    @Test
    void theShippedFilmGivesTheMomentsOfTheLampsThatWereFilmed() throws Exception {
        Path results = folder.resolve("results");
        Program run = Program.into(results, "film");
        assertThat(run.err()).doesNotContain("Exception");
        assertThat(run.exitCode()).isZero();
        assertThat(Program.csv(results.resolve("moments.csv")).get(0).getHeader())
                .containsExactly(
                        "lamp", "direction", "moment", "time_s", "standard_uncertainty_s", "lo_s", "hi_s", "coverage");
        assertCovered(results, "on", "level_1pct", 0.03456);
        assertCovered(results, "on", "level_10pct", 0.06256);
        assertCovered(results, "on", "level_50pct", 0.12069);
        assertCovered(results, "off", "level_50pct", 0.02301);
        assertCovered(results, "off", "level_10pct", 0.08439);
        assertCovered(results, "on", "level_90pct", 0.22060);
        for (String picture : List.of("on.svg", "off.svg", "regions.svg", "stills_on.svg", "stills_off.svg")) {
            String svg = Files.readString(results.resolve(picture));
            assertThat(Pictures.title(svg)).contains("invented data");
        }
        String page = Files.readString(results.resolve("film.html"));
        Pictures.assertIdsStandOnce(Pictures.parse(page));
        assertThat(page).contains("invented data", "Load resistors get hot");
    }

    @Test
    @EnabledIfSystemProperty(named = "stoplag.film", matches = "make", disabledReason = "takes long: coding of a film")
    void aFilmLikeTheShippedOneCanBeMade() throws IOException {
        Path made = folder.resolve("made.mp4");
        InventedFilm.write(made, InventedFilm.QUALITY);
        assertThat(Files.size(made)).isLessThan(300_000);
        Path results = folder.resolve("results");
        Program.into(
                results,
                "film",
                "--film",
                made.toString(),
                "--taken-at",
                "120",
                "--exposure",
                "1/240",
                "--transfer",
                "BT.709",
                "--row-time",
                "0 s",
                "--lamp",
                ShippedFilm.FILAMENT.text(),
                "--lamp",
                ShippedFilm.LED.text());
        assertCovered(results, "on", "level_10pct", truthS(0.1));
        assertCovered(results, "on", "level_50pct", truthS(0.5));
    }

    private Path table(String header, boolean stamped, double unit) {
        Camera camera = Camera.takenAt(120)
                .exposure(TimeSpan.seconds(1 / 240.0))
                .transfer(TransferCurve.SRGB)
                .build();
        SimulatedCamera film = SimulatedCamera.of(camera, Sensor.USUAL);
        GreySeries led =
                film.film("led", LightCourse.onset(InventedFilm.LED, 0.01, 0.6), TimeSpan.seconds(-0.2), 140, 5);
        GreySeries bulb =
                film.film("bulb", LightCourse.onset(InventedFilm.FILAMENT, 0.01, 0.6), TimeSpan.seconds(-0.2), 140, 5);
        StringBuilder text = new StringBuilder(header);
        for (int i = 0; i < led.size(); i++) {
            text.append(stamped ? String.valueOf(led.stampS(i)) : String.valueOf(i))
                    .append(String.format(Locale.ROOT, ",%.4f,%.4f\n", unit * led.grey(i), unit * bulb.grey(i)));
        }
        return Program.write(folder.resolve("grey values.csv"), text.toString());
    }

    /** The truths are the modelled lamps' own; a mark is checked by its frames. */
    @Test
    void aTableOfGreyValuesGivesTheMomentsOfTheLampsAndMarksOfItsFrames() {
        Path results = folder.resolve("results");
        Path marks = Program.write(folder.resolve("marks.csv"), """
                lamp,direction,mark,judge,frame_before,frame
                bulb,on,first,a,28,29
                led,on,first,a,24,25
                """);
        Program run = Program.into(
                results,
                "film",
                "--film",
                table("frame,led,bulb\n", false, 257).toString(),
                "--taken-at",
                "120",
                "--exposure",
                "1/240",
                "--transfer",
                "sRGB",
                "--row-time",
                "0 s",
                "--marks",
                marks.toString(),
                "--criterion",
                "detector.share.level=50 %");
        assertThat(run.err()).isEmpty();
        for (double level : new double[] {0.1, 0.5, 0.9}) {
            NamedCsvRecord row = row(results, "bulb", "on", "level_" + Math.round(100 * level) + "pct");
            assertThat(truthS(level)).isBetween(number(row, "lo_s") - 0.0005, number(row, "hi_s") + 0.0005);
        }
        assertThat(number(row(results, "bulb", "on", "seen_share"), "time_s"))
                .isCloseTo(number(row(results, "bulb", "on", "level_50pct"), "time_s"), within(0.001));
        assertThat(run.out()).contains("which grey values are black and white is not known");
        List<NamedCsvRecord> rows = Program.csv(results.resolve("marks.csv"));
        assertThat(rows).extracting(row -> row.getField("moment")).containsExactly("marked_first", "marked_first");
        // frame 28.5 of 120 a second, the film begins 200 ms before switch-on, end of an exposure of 1/240 s
        double zeroS = InventedFilm.LED.timeToLevelS(0.01).orElseThrow();
        assertThat(number(rows.get(0), "time_s")).isCloseTo(28.5 / 120 + 1 / 240.0 - 0.2 - zeroS, within(0.003));
        assertThat(number(rows.get(0), "standard_uncertainty_s")).isBetween(0.5 / 120 / Math.sqrt(3), 0.0035);
        NamedCsvRecord between = Program.csv(results.resolve("differences.csv")).stream()
                .filter(row -> row.getField("moment").equals("marked_first"))
                .findFirst()
                .orElseThrow();
        assertThat(number(between, "time_s")).isCloseTo(4 / 120.0, within(1e-6));
        assertThat(number(between, "standard_uncertainty_s")).isCloseTo(1 / 120.0 / Math.sqrt(6), within(1e-6));
    }

    private void assertRefused(String message, String... options) {
        Path results = folder.resolve("results");
        Program run = Program.into(results, "film", options);
        assertThat(run.exitCode()).as(run.err()).isEqualTo(2);
        assertThat(run.err()).contains(message).hasLineCount(1);
        assertThat(results).doesNotExist();
    }

    @Test
    void badInputIsRefusedInOneLineAndNothingIsWritten() throws IOException {
        Path film = Films.square(folder.resolve("a film.mp4"), 40, 60, n -> n < 20 ? 30 : 120);
        String path = film.toString();
        assertRefused(
                "region of lamp led must lie inside the picture of 64 x 48 pixels",
                "--film",
                path,
                "--lamp",
                "led=60,0,9,9");
        assertRefused("--lamp must be name=x,y,width,height", "--film", path, "--lamp", "led=1,2,3");
        assertRefused("two lamps have the same name", "--film", path, "--lamp", "a=1,1,3,3", "--lamp", "a=9,9,3,3");
        assertRefused("must change by more than", "--film", path, "--taken-at", "60", "--lamp", "led=0,0,9,9");
        assertRefused("frame rate taken must be", "--film", path, "--taken-at", "0", "--lamp", "led=16,16,16,16");
        assertRefused("there is no lamp \"x\"", "--film", path, "--taken-at", "60", "--reference", "x");
        assertRefused(
                "no lamp was found",
                "--film",
                Films.square(folder.resolve("dark.mp4"), 20, 60, n -> 30).toString());
        assertRefused(
                "cannot be read: no such file", "--film", folder.resolve("no").toString());
        String steady = table("frame,led,bulb\n", false, 1).toString();
        assertRefused("--taken-at is needed", "--film", steady);
        assertRefused("has the columns led, bulb", "--film", steady, "--taken-at", "120", "--lamp", "x");
        String bad = Program.write(folder.resolve("bad.csv"), "frame,led\n0,1\n1,dark\n")
                .toString();
        assertRefused("line 3: grey value must be a number, got \"dark\"", "--film", bad, "--taken-at", "120");
        String back = Program.write(folder.resolve("back.csv"), "frame,led\n1,1\n1,2\n")
                .toString();
        assertRefused("line 3: frames must be in order", "--film", back, "--taken-at", "120");
        assertRefused(
                "viewing.distance = 3 km: must be in [1, 2000] m, got 3000 m",
                "--film",
                steady,
                "--taken-at",
                "120",
                "--criterion",
                "viewing.distance=3 km");
        assertRefused(
                "line 2: first frame with a mark must be in [30, 1e9], got 29",
                "--film",
                steady,
                "--taken-at",
                "120",
                "--marks",
                Program.write(
                                folder.resolve("wrong.csv"),
                                "lamp,direction,mark,judge,frame_before,frame\nbulb,on,first,a,29,29\n")
                        .toString());
        assertRefused("'--exposure': time \"fast\"", "--film", steady, "--taken-at", "120", "--exposure", "fast");
        String headless =
                Program.write(folder.resolve("headless.csv"), "1,2\n3,4\n").toString();
        assertRefused("name of a lamp must be", "--film", headless, "--taken-at", "120");
    }

    @Test
    void lampsAreFoundAndToldInTheFormInWhichTheyAreGiven() throws IOException {
        Path film = Films.square(folder.resolve("found.mp4"), 60, 60, n -> n < 30 ? 30 : 150);
        Program run = Program.into(folder.resolve("results"), "film", "--film", film.toString(), "--taken-at", "240");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out().replaceAll("\\s+", " "))
                .contains(
                        "--lamp lamp1=16,16,16,16",
                        "the film plays at 60 frames/s, taken at 240",
                        "the film has one lamp");
    }
}
