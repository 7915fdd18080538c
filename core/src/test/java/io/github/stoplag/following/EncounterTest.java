package io.github.stoplag.following;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.Road;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Encounters against the closed forms of equal and unequal braking, and against brute force. */
class EncounterTest {
    @Test
    void partsThatAreMissingAreRefusedAtOnce() {
        Trajectory standing = Trajectory.startingAt(0).build();
        assertThatThrownBy(() -> Encounter.of(missing(), standing, Distance.metres(1)))
                .isInstanceOf(NullPointerException.class)
                .hasMessage("leader");
        assertThatThrownBy(() -> Road.level(missing()))
                .isInstanceOf(NullPointerException.class)
                .hasMessage("friction");
    }

    @SuppressWarnings({"NullAway", "TypeParameterUnusedInFormals"})
    private static <T> T missing() {
        return (T) null;
    }

    @Test
    void aSmallestGapBelowZeroByRoundingIsNone() {
        assertThat(PairOutcome.NoContact.of(Distance.metres(-7e-15), TimeSpan.seconds(1), true))
                .hasToString("NoContact[smallestGap=0 m, at=1 s, grazing=true]");
    }

    /**
     * The contact falls on the leader's last moment: the pair in closed form and the encounter of the same motions
     * agree.
     */
    @Property(tries = 300, seed = "44")
    void bothFacesAgreeWhetherTheLeaderStands(
            @ForAll @DoubleRange(min = 5, max = 50) double speedMps,
            @ForAll @DoubleRange(min = 2.5, max = 9) double leaderMps2,
            @ForAll @DoubleRange(min = 0, max = 0.5) double buildUpS,
            @ForAll @DoubleRange(min = 0.05, max = 0.95) double share) {
        double restM = StopKernel.brakingDistanceM(speedMps, buildUpS, leaderMps2);
        double restS = StopKernel.brakingTimeS(speedMps, buildUpS, leaderMps2);
        // the follower keeps its speed and arrives as the leader comes to rest, give or take rounding
        double gapM = speedMps * restS - restM;
        BrakingVehicle leader = BrakingVehicle.of(
                Speed.mps(speedMps),
                TimeSpan.seconds(0),
                new BrakeResponse(TimeSpan.seconds(0), TimeSpan.seconds(buildUpS)),
                Deceleration.mps2(leaderMps2));
        BrakingVehicle follower = BrakingVehicle.of(
                Speed.mps(speedMps), TimeSpan.seconds(30), BrakeResponse.INSTANT, Deceleration.mps2(1 + 8 * share));
        PairOutcome pair = Pair.of(leader, follower, Distance.metres(gapM), TimeSpan.seconds(0))
                .outcome();
        PairOutcome encounter = Encounter.of(
                        Trajectory.stop(speedMps, 0, buildUpS, leaderMps2),
                        Trajectory.stop(speedMps, 30, 0, 1 + 8 * share),
                        Distance.metres(gapM))
                .outcome();
        PairOutcome.Contact one = pair.contact().orElseThrow();
        PairOutcome.Contact other = encounter.contact().orElseThrow();
        for (PairOutcome.Contact contact : List.of(one, other)) {
            assertThat(contact.leaderStanding()).isEqualTo(contact.leaderSpeed().inMps() == 0);
        }
        assertThat(one.leaderStanding()).isEqualTo(other.leaderStanding());
        assertThat(one.leaderSpeed().inMps()).isCloseTo(other.leaderSpeed().inMps(), within(1e-9));
    }

    private static Encounter encounter(Trajectory leader, Trajectory follower, double gapM) {
        return Encounter.of(leader, follower, Distance.metres(gapM));
    }

    private static Pair pair(double leaderMps2, double followerMps, double followerMps2, double gapM, double delayS) {
        BrakingVehicle leader = BrakingVehicle.of(
                Speed.mps(25), TimeSpan.seconds(0), BrakeResponse.INSTANT, Deceleration.mps2(leaderMps2));
        BrakingVehicle follower = BrakingVehicle.of(
                Speed.mps(followerMps), TimeSpan.seconds(1), BrakeResponse.INSTANT, Deceleration.mps2(followerMps2));
        return Pair.of(leader, follower, Distance.metres(gapM), TimeSpan.seconds(delayS - 1));
    }

    private static double neededM(GapNeeded needed) {
        return needed.orElseThrow().inMetres();
    }

