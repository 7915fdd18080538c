package io.github.stoplag.worked;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.worked.Exercise.Choice;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Exercises for any seed: possible, not trivial, no two alike, recalculated from their text. */
class ExerciseProperties {
    @Provide
    Arbitrary<ExerciseTemplate> templates() {
        return Arbitraries.of(ExerciseTemplate.all());
    }

    @Property(tries = 10_000, seed = "20261125")
    void everyDrawingIsAFairQuestion(
            @ForAll("templates") ExerciseTemplate template, @ForAll long seed, @ForAll UnitSystem units) {
        Exercise exercise = template.draw(seed, units);
        double answer = exercise.answer().number().doubleValue();
        assertThat(answer).as(exercise.question()).isGreaterThan(0).isLessThan(3000);
        assertThat(exercise.solution().checks())
                .as(exercise.question())
                .isNotEmpty()
                .allMatch(Solution.Verification::agrees);
        assertThat(exercise.choices()).hasSizeBetween(3, 5);
        assertThat(exercise.choices().stream().filter(Choice::isRight)).hasSize(1);
        assertThat(exercise.choices().stream().map(choice -> choice.amount().toString()))
                .as(exercise.question())
                .doesNotHaveDuplicates();
        for (Solution.GivenLine given : exercise.solution().givens()) {
            boolean stated = given.given().from().equals("stated");
            if (stated && given.given().amount().number().signum() != 0) {
                String number = given.given().amount().number().abs().toPlainString();
                assertThat(exercise.question())
                        .as(given.name())
                        .containsAnyOf(number, given.given().amount().toString());
                assertThat(given.given().amount().number().precision())
                        .as("round numbers: " + number)
                        .isLessThanOrEqualTo(4);
            }
        }
    }

    @Property(tries = 400, seed = "20261126")
    void everyLineOfAKeyCanBeRecalculated(
            @ForAll("templates") ExerciseTemplate template, @ForAll long seed, @ForAll UnitSystem units) {
        RenderedArithmetic.check(template.draw(seed, units).solution(), 6);
    }

    @Property(tries = 1000, seed = "20261127")
    void gradingTellsRightFromEachMistake(
            @ForAll("templates") ExerciseTemplate template, @ForAll long seed, @ForAll UnitSystem units) {
        Exercise exercise = template.draw(seed, units);
        for (Choice choice : exercise.choices()) {
            Grading grading = exercise.grade(choice.amount());
            assertThat(grading)
                    .as(exercise.question())
                    .isEqualTo(choice.isRight() ? new Grading.Right() : new Grading.CommonMistake(choice.mistake()));
        }
        assertThat(exercise.grade(exercise.solution().answer().carried())).isEqualTo(new Grading.Right());
    }

    @Property(tries = 40, seed = "20261128")
    void aSheetHasNoQuestionTwiceAndIsTheSameForItsSeed(@ForAll long seed, @ForAll UnitSystem units) {
        ExerciseSheet sheet = ExerciseSheet.of(seed, 60).in(units);
        List<String> questions =
                sheet.exercises().stream().map(Exercise::question).toList();
        assertThat(questions).doesNotHaveDuplicates();
        assertThat(ExerciseSheet.of(seed, 60).in(units).key().toText())
                .isEqualTo(sheet.key().toText());
        Set<String> other = new HashSet<>(
                sheet.variant(1).exercises().stream().map(Exercise::question).toList());
        other.retainAll(questions);
        assertThat(other).as("questions common to two variants").hasSizeLessThan(8);
        assertThat(sheet.variant(1).exercises().stream().map(Exercise::template))
                .containsExactlyElementsOf(
                        sheet.exercises().stream().map(Exercise::template).toList());
    }
}
