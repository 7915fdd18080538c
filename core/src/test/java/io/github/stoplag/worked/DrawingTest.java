package io.github.stoplag.worked;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.worked.Exercise.Choice;
import java.math.BigDecimal;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Ten thousand seeds of every template: possible, not trivial, wrong answers apart, and graded as what they are.
 *
 * <p>Nothing is rendered but the question; the text of keys is recalculated in {@link ExerciseProperties}. Plain loops,
 * as the seeds are counted and not sampled.
 */
class DrawingTest {
    private static final int SEEDS = 10_000;
    private static final double APART = 1.03;
    // the answers in steps are exact: the sum of the AASHTO rule lies next to its raised value
    private static final double APART_STEPPED = 1.005;

    @TestFactory
    Stream<DynamicTest> everySeedGivesAFairQuestion() {
        return ExerciseTemplate.all().stream()
                .map(template -> DynamicTest.dynamicTest(
                        template.id(),
                        () -> IntStream.range(0, SEEDS).parallel().forEach(seed -> draw(template, seed))));
    }

    private static void draw(ExerciseTemplate template, int seed) {
        Exercise exercise = template.draw(seed, seed % 2 == 0 ? UnitSystem.METRIC : UnitSystem.US_CUSTOMARY);
        check(exercise);
        if (seed % 10 < 2) {
            otherUnits(exercise);
            texts(exercise);
        }
    }

    // plain comparisons first: a fluent assertion a value would take most of the time
    private static void check(Exercise exercise) {
        double answer = exercise.answer().number().doubleValue();
        require(answer > 0 && answer < 4000, exercise, "answer out of the possible");
        require(
                !exercise.solution().checks().isEmpty()
                        && exercise.solution().checks().stream().allMatch(Solution.Verification::agrees),
                exercise,
                "a check does not agree");
        List<Choice> choices = exercise.choices();
        require(choices.size() >= 3 && choices.size() <= 5, exercise, "number of choices");
        require(choices.stream().filter(Choice::isRight).count() == 1, exercise, "one right choice");
        double apart = exercise.tolerance().equals(Grading.Tolerance.ASSUMED) ? APART : APART_STEPPED;
        for (int i = 0; i < choices.size(); i++) {
            double ratio = choices.get(i).amount().number().doubleValue() / answer;
            require(ratio >= 0.05 && ratio <= 15, exercise, "a choice gives itself away");
            for (int k = 0; k < i; k++) {
                double one = choices.get(i).amount().number().doubleValue();
                double other = choices.get(k).amount().number().doubleValue();
                require(Math.max(one, other) > apart * Math.min(one, other), exercise, "choices too near");
            }
        }
        for (Choice choice : choices) {
            Grading wanted = choice.isRight() ? new Grading.Right() : new Grading.CommonMistake(choice.mistake());
            require(exercise.grade(choice.amount()).equals(wanted), exercise, "grade of " + choice);
        }
        require(
                exercise.grade(exercise.solution().answer().carried()).equals(new Grading.Right()),
                exercise,
                "carried");
        givens(exercise);
    }

    /** What is printed on the sheet can be written down as an answer. */
    private static void texts(Exercise exercise) {
        for (Choice choice : exercise.choices()) {
            Grading wanted = choice.isRight() ? new Grading.Right() : new Grading.CommonMistake(choice.mistake());
            require(exercise.grade(choice.amount().toString()).equals(wanted), exercise, "text of " + choice);
        }
    }

    private static void otherUnits(Exercise exercise) {
        Amount carried = exercise.solution().answer().carried();
        for (Unit unit : Unit.all()) {
            if (unit.measuresTheSameAs(carried.unit())) {
                Amount same = Amount.of(carried.in(unit), unit);
                require(exercise.grade(same).equals(new Grading.Right()), exercise, "right as " + same);
            }
        }
        Unit unlike = carried.unit().measuresTheSameAs(Unit.KILOGRAM) ? Unit.SECOND : Unit.KILOGRAM;
        Amount wrongUnit = new Amount(exercise.answer().number(), unlike);
        require(
                exercise.grade(wrongUnit)
                        .equals(new Grading.WrongUnit(exercise.answer().unit())),
                exercise,
                "wrong unit of " + wrongUnit);
    }

    /** Every number that the solution takes from the question stands in it, and is round. */
    private static void givens(Exercise exercise) {
        for (Solution.GivenLine line : exercise.solution().givens()) {
            BigDecimal number = line.given().amount().number().abs();
            if (!line.given().from().equals("stated") || number.signum() == 0) {
                continue;
            }
            String question = exercise.question();
            boolean stands = question.contains(number.toPlainString())
                    || question.contains(line.given().amount().toString());
            require(stands, exercise, line.name() + " " + number + " is not in the question");
            require(number.precision() <= 4, exercise, "round number " + number);
        }
    }

    private static void require(boolean holds, Exercise exercise, String what) {
        if (!holds) {
            assertThat(exercise.question() + " " + exercise.choices()
                            + exercise.solution().checks())
                    .as(what)
                    .isEmpty();
        }
    }
}
