package io.github.stoplag.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.Refusals;
import java.util.SplittableRandom;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

class GapKernelTest {
    private final GapEvent event = new GapEvent();

    @Test
    void caseTheoremEqualsThePhasesOnTypicalScenarios() {
        compareFastWithPhases(21, 100_000, Scenario::typical, 0.8);
    }

    @Test
    void caseTheoremEqualsThePhasesOnExtremeScenarios() {
        compareFastWithPhases(22, 200_000, Scenario::extreme, 0.02);
    }

    private void compareFastWithPhases(
            long seed, int count, Function<SplittableRandom, Scenario> draw, double leastShareSettled) {
        SplittableRandom random = new SplittableRandom(seed);
        GapEvent fast = new GapEvent();
        int settled = 0;
        int contacts = 0;
        for (int i = 0; i < count; i++) {
            Scenario scenario = draw.apply(random);
            scenario.eventByPhases(event);
            settled += scenario.settledByCaseTheorem(fast) ? 1 : 0;
            scenario.event(fast);
            contacts += fast.contact() ? 1 : 0;
            assertSame(fast, event, scenario);
        }
        assertThat(settled).as("settled without a search").isGreaterThan((int) (leastShareSettled * count));
        assertThat(contacts).as("contacts").isBetween(count / 10, count * 9 / 10);
    }

    /** Times and speeds agree as far as the depth of the contact allows: dt = dx/closing. */
    private static void assertSame(GapEvent fast, GapEvent byPhases, Scenario scenario) {
        assertThat(fast.contact()).as("%s", scenario).isEqualTo(byPhases.contact());
        double scale = 1 + scenario.leaderMps() + scenario.followerMps();
        if (!fast.contact()) {
            assertThat(fast.smallestGapM())
                    .as("%s", scenario)
                    .isCloseTo(byPhases.smallestGapM(), within(1e-12 * scale * scale));
            assertThat(fast.grazing()).isEqualTo(byPhases.grazing());
            assertThat(fast.timeS()).as("%s", scenario).isCloseTo(byPhases.timeS(), within(1e-9 * scale));
            return;
        }
        double within = 1e-11 * scale / Math.max(1e-4, byPhases.closingSpeedMps());
        assertThat(fast.timeS()).as("%s", scenario).isCloseTo(byPhases.timeS(), within(within));
        assertThat(fast.closingSpeedMps())
                .as("%s", scenario)
                .isCloseTo(byPhases.closingSpeedMps(), within(within * 10));
        assertThat(fast.leaderSpeedMps()).isCloseTo(byPhases.leaderSpeedMps(), within(within * 10));
        assertThat(fast.leaderStanding()).as("%s", scenario).isEqualTo(byPhases.leaderStanding());
    }

    @Test
    void scalarFormEqualsTheGeneralFormOnTrajectories() {
        SplittableRandom random = new SplittableRandom(23);
        GapEvent general = new GapEvent();
        for (int i = 0; i < 20_000; i++) {
            Scenario scenario = i % 2 == 0 ? Scenario.typical(random) : Scenario.extreme(random);
            scenario.eventByPhases(event);
            GapKernel.event(scenario.leader(), scenario.follower(), scenario.gapM(), general);
            assertThat(general.contact()).isEqualTo(event.contact());
            assertClose(general.timeS(), event.timeS());
            assertClose(general.smallestGapM(), event.smallestGapM());
            assertClose(
                    GapKernel.gapNeededM(scenario.leader(), scenario.follower(), general), scenario.gapNeededM(event));
        }
    }

    private static void assertClose(double general, double scalar) {
        if (Double.isInfinite(scalar)) {
            assertThat(general).isEqualTo(scalar);
        } else {
            assertThat(general).isCloseTo(scalar, within(1e-9 * (1 + Math.abs(scalar))));
        }
    }

    @Test
    void arbitraryMotionsAgreeWithADenseSearch() {
        SplittableRandom random = new SplittableRandom(24);
        int contacts = 0;
        for (int i = 0; i < 2_000; i++) {
            Trajectory leader = randomMotion(random);
            Trajectory follower = randomMotion(random);
            double gapM = random.nextDouble(0, 40);
            GapKernel.event(leader, follower, gapM, event);
            contacts += event.contact() ? 1 : 0;
            compareWithDenseSearch(leader, follower, gapM);
        }
        assertThat(contacts).isBetween(400, 1_800);
    }

