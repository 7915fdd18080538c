package io.github.stoplag.road;

import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;

/**
 * A uniform straight road: friction, grade and gravity.
 *
 * <pre>
 *   a = g (μ cos θ + sin θ),  θ = atan G
 * </pre>
 *
 * <p>Symbols: a deceleration [m/s²], g acceleration of free fall [m/s²], μ friction coefficient, G grade (rise over
 * run, positive uphill), θ slope angle. All wheels are taken to use the friction fully; air and rolling drag are left
 * out.
 *
 * <p>Source: Newton's second law along the slope, Coulomb friction.
 *
 * @param friction the friction coefficient between tyre and road
 * @param grade the grade in the direction of travel
 * @param gravityMps2 the acceleration of free fall in m/s², in [1, 30]
 * @param frictionEvidence what the friction coefficient rests on
 */
public record Road(FrictionCoefficient friction, Grade grade, double gravityMps2, Evidence frictionEvidence)
        implements Evident {
    private static final double ROUNDING = 1e-12;
    private static final Evidence AS_GIVEN = Evidence.of("friction coefficient as given");

    /**
     * Checks gravity.
     *
     * @param friction the friction coefficient between tyre and road
     * @param grade the grade in the direction of travel
     * @param gravityMps2 the acceleration of free fall in m/s², in [1, 30]
     * @param frictionEvidence what the friction coefficient rests on
     * @throws IllegalArgumentException if gravityMps2 is not in [1, 30] m/s²
     * @throws NullPointerException if a part is null
     */
    public Road {
        Objects.requireNonNull(friction, "friction");
        Objects.requireNonNull(grade, "grade");
        Objects.requireNonNull(frictionEvidence, "frictionEvidence");
        gravityMps2 = Ranges.GRAVITY.check(gravityMps2);
    }

    /**
     * Makes a road of a published friction under standard gravity; a stop on it tells the friction's source and
     * caveats.
     *
     * @param friction the friction coefficient with its source
     * @param grade the grade in the direction of travel
     * @return the road
     */
    public static Road of(SourcedFriction friction, Grade grade) {
        return new Road(friction.friction(), grade, Deceleration.STANDARD_GRAVITY_MPS2, friction.evidence());
    }

    /**
     * Makes a level road under standard gravity.
     *
     * @param friction the friction coefficient between tyre and road
     * @return the road
     */
    public static Road level(FrictionCoefficient friction) {
        return of(friction, Grade.ratio(0));
    }

    /**
     * Makes a road under standard gravity.
     *
     * @param friction the friction coefficient between tyre and road
     * @param grade the grade in the direction of travel
     * @return the road
     */
    public static Road of(FrictionCoefficient friction, Grade grade) {
        return new Road(friction, grade, Deceleration.STANDARD_GRAVITY_MPS2, AS_GIVEN);
    }

    /**
     * Gives the same road under another gravity.
     *
     * @param newGravityMps2 the acceleration of free fall in m/s², in [1, 30]
     * @return the road
     * @throws IllegalArgumentException if gravity is out of range
     */
    public Road withGravity(double newGravityMps2) {
        return new Road(friction, grade, newGravityMps2, frictionEvidence);
    }

    /**
     * Gives the deceleration the road allows.
     *
     * @return the deceleration, or that the road cannot slow the vehicle
     */
    public RoadDeceleration deceleration() {
        double decelMps2 = StopKernel.decelerationMps2(friction.inRatio(), grade.inRatio(), gravityMps2);
        // friction that equals the downgrade leaves a rounding error of either sign, which is no deceleration
        if (decelMps2 > ROUNDING * gravityMps2) {
            return new RoadDeceleration.Holds(Deceleration.mps2(decelMps2));
        }
        return new RoadDeceleration.CannotHold("friction " + friction + " does not slow a vehicle on a grade of "
                + grade + ": its acceleration downhill would be " + Numbers.text(Math.max(0, -decelMps2)) + " m/s²");
    }

    @Override
    public Evidence evidence() {
        return Evidence.of("road: friction coefficient " + friction + " used fully on a grade of " + grade
                        + ", a = g (μ cos θ + sin θ), g = " + Numbers.text(gravityMps2) + " m/s²")
                .with(frictionEvidence);
    }
}
