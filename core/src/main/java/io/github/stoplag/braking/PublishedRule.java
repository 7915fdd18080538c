package io.github.stoplag.braking;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Validity;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A stopping rule as someone published it: the rule, how its table rounds, and the rows it is printed with.
 *
 * <p>The catalogue is data: {@code rules_quadratic.csv}, {@code rules_kinematic.csv} and {@code rules_friction.csv}
 * hold the rules, {@code rules_rows.csv} the printed rows. A further rule is a further row; a rule of one's own needs
 * no catalogue, only {@link QuadraticRule#of}, {@link KinematicRule} or {@link FrictionRule#exact} and a
 * {@link TableRounding}.
 *
 * @param key the name by which {@link #published(String)} finds it
 * @param rule the rule without the table's rounding
 * @param rounding how the table rounds
 * @param note what to know about the rule, possibly empty
 */
public record PublishedRule(String key, StoppingRule rule, TableRounding rounding, String note) implements Evident {
    private static final String WITH = " with ";

    /**
     * Refuses nulls.
     *
     * @param key the name by which {@link #published(String)} finds it
     * @param rule the rule without the table's rounding
     * @param rounding how the table rounds
     * @param note what to know about the rule, possibly empty
     * @throws NullPointerException if one that is required is null
     */
    public PublishedRule {
        Objects.requireNonNull(key, "key");
        Objects.requireNonNull(note, "note");
        Objects.requireNonNull(rounding, "rounding");
        Objects.requireNonNull(rule, "rule");
    }

    /**
     * Lists the catalogue.
     *
     * @return the rules in the order of their tables
     */
    public static List<PublishedRule> published() {
        return RuleTables.RULES.list();
    }

    /**
     * Finds a rule.
     *
     * @param key its key, for example {@code uk-highway-code}
     * @return the rule
     * @throws IllegalArgumentException if no rule has this key; the message offers the nearest
     */
    public static PublishedRule published(String key) {
        Objects.requireNonNull(key, "key");
        return RuleTables.RULES.get(key);
    }

    /**
     * Applies the rule with the rounding of its table.
     *
     * @param speed the speed
     * @return the distance in parts as printed
     */
    public StoppingRule.Parts asPublished(Speed speed) {
        return rounding.parts(rule.at(speed));
    }

    /**
     * Applies the rule on a grade with the rounding of its table.
     *
     * @param speed the speed
     * @param grade the grade in the direction of travel, positive uphill
     * @return the distance in parts as printed
     * @throws IllegalArgumentException if the rule knows no grades or the grade outweighs its deceleration
     */
    public StoppingRule.Parts asPublished(Speed speed, Grade grade) {
        return rounding.parts(exact(speed, grade));
    }

    /**
     * Gives the value for design or for the table: the total, rounded as the table rounds it.
     *
     * @param speed the speed
     * @return the total as printed
     */
    public Distance designDistance(Speed speed) {
        return rounding.total(rule.at(speed));
    }

    /**
     * Gives the value for design or for the table on a grade.
     *
     * @param speed the speed
     * @param grade the grade in the direction of travel, positive uphill
     * @return the total as printed
     * @throws IllegalArgumentException if the rule knows no grades or the grade outweighs its deceleration
     */
    public Distance designDistance(Speed speed, Grade grade) {
        Objects.requireNonNull(speed, "speed");
        return rounding.total(exact(speed, grade));
    }

    /**
     * Asks the rule with another reaction time, all else as published.
     *
     * @param reaction the reaction time, in [0, 30] s
     * @return the rule, which has no printed rows of its own; its evidence says which time was published
     * @throws IllegalArgumentException if the rule has no reaction part, for example a limit that runs from the pedal,
     *     or the time is out of range
     */
    public PublishedRule withReaction(TimeSpan reaction) {
        Objects.requireNonNull(reaction, "reaction");
        double newS = Ranges.REACTION.check(reaction.inSeconds());
        TimeSpan published = publishedReaction()
                .filter(time -> time.inSeconds() > 0)
                .orElseThrow(() -> new IllegalArgumentException("stopping rule " + key
                        + " has no reaction time of a driver, so it cannot be asked with one of " + reaction));
        String name = rule.name() + ", asked with a reaction time of " + reaction;
        StoppingRule asked = rule instanceof QuadraticRule quadratic
                ? quadratic.withLinearTimes(name, newS / published.inSeconds())
                : rule instanceof FrictionRule friction
                        ? friction.withReaction(name, reaction)
                        : kinematic(name, reaction, (KinematicRule) rule);
        String asks = "reaction time " + reaction + " in place of the published " + published + ": not as published";
        return new PublishedRule(
                publishedKey() + WITH + reaction, asked, rounding, note.isEmpty() ? asks : note + "; " + asks);
    }

    private static KinematicRule kinematic(String name, TimeSpan reaction, KinematicRule from) {
        return new KinematicRule(name, reaction, from.response(), from.deceleration(), from.source());
    }

    private Optional<TimeSpan> publishedReaction() {
        PublishedRule origin = published(publishedKey());
        if (origin.rule instanceof KinematicRule kinematic) {
            return Optional.of(kinematic.reaction());
        }
        return origin.rule instanceof FrictionRule friction
                ? Optional.of(friction.reaction())
                : RuleTables.reactionOfQuadratic(origin.key);
    }

    private String publishedKey() {
        int with = key.indexOf(WITH);
        return with < 0 ? key : key.substring(0, with);
    }

    StoppingRule.Parts exact(Speed speed, Grade grade) {
        if (rule instanceof GradedStoppingRule graded) {
            return graded.at(speed, grade);
        }
        if (grade.inRatio() == 0) {
            return rule.at(speed);
        }
        throw new IllegalArgumentException("stopping rule " + key + " holds on the level, got a grade of " + grade);
    }

    /**
     * Gives the printed rows of the rule.
     *
     * @return the rows in order, empty for a rule published without a table
     */
    public List<PublishedRow> rows() {
        return RuleTables.rows(this);
    }

    /**
     * Compares the printed rows with the rule.
     *
     * @return one residual a row, in order
     */
    public List<Residual> residuals() {
        return residuals(rows());
    }

    /**
     * Compares rows from elsewhere with the rule: a table of one's own, or another print of the same rule.
     *
     * @param printed the rows
     * @return one residual a row, in order
     * @throws IllegalArgumentException if a row asks for a quantity that a rule of this form does not have, or for a
     *     grade where the rule holds on the level
     */
    public List<Residual> residuals(List<PublishedRow> printed) {
        Objects.requireNonNull(printed, "printed");
        return printed.stream()
                .map(row -> new Residual(row, row.computed(this)))
                .toList();
    }

    @Override
    public Evidence evidence() {
        Evidence published = rule.evidence();
        return note.isEmpty() ? published : published.with(Evidence.of(note));
    }

    /**
     * Says what the distance at a speed rests on.
     *
     * @param speed the speed
     * @return the evidence, with a caveat if the speed lies beyond the printed rows, or is not the one speed printed
     */
    public Evidence evidence(Speed speed) {
        return evidence().withCaveats(beyondRows(speed).stream().toList());
    }

    private Optional<Caveat> beyondRows(Speed speed) {
        DoubleSummaryStatistics kmh = published(publishedKey()).rows().stream()
                .mapToDouble(row -> row.speed().inKmh())
                .summaryStatistics();
        if (kmh.getCount() == 0) {
            return Optional.empty();
        }
        // a speed that went through m/s may miss the end of the table by its last bit
        double margin = 1e-9;
        if (kmh.getMax() - kmh.getMin() < margin) {
            return Math.abs(speed.inKmh() - kmh.getMin()) <= margin
                    ? Optional.empty()
                    : Optional.of(new Caveat("speed " + Numbers.text(speed.inKmh())
                            + " km/h is not the one speed printed, "
                            + Numbers.text(kmh.getMin()) + " km/h, from which the form of the rule carries over: "
                            + rule.source()));
        }
        return new Validity("speed", kmh.getMin() - margin, kmh.getMax() + margin, "km/h", rule.source())
                .check(speed.inKmh());
    }

    @Override
    public String toString() {
        return key + ": " + rule.name();
    }
}
