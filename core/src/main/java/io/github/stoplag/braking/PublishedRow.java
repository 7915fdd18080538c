package io.github.stoplag.braking;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Source;

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

    /** What a figure of a published table is. */
    public enum Quantity {
        /** What is run before the brakes act, rounded as the table rounds it. */
        LAG("reaction") {
            @Override
            double compute(PublishedRule rule, PublishedRow row) {
                return row.length(rule.asPublished(row.speed(), row.grade()).lag());
            }
        },
        /** What is run during the brake system's dead time. */
        BRAKE_LAG("brake lag") {
            @Override
            double compute(PublishedRule rule, PublishedRow row) {
                double deadS =
                        ((KinematicRule) rule.rule()).response().deadTime().inSeconds();
                return row.length(Distance.metres(row.speed().inMps() * deadS));
            }
        },
        /** What is run while the brakes act, rounded as the table rounds it. */
        BRAKING("braking") {
            @Override
            double compute(PublishedRule rule, PublishedRow row) {
                return row.length(rule.asPublished(row.speed(), row.grade()).braking());
            }
        },
        /** The sum of the parts as printed. */
        TOTAL("total") {
            @Override
            double compute(PublishedRule rule, PublishedRow row) {
                return row.length(rule.asPublished(row.speed(), row.grade()).total());
            }
        },
        /** The total rounded for design. */
        DESIGN("design") {
            @Override
            double compute(PublishedRule rule, PublishedRow row) {
                return row.length(rule.designDistance(row.speed(), row.grade()));
            }
        },
        /** The total without rounding. */
        UNROUNDED("total unrounded") {
            @Override
            double compute(PublishedRule rule, PublishedRow row) {
                return row.length(rule.exact(row.speed(), row.grade()).total());
            }
        },
        /** The deceleration the rule stands for. */
        DECELERATION("deceleration") {
            @Override
            double compute(PublishedRule rule, PublishedRow row) {
                var deceleration = rule.rule() instanceof QuadraticRule quadratic
                        ? quadratic.impliedDeceleration()
                        : ((KinematicRule) rule.rule()).deceleration();
                return switch (row.unit()) {
                    case "ft/s²" -> deceleration.inFtps2();
                    case "%" -> 100 * deceleration.inStandardGravities();
                    default -> deceleration.inMps2();
                };
            }
        },
        /** The time at constant speed that the linear term stands for. */
        LAG_TIME("lag time") {
            @Override
            double compute(PublishedRule rule, PublishedRow row) {
                return ((QuadraticRule) rule.rule()).impliedLag().inSeconds();
            }
        },
        /** The speed left at a place. */
        SPEED_LEFT("speed left") {
            @Override
            double compute(PublishedRule rule, PublishedRow row) {
                return ((KinematicRule) rule.rule())
                        .speedLeft(row.speed(), row.place())
                        .inKmh();
            }
        };

        private final String words;

        Quantity(String words) {
            this.words = words;
        }

        abstract double compute(PublishedRule rule, PublishedRow row);

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

    private double length(Distance distance) {
        return unit.equals("ft") ? distance.inFeet() : distance.inMetres();
    }
}
