package io.github.stoplag.following;

import static io.github.stoplag.Refusals.assertMessage;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Chains against the composition of pairs and against closed forms. */
class ChainTest {
    private static final BrakeResponse RESPONSE = new BrakeResponse(TimeSpan.seconds(0.1), TimeSpan.seconds(0.2));

    private static BrakingVehicle vehicle(double speedMps, double reactionS, double decelMps2) {
        return BrakingVehicle.of(
                Speed.mps(speedMps), TimeSpan.seconds(reactionS), RESPONSE, Deceleration.mps2(decelMps2));
    }

    private static Chain.Member member(BrakingVehicle vehicle, double gapM, double latencyS) {
        return Chain.Member.of(vehicle, Distance.metres(gapM), TimeSpan.seconds(latencyS));
    }

    @Test
    void chainOfTwoIsThePair() {
        BrakingVehicle leader = vehicle(25, 0, 7);
        BrakingVehicle follower = vehicle(27, 1.1, 6);
        for (double gap : new double[] {10, 30, 50, 80}) {
            Chain chain = Chain.of(List.of(member(leader, 0, 0.25), member(follower, gap, 0)));
            assertThat(chain.links().get(0).outcome())
                    .usingRecursiveComparison()
                    .isEqualTo(Pair.of(leader, follower, Distance.metres(gap), TimeSpan.seconds(0.25))
                            .encounter()
                            .outcome());
        }
    }

    @Test
    void delaysAccumulate() {
        Chain chain = Chain.uniform(6, vehicle(25, 1.0, 7), Distance.metres(40), TimeSpan.seconds(0.2));
        for (int i = 0; i < 6; i++) {
            assertThat(chain.pedalPressed(i).orElseThrow().inSeconds()).isCloseTo(1.2 * i, within(1e-12));
        }
    }

    @Property(tries = 100, seed = "41")
    void equalVehiclesAreThePairAtEveryLink(
            @ForAll @IntRange(min = 2, max = 12) int vehicles,
            @ForAll @DoubleRange(min = 5, max = 40) double speed,
            @ForAll @DoubleRange(min = 2, max = 9) double decel,
            @ForAll @DoubleRange(min = 0.3, max = 2) double reaction,
            @ForAll @DoubleRange(min = 0, max = 0.4) double latency,
            @ForAll @DoubleRange(min = 1, max = 80) double gapM) {
        BrakingVehicle each = vehicle(speed, reaction, decel);
        Chain chain = Chain.uniform(vehicles, each, Distance.metres(gapM), TimeSpan.seconds(latency));
        double needed = speed * (reaction + latency);
        for (ChainLink link : chain.links()) {
            // every link has the same delay, so the same gap needed v T and, shifted in time, the same contact
            assertThat(chain.encounter(link.follower())
                            .gapNeeded()
                            .orElseThrow()
                            .inMetres())
                    .isCloseTo(needed, within(1e-7));
            if (Math.abs(gapM - needed) > 1e-6) {
                assertThat(link.contact().isPresent()).isEqualTo(gapM < needed);
            }
        }
        Pair pair =
                Pair.of(each.withReaction(TimeSpan.seconds(0)), each, Distance.metres(gapM), TimeSpan.seconds(latency));
        if (pair.outcome() instanceof PairOutcome.Contact first) {
            ChainLink last = chain.links().get(vehicles - 2);
            PairOutcome.Contact contact = last.contact().orElseThrow();
            assertThat(contact.closingSpeed().inMps())
                    .isCloseTo(first.closingSpeed().inMps(), within(1e-5));
            assertThat(contact.at().inSeconds())
                    .isCloseTo(first.at().inSeconds() + (vehicles - 2) * (reaction + latency), within(1e-5));
            assertThat(chain.firstContact().orElseThrow().follower()).isEqualTo(1);
        }
    }

    @Test
    void oneLedAmongFilamentsShortensOneLinkAndShiftsTheRest() {
        Chain filaments = Chain.uniform(5, vehicle(25, 1.0, 7), Distance.metres(28), TimeSpan.seconds(0.2));
        Chain oneLed = filaments.withLampLatency(1, TimeSpan.seconds(0.0));
        assertThat(oneLed.pedalPressed(1)).isEqualTo(filaments.pedalPressed(1));
        for (int i = 2; i < 5; i++) {
            assertThat(filaments.pedalPressed(i).orElseThrow().inSeconds()
                            - oneLed.pedalPressed(i).orElseThrow().inSeconds())
                    .isCloseTo(0.2, within(1e-12));
        }
        ChainDifference difference = filaments.differenceTo(oneLed);
        assertThat(difference.contactsBefore()).isEqualTo(4);
        assertThat(difference.contactsAfter()).isEqualTo(3);
        assertThat(difference.changed()).hasSize(1);
        ChainDifference.LinkChange change = difference.changed().get(0);
        assertThat(change.follower()).isEqualTo(2);
        assertThat(change.difference().change()).isEqualTo(Difference.Change.CONTACT_AVOIDED);
        // v times the latency saved
        assertThat(change.difference().gapSaved().orElseThrow().inMetres()).isCloseTo(5, within(1e-9));
        assertThat(difference.firstBefore().orElseThrow().follower()).isEqualTo(1);
    }

