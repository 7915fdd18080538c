package io.github.stoplag.road;

import io.github.stoplag.kernel.FrictionKernel;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import java.util.Objects;

/**
 * Friction shared between braking and holding the vehicle sideways on a crossfall or in a curve.
 *
 * <p>(f_x / μ_x)² + (f_y / μ_y)² = 1; f_y = (v²/(g R) − e) / (1 + e v²/(g R)); on a straight |f_y| = e
 *
 * <p>f_x, f_y friction used along and across, over the normal force; μ_x, μ_y the most of each alone; v speed; R curve
 * radius; e crossfall, positive where it leans into the curve. The vehicle is a point: load transfer and roll-over are
 * not in it. The share left for braking grows as the vehicle slows, so the value at the initial speed is the cautious
 * one. The ellipse is a term of the trade (a circle where μ_x = μ_y); the side demand follows from Newton's second law.
 *
 * <pre>{@code
 * FrictionEllipse tyres = FrictionEllipse.circle(FrictionCoefficient.of(0.7));
 * tyres.onStraight(Grade.percent(0)); // Remaining[friction=0.7, sideShare=0.0]
 * }</pre>
 */
public final class FrictionEllipse {
    private final FrictionCoefficient longitudinal;
    private final FrictionCoefficient lateral;

    private FrictionEllipse(FrictionCoefficient longitudinal, FrictionCoefficient lateral) {
        Ranges.GRIP.check("longitudinal friction", longitudinal.inRatio());
        Ranges.GRIP.check("lateral friction", lateral.inRatio());
        this.longitudinal = longitudinal;
        this.lateral = lateral;
    }

    /** What the ellipse leaves for braking. */
    public sealed interface Left permits Remaining, NothingLeft {
        /**
         * Gives the share of the lateral friction that is used sideways.
         *
         * @return the share, 0 none to 1 all; above 1 where the road does not hold the vehicle
         */
        double sideShare();
    }

    /**
     * Friction is left for braking.
     *
     * @param friction the friction coefficient left along the road
     * @param sideShare the share of the lateral friction used sideways
     */
    public record Remaining(FrictionCoefficient friction, double sideShare) implements Left {

        /**
         * Refuses nulls.
         *
         * @param friction the friction coefficient left along the road
         * @param sideShare the share of the lateral friction used sideways
         * @throws NullPointerException if one that is required is null
         */
        public Remaining {
            Objects.requireNonNull(friction, "friction");
        }
    }

    /**
     * The side force alone asks for all friction or more: the vehicle slides sideways.
     *
     * @param sideShare the share of the lateral friction asked for, at least 1
     * @param reason the demand and what there is
     */
    public record NothingLeft(double sideShare, String reason) implements Left {

        /**
         * Refuses nulls.
         *
         * @param sideShare the share of the lateral friction asked for, at least 1
         * @param reason the demand and what there is
         * @throws NullPointerException if one that is required is null
         */
        public NothingLeft {
            Objects.requireNonNull(reason, "reason");
        }
    }

    /**
     * Makes an ellipse.
     *
     * @param longitudinal the friction μ_x along the road alone
     * @param lateral the friction μ_y across it alone
     * @return the ellipse
     * @throws IllegalArgumentException if either is not above 0
     */
    public static FrictionEllipse of(FrictionCoefficient longitudinal, FrictionCoefficient lateral) {
        Objects.requireNonNull(lateral, "lateral");
        Objects.requireNonNull(longitudinal, "longitudinal");
        return new FrictionEllipse(longitudinal, lateral);
    }

    /**
     * Makes a circle: the same friction in both directions.
     *
     * @param friction the friction μ
     * @return the ellipse
     * @throws IllegalArgumentException if it is not above 0
     */
    public static FrictionEllipse circle(FrictionCoefficient friction) {
        return new FrictionEllipse(friction, friction);
    }

    /**
     * Gives what a straight road with crossfall leaves for braking.
     *
     * @param crossfall the crossfall e, of either sign
     * @return the friction left, or nothing
     */
    public Left onStraight(Grade crossfall) {
        Objects.requireNonNull(crossfall, "crossfall");
        return left(Math.abs(crossfall.inRatio()));
    }

    /**
     * Gives what a curve leaves for braking, with standard gravity.
     *
     * @param speed the speed v at which the curve is driven
     * @param radius the curve radius R
     * @param crossfall the crossfall e, positive where it leans into the curve
     * @return the friction left, or nothing
     * @throws IllegalArgumentException if the radius is not in [1, 1e7] m, or an adverse crossfall this steep would
     *     lift the vehicle off
     */
    public Left inCurve(Speed speed, Distance radius, Grade crossfall) {
        Objects.requireNonNull(crossfall, "crossfall");
        Objects.requireNonNull(radius, "radius");
        double radiusM = Check.inRange("curve radius", radius.inMetres(), 1, 1e7, "m");
        double v = speed.inMps();
        double normal = 1 + crossfall.inRatio() * v * v / (radiusM * Deceleration.STANDARD_GRAVITY_MPS2);
        Check.above("normal force over weight in the curve", normal, 0, 1e5, "");
        return left(Math.abs(FrictionKernel.sideDemandRatio(
                v, 1 / radiusM, crossfall.inRatio(), Deceleration.STANDARD_GRAVITY_MPS2)));
    }

    private Left left(double sideDemand) {
        double share = sideDemand / lateral.inRatio();
        if (share >= 1) {
            return new NothingLeft(
                    share,
                    "side friction needed " + Numbers.text(sideDemand) + " is not below the lateral friction "
                            + lateral);
        }
        double along = longitudinal.inRatio() * Math.sqrt((1 - share) * (1 + share));
        return new Remaining(FrictionCoefficient.of(along), share);
    }
}
