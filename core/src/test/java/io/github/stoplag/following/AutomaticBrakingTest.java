package io.github.stoplag.following;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caveat;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/**
 * A vehicle that brakes by itself against the closed form, small time steps and what the regulations' figures imply.
 */
class AutomaticBrakingTest {
    private static AutomaticBraking system(double thresholdS, double deadS, double buildUpS, double mps2) {
        return new AutomaticBraking(
                TimeSpan.seconds(thresholdS),
                new BrakeResponse(TimeSpan.seconds(deadS), TimeSpan.seconds(buildUpS)),
                Deceleration.mps2(mps2));
    }

    private static double smallestGapM(PairOutcome outcome) {
        return outcome.noContact().orElseThrow().smallestGap().inMetres();
    }

    @Property(tries = 200)
    void impactFollowsTheEnergyOfTheClosingMotion(
            @ForAll @DoubleRange(min = 0.3, max = 2) double tau,
            @ForAll @DoubleRange(min = 0, max = 0.25) double dead,
            @ForAll @DoubleRange(min = 2, max = 10) double a,
            @ForAll @DoubleRange(min = 3, max = 25) double closing,
            @ForAll @DoubleRange(min = 0, max = 15) double target) {
        double square = closing * closing - 2 * a * closing * (tau - dead);
        Speed impact = system(tau, dead, 0, a).impactSpeed(Speed.mps(target + closing), Speed.mps(target));
        assertThat(impact.inMps()).isCloseTo(Math.sqrt(Math.max(0, square)), within(1e-5));
    }

    @Property(tries = 100)
    void thresholdNeededIsTheBorderOfContact(
            @ForAll @DoubleRange(min = 0, max = 0.5) double buildUp,
            @ForAll @DoubleRange(min = 2, max = 10) double a,
            @ForAll @DoubleRange(min = 3, max = 25) double closing) {
        Speed speed = Speed.mps(closing);
        double needed =
                system(1, 0.1, buildUp, a).thresholdNeeded(speed, Speed.mps(0)).inSeconds();
        assertThat(system(needed + 1e-6, 0.1, buildUp, a)
                        .impactSpeed(speed, Speed.mps(0))
                        .inMps())
                .isZero();
        assertThat(system(needed - 1e-3, 0.1, buildUp, a)
                        .impactSpeed(speed, Speed.mps(0))
                        .inMps())
                .isPositive();
    }

    @Test
    void behindABrakingLeaderItTriggersWhereSmallStepsDo() {
        AutomaticBraking system = system(1.4, 0.1, 0.2, 7);
        Trajectory leader = Trajectory.stop(25, 0, 0.3, 6);
        double gapM = 30;
        double stepS = 1e-5;
        double timeS = 0;
        while (gapM + leader.positionAtM(timeS) - 25 * timeS > 1.4 * (25 - leader.speedAtMps(timeS))) {
            timeS += stepS;
        }
        assertThat(system.triggered(leader, Speed.mps(25), Distance.metres(gapM))
                        .orElseThrow()
                        .inSeconds())
                .isCloseTo(timeS, within(2 * stepS));
        assertThat(system.triggered(Trajectory.startingAt(25).build(), Speed.mps(25), Distance.metres(gapM)))
                .isEmpty();
    }

    @Test
    void whoeverIsFirstSlowsTheVehicle() {
        BrakeResponse brakes = new BrakeResponse(TimeSpan.seconds(0.1), TimeSpan.seconds(0.2));
        BrakingVehicle leader = BrakingVehicle.of(Speed.mps(25), TimeSpan.seconds(0), brakes, Deceleration.mps2(7));
        BrakingVehicle slow = BrakingVehicle.of(Speed.mps(25), TimeSpan.seconds(2.5), brakes, Deceleration.mps2(7));
        AutomaticBraking system = system(1.5, 0.1, 0.2, 7);
        Pair late = Pair.of(leader, slow, Distance.metres(20), TimeSpan.seconds(0.2));
        Pair early =
                Pair.of(leader, slow.withReaction(TimeSpan.seconds(0.5)), Distance.metres(20), TimeSpan.seconds(0.2));
        assertThat(system.beside(late).outcome()).isEqualTo(system.instead(late).outcome());
        assertThat(smallestGapM(system.beside(early).outcome())).isCloseTo(smallestGapM(early.outcome()), within(1e-9));
        assertThat(system.beside(late).outcome()).isNotEqualTo(late.outcome());
        assertThat(system.beside(late).evidence().caveats())
                .extracting(Caveat::text)
                .anyMatch(text -> text.contains("see its target perfectly"));
    }

    @Test
    void requirementsAreOrderedAndWithinReachOfGoodBrakes() {
        List<AutomaticBrakingRequirement> all = AutomaticBrakingRequirement.published();
        // without dead time a step of 9 m/s² at 0.9 s stops from c = 2 a τ = 16.2 m/s, 58 km/h
        AutomaticBraking good = system(0.9, 0.05, 0.1, 9);
        AutomaticBraking weak = system(0.9, 0.05, 0.1, 2);
        assertThat(all)
                .filteredOn(row -> row.id().startsWith("un-r152-m1-laden"))
                .allMatch(row -> row.metBy(good));
        assertThat(AutomaticBrakingRequirement.published("un-r152-m1-laden-60").metBy(weak))
                .isFalse();
        assertThat(AutomaticBrakingRequirement.published("un-r152-m1-laden-60")
                        .evidence()
                        .basis())
                .singleElement()
                .asString()
                .contains("from memory");
        assertThat(all)
                .filteredOn(row -> row.id().startsWith("un-r152-m1-pedestrian"))
                .isSortedAccordingTo((a, b) -> a.mostImpact().compareTo(b.mostImpact()));
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> system(0, 0.1, 0.2, 7))
                .hasMessage(
                        "time-to-collision threshold of a vehicle that brakes by itself must be in (0, 30] s, got 0 s");
        assertThatThrownBy(() -> system(1, 0.1, 0.2, 7).towards(Speed.mps(10), Speed.mps(10)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("closing speed of a vehicle that brakes by itself");
    }
}
