package io.github.stoplag.examples.teach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.examples.Pictures;
import io.github.stoplag.examples.Program;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.worked.Solution;
import io.github.stoplag.worked.Unit;
import io.github.stoplag.worked.UnitSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Questions in words, as a teacher asks them. */
class ExplainRunTest {
    @TempDir
    Path folder;

    private static double answer(String question, UnitSystem system, Unit unit) {
        return Question.of(question).solution(system).answer().carried().in(unit);
    }

    /** Second computation: the formulas by hand, from the stated units' definitions. */
    @Test
    void answersAreThoseOfTheFormulas() {
        double v = 60 * 1609.344 / 3600;
        double down = 9.80665 * (0.5 - 0.03) / Math.hypot(1, 0.03);
        assertThat(answer("stop from 60 mph, 1.5 s, wet asphalt, 3 % down", UnitSystem.US_CUSTOMARY, Unit.METRE))
                .isCloseTo(1.5 * v + v * v / (2 * down), within(0.01));
        assertThat(answer("stop 60 mph, 1.5 s, build-up 0.3 s, 0.7 g", UnitSystem.METRIC, Unit.METRE))
                .isCloseTo(1.65 * v + v * v / (2 * 0.7 * 9.80665) - 0.7 * 9.80665 * 0.09 / 24, within(0.01));
        assertThat(answer("brake from 90 km/h on ice, 2 % up", UnitSystem.METRIC, Unit.METRE))
                .isCloseTo(625 / (2 * 9.80665 * 0.12 / Math.hypot(1, 0.02)), within(0.05));
        assertThat(answer("react at 50 km/h, 900 ms", UnitSystem.METRIC, Unit.METRE))
                .isCloseTo(12.5, within(0.001));
        assertThat(answer("skid 82 ft 6 in, friction 0.7", UnitSystem.METRIC, Unit.MPS))
                .isCloseTo(Math.sqrt(2 * 0.7 * 9.80665 * 82.5 * 0.3048), within(0.001));
        assertThat(answer("lag 0.2 s at 100 km/h", UnitSystem.METRIC, Unit.METRE))
                .isCloseTo(20 / 3.6, within(0.001));
        assertThat(answer("deceleration 72 km/h, 4 s", UnitSystem.METRIC, Unit.MPS2))
                .isCloseTo(5, within(1e-6));
        assertThat(answer("deceleration 72 km/h, 25 m", UnitSystem.METRIC, Unit.MPS2))
                .isCloseTo(8, within(1e-6));
        assertThat(answer("follow 20 m/s, lamp 0.2 s, brakes 0.1 s, 1.2 s, 7 m/s²", UnitSystem.METRIC, Unit.METRE))
                .isCloseTo(30, within(0.01));
        assertThat(answer("follow 20 m/s, 1 s, 4 m/s², 1 m", UnitSystem.METRIC, Unit.MPS))
                .isCloseTo(Math.sqrt(2 * 4 * 1), within(0.001));
        double q = Math.log1p(0.63 * 0.63 / (1.21 * 1.21));
        assertThat(answer("percentile 50 %, study sivak-1982", UnitSystem.METRIC, Unit.SECOND))
                .isCloseTo(1.21 * Math.exp(-q / 2), within(0.0005));
        assertThat(answer("heat 10 ohm, 12 V, 5 K/W, 40 °C, tolerance 0 %", UnitSystem.METRIC, Unit.CELSIUS))
                .isCloseTo(40 + 5 * 14.4, within(0.01));
        assertThat(answer("diode 0.8 V, 2 A, 40 K/W, 40 °C", UnitSystem.METRIC, Unit.CELSIUS))
                .isCloseTo(40 + 40 * 1.6, within(0.01));
        assertThat(answer("resistor 21 W at 13.5 V", UnitSystem.METRIC, Unit.OHM))
                .isEqualTo(8.2);
        assertThat(answer("rule uk-highway-code, 40 mph", UnitSystem.US_CUSTOMARY, Unit.FOOT))
                .isEqualTo(120);
        // the printed figure of the rule's own table
        assertThat(answer("rule aashto-us, 60 mph", UnitSystem.US_CUSTOMARY, Unit.FOOT))
                .isEqualTo(570);
    }

    @ParameterizedTest
    @EnumSource(QuestionKind.class)
    void theOrderOfPartsDoesNotMatter(QuestionKind kind) {
        Question question = Question.of(kind.example());
        String[] words = kind.example().replaceAll(" (at|from) ", ", $1 ").split(" ", 2);
        List<String> parts =
                new ArrayList<>(Arrays.asList(words[1].replaceFirst("^, ", "").split(", ")));
        Random random = new Random(20);
        for (int i = 0; i < 20; i++) {
            Collections.shuffle(parts, random);
            Question shuffled = Question.of(kind.word() + " " + String.join(", ", parts));
            for (UnitSystem system : UnitSystem.values()) {
                Solution solution = question.solution(system);
                assertThat(shuffled.solution(system)).as("%s", parts).isEqualTo(solution);
                assertThat(solution.checks()).allMatch(Solution.Verification::agrees);
            }
        }
    }

