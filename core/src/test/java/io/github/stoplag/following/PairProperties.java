package io.github.stoplag.following;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class PairProperties {
    @Provide
    Arbitrary<BrakingVehicle> vehicles() {
        return Combinators.combine(
                        Arbitraries.doubles().between(0.5, 50).ofScale(6),
                        Arbitraries.doubles().between(0, 3).ofScale(6),
                        Arbitraries.doubles().between(0, 1).ofScale(6),
                        Arbitraries.doubles().between(0, 2).ofScale(6),
                        Arbitraries.doubles().between(0.5, 12).ofScale(6))
                .as((speed, reaction, dead, buildUp, decel) -> BrakingVehicle.of(
                        Speed.mps(speed),
                        TimeSpan.seconds(reaction),
                        new BrakeResponse(TimeSpan.seconds(dead), TimeSpan.seconds(buildUp)),
                        Deceleration.mps2(decel)));
    }

    private static double neededM(Pair pair) {
        return pair.gapNeeded().orElseThrow().inMetres();
    }

    @Property(seed = "41")
    void gapNeededIsTheExactBorder(
            @ForAll("vehicles") BrakingVehicle leader,
            @ForAll("vehicles") BrakingVehicle follower,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.5) double latencyS) {
        TimeSpan latency = TimeSpan.seconds(latencyS);
        double needed = neededM(Pair.of(leader, follower, Distance.metres(0), latency));
        PairOutcome more = Pair.of(leader, follower, Distance.metres(needed + 1e-7), latency)
                .outcome();
        assertThat(more).isInstanceOfSatisfying(PairOutcome.NoContact.class, apart -> {
            assertThat(apart.grazing()).isFalse();
            assertThat(apart.smallestGap().inMetres()).isCloseTo(1e-7, within(1e-9));
        });
        PairOutcome exact =
                Pair.of(leader, follower, Distance.metres(needed), latency).outcome();
        assertThat(exact)
                .isInstanceOfSatisfying(
                        PairOutcome.NoContact.class,
                        touch -> assertThat(touch.grazing()).isTrue());
        if (needed > 1e-7) {
            assertThat(Pair.of(leader, follower, Distance.metres(needed - 1e-7), latency)
                            .outcome())
                    .isInstanceOf(PairOutcome.Contact.class);
        }
    }

    @Property(seed = "41")
    void gapNeededGrowsWithLampLatencyBehindABrakingLeader(
            @ForAll("vehicles") BrakingVehicle leader,
            @ForAll("vehicles") BrakingVehicle follower,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.5) double latencyS,
            @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 0.5) double more) {
        double early = neededM(Pair.of(leader, follower, Distance.metres(0), TimeSpan.seconds(latencyS)));
        double late = neededM(Pair.of(leader, follower, Distance.metres(0), TimeSpan.seconds(latencyS + more)));
        assertThat(late).isGreaterThanOrEqualTo(early - 1e-9);
        // no more than what the follower runs in the extra time
        assertThat(late - early).isLessThanOrEqualTo(follower.speed().inMps() * more + 1e-9);
    }

    @Property(seed = "41")
    void contactHappensWhereThePositionsMeet(
            @ForAll("vehicles") BrakingVehicle leader,
            @ForAll("vehicles") BrakingVehicle follower,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 60) double gapM) {
        Pair pair = Pair.of(leader, follower, Distance.metres(gapM), TimeSpan.seconds(0.1));
        if (pair.outcome() instanceof PairOutcome.Contact contact) {
            double t = contact.at().inSeconds();
            double gap = gapM
                    + pair.leaderTrajectory().positionAtM(t)
                    - pair.followerTrajectory().positionAtM(t);
            assertThat(gap).isCloseTo(0, within(1e-9));
            assertThat(contact.leaderSpeed().inMps())
                    .isCloseTo(pair.leaderTrajectory().speedAtMps(t), within(1e-7));
            assertThat(contact.followerSpeed().inMps())
                    .isCloseTo(pair.followerTrajectory().speedAtMps(t), within(1e-7));
        } else {
            assertThat(gapM).isGreaterThanOrEqualTo(neededM(pair) - 1e-8);
            PairOutcome.NoContact apart = (PairOutcome.NoContact) pair.outcome();
            double t = apart.at().inSeconds();
            double leaderMps = pair.leaderTrajectory().speedAtMps(t);
            double followerMps = pair.followerTrajectory().speedAtMps(t);
            double gap = gapM
                    + pair.leaderTrajectory().positionAtM(t)
                    - pair.followerTrajectory().positionAtM(t);
            assertThat(gap).isCloseTo(apart.smallestGap().inMetres(), within(1e-9));
            // the gap is smallest at the start or where the speeds are equal
            assertThat(t == 0 || Math.abs(leaderMps - followerMps) < 1e-6).isTrue();
        }
    }
}