    @ParameterizedTest
    @CsvSource({"25, 7, 1.2", "33, 4, 0.7", "10, 2, 2.5", "14, 7, 0.3"})
    void equalBrakingHasItsClosedForms(double v, double a, double delay) {
        Trajectory leader = Trajectory.stop(v, 0, 0, a);
        Trajectory follower = Trajectory.stop(v, delay, 0, a);
        assertThat(neededM(encounter(leader, follower, 0).gapNeeded())).isCloseTo(v * delay, within(1e-11));
        double border = v * delay - a * delay * delay / 2;
        for (double gap : new double[] {0.3 * border, 0.9 * border, 0.5 * (border + v * delay)}) {
            if (gap > 0) {
                PairOutcome.Contact contact =
                        (PairOutcome.Contact) encounter(leader, follower, gap).outcome();
                boolean bothBraking = contact.at().inSeconds() > delay && gap < border;
                if (bothBraking && gap > a * delay * delay / 2) {
                    assertThat(contact.closingSpeed().inMps()).isCloseTo(a * delay, within(1e-9));
                } else if (gap > border) {
                    assertThat(contact.closingSpeed().inMps())
                            .isCloseTo(Math.sqrt(2 * a * (v * delay - gap)), within(1e-8));
                    assertThat(contact.leaderStanding()).isTrue();
                }
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"6, 8, 1.0", "5, 9, 1.5", "4, 4.5, 1.2"})
    void harderBrakingFollowerNeedsWhatEqualSpeedsAsk(double leaderMps2, double followerMps2, double delay) {
        // touch while both move: relative speed a_L T at the onset, relative deceleration a_F − a_L
        double v = 25;
        double closed = leaderMps2 * delay * delay / 2
                + leaderMps2 * delay * leaderMps2 * delay / (2 * (followerMps2 - leaderMps2));
        double equalAt = delay + leaderMps2 * delay / (followerMps2 - leaderMps2);
        double difference = v * delay + v * v / (2 * followerMps2) - v * v / (2 * leaderMps2);
        double needed = equalAt < v / leaderMps2 ? closed : Math.max(0, difference);
        assertThat(neededM(pair(leaderMps2, v, followerMps2, 1, delay).gapNeeded()))
                .isCloseTo(needed, within(1e-10));
    }

    @Test
    void leaderMayHaveBrakedBeforeTimeZeroAndInSteps() {
        // brakes at 3, then 8; follower speeds up, then brakes in a ramp: against brute force in small steps
        Trajectory leader = Trajectory.startingAt(28)
                .changeTo(3, 0)
                .hold(1.1)
                .changeTo(8, 0.4)
                .build();
        Trajectory follower = Trajectory.startingAt(24)
                .changeTo(-1.5, 0.5)
                .hold(1)
                .changeTo(0, 0.2)
                .changeTo(7, 0.5)
                .build();
        double least = 0;
        for (int i = 0; i <= 1_000_000; i++) {
            double t = i * 1e-5;
            least = Math.min(least, leader.positionAtM(t) - follower.positionAtM(t));
        }
        assertThat(neededM(encounter(leader, follower, 0).gapNeeded())).isCloseTo(-least, within(1e-8));
        assertThat(encounter(leader, follower, -least - 0.01).outcome()).isInstanceOf(PairOutcome.Contact.class);
        assertThat(encounter(leader, follower, -least + 0.01).outcome()).isInstanceOf(PairOutcome.NoContact.class);
    }

    @Test
    void leaderMayStandOrGoOn() {
        Trajectory wall = Trajectory.startingAt(0).build();
        assertThat(neededM(encounter(wall, Trajectory.stop(20, 1, 0, 8), 0).gapNeeded()))
                .isCloseTo(45, within(1e-12));
        Trajectory steady = Trajectory.startingAt(15).build();
        // relative speed 5 for 1 s, then 5²/(2·8)
        assertThat(neededM(encounter(steady, Trajectory.stop(20, 1, 0, 8), 0).gapNeeded()))
                .isCloseTo(5 + 25 / 16.0, within(1e-12));
        assertThat(encounter(steady, Trajectory.startingAt(20).build(), 30).gapNeeded())
                .isEqualTo(new GapNeeded.Unbounded("the follower goes on faster than the leader for ever"));
    }

    @Test
    void timeGapDividesByTheFollowersSpeed() {
        GapNeeded.Finite needed = new GapNeeded.Finite(Distance.metres(30));
        assertThat(needed.timeGap(Speed.kmh(90)).inSeconds()).isCloseTo(1.2, within(1e-12));
        assertThatThrownBy(() -> needed.timeGap(Speed.mps(0)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("follower speed must be in (0, 150] m/s, got 0 m/s");
    }

    @Test
    void largestLatencyIsTheClosedFormForEqualBraking() {
        assertThat(pair(7, 25, 7, 33, 1).largestLampLatency())
                .isInstanceOfSatisfying(
                        LatencyBorder.UpTo.class,
                        border -> assertThat(border.latency().inSeconds()).isCloseTo(33 / 25.0 - 1, within(1e-9)));
    }

    @Test
    void largestLatencyIsTheBorderOfTheOutcome() {
        for (double followerMps2 : new double[] {5, 7, 9}) {
            Pair pair = pair(7, 27, followerMps2, 70, 1);
            double border =
                    ((LatencyBorder.UpTo) pair.largestLampLatency()).latency().inSeconds();
            assertThat(pair.withLampLatency(TimeSpan.seconds(border - 1e-6)).outcome())
                    .isInstanceOf(PairOutcome.NoContact.class);
            assertThat(pair.withLampLatency(TimeSpan.seconds(border + 1e-6)).outcome())
                    .isInstanceOf(PairOutcome.Contact.class);
        }
    }

    @Test
    void largestLatencyMayBeAnyOrNone() {
        assertThat(pair(7, 25, 7, 20, 1).largestLampLatency())
                .isEqualTo(new LatencyBorder.None("the gap is too small even for a lamp seen at once:"
                        + " gap 20 m, follower 25 m/s, leader 25 m/s"));
        assertThat(pair(0, 24, 7, 20, 1).largestLampLatency())
                .isEqualTo(new LatencyBorder.Any("the follower does not reach the leader even without braking:"
                        + " gap 20 m, follower 24 m/s, leader 25 m/s"));
        assertThat(pair(7, 1e-4, 7, 1000, 1).largestLampLatency())
                .isInstanceOfSatisfying(
                        LatencyBorder.Any.class,
                        any -> assertThat(any.reason())
                                .startsWith("the follower does not reach the leader within 1e5 s"));
        // far beyond the lamp latencies that a pair takes
        double far = ((LatencyBorder.UpTo) pair(7, 1, 7, 1000, 1).largestLampLatency())
                .latency()
                .inSeconds();
        double leaderM = 25 * 25 / 14.0;
        assertThat(far).isCloseTo(1000 + leaderM - 1 / 14.0 - 1, within(1e-6));
    }

    @Test
    void differenceTellsWhatAFasterLampBuys() {
        Pair slow = pair(7, 25, 7, 28, 1.2);
        Difference saved = slow.encounter()
                .differenceTo(slow.withLampLatency(TimeSpan.seconds(0)).encounter());
        assertThat(saved.change()).isEqualTo(Difference.Change.CONTACT_AVOIDED);
        assertThat(saved.gapSaved().orElseThrow().inMetres()).isCloseTo(5, within(1e-11));
        assertThat(saved.timeGapSaved().orElseThrow().inSeconds()).isCloseTo(0.2, within(1e-12));
        assertThat(saved.closingSpeedSavedMps().orElseThrow()).isCloseTo(Math.sqrt(2 * 7 * 2), within(1e-9));
        assertThat(saved.smallestGapGained().inMetres()).isCloseTo(3, within(1e-11));
        assertThat(saved.lines())
                .containsExactly(
                        "contact avoided",
                        "gap needed: 5 m less",
                        "time gap needed: 0.2 s less",
                        "closing speed at contact: 5.29 m/s less",
                        "smallest gap: 3 m more");
        Difference lost = slow.withLampLatency(TimeSpan.seconds(0)).encounter().differenceTo(slow.encounter());
        assertThat(lost.lines()).contains("contact caused", "gap needed: 5 m more", "smallest gap: 3 m less");
    }

    @Test
    void badInputIsNamed() {
        Trajectory any = Trajectory.startingAt(20).build();
        assertThatThrownBy(() -> encounter(any, any, -1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gap must be in [0, 100000] m, got -1 m");
        assertThatThrownBy(() -> encounter(any, any, Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("got NaN m");
    }
}
