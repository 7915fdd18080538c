package io.github.stoplag.examples.lampswap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.examples.Program;
import io.github.stoplag.following.BrakingVehicle;
import io.github.stoplag.following.Pair;
import io.github.stoplag.following.PairOutcome;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.lamp.Lens;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sight.LampSignal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

public class LampSwapRunTest {
    private static final String HEADER = "speed_kmh,speed_mph,lamp,time_to_10pct_s,time_to_90pct_s,detected_s,detector,"
            + "extra_distance_m,extra_distance_ft,gap_needed_m,outcome,closing_speed_kmh,closing_speed_mph";
    private static final double REACTION_S = 1.3;
    private static final double LEADER_MPS2 = 5.8;
    private static final double FOLLOWER_MPS2 = 6;
    private static final double BUILD_UP_S = 0.2;
    private static final double TIME_GAP_S = 1.3;

    @TempDir
    Path folder;

    @Test
    void shippedScenarioGivesAllFilesAndARowForEachSpeedAndLamp() throws IOException {
        Path results = folder.resolve("results");
        Program run = Program.lampSwap(results);

        assertThat(run.exitCode()).isZero();
        assertThat(run.err()).isEmpty();
        try (Stream<Path> files = Files.list(results)) {
            assertThat(files.map(file -> String.valueOf(file.getFileName())))
                    .containsExactlyInAnyOrder(
                            "summary.csv",
                            "uncertainty.csv",
                            "summary.html",
                            "report.html",
                            "onset.svg",
                            "distance_metric.svg",
                            "distance_us.svg",
                            "road_1.svg",
                            "road_2.svg",
                            "road_3.svg",
                            "road_4.svg",
                            "road_5.svg",
                            "road_6.svg");
        }
        try (Stream<Path> beside = Files.list(folder)) {
            assertThat(beside).containsExactly(results);
        }
        assertThat(Files.readAllLines(results.resolve("summary.csv")).get(0)).isEqualTo(HEADER);
        List<NamedCsvRecord> rows = Program.summary(results);
        assertThat(rows.stream().map(row -> row.getField("speed_kmh") + " " + row.getField("lamp")))
                .containsExactly(
                        "30.00 filament",
                        "30.00 LED",
                        "30.00 slow LED",
                        "30.00 mixed set",
                        "48.28 filament",
                        "48.28 LED",
                        "48.28 slow LED",
                        "48.28 mixed set",
                        "64.37 filament",
                        "64.37 LED",
                        "64.37 slow LED",
                        "64.37 mixed set",
                        "80.00 filament",
                        "80.00 LED",
                        "80.00 slow LED",
                        "80.00 mixed set",
                        "96.56 filament",
                        "96.56 LED",
                        "96.56 slow LED",
                        "96.56 mixed set",
                        "120.00 filament",
                        "120.00 LED",
                        "120.00 slow LED",
                        "120.00 mixed set");
    }

    /** Coil factors end at 1, so that a bulb at 0.98 cannot be moved by its unknowns either way. */
    @Test
    void aBulbAtTheEdgeOfTheModelSaysThatItHasNoInterval() throws IOException {
        Path file = Program.scenario(folder, "filament.coil-factor", "0.98");
        Program run = Program.lampSwap(folder.resolve("results"), "--scenario", file.toString());
        assertThat(run.err()).isEmpty();
        assertThat(run.out().replaceAll("\\s+", " ")).contains("There is no interval for filament lamp");
        assertThat(Program.lampSwap(folder.resolve("other")).out()).doesNotContain("no interval");
    }

    @Test
    void versionIsToldBehindTheNameOfAProgramToo() {
        assertThat(Program.run("lamp-swap", "--version").out()).startsWith("stoplag ");
        assertThat(Program.run("sweep", "-V").out())
                .isEqualTo(Program.run("--version").out());
    }

