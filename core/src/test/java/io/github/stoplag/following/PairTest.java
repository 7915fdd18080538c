package io.github.stoplag.following;

import static io.github.stoplag.Refusals.assertMessage;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import org.junit.jupiter.api.Test;

class PairTest {
    private static BrakingVehicle vehicle(double speedMps, double reactionS, double decelMps2) {
        return BrakingVehicle.of(
                Speed.mps(speedMps),
                TimeSpan.seconds(reactionS),
                new BrakeResponse(TimeSpan.seconds(0.1), TimeSpan.seconds(0.2)),
                Deceleration.mps2(decelMps2));
    }

    private static Pair pair(BrakingVehicle leader, BrakingVehicle follower, double gapM, double latencyS) {
        return Pair.of(leader, follower, Distance.metres(gapM), TimeSpan.seconds(latencyS));
    }

    @Test
    void lampLatencyAndReactionAddUp() {
        // equal vehicles: gap needed is v (latency + reaction), whatever the braking
        Pair pair = pair(vehicle(25, 0, 7), vehicle(25, 1.0, 7), 20, 0.2);
        assertThat(pair.gapNeeded().orElseThrow().inMetres()).isCloseTo(25 * 1.2, within(1e-12));
        assertThat(pair.followerTrajectory().phases().get(1).startS()).isCloseTo(1.3, within(1e-15));
        assertThat(pair.leaderTrajectory().phases().get(1).startS()).isCloseTo(0.1, within(1e-15));
    }

    @Test
    void outcomeNamesContactOrNone() {
        PairOutcome apart =
                pair(vehicle(25, 0, 7), vehicle(25, 1.0, 7), 31, 0.2).outcome();
        assertThat(apart).isInstanceOfSatisfying(PairOutcome.NoContact.class, none -> {
            assertThat(none.smallestGap().inMetres()).isCloseTo(1, within(1e-12));
            assertThat(none.grazing()).isFalse();
            assertThat(none.at().inSeconds()).isCloseTo(1.3 + 0.1 + 25 / 7.0, within(1e-12));
        });
        PairOutcome hit = pair(vehicle(25, 0, 7), vehicle(25, 1.0, 7), 29, 0.2).outcome();
        assertThat(hit).isInstanceOfSatisfying(PairOutcome.Contact.class, contact -> {
            assertThat(contact.leaderStanding()).isTrue();
            assertThat(contact.closingSpeed().inMps()).isCloseTo(Math.sqrt(14), within(1e-9));
            assertThat(contact.leaderSpeed()).isEqualTo(Speed.mps(0));
            assertThat(contact.followerSpeed()).isEqualTo(contact.closingSpeed());
        });
    }

    @Test
    void standingLeaderIsAWall() {
        Pair pair = pair(vehicle(0, 0, 0), vehicle(20, 1, 5), 60, 0);
        // v (t + dead + build-up/2) + v²/2a − a tᵣ²/24
        double stop = 20 * 1.2 + 40 - 5 * 0.04 / 24;
        assertThat(pair.gapNeeded().orElseThrow().inMetres()).isCloseTo(stop, within(1e-12));
        assertThat(pair.outcome()).isInstanceOf(PairOutcome.Contact.class);
    }

    @Test
    void followerThatNeverBrakesNeedsAnUnboundedGap() {
        Pair behindBraking = pair(vehicle(20, 0, 5), vehicle(20, 1, 0), 60, 0);
        assertThat(behindBraking.gapNeeded())
                .isEqualTo(
                        new GapNeeded.Unbounded("the follower does not brake and goes on at 20 m/s, the leader stops"));
        Pair behindSlower = pair(vehicle(19, 0, 0), vehicle(20, 1, 0), 60, 0);
        assertThat(behindSlower.gapNeeded())
                .isEqualTo(new GapNeeded.Unbounded(
                        "the follower does not brake and goes on at 20 m/s, the leader goes on at 19 m/s"));
        assertThat(behindSlower.outcome())
                .isInstanceOfSatisfying(
                        PairOutcome.Contact.class,
                        contact -> assertThat(contact.at().inSeconds()).isCloseTo(60, within(1e-10)));
        Pair behindFaster = pair(vehicle(21, 0, 0), vehicle(20, 1, 0), 60, 0);
        assertThat(behindFaster.gapNeeded()).isEqualTo(new GapNeeded.Finite(Distance.metres(0)));
        assertThat(behindFaster.outcome())
                .isEqualTo(PairOutcome.NoContact.of(Distance.metres(60), TimeSpan.seconds(0), false));
    }