    private void compareWithDenseSearch(Trajectory leader, Trajectory follower, double gapM) {
        double step = 1e-3;
        double smallest = gapM;
        // the motions settle into their last phase well before 60 s
        for (double t = 0; t < 60; t += step) {
            double gap = gapM + leader.positionAtM(t) - follower.positionAtM(t);
            if (gap < 0) {
                assertThat(event.contact()).isTrue();
                assertThat(event.timeS()).isBetween(t - step - 1e-9, t + 1e-9);
                double closing = follower.speedAtMps(event.timeS()) - leader.speedAtMps(event.timeS());
                assertThat(event.closingSpeedMps()).isCloseTo(closing, within(1e-9));
                assertThat(gapM + leader.positionAtM(event.timeS()) - follower.positionAtM(event.timeS()))
                        .isCloseTo(0, within(1e-11));
                return;
            }
            smallest = Math.min(smallest, gap);
        }
        if (event.contact()) {
            assertThat(event.timeS()).isGreaterThan(60 - 2 * step);
        } else {
            assertThat(event.smallestGapM()).isBetween(smallest - 1e-4, smallest + 1e-9);
        }
    }

    private static Trajectory randomMotion(SplittableRandom random) {
        Trajectory.Builder builder = Trajectory.startingAt(random.nextDouble(0, 30));
        int parts = random.nextInt(1, 6);
        for (int i = 0; i < parts; i++) {
            builder.changeTo(random.nextDouble(-3, 5), random.nextInt(3) == 0 ? 0 : random.nextDouble(0, 2));
            if (random.nextBoolean()) {
                builder.hold(random.nextDouble(0, 3));
            }
            if (random.nextInt(4) == 0) {
                builder.cruise(random.nextDouble(0, 3));
            }
        }
        return random.nextBoolean()
                ? builder.cruise(1).build()
                : builder.changeTo(random.nextDouble(0.5, 8), 0.5).build();
    }

    @Test
    void grazingIsATouchWithoutContact() {
        // equal speed 20 and braking 8, follower 1 s late: gap needed v T = 20 m exactly
        assertGap(20, 0, true);
        assertGap(20 + 5e-10, 5e-10, true);
        assertGap(20 - 5e-10, -5e-10, true);
        assertGap(20 + 1e-6, 1e-6, false);
        new Scenario(20, 0, 0, 8, 20, 1, 0, 8, 20 - 1e-6).event(event);
        assertThat(event.contact()).isTrue();
        assertThat(event.grazing()).isFalse();
        assertThat(event.smallestGapM()).isZero();
        // closing speed against the standing leader: √(2 a (v T − g))
        assertThat(event.closingSpeedMps()).isCloseTo(Math.sqrt(2 * 8 * 1e-6), within(1e-9));
    }

    private void assertGap(double gapM, double smallestM, boolean grazing) {
        for (boolean byPhases : new boolean[] {false, true}) {
            Scenario scenario = new Scenario(20, 0, 0, 8, 20, 1, 0, 8, gapM);
            if (byPhases) {
                scenario.eventByPhases(event);
            } else {
                scenario.event(event);
            }
            assertThat(event.contact()).isFalse();
            assertThat(event.grazing()).isEqualTo(grazing);
            assertThat(event.smallestGapM()).isCloseTo(smallestM, within(1e-13));
            assertThat(event.closingSpeedMps()).isNaN();
            assertThat(event.leaderStanding()).isFalse();
        }
    }

    @Test
    void touchThatDeepensLaterIsDatedToWhereTheGapPassedZero() {
        // both at 10 m/s with no gap at all; the leader brakes at 1 s
        Trajectory leader = Trajectory.startingAt(10).cruise(1).changeTo(5, 0).build();
        GapKernel.event(leader, Trajectory.startingAt(10).build(), 0, event);
        assertThat(event.contact()).isTrue();
        assertThat(event.timeS()).isCloseTo(1, within(1e-12));
        assertThat(event.closingSpeedMps()).isCloseTo(0, within(1e-9));
    }

    @Test
    void constantSpeedTailsThatNeverEndAreFollowedToTheirMeeting() {
        Trajectory slow = Trajectory.startingAt(20).build();
        GapKernel.event(slow, Trajectory.startingAt(20.5).build(), 1000, event);
        assertThat(event.contact()).isTrue();
        assertThat(event.timeS()).isCloseTo(2000, within(1e-9));
        assertThat(event.closingSpeedMps()).isCloseTo(0.5, within(1e-14));
        assertThat(GapKernel.gapNeededM(slow, Trajectory.startingAt(20.5).build(), event))
                .isEqualTo(Double.POSITIVE_INFINITY);
        GapKernel.event(slow, slow, 3, event);
        assertThat(event.contact()).isFalse();
        assertThat(event.smallestGapM()).isEqualTo(3);
        assertThat(event.timeS()).isZero();
        assertThat(GapKernel.gapNeededM(slow, slow, event)).isZero();
    }

