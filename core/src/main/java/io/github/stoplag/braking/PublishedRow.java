package io.github.stoplag.braking;

import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.Units;
import io.github.stoplag.source.Source;
import java.util.Objects;

/**
 * One printed figure of a published rule.
 *
 * @param condition speed, grade and quantity in words
 * @param speed the speed it holds at
 * @param grade the grade it holds on
 * @param place the distance at which a speed left is printed; 0 elsewhere
 * @param quantity what is printed
 * @param published the figure in its unit
 * @param halfDigit half a unit of its last printed digit
 * @param unit its unit: m, ft, m/s², ft/s², %, s or km/h
 * @param source who printed it
 * @param note why it differs from the rule, or that it defines the rule; empty if there is nothing to say
 */
public record PublishedRow(
        String condition,
        Speed speed,
        Grade grade,
        Distance place,
        Quantity quantity,
        double published,
        double halfDigit,
        String unit,
        Source source,
        String note) {

    /**
     * Refuses nulls.
     *
     * @param condition speed, grade and quantity in words
     * @param speed the speed it holds at
     * @param grade the grade it holds on
     * @param place the distance at which a speed left is printed; 0 elsewhere
     * @param quantity what is printed
     * @param published the figure in its unit
     * @param halfDigit half a unit of its last printed digit
     * @param unit its unit: m, ft, m/s², ft/s², %, s or km/h
     * @param source who printed it
     * @param note why it differs from the rule, or that it defines the rule; empty if there is nothing to say
     * @throws NullPointerException if one that is required is null
     */
    public PublishedRow {
        Objects.requireNonNull(condition, "condition");
        Objects.requireNonNull(grade, "grade");
        Objects.requireNonNull(note, "note");
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(quantity, "quantity");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(unit, "unit");
    }

    /** What a figure of a published table is. */
    public enum Quantity {
        /** What is run before the brakes act, rounded as the table rounds it. */
        LAG("reaction"),
        /** What is run during the brake system's dead time. */
        BRAKE_LAG("brake lag"),
        /** What is run while the brakes act, rounded as the table rounds it. */
        BRAKING("braking"),
        /** The sum of the parts as printed. */
        TOTAL("total"),
        /** The total rounded for design. */
        DESIGN("design"),
        /** The total without rounding. */
        UNROUNDED("total unrounded"),
        /** The deceleration the rule stands for. */
        DECELERATION("deceleration"),
        /** The time at constant speed that the linear term stands for. */
        LAG_TIME("lag time"),
        /** The speed left at a place. */
        SPEED_LEFT("speed left");

        private final String words;

        Quantity(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * Gives the figure with the digits it was printed with.
     *
     * @return its text, for example {@code 83.0}
     */
    public String printed() {
        return Numbers.fixed(published, decimals());
    }

    int decimals() {
        return (int) Math.max(0, Math.round(-Math.log10(2 * halfDigit)));
    }

    /** The rule's value for this row, in its unit. */
    double computed(PublishedRule rule) {
        return switch (quantity) {
            case LAG -> length(rule.asPublished(speed, grade).lag());
            case BRAKING -> length(rule.asPublished(speed, grade).braking());
            case TOTAL -> length(rule.asPublished(speed, grade).total());
            case DESIGN -> length(rule.designDistance(speed, grade));
            case UNROUNDED -> length(rule.exact(speed, grade).total());
            case DECELERATION ->
                inUnit(
                        rule.rule() instanceof QuadraticRule quadratic
                                ? quadratic.impliedDeceleration()
                                : form(rule, KinematicRule.class).deceleration());
            case LAG_TIME -> form(rule, QuadraticRule.class).impliedLag().inSeconds();
            case BRAKE_LAG -> length(form(rule, KinematicRule.class).brakeLag(speed));
            case SPEED_LEFT -> {
                double leftMps =
                        form(rule, KinematicRule.class).speedLeft(speed, place).inMps();
                yield Units.SPEED.unit(unit).fromSi(leftMps);
            }
        };
    }

    private <T extends StoppingRule> T form(PublishedRule rule, Class<T> form) {
        if (form.isInstance(rule.rule())) {
            return form.cast(rule.rule());
        }
        throw new IllegalArgumentException(
                "stopping rule " + rule.key() + " has no " + quantity + ": it is no " + form.getSimpleName());
    }

    private double inUnit(Deceleration deceleration) {
        // a share of gravity, as some tables print the efficiency of brakes
        return unit.equals("%")
                ? 100 * deceleration.inStandardGravities()
                : Units.DECELERATION.unit(unit).fromSi(deceleration.inMps2());
    }

    private double length(Distance distance) {
        return Units.DISTANCE.unit(unit).fromSi(distance.inMetres());
    }
}