    @Test
    void whoeverDoesNotBrakeLeavesEveryoneBehindWithoutACue() {
        Chain chain = Chain.of(List.of(
                member(vehicle(25, 0, 7), 0, 0.1),
                member(vehicle(25, 1, 0), 40, 0.1),
                member(vehicle(25, 1, 7), 40, 0.1),
                member(vehicle(20, 1, 7), 40, 0.1)));
        assertThat(chain.pedalPressed(0)).isPresent();
        assertThat(chain.pedalPressed(1)).isEmpty();
        assertThat(chain.pedalPressed(2)).isEmpty();
        assertThat(chain.pedalPressed(3)).isEmpty();
        List<ChainLink> links = chain.links();
        assertThat(links.get(0).contact()).isPresent();
        assertThat(links.get(1).outcome())
                .isEqualTo(PairOutcome.NoContact.of(Distance.metres(40), TimeSpan.seconds(0), false));
        assertThat(links.get(2).contact()).isEmpty();
    }

    @Test
    void leaderThatDoesNotBrakeGivesNoCue() {
        Chain chain = Chain.uniform(3, vehicle(25, 1, 0), Distance.metres(10), TimeSpan.seconds(0.1));
        assertThat(chain.pedalPressed(2)).isEmpty();
        assertThat(chain.firstContact()).isEmpty();
    }

    @Test
    void contactsAreMarkedDisturbedAfterAnEarlierOneOfTheSameVehicle() {
        Chain chain = Chain.of(List.of(
                member(vehicle(25, 0, 8), 0, 0.2),
                member(vehicle(25, 1.2, 5), 20, 0.2),
                member(vehicle(25, 1.2, 5), 25, 0.2)));
        List<ChainLink> links = chain.links();
        assertThat(links).allSatisfy(link -> assertThat(link.contact()).isPresent());
        double first = links.get(0).contact().orElseThrow().at().inSeconds();
        double second = links.get(1).contact().orElseThrow().at().inSeconds();
        assertThat(links.get(0).undisturbed()).isEqualTo(first <= second);
        assertThat(links.get(1).undisturbed()).isEqualTo(second <= first);
    }

    @Test
    void aThousandVehiclesComposeFromPairs() {
        List<Chain.Member> members = new ArrayList<>();
        for (int i = 0; i < 1000; i++) {
            double reaction = i == 0 ? 0 : 0.8 + 0.7 * ((i * 37) % 101) / 101.0;
            double gap = i == 0 ? 0 : 18 + (i * 53) % 29;
            members.add(member(vehicle(25, reaction, 5 + (i * 17) % 7 * 0.4), gap, i % 3 == 0 ? 0.02 : 0.2));
        }
        Chain chain = Chain.of(members);
        List<ChainLink> links = chain.links();
        assertThat(links).hasSize(999);
        for (int i = 2; i < 1000; i += 111) {
            // the same link as a pair whose leader's own delay cancels
            BrakingVehicle leader = members.get(i - 1).vehicle().withReaction(TimeSpan.seconds(0));
            Pair pair = Pair.of(
                    leader,
                    members.get(i).vehicle(),
                    members.get(i).gap(),
                    members.get(i - 1).lampLatency());
            double pressedS = chain.pedalPressed(i - 1).orElseThrow().inSeconds();
            PairOutcome expected = pair.outcome();
            if (expected instanceof PairOutcome.Contact contact) {
                PairOutcome.Contact found = links.get(i - 1).contact().orElseThrow();
                assertThat(found.closingSpeed().inMps())
                        .isCloseTo(contact.closingSpeed().inMps(), within(1e-6));
                assertThat(found.at().inSeconds() - pressedS)
                        .isCloseTo(contact.at().inSeconds(), within(1e-6));
            } else {
                assertThat(((PairOutcome.NoContact) links.get(i - 1).outcome())
                                .smallestGap()
                                .inMetres())
                        .isCloseTo(
                                ((PairOutcome.NoContact) expected).smallestGap().inMetres(), within(1e-6));
            }
        }
    }

    @Test
    void badInputIsNamed() {
        BrakingVehicle any = vehicle(25, 1, 7);
        assertMessage(
                () -> Chain.of(List.of(member(any, 0, 0))),
                "number of vehicles in a chain must be in [2, 1000000], got 1");
        assertMessage(
                () -> Chain.of(List.of(member(any, 5, 0), member(any, 5, 0))),
                "gap ahead of the first vehicle must be in [0, 0] m, got 5 m");
        assertMessage(() -> member(any, -1, 0), "gap must be in [0, 100000] m, got -1 m");
        assertMessage(() -> member(any, 1, 31), "lamp latency must be in [0, 30] s, got 31 s");
        Chain chain = Chain.uniform(3, any, Distance.metres(30), TimeSpan.seconds(0));
        assertMessage(() -> chain.trajectory(3), "index of a vehicle must be in [0, 2], got 3");
        assertMessage(() -> chain.encounter(0), "index of a vehicle with one ahead must be in [1, 2], got 0");
        assertMessage(
                () -> chain.differenceTo(Chain.uniform(4, any, Distance.metres(30), TimeSpan.seconds(0))),
                "chains compared must have one length, got 3 and 4 vehicles");
    }
}
