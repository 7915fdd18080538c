package io.github.stoplag.following;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.braking.Stop;
import io.github.stoplag.braking.StopEvidence;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Evidence;
import org.junit.jupiter.api.Test;

class PairEvidenceTest {
    private static final BrakeResponse BRAKES = new BrakeResponse(TimeSpan.seconds(0.1), TimeSpan.seconds(0.3));

    private static BrakingVehicle vehicle(double reactionS, double mps2) {
        return BrakingVehicle.of(Speed.mps(25), TimeSpan.seconds(reactionS), BRAKES, Deceleration.mps2(mps2));
    }

    @Test
    void aPairSaysWhatItsOutcomeRestsOn() {
        Evidence evidence =
                PairEvidence.of(Pair.of(vehicle(0, 7), vehicle(1, 6), Distance.metres(30), TimeSpan.seconds(0.2)));
        assertThat(evidence.basis())
                .containsExactly(
                        "motion: constant speed until the brakes take hold, deceleration built up in a straight line, then"
                                + " constant; solved exactly",
                        "leader: " + Speed.mps(25)
                                + ", reaction 0 s, brake dead time 0.1 s, build-up 0.3 s, deceleration 7"
                                + " m/s², as given",
                        "assumed: uniform road, grade and friction within the given deceleration, no drag",
                        "follower: " + Speed.mps(25)
                                + ", reaction 1 s, brake dead time 0.1 s, build-up 0.3 s, deceleration 6"
                                + " m/s², as given",
                        "gap 30 m from the follower's front to the leader's rear when the leader's stop-lamp circuit closes;"
                                + " lamp latency 0.2 s before the follower's reaction time, as given",
                        "assumed: one straight lane, no steering away, the follower brakes for the lamp alone");
        assertThat(evidence.caveats()).isEmpty();
        assertThat(evidence.cautions()).containsExactly(Caution.NO_PROOF);
    }

    @Test
    void whatNoDriverOrTyreDoesIsMarked() {
        Evidence evidence =
                PairEvidence.of(Pair.of(vehicle(0, 12), vehicle(0.1, 6), Distance.metres(30), TimeSpan.seconds(0.2)));
        assertThat(evidence.caveats())
                .extracting(Caveat::text)
                .containsExactly(
                        "the leader's deceleration of 12 m/s² needs a friction above 1 on a level road, more than most road"
                                + " tyres give (common practice, no source)",
                        "the follower's reaction time of 0.1 s is below 0.2 s, quicker than a driver's simple reaction"
                                + " (common practice, no source)");
        assertThat(StopEvidence.of(Speed.mps(25), TimeSpan.seconds(0), BRAKES, Deceleration.mps2(12))
                        .caveats())
                .singleElement()
                .asString()
                .startsWith("the vehicle's deceleration of 12 m/s²");
    }

    @Test
    void pairAndStopGiveTheirOwnEvidence() {
        Pair pair = Pair.of(vehicle(0, 12), vehicle(1, 6), Distance.metres(30), TimeSpan.seconds(0.2));
        assertThat(pair.evidence()).isEqualTo(PairEvidence.of(pair));
        assertThat(Stop.of(Speed.mps(25), TimeSpan.seconds(1), BRAKES, Deceleration.mps2(12)))
                .isInstanceOfSatisfying(
                        Stop.class,
                        stop -> assertThat(stop.evidence())
                                .isEqualTo(StopEvidence.of(
                                        Speed.mps(25), TimeSpan.seconds(1), BRAKES, Deceleration.mps2(12))));
    }
}