    @Test
    void printedReportIsShortAndNamesItsCriterionAndItsData() {
        Program run = Program.lampSwap(folder.resolve("results"));
        assertThat(run.out().lines().count()).isLessThan(150);
        assertThat(run.out())
                .contains("(invented data)")
                .contains("Seen means: integrating eye, time constant " + LaboratoryLamps.EYE_TIME_CONSTANT
                        + ", threshold " + LaboratoryLamps.EYE_THRESHOLD)
                .contains("all ways to say when it is seen", "lx: night, tail lamp lit", "Not one scale:")
                .contains("Page to open: ", "summary.html")
                .contains("not a crash forecast")
                .contains("97 km/h (60 mph)");
        // the first lines answer: how much earlier, how far, how it ends, by day and by night
        assertThat(run.out().lines().limit(14).toList())
                .anySatisfy(line -> assertThat(line)
                        .matches("LED lamp instead of the filament lamp: seen [0-9]+ ms earlier, [0-9]+ to"
                                + " [0-9]+ ms, standard uncertainty [0-9]+ ms"))
                .anySatisfy(line -> assertThat(line).matches("  48 km/h \\(30 mph\\) .* m \\(.* in\\) earlier, .*"))
                .anySatisfy(line -> assertThat(line).matches("  97 km/h \\(60 mph\\) .* m \\(.* in\\) earlier, .*"))
                .anySatisfy(line -> assertThat(line).contains("bright day: ", "night, tail lamp lit: "));
        assertThat(run.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(125));
    }

