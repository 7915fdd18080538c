package io.github.stoplag.following;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;
import java.util.Optional;

/**
 * A vehicle that brakes by itself once the time to collision has fallen to a threshold.
 *
 * <pre>
 *   h(t*) = τ c(t*)     t* the first time at which the gap lasts only τ at the closing speed of the moment
 *   the follower goes on at constant speed until t*, then brakes as any vehicle does: dead time, build-up, deceleration
 *   instant build-up, target at constant speed:  v_r² = c² − 2 a c (τ − t_d)   while that is positive and τ ≥ t_d
 * </pre>
 *
 * <p>h gap [m], c closing speed [m/s], τ threshold [s], a deceleration [m/s²], t_d dead time [s], v_r relative speed at
 * the contact. Range: τ in (0, 30] s. The system is taken to see its target perfectly and to brake on to rest: real
 * systems work in a range of speeds, light and weather, can be switched off or overridden, and may start by degrees. A
 * requirement on systems ({@link AutomaticBrakingRequirement}) is not what a given vehicle does.
 *
 * <p>Source: kinematics; see {@link TimeToCollision}.
 *
 * <pre>{@code
 * BrakeResponse brakes = new BrakeResponse(TimeSpan.seconds(0.1), TimeSpan.seconds(0.2));
 * AutomaticBraking system = new AutomaticBraking(TimeSpan.seconds(0.9), brakes, Deceleration.mps2(9));
 * system.impactSpeed(Speed.kmh(60), Speed.kmh(0)); // 8.21631 m/s
 * }</pre>
 *
 * @param threshold the time to collision τ at which it brakes
 * @param response its dead time from there to first deceleration, and the build-up
 * @param deceleration the deceleration after the build-up
 */
public record AutomaticBraking(TimeSpan threshold, BrakeResponse response, Deceleration deceleration) {
    private static final String SYSTEM = "a vehicle that brakes by itself";

    /**
     * Checks threshold and deceleration.
     *
     * @param threshold the time to collision τ at which it brakes, in (0, 30] s
     * @param response its dead time from there to first deceleration, and the build-up
     * @param deceleration the deceleration after the build-up, not 0
     * @throws IllegalArgumentException if the threshold is not in (0, 30] s or the deceleration is 0
     */
    public AutomaticBraking {
        Objects.requireNonNull(threshold, "threshold");
        Objects.requireNonNull(response, "response");
        Check.above("time-to-collision threshold of " + SYSTEM, threshold.inSeconds(), 0, 30, "s");
        Check.above("deceleration of " + SYSTEM, deceleration.inMps2(), 0, 50, "m/s²");
    }

    /**
     * Lets it come up to a vehicle at constant speed, from the moment its threshold is reached.
     *
     * @param speed its speed
     * @param target the speed of the vehicle ahead, below its own
     * @return the encounter, counted from the threshold on
     * @throws IllegalArgumentException if it does not close in on the target
     */
    public Encounter towards(Speed speed, Speed target) {
        Objects.requireNonNull(target, "target");
        double closingMps =
                Check.above("closing speed of " + SYSTEM, speed.inMps() - target.inMps(), 0, speed.inMps(), "m/s");
        return new Encounter(
                Trajectory.startingAt(target.inMps()).build(),
                braking(speed, 0),
                Distance.metres(closingMps * threshold.inSeconds()),
                origin("target at constant speed " + target, Evidence.none()));
    }

    /**
     * Gives the relative speed at the contact with a vehicle at constant speed.
     *
     * @param speed its speed
     * @param target the speed of the vehicle ahead, below its own
     * @return the relative impact speed, 0 if there is no contact
     * @throws IllegalArgumentException if it does not close in on the target
     */
    public Speed impactSpeed(Speed speed, Speed target) {
        Objects.requireNonNull(target, "target");
        return towards(speed, target)
                .outcome()
                .contact()
                .map(PairOutcome.Contact::closingSpeed)
                .orElse(Speed.mps(0));
    }