    @Test
    void aContactBeyondTheHorizonIsRefusedByItsSpeeds() {
        // 10 m at 2^-33 m/s of closing speed: 10 · 2^33 s
        double closing = Math.scalb(1.0, -33);
        Pair pair = pair(vehicle(10, 0, 0), vehicle(10 + closing, 1, 0), 10, 0);
        String message =
                "contact must come within the horizon of 1e6 s, got 8.58993e10 s: leader at 10 m/s, follower at"
                        + " 10.00000000011642 m/s, gap 10 m";
        assertMessage(pair::outcome, message);
        assertMessage(() -> pair.encounter().outcome(), message);
        assertMessage(() -> pair.encounter().timeToCollision(), message);
        // loses 1e-6 m/s at 1e-13 m/s²: closest after 1e7 s, and 5 m nearer
        Pair creeping = pair(vehicle(21, 0, 0), vehicle(21 + 1e-6, 1, 1e-13), 1000, 0);
        assertMessage(
                creeping::outcome,
                "smallest gap must come within the horizon of 1e6 s, got 1e7 s: leader at 21 m/s, follower at"
                        + " 21.000001 m/s, gap 1000 m");
    }

    @Test
    void aGapBeyondTheHorizonIsUnbounded() {
        // v²/2a = 400/2e-9 m behind a standing leader
        Pair pair = pair(vehicle(0, 0, 0), vehicle(20, 1, 1e-9), 10, 0);
        GapNeeded expected =
                new GapNeeded.Unbounded("the gap needed is 2e11 m, beyond 1e7 m: leader at 0 m/s, follower at 20 m/s");
        assertThat(pair.gapNeeded()).isEqualTo(expected);
        assertThat(pair.encounter().gapNeeded()).isEqualTo(expected);
        assertMessage(
                () -> new GapNeeded.Finite(Distance.metres(1e5)).timeGap(Speed.mps(0.01)),
                "time gap of 100000 m at 0.01 m/s must be in [0, 1000000] s, got 1e7 s");
    }

    @Test
    void badInputIsNamed() {
        BrakingVehicle any = vehicle(20, 0, 5);
        assertMessage(() -> pair(any, any, -1, 0), "gap must be in [0, 100000] m, got -1 m");
        assertMessage(() -> pair(any, any, 10, -0.1), "lamp latency must be in [0, 30] s, got -0.1 s");
        assertMessage(() -> vehicle(20, 31, 5), "reaction time must be in [0, 30] s, got 31 s");
    }

    @Test
    void outcomesAreValues() {
        PairOutcome.Contact contact =
                PairOutcome.Contact.of(TimeSpan.seconds(3), Speed.mps(8), Speed.mps(4), Speed.mps(12), false);
        assertThat(contact)
                .isEqualTo(
                        PairOutcome.Contact.of(TimeSpan.seconds(3), Speed.mps(8), Speed.mps(4), Speed.mps(12), false))
                .hasSameHashCodeAs(
                        PairOutcome.Contact.of(TimeSpan.seconds(3), Speed.mps(8), Speed.mps(4), Speed.mps(12), false))
                .isNotEqualTo(
                        PairOutcome.Contact.of(TimeSpan.seconds(3), Speed.mps(8), Speed.mps(4), Speed.mps(12), true))
                .hasToString("Contact[at=3 s, closingSpeed=8 m/s, leaderSpeed=4 m/s, followerSpeed=12 m/s,"
                        + " leaderStanding=false]");
        PairOutcome.NoContact none = PairOutcome.NoContact.of(Distance.metres(2), TimeSpan.seconds(5), false);
        assertThat(none)
                .isEqualTo(PairOutcome.NoContact.of(Distance.metres(2), TimeSpan.seconds(5), false))
                .hasSameHashCodeAs(PairOutcome.NoContact.of(Distance.metres(2), TimeSpan.seconds(5), false))
                .isNotEqualTo(PairOutcome.NoContact.of(Distance.metres(2), TimeSpan.seconds(6), false))
                .isNotEqualTo(contact)
                .hasToString("NoContact[smallestGap=2 m, at=5 s, grazing=false]");
    }
}