    @Test
    void filamentRowsAgreeWithTheCoreCalledDirectly() {
        Path results = folder.resolve("results");
        Program.lampSwap(results);
        FilamentOnset onset = FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26))
                .build()
                .switchOn(SupplyConditions.of(Voltage.volts(12.8))
                        .withSeriesResistance(Resistance.ohms(0.15))
                        .withAmbientTemperature(Temperature.celsius(27))
                        .withLens(Lens.RED));
        Detection seen = IntegratingEye.of(LaboratoryLamps.EYE_TIME_CONSTANT, LaboratoryLamps.EYE_THRESHOLD)
                .detect(LampSignal.of(onset, LuminousIntensity.candela(60 * onset.relativeToRated())));
        assertThat(seen).isInstanceOf(Detection.Seen.class);
        TimeSpan at = ((Detection.Seen) seen).at();

        for (NamedCsvRecord row : Program.summary(results)) {
            if (row.getField("lamp").equals("filament")) {
                assertThat(number(row, "time_to_10pct_s"))
                        .isCloseTo(onset.timeToLevelS(0.1).orElseThrow(), within(1e-5));
                assertThat(number(row, "time_to_90pct_s"))
                        .isCloseTo(onset.timeToLevelS(0.9).orElseThrow(), within(1e-5));
                assertThat(number(row, "detected_s")).isCloseTo(at.inSeconds(), within(1e-5));
                assertThat(row.getField("detector")).isEqualTo(seen.criterion());
                checkOutcome(row, at);
            }
        }
    }

    private static void checkOutcome(NamedCsvRecord row, TimeSpan seen) {
        Speed speed = Speed.kmh(number(row, "speed_kmh"));
        BrakeResponse response = new BrakeResponse(TimeSpan.seconds(0.1), TimeSpan.seconds(BUILD_UP_S));
        PairOutcome outcome = Pair.of(
                        BrakingVehicle.of(speed, TimeSpan.seconds(0), response, Deceleration.mps2(LEADER_MPS2)),
                        BrakingVehicle.of(
                                speed, TimeSpan.seconds(REACTION_S), response, Deceleration.mps2(FOLLOWER_MPS2)),
                        Distance.metres(speed.inMps() * TIME_GAP_S),
                        seen)
                .outcome();
        if (outcome instanceof PairOutcome.Contact contact) {
            assertThat(row.getField("outcome")).isEqualTo("contact");
            assertThat(number(row, "closing_speed_kmh"))
                    .isCloseTo(contact.closingSpeed().inKmh(), within(0.02));
            assertThat(number(row, "closing_speed_mph"))
                    .isCloseTo(contact.closingSpeed().inKmh() / 1.609344, within(0.02));
        } else {
            assertThat(row.getField("outcome")).isEqualTo("no contact");
            assertThat(row.getField("closing_speed_kmh")).isEmpty();
            assertThat(row.getField("closing_speed_mph")).isEmpty();
        }
    }

    /**
     * Source: v tr/2 + v²/(2a) − a tr²/24 after the dead time, the closed form of a stop with linear build-up; both end
     * at rest.
     */
    @Test
    void gapNeededFollowsFromTwoStoppingDistancesAndTheTotalDelay() {
        Path results = folder.resolve("results");
        Program.lampSwap(results);
        assertThat(Program.summary(results)).hasSize(24).allSatisfy(row -> {
            double mps = number(row, "speed_kmh") / 3.6;
            double needed = mps * (number(row, "detected_s") + REACTION_S)
                    + brakingM(mps, FOLLOWER_MPS2)
                    - brakingM(mps, LEADER_MPS2);
            assertThat(number(row, "gap_needed_m")).isCloseTo(needed, within(0.005));
            assertThat(row.getField("outcome")).isEqualTo(needed > mps * TIME_GAP_S ? "contact" : "no contact");
        });
    }

    private static double brakingM(double mps, double mps2) {
        return mps * BUILD_UP_S / 2 + mps * mps / (2 * mps2) - mps2 * BUILD_UP_S * BUILD_UP_S / 24;
    }

    @Test
    void extraDistanceIsSpeedTimesTheLaterDetection() {
        Path results = folder.resolve("results");
        Program.lampSwap(results);
        List<NamedCsvRecord> rows = Program.summary(results);
        for (int i = 0; i < rows.size(); i += 4) {
            double laterS = number(rows.get(i), "detected_s") - number(rows.get(i + 1), "detected_s");
            assertThat(number(rows.get(i), "extra_distance_m"))
                    .isCloseTo(number(rows.get(i), "speed_kmh") / 3.6 * laterS, within(0.002));
            assertThat(number(rows.get(i), "extra_distance_ft"))
                    .isCloseTo(number(rows.get(i), "extra_distance_m") / 0.3048, within(0.01));
            assertThat(number(rows.get(i + 1), "extra_distance_m")).isZero();
        }
    }

    @Test
    void resultsAreTheSameInAnotherLocaleAndWhenRunAgain() throws IOException {
        Program.lampSwap(folder.resolve("first"));
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            Program.lampSwap(folder.resolve("second"));
            Program.lampSwap(folder.resolve("second"));
        } finally {
            Locale.setDefault(before);
        }
        for (String name :
                List.of("summary.csv", "report.html", "onset.svg", "distance_us.svg", "road_5.svg", "summary.html")) {
            assertThat(folder.resolve("second").resolve(name))
                    .hasSameTextualContentAs(folder.resolve("first").resolve(name));
        }
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left).hasSize(2);
        }
    }

    @Test
    void lampBelowTheThresholdIsNeverSeen() {
        Path results = folder.resolve("results");
        Program run = Program.lampSwap(
                results,
                "--scenario",
                Program.scenario(folder, "led.intensity", "1 cd").toString());
        assertThat(run.exitCode()).isZero();
        assertThat(run.out())
                .contains(
                        "never seen: the final 1 cd does not exceed the threshold of " + LaboratoryLamps.EYE_THRESHOLD)
                .contains("no gain to state, as one of the lamps is never seen");
        for (NamedCsvRecord row : Program.summary(results)) {
            boolean led = row.getField("lamp").equals("LED");
            assertThat(row.getField("outcome").equals("never seen")).isEqualTo(led);
            assertThat(row.getField("detected_s").isEmpty()).isEqualTo(led);
            assertThat(row.getField("extra_distance_m").isEmpty()).isEqualTo(led);
            assertThat(row.getField("gap_needed_m").isEmpty()).isEqualTo(led);
        }
    }

    public static double number(NamedCsvRecord row, String column) {
        return Double.parseDouble(row.getField(column));
    }
}
