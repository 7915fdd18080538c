package io.github.stoplag.worked;

import io.github.stoplag.worked.Draw.Draft;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * A question with blanks: ranges of round numbers, and the range in which its answer makes sense.
 *
 * <p>A drawing whose answer lies outside that range, or whose mistakes cannot be told from the answer, is thrown away
 * and drawn again.
 */
public final class ExerciseTemplate {
    private static final int TRIES = 1000;

    private final String id;
    private final String topic;
    private final Difficulty difficulty;
    private final double lo;
    private final double hi;
    private final Function<Draw, Optional<Draft>> body;

    private ExerciseTemplate(
            String id,
            String topic,
            Difficulty difficulty,
            double lo,
            double hi,
            Function<Draw, Optional<Draft>> body) {
        this.id = id;
        this.topic = topic;
        this.difficulty = difficulty;
        this.lo = lo;
        this.hi = hi;
        this.body = body;
    }

    static ExerciseTemplate of(
            String id, String topic, Difficulty difficulty, double lo, double hi, Function<Draw, Draft> body) {
        return new ExerciseTemplate(id, topic, difficulty, lo, hi, draw -> Optional.of(body.apply(draw)));
    }

    static ExerciseTemplate choosing(
            String id,
            String topic,
            Difficulty difficulty,
            double lo,
            double hi,
            Function<Draw, Optional<Draft>> body) {
        return new ExerciseTemplate(id, topic, difficulty, lo, hi, body);
    }

    /**
     * Lists all templates.
     *
     * @return the templates, each with its {@link #topic()}
     */
    public static List<ExerciseTemplate> all() {
        return Stream.of(
                        StopTemplates.all(),
                        RuleTemplates.all(),
                        PairTemplates.all(),
                        ChainTemplates.all(),
                        CircuitTemplates.all(),
                        LampTemplates.all())
                .flatMap(List::stream)
                .toList();
    }

    /**
     * Gives the name.
     *
     * @return a short name
     */
    public String id() {
        return id;
    }

    /**
     * Gives the part of the field it belongs to.
     *
     * @return stopping, rules, following, chain, driver, circuit or lamp
     */
    public String topic() {
        return topic;
    }

    /**
     * Gives the difficulty.
     *
     * @return how much it asks for
     */
    public Difficulty difficulty() {
        return difficulty;
    }

    /**
     * Draws an exercise.
     *
     * @param seed chooses the numbers; the same seed gives the same exercise
     * @param units the system of units
     * @return the exercise
     */
    public Exercise draw(long seed, UnitSystem units) {
        for (int i = 0; i < TRIES; i++) {
            Draw draw = new Draw(mixed(seed, i), units);
            Optional<Exercise> exercise = body.apply(draw).flatMap(draft -> draft.within(id, difficulty, lo, hi));
            if (exercise.isPresent()) {
                return exercise.get();
            }
        }
        throw new IllegalStateException("template " + id + " finds no fair question in " + TRIES + " drawings");
    }

    /** Spreads neighbouring seeds (the finalizer of SplitMix64). */
    static long mixed(long seed, long index) {
        long z = seed + 0x9e3779b97f4a7c15L * (index + 1);
        z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }

    @Override
    public String toString() {
        return id;
    }
}
