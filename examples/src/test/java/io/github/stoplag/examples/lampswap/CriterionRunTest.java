package io.github.stoplag.examples.lampswap;

import static io.github.stoplag.examples.lampswap.LampSwapRunTest.number;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.github.stoplag.examples.Program;
import io.github.stoplag.examples.file.Resource;
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

/** The ways of {@code lamp-swap} to say when a lamp is seen, and its bulbs of the catalogue. */
class CriterionRunTest {
    @TempDir
    Path folder;

    private Path results() {
        return folder.resolve("results");
    }

    private Program run(String... keysAndValues) {
        return Program.lampSwap(
                results(), "--scenario", Program.scenario(folder, keysAndValues).toString());
    }

    private double seenS(String lamp) {
        return Program.summary(results()).stream()
                .filter(row -> row.getField("lamp").equals(lamp))
                .findFirst()
                .map(row -> number(row, "detected_s"))
                .orElseThrow();
    }

    private String detector() {
        return Program.summary(results()).get(0).getField("detector");
    }

    /**
     * An LED that is a step to I passes a threshold E d² of an integrating eye after τ ln(I/(I − E d²)); E by the curve
     * of ICAO Doc 9328, from memory, plus a quarter of the tail lamp's 6 cd where it is lit.
     */
    @ParameterizedTest
    @CsvSource({"day, 10000, 0", "dusk, 100, 0", "night, 1, 0", "tail, 1, 1.5"})
    void stepIsSeenAtTheClosedFormOfItsThreshold(String word, double background, double tailShareCd) {
        Program run =
                run("detector", word, "led.driver-delay", "0 s", "led.rise-time", "0 s", "viewing.distance", "200 m");
        assertThat(run.err()).isEmpty();
        double log = Math.log10(background);
        double lux = Math.pow(10, 0.05 * log * log + 0.573 * log - 6.667);
        double thresholdCd = lux * 200 * 200 + tailShareCd;
        assertThat(seenS("LED")).isCloseTo(0.2 * Math.log(60 / (60 - thresholdCd)), within(2e-5));
        assertThat(detector()).contains("integrating eye", "at 200 m", "chosen because");
        assertThat(seenS("filament")).isGreaterThan(seenS("LED"));
    }

    @Test
    void fogMakesALampLaterAndThenInvisible() {
        run("detector", "day");
        double clear = seenS("filament");
        // 5 % is left after 100 m, so 0.05^0.5 after 50 m: the threshold rises 4.47 times
        run("detector", "day", "viewing.visibility", "100 m");
        assertThat(seenS("filament")).isGreaterThan(clear + 0.01);
        // 0.05^2.5 after 50 m in 20 m of visibility: 0.66 cd becomes 1200 cd
        assertThat(run("detector", "day", "viewing.visibility", "20 m").out())
                .contains("never seen: the final 60 cd does not exceed the threshold of");
    }

    @Test
    void reportComparesAllCriteriaAndThePageNamesThem() throws IOException {
        Program run = run();
        Matcher rows = Pattern.compile(
                        "(?m)^  (lamp: share of final light|lx: bright day|lx: dusk|lx: night, tail lamp dark|lx: night, tail lamp lit) +"
                                + "filament +([0-9.]+) ms +-\\R +LED +([0-9.]+) ms +(-?[0-9.]+) ms$")
                .matcher(run.out());
        List<double[]> found = rows.results()
                .map(row -> new double[] {
                    Double.parseDouble(row.group(2)), Double.parseDouble(row.group(3)), Double.parseDouble(row.group(4))
                })
                .toList();
        assertThat(found).hasSize(5).allSatisfy(row -> assertThat(row[2]).isCloseTo(row[0] - row[1], within(1.0)));
        assertThat(Files.readString(results().resolve("report.html")))
                .contains("Other ways to say when a lamp is seen", "cd: eye with a threshold in candela")
                .contains("the threshold gains 25 % of the tail lamp's light");
    }

    @Test
    void askedCriterionComesFirstAndTheUsualOneBesideIt() {
        assertThat(run("detector", "tail").out())
                .contains("Seen means: integrating eye, time constant 0.2 s, threshold 2.15e-7 lx")
                .containsPattern(
                        "(?s)earlier\\R  lx: night, tail lamp lit +filament.*  cd: eye with a threshold in candela +filament");
    }

    @Test
    void bulbOfTheCatalogueStandsForItsRating() {
        Path file = Program.write(
                folder.resolve("bulb.properties"),
                Resource.text(Scenario.SHIPPED)
                        .replaceAll("(?m)^filament.design-(voltage|power) = .*$", "")
                        .replace("# filament.bulb = P21W", "filament.bulb = P21/5W"));
        Program bulb = Program.lampSwap(results(), "--scenario", file.toString());
        assertThat(bulb.err()).isEmpty();
        assertThat(results().resolve("report.html")).content().contains("25 W (±6 %) and 440 lm at 13.5 V");
        double catalogued = seenS("filament");
        // the same volts, watts and flux are the same lamp, whoever gives them
        String given =
                Resource.text(Scenario.SHIPPED).replace("filament.design-power = 26 W", "filament.design-power = 25 W");
        Program full = Program.lampSwap(
                results(),
                "--scenario",
                Program.write(
                                folder.resolve("flux.properties"),
                                given.replace("filament.flux = model", "filament.flux = 440 lm"))
                        .toString());
        assertThat(full.err()).isEmpty();
        assertThat(seenS("filament")).isCloseTo(catalogued, within(0.0005));
        // without the flux the model takes a life of 1000 h, so a cooler, later filament, and says so
        Program plain = run("filament.design-power", "25 W");
        assertThat(seenS("filament") - catalogued).isBetween(0.005, 0.025);
        assertThat(plain.out().replaceAll("\\s+", " "))
                .contains("from volts, watts and a life of 1000 h (assumed)")
                .contains("a rated flux is better");
    }

    @Test
    void bulbWhoseRatingIsAlsoGivenOrThatIsUnknownIsRefused() {
        Path scenario = Program.write(
                folder.resolve("both.properties"),
                Resource.text(Scenario.SHIPPED).replace("# filament.bulb = P21W", "filament.bulb = P21W"));
        Program both = Program.lampSwap(results(), "--scenario", scenario.toString());
        assertThat(both.exitCode()).isEqualTo(2);
        assertThat(both.err())
                .isEqualTo(scenario + ": filament.design-power = 26 W: is not used: filament.bulb names a bulb of the"
                        + " catalogue, which has its own rating" + System.lineSeparator());
        Program unknown = run("filament.bulb", "H4");
        assertThat(unknown.err())
                .startsWith(folder.resolve("scenario.properties") + ": filament.bulb = H4: bulb must be one of ")
                .endsWith("; or none to give the rating yourself" + System.lineSeparator())
                .hasLineCount(1);
    }

    @Test
    void rowsKeepTheCriterionThatTheyUsed() {
        run("detector", "dusk");
        assertThat(Program.summary(results()))
                .extracting((NamedCsvRecord row) -> row.getField("detector"))
                .containsOnly(detector());
    }
}