    /**
     * Gives the threshold with which it would just not touch a vehicle at constant speed.
     *
     * @param speed its speed
     * @param target the speed of the vehicle ahead, below its own
     * @return the least time to collision at which it has to brake
     * @throws IllegalArgumentException if it does not close in on the target
     */
    public TimeSpan thresholdNeeded(Speed speed, Speed target) {
        Objects.requireNonNull(target, "target");
        return TimeSpan.seconds(
                towards(speed, target).gapNeeded().orElseThrow().inMetres() / (speed.inMps() - target.inMps()));
    }

    /**
     * Says when it begins to count its dead time behind a vehicle that brakes, if it goes on at constant speed until
     * then.
     *
     * @param leader the motion of the vehicle ahead
     * @param speed its speed
     * @param gap the gap at time 0
     * @return when the threshold is reached, or nothing if it never is
     * @throws IllegalArgumentException if the gap is not in [0, 1e5] m
     */
    public Optional<TimeSpan> triggered(Trajectory leader, Speed speed, Distance gap) {
        Objects.requireNonNull(gap, "gap");
        return Encounter.of(leader, Trajectory.startingAt(speed.inMps()).build(), gap)
                .timeToCollision()
                .firstAtOrBelow(threshold);
    }

    /**
     * Gives a pair a follower that brakes by itself and pays no heed to the lamp.
     *
     * @param pair leader, follower's speed, gap; the follower's driver, brakes and the lamp play no part
     * @return the encounter
     */
    public Encounter instead(Pair pair) {
        Speed speed = pair.follower().speed();
        Trajectory motion = triggered(pair.leaderTrajectory(), speed, pair.gap())
                .map(at -> braking(speed, at.inSeconds()))
                .orElseGet(() -> Trajectory.startingAt(speed.inMps()).build());
        return new Encounter(
                pair.leaderTrajectory(), motion, pair.gap(), origin("the driver does nothing", pair.evidence()));
    }

    /**
     * Gives a pair a follower that brakes by itself unless its driver, who waits for the lamp, brakes first.
     *
     * <p>Whoever is first to slow the vehicle brakes it to rest; a system that would add to a weak driver is not
     * modelled.
     *
     * @param pair leader, follower with driver and brakes, gap, lamp
     * @return the encounter; what the lamp still buys is the difference to that of another lamp
     */
    public Encounter beside(Pair pair) {
        Speed speed = pair.follower().speed();
        double driverS = pair.lampLatency().inSeconds() + pair.follower().onsetS();
        boolean drives = pair.follower().deceleration().inMps2() > 0;
        Optional<TimeSpan> at = triggered(pair.leaderTrajectory(), speed, pair.gap())
                .filter(timeSpan ->
                        !drives || timeSpan.inSeconds() + response.deadTime().inSeconds() < driverS);
        return at.isPresent()
                ? new Encounter(
                        pair.leaderTrajectory(),
                        braking(speed, at.get().inSeconds()),
                        pair.gap(),
                        origin("it is first, before the driver slows the vehicle", pair.evidence()))
                : new Encounter(
                        pair.leaderTrajectory(),
                        pair.followerTrajectory(),
                        pair.gap(),
                        origin("the driver is first to slow the vehicle", pair.evidence()));
    }

    private Trajectory braking(Speed speed, double fromS) {
        return Trajectory.stop(
                speed.inMps(),
                fromS + response.deadTime().inSeconds(),
                response.buildUp().inSeconds(),
                deceleration.inMps2());
    }

    private Evident origin(String how, Evidence with) {
        return () -> with.with(Evidence.of("follower brakes by itself at a time to collision of " + threshold + ", "
                        + response + ", " + deceleration + "; " + how))
                .withCaveat("automatic braking is taken to see its target perfectly and to brake to rest; a real system"
                        + " may do neither")
                .withCautions(Caution.NO_PROOF);
    }
}
