package io.github.stoplag.worked;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** One exercise with known numbers: 30 m/s, 0.5 s, 7 m/s²: 15 m + 64.2857 m = 79.2857 m, printed 79.3 m. */
class GradingTest {
    private final Exercise exercise = new Exercise(
            "stopping",
            Difficulty.STANDARD,
            "How long is the stopping distance?",
            WorkedStop.stoppingDistance(
                    Style.metric(), Given.of(30, Unit.MPS), Given.of(0.5, Unit.SECOND), Given.of(7, Unit.MPS2)),
            List.of(
                    new Exercise.Choice(new Amount(new BigDecimal("64.3"), Unit.METRE), "the reaction was forgotten"),
                    new Exercise.Choice(new Amount(new BigDecimal("79.3"), Unit.METRE), "")));

    @Test
    void rightIsRightInAnyUnitOfTheKind() {
        assertThat(exercise.letter()).isEqualTo("B");
        for (String answer : List.of("79.3 m", "79.2857m", " 79 m", "0.0793 km", "260 ft", "7.93e1 m")) {
            assertThat(exercise.grade(answer)).as(answer).isEqualTo(new Grading.Right());
        }
    }

    @Test
    void roundingOnTheWayIsWithinTolerance() {
        assertThat(exercise.grade("80.1 m"))
                .isInstanceOfSatisfying(
                        Grading.WithinTolerance.class,
                        grade -> assertThat(grade.offRatio()).isBetween(0.0102, 0.0103));
    }

    /** 79.2857 m is 80 m to tens, and 79 m is right to half a per cent anyway; 0.08 km counts like 80 m. */
    @Test
    void fewerDigitsRightlyRoundedAreToldSo() {
        assertThat(exercise.grade("80 m")).isEqualTo(new Grading.Rounded(1, true));
        assertThat(exercise.grade("0.08 km")).isEqualTo(new Grading.Rounded(1, true));
        assertThat(exercise.grade("78 m")).isInstanceOf(Grading.WithinTolerance.class);
        Solution time = WorkedBraking.brakingTime(Style.metric(), Given.of(29, Unit.MPS), Given.of(5.6, Unit.MPS2));
        Exercise brakes = new Exercise("time", Difficulty.BASIC, "How long?", time, List.of());
        // 29/5.6 = 5.178571...
        assertThat(brakes.answer()).hasToString("5.18 s");
        assertThat(brakes.grade("5 s")).isEqualTo(new Grading.Rounded(1, false));
        assertThat(brakes.grade("5.2 s")).isEqualTo(new Grading.Right());
        assertThat(brakes.grade("6 s")).isEqualTo(new Grading.Wrong());
        assertThat(brakes.grade("5.1 s")).as("cut, not rounded").isInstanceOf(Grading.WithinTolerance.class);
        assertThat(brakes.grade("145/28 s")).isEqualTo(new Grading.Right());
    }

    @Test
    void wordsLettersAndFractionsAreAnswers() {
        for (String answer : List.of(
                "about 79.3 m",
                "~79.3 m",
                "≈ 79.3 m",
                "ca. 79.3 m",
                "s = 79.3 m",
                "Answer: 79.3 m",
                "79.3 m (rounded)",
                "79.3 m, rounded",
                "79.3 m (3 s.f.)",
                "79.3 m!",
                "79 2/7 m",
                "555/7 m",
                "b)",
                "B",
                "(b)",
                "B) 79.3 m",
                "B 79.3 m",
                "b. about 79.3 m")) {
            assertThat(exercise.grade(answer)).as(answer).isEqualTo(new Grading.Right());
        }
        assertThat(exercise.grade("a)")).isEqualTo(new Grading.CommonMistake("the reaction was forgotten"));
        assertThatThrownBy(() -> exercise.grade("A) 79.3 m"))
                .hasMessage("the letter says 64.3 m, the number says 79.3 m; one answer is wanted");
        assertThatThrownBy(() -> exercise.grade("c)")).hasMessage("the choices are A to B, got \"c)\"");
        assertThat(Amount.parse("1,234.5 m")).isEqualTo(Amount.of(1234.5, Unit.METRE));
        assertThat(Amount.parse("1.234,5 m")).isEqualTo(Amount.of(1234.5, Unit.METRE));
        assertThat(Amount.parse("1,234,567 m")).isEqualTo(Amount.of(1234567, Unit.METRE));
        assertThat(Amount.parse("8 6/7 m").in(Unit.METRE)).isEqualTo(62.0 / 7);
        assertThat(Amount.parse("-3/4 s").in(Unit.SECOND)).isEqualTo(-0.75);
        assertThat(Amount.parse("0.425 g").in(Unit.MPS2)).isEqualTo(0.425 * 9.80665);
        for (String answer : List.of("1/0 m", "1/2/3 m", "1,23,456.5 m", "about m", "~ m", "1 2 m")) {
            assertThatThrownBy(() -> Amount.parse(answer)).as(answer).isInstanceOf(IllegalArgumentException.class);
        }
    }

