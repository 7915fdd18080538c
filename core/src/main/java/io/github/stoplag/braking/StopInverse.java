package io.github.stoplag.braking;

import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Range;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Objects;

/**
 * A stop asked backwards: what deceleration, friction, grade or reaction time belongs to what was measured.
 *
 * <pre>
 *   from a time        a = (v − u)/t
 *   from a distance    g (μ cos θ + sin θ) = v²/(2 s):   μ = (v²/(2 g s) − sin θ)/cos θ
 *                                                         θ = asin(v²/(2 g s √(1 + μ²))) − atan μ,  G = tan θ
 *   from two stops     s/v = t_r + v/(2 a), a line through both:  1/(2 a) = (s₂/v₂ − s₁/v₁)/(v₂ − v₁)
 * </pre>
 *
 * <p>Symbols: v, u speed before and after [m/s], t time [s], a deceleration [m/s²], s braking distance, in two stops
 * with the reaction distance [m], μ friction coefficient used fully, G grade, θ = atan G, g standard gravity, t_r
 * reaction time [s].
 *
 * <p>Deceleration is taken as constant from the first moment; a build-up counts as half of its time in t_r. What
 * results is a mean over the stop. The deceleration of a distance between two speeds is
 * {@link MeanDeceleration#between}.
 *
 * <p>Source: kinematics and Newton's second law along the slope, the inverses of {@link io.github.stoplag.road.Road}
 * and {@link KinematicRule}.
 */
public final class StopInverse {
    private static final Range SOME_DISTANCE = Ranges.LENGTH.withoutLowerEnd();

    private static final double G = Deceleration.STANDARD_GRAVITY_MPS2;

    private StopInverse() {}

    /**
     * What two stops of one driver and vehicle have in common.
     *
     * @param reaction the reaction time t_r, with what stands for the brakes' lag
     * @param deceleration the deceleration a
     */
    public record Common(TimeSpan reaction, Deceleration deceleration) {

        /**
         * Refuses nulls.
         *
         * @param reaction the reaction time t_r, with what stands for the brakes' lag
         * @param deceleration the deceleration a
         * @throws NullPointerException if one that is required is null
         */
        public Common {
            Objects.requireNonNull(deceleration, "deceleration");
            Objects.requireNonNull(reaction, "reaction");
        }
    }

    /**
     * Gives the mean deceleration of a braking that took a time.
     *
     * @param from the speed v before
     * @param to the speed u after, below v
     * @param time the time t, above 0
     * @return a
     * @throws IllegalArgumentException if the speed does not fall, the time is not above 0 s or the deceleration above
     *     200 m/s²
     */
    public static Deceleration deceleration(Speed from, Speed to, TimeSpan time) {
        Objects.requireNonNull(from, "from");
        Check.above("speed before a braking down to " + to, from.inMps(), to.inMps(), Ranges.SPEED.hi(), "m/s");
        double timeS = Check.above("braking time", time.inSeconds(), 0, 1e6, "s");
        return Deceleration.mps2(Ranges.BRAKING.check((from.inMps() - to.inMps()) / timeS));
    }

    /**
     * Gives the friction with which a vehicle stopped within a distance on a grade.
     *
     * @param from the speed v, above 0
     * @param distance the braking distance s, above 0
     * @param grade the grade G
     * @return μ
     * @throws IllegalArgumentException if an input is out of range, or the friction not in (0, 2]: not above 0 if the
     *     grade alone would have stopped the vehicle sooner
     */
    public static FrictionCoefficient friction(Speed from, Distance distance, Grade grade) {
        Objects.requireNonNull(from, "from");
        double theta = Math.atan(grade.inRatio());
        double ratio = (decelerationMps2(from, distance) / G - Math.sin(theta)) / Math.cos(theta);
        return FrictionCoefficient.of(Ranges.GRIP.check(
                "friction that stops a vehicle from " + from + " within " + distance + " on a grade of " + grade,
                ratio));
    }

    /**
     * Gives the grade on which a vehicle stopped within a distance with a friction.
     *
     * @param from the speed v, above 0
     * @param distance the braking distance s, above 0
     * @param friction the friction coefficient μ
     * @return G
     * @throws IllegalArgumentException if an input is out of range, or no grade in [-1, 1] belongs to them
     */
    public static Grade grade(Speed from, Distance distance, FrictionCoefficient friction) {
        Objects.requireNonNull(from, "from");
        double mu = friction.inRatio();
        String said = "grade that stops a vehicle from " + from + " within " + distance + " with friction " + friction;
        double sine = Check.inRange(
                "deceleration over the greatest on any slope, for the " + said,
                decelerationMps2(from, distance) / (G * Math.hypot(1, mu)),
                0,
                1,
                "");
        double theta = Math.asin(sine) - Math.atan(mu);
        return Grade.ratio(Ranges.GRADE.check(said, Math.tan(theta)));
    }

    /**
     * Gives reaction time and deceleration of two stops from different speeds, reaction distance included.
     *
     * @param slower the lower speed v₁, above 0
     * @param shorter its stopping distance s₁
     * @param faster the higher speed v₂
     * @param longer its stopping distance s₂
     * @return what both have in common
     * @throws IllegalArgumentException if the speeds are not in rising order, or no reaction time in [0, 30] s and
     *     deceleration in (0, 200] m/s² belong to the stops
     */
    public static Common twoStops(Speed slower, Distance shorter, Speed faster, Distance longer) {
        Objects.requireNonNull(faster, "faster");
        Objects.requireNonNull(longer, "longer");
        Objects.requireNonNull(shorter, "shorter");
        Objects.requireNonNull(slower, "slower");
        double v1 = Ranges.MOVING.check("lower speed", slower.inMps());
        double v2 = Check.above("higher speed", faster.inMps(), v1, Ranges.SPEED.hi(), "m/s");
        double slope = Check.above(
                "rise of distance over speed between two stops, per speed",
                (longer.inMetres() / v2 - shorter.inMetres() / v1) / (v2 - v1),
                0,
                1e6,
                "s²/m");
        double reactionS = shorter.inMetres() / v1 - slope * v1;
        return new Common(
                TimeSpan.seconds(Ranges.REACTION.check("reaction time of two stops", reactionS)),
                Deceleration.mps2(Ranges.BRAKING.check("deceleration of two stops", 1 / (2 * slope))));
    }

    private static double decelerationMps2(Speed from, Distance distance) {
        return StopKernel.decelerationToStopMps2(
                Ranges.MOVING.check(from.inMps()), SOME_DISTANCE.check("braking distance", distance.inMetres()));
    }
}