    @Test
    void equalBrakingClosedForms() {
        // contact after the leader stands: √(2 a (v T − g)); while both brake: a T; border g = v T − a T²/2
        double v = 25;
        double a = 7;
        double delay = 1.2;
        double border = v * delay - a * delay * delay / 2;
        new Scenario(v, 0, 0, a, v, delay, 0, a, border + 2).event(event);
        assertThat(event.leaderStanding()).isTrue();
        assertThat(event.closingSpeedMps()).isCloseTo(Math.sqrt(2 * a * (v * delay - border - 2)), within(1e-12));
        new Scenario(v, 0, 0, a, v, delay, 0, a, border - 2).event(event);
        assertThat(event.leaderStanding()).isFalse();
        assertThat(event.closingSpeedMps()).isCloseTo(a * delay, within(1e-12));
        assertThat(new Scenario(v, 0, 0, a, v, delay, 0, a, 0).gapNeededM(event))
                .isCloseTo(v * delay, within(1e-12));
    }

    @Test
    void vanishinglyShortBuildUpsActAsSteps() {
        GapEvent step = new GapEvent();
        for (double buildUpS : new double[] {Double.MIN_VALUE, 1e-310, 1e-290}) {
            for (double followerOnsetS : new double[] {0.2, 1.2}) {
                new Scenario(20, 0.5, 0, 8, 20, followerOnsetS, 0, 6, 25).event(step);
                Scenario sudden = new Scenario(20, 0.5, buildUpS, 8, 20, followerOnsetS, buildUpS, 6, 25);
                sudden.event(event);
                assertSame(event, step, sudden);
                sudden.eventByPhases(event);
                assertSame(event, step, sudden);
            }
        }
    }

    @Test
    void vanishinglySlightBrakingLeavesTheSpeed() {
        GapEvent unbraked = new GapEvent();
        new Scenario(20, 0.5, 0.2, 0, 30, 1, 0.2, 0, 25).event(unbraked);
        assertThat(unbraked.timeS()).isEqualTo(2.5);
        Scenario slight = new Scenario(20, 0.5, 0.2, Double.MIN_VALUE, 30, 1, 0.2, 1e-300, 25);
        slight.event(event);
        assertSame(event, unbraked, slight);
    }

    @Test
    void vanishingGapClosesWhenTheLeaderBrakes() {
        new Scenario(5, 0.5, 0, 1e-6, 5, 1.5, 0.5, 1e-6, Double.MIN_VALUE).event(event);
        assertThat(event.contact()).isTrue();
        assertThat(event.timeS()).isBetween(0.5, 0.5 + 1e-12);
    }

    @Test
    void roundingJumpBelowZeroIsDatedWhereItIsFound() {
        new Scenario(5, 0, 0.5, 1e-9, 5, 2.425921198984443, 1e-9, 1e-9, 10.879606245948242).eventByPhases(event);
        assertThat(event.contact() ? event.timeS() : 0).isGreaterThanOrEqualTo(0);
    }

    @Test
    void badInputIsNamed() {
        assertMessage(new Scenario(20, 0, 0, 8, 20, 1, 0, 8, -0.1), "gap must be in [0, 100000] m, got -0.1 m");
        assertMessage(
                new Scenario(Double.NaN, 0, 0, 8, 20, 1, 0, 8, 5),
                "leader speed must be finite and not negative, got NaN m/s");
        assertMessage(
                new Scenario(20, 0, 0, 8, 20, -1, 0, 8, 5),
                "follower brake onset must be finite and not negative, got -1 s");
        assertMessage(
                new Scenario(20, 0, -0.2, 8, 20, 1, 0, 8, 5),
                "leader brake build-up must be finite and not negative, got -0.2 s");
        assertMessage(
                new Scenario(20, 0, 0, 8, Double.POSITIVE_INFINITY, 1, 0, 8, 5),
                "follower speed must be finite and not negative, got Infinity m/s");
        assertMessage(
                new Scenario(20, 0, 0, 8, 20, 1, 0, -8, 5),
                "follower deceleration must be finite and not negative, got -8 m/s²");
        assertThatThrownBy(() -> GapKernel.event(
                        Trajectory.startingAt(1).build(),
                        Trajectory.startingAt(1).build(),
                        Double.NaN,
                        event))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gap must be in [0, 100000] m, got NaN m");
    }

    private void assertMessage(Scenario scenario, String message) {
        Refusals.assertMessage(() -> scenario.event(event), message);
    }
}