    /** 120 km/h at 7.7 m/s² is (100/3)²/15.4 = 72.15007 m: by the carried 33.3333 m/s it would be 72.1. */
    @Test
    void theKeyRoundsTheExactAnswerOnce() {
        Solution braking =
                WorkedStop.brakingDistance(Style.metric(), Given.of(120, Unit.KMH), Given.of(7.7, Unit.MPS2));
        assertThat(braking.answer().printed()).hasToString("72.2 m");
        assertThat(braking.answer().exact().doubleValue()).isCloseTo(10000.0 / 9 / 15.4, within(1e-12));
        assertThat(braking.answer().carriesEnough()).isFalse();
        assertThat(braking.checks()).allMatch(Solution.Verification::agrees);
    }

    /** 30 m/s on a friction of 0.5 down 9 %: g (μ + G) = 4.0221, over √(1 + G²) it is 4.0059 m/s². */
    @Test
    void theOtherFormulaForAGradeIsAcceptedWithARemark() {
        Exercise graded = ExerciseTemplate.all().stream()
                .filter(template -> template.id().equals("stopping-downgrade"))
                .flatMap(template -> LongStream.range(0, 200).mapToObj(seed -> template.draw(seed, UnitSystem.METRIC)))
                .filter(each -> !each.alsoRight().isEmpty())
                .findFirst()
                .orElseThrow();
        assertThat(graded.question()).contains("Take the deceleration as g (μ + G)/√(1 + G²)");
        Exercise.AlsoRight other = graded.alsoRight().get(0);
        assertThat(graded.grade(other.amount().toString())).isEqualTo(new Grading.OtherFormula(other.remark()));
        assertThat(other.remark()).contains("g (μ + G), without the root");
    }

    @Test
    void aRightNumberWithAWrongUnitIsToldSo() {
        Grading wanted = new Grading.WrongUnit(Unit.METRE);
        assertThat(exercise.grade("79.3 ft")).isEqualTo(wanted);
        assertThat(exercise.grade("79.3 m/s")).isEqualTo(wanted);
    }

    @Test
    void aRightNumberWithoutAUnitIsNeitherRightNorWrong() {
        Grading missing = new Grading.MissingUnit(Unit.METRE);
        assertThat(exercise.grade("79.3")).isEqualTo(missing);
        assertThat(exercise.grade("80")).as("one per cent off").isEqualTo(missing);
        assertThat(exercise.grade("64.3")).isEqualTo(new Grading.CommonMistake("the reaction was forgotten"));
        assertThat(exercise.grade("70")).isEqualTo(new Grading.Wrong());
    }

