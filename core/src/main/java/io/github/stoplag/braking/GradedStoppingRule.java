package io.github.stoplag.braking;

import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Speed;

/** A stopping rule that also covers up- and downgrades. */
public interface GradedStoppingRule extends StoppingRule {
    /**
     * Applies the rule on a grade.
     *
     * @param speed the speed
     * @param grade the grade in the direction of travel, positive uphill
     * @return the distance, in the parts the rule speaks of
     * @throws IllegalArgumentException if the grade outweighs the rule's deceleration, so that it gives no distance
     */
    Parts at(Speed speed, Grade grade);
}
