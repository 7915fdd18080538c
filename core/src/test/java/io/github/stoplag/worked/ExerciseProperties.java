package io.github.stoplag.worked;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Keys and sheets for any seed: recalculated from their text, no question twice. The drawings: {@link DrawingTest}. */
class ExerciseProperties {
    @Provide
    Arbitrary<ExerciseTemplate> templates() {
        return Arbitraries.of(ExerciseTemplate.all());
    }

    @Property(tries = 400, seed = "20261126")
    void everyLineOfAKeyCanBeRecalculated(
            @ForAll("templates") ExerciseTemplate template, @ForAll long seed, @ForAll UnitSystem units) {
        RenderedArithmetic.check(template.draw(seed, units).solution(), 6);
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

    /** 60 drawings a try, 2,040 exercises in all. */
    @Property(tries = 34, seed = "20261130")
    void noWrongChoiceIsTakenForRight(@ForAll long seed, @ForAll UnitSystem units) {
        for (Exercise exercise : ExerciseSheet.of(seed, 60).in(units).exercises()) {
            double exact = exercise.solution().answer().exact().doubleValue();
            double tolerated = exercise.tolerance().withinRatio() * Math.abs(exact);
            for (Exercise.Choice choice : exercise.choices()) {
                double off = Math.abs(choice.amount().number().doubleValue() - exact);
                assertThat(exercise.grade(choice.amount()).countsAsRight())
                        .as("%s: %s", exercise, choice)
                        .isEqualTo(choice.isRight());
                assertThat(!choice.isRight() && off <= tolerated)
                        .as("%s: %s", exercise, choice)
                        .isFalse();
            }
        }
    }

    /** The key's last digit is that of the number without rounding on the way, whoever rounds it. */
    @Property(tries = 400, seed = "20261201")
    void theAnswerIsTheExactOneRoundedOnce(
            @ForAll("templates") ExerciseTemplate template, @ForAll long seed, @ForAll UnitSystem units) {
        Solution.Answer answer = template.draw(seed, units).solution().answer();
        assertThat(answer.carriesEnough()).isTrue();
        assertThat(answer.printed().number())
                .isEqualByComparingTo(answer.rounding().apply(answer.exact().doubleValue()));
        assertThat(answer.exact().doubleValue())
                .isCloseTo(
                        answer.carried().number().doubleValue(),
                        within(1e-4 * Math.abs(answer.exact().doubleValue())));
    }
}