    @Test
    void spellingsOfKeyboardsAndSchoolsAreRead() {
        for (String answer : List.of(
                "7930 cm",
                "79300 mm",
                "7930 Centimetres",
                "79.3 Meter",
                "86.72 yards",
                "260 ft 2 in",
                "79.3 m.",
                "79,3 m",
                "79,30m",
                "0,0793 km",
                "7.93×10^1 m",
                "7.93 x 10^1 m",
                "793 × 10⁻¹ m",
                "7930×10^\u22122 m",
                "79\u00a0300 mm",
                "260 FT")) {
            assertThat(exercise.grade(answer)).as(answer).isEqualTo(new Grading.Right());
        }
        assertThat(Amount.parse("4.71 m/s/s")).isEqualTo(Amount.of(4.71, Unit.MPS2));
        assertThat(Amount.parse("84 C")).isEqualTo(Amount.of(84, Unit.CELSIUS));
        assertThat(Amount.parse("84 degrees C")).isEqualTo(Amount.of(84, Unit.CELSIUS));
        assertThat(Amount.parse("30 Miles per hour")).isEqualTo(Amount.of(30, Unit.MPH));
        assertThat(Amount.parse("3 metres per second")).isEqualTo(Amount.of(3, Unit.MPS));
        assertThat(Amount.parse("20 200 ft")).isEqualTo(Amount.of(20200, Unit.FOOT));
        assertThat(Amount.parse("1 250.5 m")).isEqualTo(Amount.of(1250.5, Unit.METRE));
        assertThat(Amount.parse("0,125 s")).isEqualTo(Amount.of(0.125, Unit.SECOND));
    }

    /** An amount is read back as it is printed, in every unit and size. */
    @Test
    void whatIsPrintedIsRead() {
        for (Unit unit : Unit.all()) {
            for (double number : new double[] {1.42e-14, -1.42e-14, 7.21e-4, 0.5, 79.3, 12345, 2.02e9, 0}) {
                Amount amount = Amount.of(number, unit);
                assertThat(Amount.parse(amount.toString()).number())
                        .as(amount.toString())
                        .isEqualByComparingTo(amount.number());
                assertThat(Amount.parse(amount.toString()).unit()).isEqualTo(unit);
            }
        }
        for (UnitSystem system : UnitSystem.values()) {
            for (Exercise each : ExerciseSheet.of(53, 60).in(system).exercises()) {
                for (Exercise.Choice choice : each.choices()) {
                    assertThat(each.grade(choice.amount().toString()))
                            .isEqualTo(
                                    choice.isRight()
                                            ? new Grading.Right()
                                            : new Grading.CommonMistake(choice.mistake()));
                }
            }
        }
    }

    @Test
    void aRiseOfTemperatureMayBeInDegrees() {
        Solution rise = ExerciseTemplate.all().stream()
                .map(template -> template.draw(7, UnitSystem.METRIC))
                .map(Exercise::solution)
                .filter(each -> each.answer().printed().unit() == Unit.KELVIN)
                .findFirst()
                .orElseThrow();
        Exercise warm = new Exercise("rise", Difficulty.BASIC, "By how much does it warm?", rise, List.of());
        String number = rise.answer().printed().number().toPlainString();
        assertThat(warm.grade(number + " °C")).isEqualTo(new Grading.Right());
        assertThat(warm.grade(number + " degrees C")).isEqualTo(new Grading.Right());
        assertThat(warm.grade(number)).isEqualTo(new Grading.MissingUnit(Unit.KELVIN));
        assertThat(warm.grade("-1 °C")).isEqualTo(new Grading.Wrong());
    }

    @Test
    void mistakesAreNamedAndTheRestIsWrong() {
        Grading forgotten = new Grading.CommonMistake("the reaction was forgotten");
        assertThat(exercise.grade("64.3 m")).isEqualTo(forgotten);
        assertThat(exercise.grade("211 ft")).isEqualTo(forgotten);
        assertThat(exercise.grade("70 m")).isEqualTo(new Grading.Wrong());
        assertThat(exercise.grade("\u221279.3 m")).isEqualTo(new Grading.Wrong());
        assertThat(exercise.grade("12 s")).isEqualTo(new Grading.Wrong());
    }

