package io.github.stoplag.braking;

import io.github.stoplag.braking.AchievedDeceleration.Limiter;
import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.Road;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;

/**
 * What a vehicle's brakes and a road allow, set against what the driver demands.
 *
 * <pre>
 *   brakes  a_b = F/m + g sin θ
 *   road    a_r = g (η μ cos θ + sin θ)
 *   a = max(g sin θ, min(demand, a_b, a_r))
 * </pre>
 *
 * <p>Symbols: a deceleration along the road [m/s²], F/m largest brake force over mass, which is the deceleration the
 * brakes give on the level [m/s²], μ friction coefficient, η share of the friction that the brakes can use, θ slope
 * angle, positive uphill, g gravity. The demand is the deceleration the driver wants of the vehicle, whatever the
 * grade.
 *
 * <p>Range: F/m above 0, η (0, 1]. η is 1 where every wheel reaches its friction limit, as good anti-lock brakes come
 * close to; below it the axle that locks first sets the limit. Air and rolling drag are left out.
 *
 * <p>Source: Newton's second law along the slope, Coulomb friction; the smallest of the three holds.
 *
 * <pre>{@code
 * BrakingCapability car = BrakingCapability.of(Deceleration.mps2(9), Road.level(FrictionCoefficient.of(0.4)));
 * car.full(); // Slows[deceleration=3.92266 m/s², limiter=ROAD]
 * }</pre>
 *
 * @param brakes the deceleration F/m that the brakes give on the level at the load in question
 * @param road friction and grade
 * @param frictionUseRatio the share η of the friction that the brakes can use
 */
public record BrakingCapability(Deceleration brakes, Road road, double frictionUseRatio) implements Evident {
    /**
     * Checks the ranges.
     *
     * @param brakes the deceleration F/m that the brakes give on the level at the load in question
     * @param road friction and grade
     * @param frictionUseRatio the share η of the friction that the brakes can use
     * @throws IllegalArgumentException if the brakes give nothing or the share is not in (0, 1]
     */
    public BrakingCapability {
        Objects.requireNonNull(brakes, "brakes");
        Objects.requireNonNull(road, "road");
        Ranges.BRAKING.check("brake capacity", brakes.inMps2());
        Check.above("share of friction used", frictionUseRatio, 0, 1, "");
    }

    /**
     * Makes a capability whose brakes can use the friction fully.
     *
     * @param brakes the deceleration that the brakes give on the level at the load in question
     * @param road friction and grade
     * @return the capability
     * @throws IllegalArgumentException if the brakes give nothing
     */
    public static BrakingCapability of(Deceleration brakes, Road road) {
        Objects.requireNonNull(brakes, "brakes");
        Objects.requireNonNull(road, "road");
        return new BrakingCapability(brakes, road, 1);
    }

    /**
     * Gives the deceleration that comes of a demand, and what limits it.
     *
     * @param demand the deceleration the driver wants
     * @return the deceleration, or that the vehicle does not slow down
     */
    public AchievedDeceleration under(Deceleration demand) {
        Objects.requireNonNull(demand, "demand");
        double gradeMps2 = roadMps2(0);
        double brakesMps2 = brakes.inMps2() + gradeMps2;
        double roadMps2 = roadMps2(frictionUseRatio * road.friction().inRatio());
        double leastMps2 = Math.min(demand.inMps2(), Math.min(brakesMps2, roadMps2));
        Limiter limiter = limiter(demand.inMps2(), brakesMps2, roadMps2, gradeMps2);
        double decelMps2 = Math.max(gradeMps2, leastMps2);
        return decelMps2 > 0
                ? new AchievedDeceleration.Slows(Deceleration.mps2(decelMps2), limiter)
                : new AchievedDeceleration.DoesNotSlow(
                        "demand " + demand + ", brakes " + Numbers.text(brakesMps2) + " m/s² and road "
                                + Numbers.text(roadMps2) + " m/s² on a grade of " + road.grade()
                                + ": the least of them does not slow the vehicle",
                        limiter);
    }

    /**
     * Gives the deceleration that comes of a demand without limit: the most there is.
     *
     * @return the deceleration, or that the vehicle does not slow down
     */
    public AchievedDeceleration full() {
        return under(Deceleration.mps2(200));
    }

    /**
     * Finds the stop that comes of a demand.
     *
     * @param speed the speed at time 0
     * @param reaction the driver's perception-reaction time, in [0, 30] s
     * @param response the brake system's answer to the pedal
     * @param demand the deceleration the driver wants
     * @return the stop, or that the vehicle never stops
     * @throws IllegalArgumentException if the reaction time is out of range
     */
    public StopOutcome stop(Speed speed, TimeSpan reaction, BrakeResponse response, Deceleration demand) {
        Objects.requireNonNull(demand, "demand");
        Objects.requireNonNull(reaction, "reaction");
        AchievedDeceleration achieved = under(demand);
        if (achieved instanceof AchievedDeceleration.Slows slows) {
            return Stop.of(speed, reaction, response, slows.deceleration(), origin(demand, slows.limiter()));
        }
        AchievedDeceleration.DoesNotSlow none = (AchievedDeceleration.DoesNotSlow) achieved;
        return Stop.neverStops(none.reason(), speed, reaction, response, origin(demand, none.limiter()));
    }

    private Evident origin(Deceleration demand, Limiter limiter) {
        return () -> Evidence.of("braking on demand for " + demand + ", limited by " + limiter)
                .with(evidence());
    }

    @Override
    public Evidence evidence() {
        return Evidence.of("brakes give " + brakes + " on the level and use a share of "
                        + Numbers.text(frictionUseRatio) + " of the friction")
                .with(road.evidence());
    }

    private static Limiter limiter(double demandMps2, double brakesMps2, double roadMps2, double gradeMps2) {
        if (demandMps2 < gradeMps2) {
            return Limiter.GRADE;
        }
        if (demandMps2 <= Math.min(brakesMps2, roadMps2)) {
            return Limiter.DRIVER;
        }
        return brakesMps2 <= roadMps2 ? Limiter.BRAKES : Limiter.ROAD;
    }

    private double roadMps2(double frictionRatio) {
        return StopKernel.decelerationMps2(frictionRatio, road.grade().inRatio(), road.gravityMps2());
    }
}