    /** Whatever is typed, there is a solution or one line that says why not. */
    @Test
    void garbageGetsOneLine() {
        String[] bits = {
            "stop", "follow", "skid", "lag", "rule", "percentile", "resistor", "heat", "60 mph", "-1 s", "1.5 s",
                    "30 m",
            "wet asphalt", "3 %", "3 % down", "level", ",", ";", " at ", "leader", "1e999 m", "NaN m", "friction",
                    "0.5",
            "study", "sivak-1982", "uk-highway-code", "é", "\u0000", "%s", "--", "0 m/s²", "0 V", "21 W", "5 ohm",
                    "8 ft 10 in"
        };
        Random random = new Random(6);
        int solved = 0;
        for (int i = 0; i < 4000; i++) {
            StringBuilder text =
                    new StringBuilder(bits[random.nextInt(8)] + " " + bits[8 + random.nextInt(bits.length - 8)]);
            for (int k = random.nextInt(5); k > 0; k--) {
                text.append(random.nextBoolean() ? ", " : " ").append(bits[random.nextInt(bits.length)]);
            }
            try {
                Question.of(text.toString()).solution(UnitSystem.METRIC);
                solved++;
            } catch (InputException e) {
                assertThat(e.getMessage()).as("%s", text).isNotBlank().doesNotContain("\n");
            }
        }
        assertThat(solved).isPositive();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "stop 60 mph, 50 mph, ice | \"50 mph\": a speed stands there already, 60 mph; give one",
                "stop 60 mph, 1,5 s, ice | \"1\" is no part of a question that begins with stop: if 1,5 is one number, write a decimal point, 1.5; possible are speed:",
                "stop from 100,5 km/h, ice | if 100,5 is one number, write a decimal point, 100.5; possible are",
                "stop from 30, ice | \"30\" is no part of a question that begins with stop: its unit is missing; possible are",
                "stop 60 mph 1.5 s, ice | parts are set apart by commas: 60 mph, 1.5 s; possible are",
                "stop 60 mph wet asphalt | parts are set apart by commas: 60 mph, wet asphalt; possible are",
                "brake 100 km/h, ice, 30 % down | the vehicle never stops: friction 0.1 does not outweigh the grade of",
                "skid 25 m, ice, 30 % down | the vehicle never stops: friction 0.1 does not outweigh the grade of",
                "stop 5 m/s, 1 s, build-up 2 s, 7 m/s² | the vehicle stops before its brakes have built up: 5 m/s is not above the 7.00 m/s lost within 2 s",
                "resistor 21 W at 12 V, led 2 A | no load resistor is needed: the LED lamp draws 2 A and the monitor takes 1.75 A",
                "stop 60 mph, ice, 3 % | say which way it goes, once: 3 % down, 3 % up, or -3 % for down",
                "stop 60 mph, ice, wet asphalt | \"wet asphalt\": a surface stands there already; give one",
                "stop 60 mph, ice, 7 m/s² | stop takes one friction, surface or deceleration, got deceleration 7 m/s² and",
                "stop 60 mph, 7 m/s², 3 % down | a grade goes with a surface or a friction coefficient",
                "stop 60 mph | stop needs a surface (dry asphalt, wet asphalt,",
                "stop ice | stop needs speed (speed: [speed] in m/s, km/h, mph, ft/s, kn)",
                "stop 9000 mph, ice | \"9000 mph\": speed must be in [0, 150] m/s, got 4023.36 m/s",
                "stop 60 mph, ice, 20 % down | the vehicle never stops: friction 0.1 does not outweigh the grade of",
                "stop 60 mph, ice, | an empty part stands in",
                "follow 60 mph, leader 50 mph, follower 40 mph, 1 s, ice | a speed for both besides; leave one out",
                "percentile 50 %, study green-2000-lamps | gives no log-normal distribution; those that do: johansson",
                "percentile 50 %, study sivak-1982, sd 1 s | takes a study, or mean and sd, not both",
                "resistor 0 W at 13.5 V | power and rated voltage of the bulb must be above 0, got 0 W and 13.5 V",
                "rule 40 mph | rule needs the key of a rule",
                "walk 5 m | a question must begin with one of stop, brake,"
            })
    void refusesWithTheReason(String question, String reason) {
        Program program = Program.run("explain", question);
        assertThat(program.exitCode()).isEqualTo(2);
        assertThat(program.out()).isEmpty();
        assertThat(program.err().lines()).hasSize(1);
        assertThat(program.err()).contains(reason);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "stop from 60 mph, 1.5 s, wet asphalt | US_CUSTOMARY",
                "deceleration 60 mph, 140 ft | US_CUSTOMARY",
                "brake 60 mph, 0.7 g | US_CUSTOMARY",
                "skid 82 ft 6 in, friction 0.7 | US_CUSTOMARY",
                "brake 60 miles per hour, 22 feet per second squared | US_CUSTOMARY",
                "follow at 60 mph, 30 m, 1.5 s, ice | METRIC",
                "brake 60 mph, 7 m/s² | METRIC",
                "react at 25 kn | METRIC",
                "stop from 100 km/h, ice | METRIC",
                "lag 0.2 s at 100 kilometres per hour | METRIC",
                "heat 10 ohm, 14.5 V, 6 K/W, 40 °C | METRIC"
            })
    void answersInTheUnitsOfTheQuestion(String question, UnitSystem system) {
        Question read = Question.of(question);
        assertThat(read.units()).isEqualTo(system);
        String byDefault = Program.run("explain", question).out();
        assertThat(byDefault)
                .isEqualTo(read.document(List.of(system)).toText())
                .isNotEqualTo(
                        Program.run("explain", "--units", "both", question).out());
    }

    @Test
    void unitsMayBeWrittenOut() {
        assertThat(Question.of("stop from 60 miles per hour, 1.5 seconds, wet asphalt, 3 percent down")
                        .solution(UnitSystem.METRIC))
                .isEqualTo(Question.of("stop from 60 mph, 1.5 s, wet asphalt, 3 % down")
                        .solution(UnitSystem.METRIC));
    }

    @Test
    void saysWhatItAssumesAndWhereFrom() {
        Program program = Program.run("explain", "stop", "from", "60", "mph,", "wet asphalt");
        assertThat(program.exitCode()).isZero();
        assertThat(program.out())
                .contains(
                        "Question: stop from 60 mph, wet asphalt",
                        "reaction time not given, assumed 1.5 s: surprise intrusion, Green,",
                        "grade not given, assumed 0 %: a level road",
                        "published figures for asphalt in this condition go from 0.45 to 0.7",
                        "Noon, Engineering Analysis of Vehicular Accidents, CRC 1994",
                        "no proof of safety")
                .doesNotContain("Written to");
        assertThatThrownBy(() -> Question.of("x".repeat(301)))
                .isInstanceOf(InputException.class)
                .hasMessage("a question must have at most 300 characters, got 301");
    }

    @Test
    void aUnitThatIsStatedIsTheOneThatIsShown() {
        assertThat(Program.run("explain", "react at 25 kn").out()).contains("v = 25 kn = 25 × 463 / 900");
        assertThat(Program.run("explain", "--units", "us", "heat 10 ohm, 14.5 V, 6 K/W, 104 °F")
                        .out())
                // by hand: 14.5²/(10 × 0.95) × 6 + 40 = 172.8 °C = 343 °F
                .contains("T_a = 104 °F", "T_s ≈ 343 °F", "burn skin", "start a fire");
    }

    @Test
    void writesThePagesThatAreAskedFor() throws Exception {
        Path out = folder.resolve("explain");
        Program program =
                Program.into(out, "explain", "--html", "--markdown", "--units", "both", "skid 25 m, dry asphalt");
        assertThat(program.exitCode()).isZero();
        assertThat(program.out()).contains("Written to " + out + ": solution.html, solution.md.");
        String html = Files.readString(out.resolve("solution.html"));
        assertPage(html);
        assertThat(html).contains("In metric units", "In US customary units");
        assertThat(Files.readString(out.resolve("solution.md"))).contains("Question: skid 25 m", "$v = \\sqrt{");
        assertThat(Program.into(out, "explain", "--html", "skid 25 m, ice").out())
                .contains("solution.html.");
        assertThat(out.resolve("solution.md")).doesNotExist();
    }

    static void assertPage(String html) throws Exception {
        Pictures.assertSelfContained(html);
        assertThat(Pictures.parse(html).getElementsByTagName("math").getLength())
                .isPositive();
        assertThat(html).doesNotContain("<script");
    }

    @Test
    void everyExampleOfTheHelpTextWorks() throws IOException {
        String help = Program.run("explain", "--help").out();
        for (QuestionKind kind : QuestionKind.values()) {
            assertThat(help).contains(kind.example());
        }
        assertThat(help.lines()).allMatch(line -> line.length() <= 80);
    }
}