    @Test
    void everydayNamesOfUnitsAreRead() {
        for (String answer : List.of("79.3 metres", "79.3 meters", "260 feet", "0.0793 km", "+79.3 m", "7.93E+1 m")) {
            assertThat(exercise.grade(answer)).as(answer).isEqualTo(new Grading.Right());
        }
        assertThat(exercise.grade("1e2 m")).isEqualTo(new Grading.Wrong());
        assertThat(exercise.grade("-3 m")).isEqualTo(new Grading.Wrong());
        assertThat(exercise.grade("0 m")).isEqualTo(new Grading.Wrong());
        assertThat(exercise.grade("9e99 m")).isEqualTo(new Grading.Wrong());
    }

    @Test
    void aTeacherCanSetTheTolerance() {
        Amount near = Amount.parse("79.9 m");
        assertThat(exercise.grade(near)).isInstanceOf(Grading.WithinTolerance.class);
        assertThat(exercise.grade(near, new Grading.Tolerance(0.01, 0.02))).isEqualTo(new Grading.Right());
        assertThat(exercise.grade(near, new Grading.Tolerance(0, 0.001))).isEqualTo(new Grading.Wrong());
        assertThat(exercise.grade(Amount.parse("79.3 m"), new Grading.Tolerance(0, 0)))
                .as("the printed answer is right however narrow")
                .isEqualTo(new Grading.Right());
        assertThatThrownBy(() -> new Grading.Tolerance(0.005, 0.03))
                .hasMessage("share by which an answer within tolerance may be off must be in [0.005, 0.02], got 0.03");
        assertThatThrownBy(() -> new Grading.Tolerance(-0.1, 0.01))
                .hasMessage("share by which a right answer may be off must be in [0, 0.02], got -0.1");
    }

    @Test
    void aTemperatureIsRightToHalfADegree() {
        Exercise hot = new Exercise(
                "diode-heat",
                Difficulty.BASIC,
                "How hot is the junction?",
                WorkedCircuit.diodeHeat(
                        Style.metric(),
                        Given.of(0.7, Unit.VOLT),
                        Given.of(1.3, Unit.AMPERE),
                        Given.of(30, Unit.KELVIN_PER_WATT),
                        Given.of(40, Unit.CELSIUS)),
                List.of(new Exercise.Choice(Amount.parse("67 °C"), "")));
        // 40 °C + 30 K/W × 0.91 W = 67.3 °C
        for (String answer : List.of("67 degC", "67.3 °C", "340 K", "340.45 K")) {
            assertThat(hot.grade(answer)).as(answer).isEqualTo(new Grading.Right());
        }
        assertThat(hot.grade("68 °C")).isInstanceOf(Grading.WithinTolerance.class);
        assertThat(hot.grade("70 °C")).isEqualTo(new Grading.Wrong());
    }

    @Test
    void whatIsNoAnswerIsRefused() {
        for (String answer : List.of(
                "", " ", "NaN m", "Infinity m", "m", "--3 m", "1e999 m", "1,5,5 m", "1.2.3 m", "5 MA", "79.3 M")) {
            assertThatThrownBy(() -> exercise.grade(answer)).as(answer).isInstanceOf(IllegalArgumentException.class);
        }
        assertThatThrownBy(() -> exercise.grade("about eighty"))
                .hasMessage("an answer must be a number and a unit, such as 79.3 m, got \"about eighty\"");
        assertThatThrownBy(() -> exercise.grade("79.3 furlongs"))
                .hasMessage(
                        "unit \"furlongs\" is not known; write it as the question does, such as m, ft, km/h, mph, s, V,"
                                + " Ω, °C");
        assertThatThrownBy(() -> exercise.grade("1,000 m"))
                .hasMessage(
                        "the comma in \"1,000\" may be a decimal sign or part thousands; write a decimal point, or no"
                                + " comma");
        assertThat(Unit.of("m/s^2")).isEqualTo(Unit.MPS2);
        assertThat(Unit.of("ft/s2")).isEqualTo(Unit.FTPS2);
        assertThat(Unit.of("ohm")).isEqualTo(Unit.OHM);
        assertThat(Unit.of("degC")).isEqualTo(Unit.CELSIUS);
    }
}
