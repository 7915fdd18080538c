package io.github.stoplag.examples.teach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.examples.Pictures;
import io.github.stoplag.examples.Program;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.worked.Amount;
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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Questions in words, as a teacher asks them. */
class ExplainRunTest {
    private static final Pattern NEAREST = Pattern.compile("nearest that works: explain \"([^\"]*)\"");

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
        assertThat(answer("gap needed 20 m/s, lamp 0.2 s, brakes 0.1 s, 1.2 s, 7 m/s²", UnitSystem.METRIC, Unit.METRE))
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
        String asked = question.canonical().substring(kind.word().length()).strip();
        List<String> parts = new ArrayList<>(Arrays.asList(asked.split(", ")));
        Random random = new Random(20);
        for (int i = 0; i < 20; i++) {
            Collections.shuffle(parts, random);
            Question shuffled = Question.of(kind.word() + " " + String.join(", ", parts));
            for (UnitSystem system : UnitSystem.values()) {
                Solution solution = question.solution(system);
                assertThat(shuffled.solution(system).answer()).as("%s", parts).isEqualTo(solution.answer());
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
        for (int i = 0; i < 400; i++) {
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
                if (i % 20 == 0) {
                    assertNearestWorks(String.valueOf(e.getMessage()));
                }
            }
        }
        assertThat(solved).isPositive();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "stop 60 mph, 50 mph, ice | \"50 mph\": a speed stands there already, 60 mph; give one",
                "stop 60 mph, 1,5 s, ice | if 1,5 is one number, write a decimal point, 1.5",
                "braking distance 120 | explain \"brake 120 km/h\", or explain \"brake 120 mph\"",
                "stopping distance 20 mph vs 30 mph | explain \"stop 20 mph\", or explain \"stop 30 mph\"",
                "what g is 60 to 0 in 120 ft | explain \"deceleration 60 km/h, distance 120 ft\", or explain"
                        + " \"deceleration 60 mph",
                "0 to 60 mph in 5 s | speeding up from rest is not worked here, only braking",
                "85th percentile driver stopping distance at 60 mph | ask percentile 85 % for the time of that driver",
                "one LED and one bulb at 100 km/h | mixed sets of lamps are worked by the program lamp-swap",
                "2 x 21 W | does not say what is asked; nearest that works: explain \"warm 42 W\"",
                "stop from 30, ice | \"30\" has no unit: km/h or mph? nearest that works: explain \"stop 30 km/h,"
                        + " ice\", or explain \"stop 30 mph, ice\"",
                "brake 100 km/h, ice, 30 % down | the vehicle never stops: friction 0.1 does not outweigh the grade of",
                "skid 25 m, ice, 30 % down | the vehicle never stops: friction 0.1 does not outweigh the grade of",
                "stop 5 m/s, 1 s, build-up 2 s, 7 m/s² | the vehicle stops before its brakes have built up: 5 m/s is"
                        + " not above the 7.00 m/s lost within 2 s",
                "resistor 21 W at 12 V, led 2 A | no load resistor is needed: the LED lamp draws 2 A and the monitor"
                        + " takes 1.75 A",
                "stop 60 mph, ice, 3 % | say which way it goes, once: 3 % down, 3 % up, or -3 % for down",
                "stop 60 mph, ice, wet asphalt | two surfaces stand there, ice and wet asphalt; give one",
                "stop 60 mph, ice, 7 m/s² | stop takes one friction, surface or deceleration, got deceleration 7 m/s²"
                        + " and",
                "stop 60 mph, 7 m/s², 3 % down | a grade goes with a surface or a friction coefficient",
                "skid 60 ft | skid needs a surface (dry asphalt, wet asphalt,",
                "stop ice | stop needs speed (speed: [speed] in m/s, km/h, mph, ft/s, kn)",
                "stop 9000 mph, ice | \"9000 mph\": speed must be in [0, 150] m/s, got 4023.36 m/s",
                "stop 60 mph, ice, | an empty part stands in",
                "stop 60 mph down a hill | how steep is the hill? write it like 3 % down",
                "follow 60 mph, leader 50 mph, follower 40 mph, 1 s, ice | a speed for both besides; leave one out",
                "follow 60 mph, 2 s, 1.5 s, ice | which is the gap and which the reaction? write gap 2 s, reaction 1.5"
                        + " s",
                "follow a parked car at 60 mph, 30 m, ice | what stands does not brake: ask stop or impact speed",
                "percentile 50 %, study green-2000-lamps | gives no log-normal distribution; those that do: johansson",
                "percentile 50 %, study sivak-1982, sd 1 s | takes a study, or mean and sd, not both",
                "percentile 85 % of all drivers, study sivak-1982 | no time is long enough for 85 % of all drivers:"
                        + " only 72 % respond at all",
                "resistor 0 W at 13.5 V | power and rated voltage of the bulb must be above 0, got 0 W and 13.5 V",
                "resistor 21/5 W at 12 V | is a bulb with two filaments: give the watts of the one that is meant",
                "rule 40 mph | rule needs the key of a rule",
                "impact speed after 20 m from 50 km/h on dry asphalt | the vehicle stops within 15.1 m of braking",
                "stop from 60-70 mph, ice | \"60-70\" is a range: ask with one number, then with the other",
                "uncertainty 100 km/h, 1.5 s, 7 m/s² | needs the standard uncertainty of a number, written like 60 ± 2"
                        + " mph",
                "react 60 ± 2 mph, 1 s ± 2 m | \"1 s ± 2 m\": the uncertainty needs the unit of the number",
                "60 mph on ice | does not say what is asked; nearest that works: explain \"stop 60 mph, ice\"",
                "stop not wet 60 mph | \"not\" is not understood",
                "chain of 5 | chain needs speed",
                "walk 5 m | \"walk\" is not understood"
            })
    void refusesWithTheReason(String question, String reason) {
        Program program = Program.run("explain", question);
        assertThat(program.exitCode()).isEqualTo(2);
        assertThat(program.out()).isEmpty();
        assertThat(program.err().lines()).hasSize(1);
        assertThat(program.err()).contains(reason);
        assertNearestWorks(program.err());
    }

    /** Every refusal names a question that works, as a line to paste. */
    private static void assertNearestWorks(String refusal) {
        Matcher nearest = NEAREST.matcher(refusal);
        assertThat(nearest.find()).as(refusal).isTrue();
        assertThat(NearestQuestion.works(nearest.group(1))).as(refusal).isTrue();
    }

    /**
     * Natural questions: kind understood, unit answered in, and the number from the formulas worked outside this
     * project's code, contacts by small steps of time; of lamps it is the model without steps, within the 5 % that the
     * working is held to.
     */
    @ParameterizedTest
    @CsvFileSource(resources = "questions.csv", numLinesToSkip = 1)
    void understandsWhatPeopleWrite(String asked, QuestionKind kind, @Nullable String unit, String number) {
        Question question = Question.of(asked);
        Solution solution = question.solution(question.units());
        assertThat(question.kind()).isEqualTo(kind);
        Amount answer = solution.answer().carried();
        assertThat(answer.unit().symbol()).isEqualTo(unit == null ? "" : unit);
        double value = answer.number().doubleValue();
        if (number.equals("model")) {
            assertThat(solution.checks()).allMatch(Solution.Verification::agrees);
        } else {
            double expected = Double.parseDouble(number);
            assertThat(value).isCloseTo(expected, within(1e-3 * Math.abs(expected)));
        }
        assertThat(Question.of(question.canonical()).solution(question.units()).answer())
                .as(question.canonical())
                .isEqualTo(solution.answer());
    }

    @Test
    void saysWhatIsImplausibleAndHowItIsRead() {
        assertThat(Program.run("explain", "stop from 300 mph, 15 s, dry asphalt")
                        .out())
                .contains("The speed of 300 mph is faster than road vehicles usually go")
                .contains("The reaction time of 15 s is slower than drivers usually are");
        assertThat(Program.run("explain", "follow at 70 mph, 2 s, wet asphalt").out())
                .contains("Read as: follow 70 mph, gap 2 s, wet asphalt")
                .contains("2 s is read as the time gap, as drivers speak of it: write reaction 2 s if");
        assertThat(Program.run("explain", "stoping distance from 50 km/h on ice")
                        .out())
                .contains("\"stoping\" is read as \"stopping\"");
        // by hand: 20.83 m + 15.13 m
        assertThat(Program.run("explain", "can I stop in 25 m from 50 km/h?").out())
                .contains("the room asked about, 25 m, is too short, by 11.0 m");
        assertThat(Program.run("explain", "how much sooner does an LED light than a 21 W bulb")
                        .out())
                .contains("no speed given: the time alone is worked", "the LED is taken to light at once");
        assertThat(Program.run("explain", "How far to stop from 60 mph?").out())
                .contains("no surface given: dry asphalt assumed");
        assertThat(Program.run("explain", "85th percentile of reaction time, study sivak-1982")
                        .out())
                .contains("only 72 % of the drivers responded", "85 % of those are 61.2 % of all");
        assertThat(Program.run("explain", "stop from 60 mph in a lorry with bald tyres")
                        .out())
                .contains("the working knows no kind of vehicle", "worn tyres find less friction");
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
                "follow at 60 mph, 30 m, 1.5 s, ice | BRITISH",
                "brake 60 mph, 7 m/s² | BRITISH",
                "stop from 60 mph on wet tarmac | BRITISH",
                "highway code 40 mph | BRITISH",
                "how many metres is a 2 s gap at 60 mph | BRITISH",
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
                .hasMessageStartingWith("a question must have at most 300 characters, got 301; nearest");
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
