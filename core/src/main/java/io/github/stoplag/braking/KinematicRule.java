package io.github.stoplag.braking;

import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Source;
import java.util.Objects;

/**
 * A rule that fixes a reaction time, a brake response and a deceleration, computed exactly.
 *
 * <pre>
 *   s = v (t + t_d) + v t_b/2 + v²/(2a) − a t_b²/24     with t_d = t_b = 0:  s = v t + v²/(2a)
 *   on a grade: a + g sin θ in place of a
 * </pre>
 *
 * <p>Symbols: s distance [m], v speed [m/s], t reaction time [s], t_d dead time and t_b build-up time of the brakes
 * [s], a deceleration on the level [m/s²], θ slope angle, g standard gravity.
 *
 * @param name a short name with the edition or clause
 * @param reaction the reaction time t, in [0, 30] s
 * @param response the brake system's dead time and build-up
 * @param deceleration the deceleration a, above 0
 * @param source who published time and deceleration
 */
public record KinematicRule(
        String name, TimeSpan reaction, BrakeResponse response, Deceleration deceleration, Source source)
        implements GradedStoppingRule {
    /**
     * Checks the ranges.
     *
     * @param name a short name with the edition or clause
     * @param reaction the reaction time t, in [0, 30] s
     * @param response the brake system's dead time and build-up
     * @param deceleration the deceleration a, above 0
     * @param source who published time and deceleration
     * @throws IllegalArgumentException if the reaction time or the deceleration is out of range
     */
    public KinematicRule {
        Objects.requireNonNull(reaction, "reaction");
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(response, "response");
        Objects.requireNonNull(source, "source");
        Ranges.REACTION.check(reaction.inSeconds());
        Ranges.BRAKING.check(deceleration.inMps2());
    }

    /**
     * Makes a rule whose brakes act at once.
     *
     * @param name a short name with the edition or clause
     * @param reaction the reaction time t, in [0, 30] s
     * @param deceleration the deceleration a, above 0
     * @param source who published time and deceleration
     * @throws IllegalArgumentException if the reaction time or the deceleration is out of range
     */
    public KinematicRule(String name, TimeSpan reaction, Deceleration deceleration, Source source) {
        this(name, reaction, BrakeResponse.INSTANT, deceleration, source);
        Objects.requireNonNull(reaction, "reaction");
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(source, "source");
    }

    /**
     * Makes the rule whose deceleration just stops a vehicle within a limit, as regulations state it.
     *
     * @param name a short name with the edition or clause
     * @param speed the speed at which the limit holds, above 0
     * @param limit the distance from the driver's signal to rest
     * @param reaction the reaction time, in [0, 30] s; 0 where the limit runs from the pedal
     * @param response the brake system's dead time and build-up
     * @param source who published the limit
     * @return the rule
     * @throws IllegalArgumentException if the limit is used up before the brakes act, or the deceleration needed is out
     *     of range
     */
    public static KinematicRule stoppingWithin(
            String name, Speed speed, Distance limit, TimeSpan reaction, BrakeResponse response, Source source) {
        Objects.requireNonNull(limit, "limit");
        Objects.requireNonNull(reaction, "reaction");
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(source, "source");
        double lagM =
                speed.inMps() * (reaction.inSeconds() + response.deadTime().inSeconds());
        if (!(limit.inMetres() > lagM && speed.inMps() > 0)) {
            throw new IllegalArgumentException("limit of " + name + " must be above the " + Numbers.text(lagM)
                    + " m run before the brakes act, got " + limit + " from " + speed);
        }
        double decelMps2 = StopKernel.decelerationToStopMps2(
                speed.inMps(), response.buildUp().inSeconds(), limit.inMetres() - lagM);
        return new KinematicRule(name, reaction, response, Deceleration.mps2(decelMps2), source);
    }

    @Override
    public Parts at(Speed speed) {
        return parts(speed, deceleration.inMps2());
    }

    @Override
    public Parts at(Speed speed, Grade grade) {
        double slowing = deceleration.inMps2()
                + StopKernel.decelerationMps2(0, grade.inRatio(), Deceleration.STANDARD_GRAVITY_MPS2);
        if (!(slowing > 0)) {
            throw new IllegalArgumentException("a deceleration of " + deceleration
                    + " does not slow a vehicle on a grade of " + grade + ": the rule gives no distance");
        }
        return parts(speed, slowing);
    }

    private Parts parts(Speed speed, double decelMps2) {
        return new Parts(
                Distance.metres(StopKernel.reactionDistanceM(
                        speed.inMps(),
                        reaction.inSeconds() + response.deadTime().inSeconds())),
                Distance.metres(StopKernel.brakingDistanceM(
                        speed.inMps(), response.buildUp().inSeconds(), decelMps2)));
    }

    /**
     * Gives the brake lag distance: what is run at constant speed during the brakes' dead time, v t_d.
     *
     * @param speed the speed
     * @return the distance, a part of the lag
     */
    public Distance brakeLag(Speed speed) {
        return Distance.metres(
                StopKernel.reactionDistanceM(speed.inMps(), response.deadTime().inSeconds()));
    }

    /**
     * Gives the speed that is left after a distance, on the level: where another vehicle stood already, the speed at
     * which this one arrives. With the brakes at full deceleration, v_left = √(v² − 2 a (d − d₀)), d₀ being the lag; in
     * general the speed of the stop's motion at that place.
     *
     * @param speed the speed at the start
     * @param distance the distance from the start
     * @return the speed there; 0 if the vehicle stands by then
     */
    public Speed speedLeft(Speed speed, Distance distance) {
        double toGoM = at(speed).total().inMetres() - distance.inMetres();
        if (!(toGoM > 0)) {
            return Speed.mps(0);
        }
        if (!(distance.inMetres() > at(speed).lag().inMetres())) {
            return speed;
        }
        double fullMps = Math.max(
                0,
                speed.inMps() - 0.5 * deceleration.inMps2() * response.buildUp().inSeconds());
        double fromFullMps = StopKernel.speedToStopMps(toGoM, deceleration.inMps2());
        return Speed.mps(fromFullMps <= fullMps ? fromFullMps : duringBuildUpMps(speed, distance));
    }

    /**
     * The speed before full braking: v − j τ²/2 where v τ − j τ³/6 is the distance since the onset; bisected, τ ↦ place
     * rises.
     */
    private double duringBuildUpMps(Speed speed, Distance distance) {
        double lagS = reaction.inSeconds() + response.deadTime().inSeconds();
        double v = speed.inMps();
        double placeM = distance.inMetres() - v * lagS;
        double jerkMps3 = deceleration.inMps2() / response.buildUp().inSeconds();
        double lo = 0;
        double hi = Math.min(response.buildUp().inSeconds(), Math.sqrt(2 * v / jerkMps3));
        while (lo < hi - Math.ulp(hi)) {
            double middle = 0.5 * (lo + hi);
            boolean before = v * middle - jerkMps3 * middle * middle * middle / 6 < placeM;
            lo = before ? middle : lo;
            hi = before ? hi : middle;
        }
        return v - 0.5 * jerkMps3 * hi * hi;
    }
}
