package io.github.stoplag.following;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.TimeSpan;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** The course of the time to collision against closed forms and against sums over small steps. */
class TimeToCollisionTest {
    private static TimeToCollision of(Trajectory leader, Trajectory follower, double gapM) {
        return Encounter.of(leader, follower, Distance.metres(gapM)).timeToCollision();
    }

    @Test
    void constantClosingSpeedFallsOneSecondASecond() {
        TimeToCollision course =
                of(Trajectory.startingAt(15).build(), Trajectory.startingAt(20).build(), 50);
        assertThat(course.at(TimeSpan.seconds(0)).orElseThrow().inSeconds()).isCloseTo(10, within(1e-12));
        assertThat(course.at(TimeSpan.seconds(4)).orElseThrow().inSeconds()).isCloseTo(6, within(1e-12));
        assertThat(course.smallest())
                .isEqualTo(new TimeToCollision.Smallest.Reached(TimeSpan.seconds(0), TimeSpan.seconds(10)));
        // exposed below 4 s for 4 s; the integral of 4 − t is 8
        assertThat(course.exposed(TimeSpan.seconds(4)).inSeconds()).isCloseTo(4, within(1e-12));
        assertThat(course.integratedS2(TimeSpan.seconds(4))).isCloseTo(8, within(1e-10));
        assertThat(course.at(TimeSpan.seconds(11))).isEmpty();
    }

    @Test
    void brakingBehindASteadyLeaderHasItsClosedForm() {
        // h = g − c t + b t²/2 with c = 10, b = 4, g = 20: TTC' = 0 where h b = c(t)²
        double g = 20;
        double c = 10;
        double b = 4;
        TimeToCollision course = of(
                Trajectory.startingAt(20).build(),
                Trajectory.startingAt(30)
                        .changeTo(b, 0)
                        .hold(c / b)
                        .changeTo(0, 0)
                        .build(),
                g);
        // with x = c − b t: h = (g − c²/2b) + x²/2b, h b = x² gives x² = 2 (g b − c²/2)
        double x = Math.sqrt(2 * (g * b - c * c / 2));
        TimeToCollision.Smallest.Reached smallest = (TimeToCollision.Smallest.Reached) course.smallest();
        assertThat(smallest.at().inSeconds()).isCloseTo((c - x) / b, within(1e-9));
        assertThat(smallest.value().inSeconds()).isCloseTo(x / b, within(1e-12));
        // exposed at τ: K + x²/2b = τ x, K = g − c²/2b = 7.5; integral of τ − K/x − x/2b over dx/b
        double tau = 2.1;
        double k = g - c * c / (2 * b);
        double low = b * tau - Math.sqrt(b * b * tau * tau - 2 * b * k);
        double high = Math.min(c, b * tau + Math.sqrt(b * b * tau * tau - 2 * b * k));
        assertThat(course.exposed(TimeSpan.seconds(tau)).inSeconds()).isCloseTo((high - low) / b, within(1e-10));
        double integral = (tau * (high - low) - k * Math.log(high / low) - (high * high - low * low) / (4 * b)) / b;
        assertThat(course.integratedS2(TimeSpan.seconds(tau))).isCloseTo(integral, within(1e-10));
    }

    @Test
    void neverClosingIsNamed() {
        TimeToCollision course =
                of(Trajectory.startingAt(20).build(), Trajectory.startingAt(20).build(), 5);
        assertThat(course.smallest()).isEqualTo(new TimeToCollision.Smallest.NeverClosing());
        assertThat(course.exposed(TimeSpan.seconds(5)).inSeconds()).isZero();
        assertThat(course.integratedS2(TimeSpan.seconds(5))).isZero();
        assertThat(course.at(TimeSpan.seconds(1))).isEmpty();
    }

    @Property(tries = 200, seed = "41")
    void smallestExposedAndIntegratedAgreeWithSmallSteps(
            @ForAll @DoubleRange(min = 5, max = 35) double leaderMps,
            @ForAll @DoubleRange(min = 5, max = 35) double followerMps,
            @ForAll @DoubleRange(min = 2, max = 9) double leaderMps2,
            @ForAll @DoubleRange(min = 2, max = 9) double followerMps2,
            @ForAll @DoubleRange(min = 0.3, max = 2) double delayS,
            @ForAll @DoubleRange(min = 0, max = 1) double buildUpS,
            @ForAll @DoubleRange(min = 2, max = 60) double gapM) {
        Encounter encounter = Encounter.of(
                Trajectory.stop(leaderMps, 0.1, 0.5 * buildUpS, leaderMps2),
                Trajectory.stop(followerMps, delayS, buildUpS, followerMps2),
                Distance.metres(gapM));
        double endS = encounter.outcome() instanceof PairOutcome.Contact contact
                ? contact.at().inSeconds()
                : 25;
        int steps = 50_000;
        double step = endS / steps;
        double tau = 1.7;
        double least = Double.POSITIVE_INFINITY;
        double exposed = 0;
        double integrated = 0;
        for (int i = 0; i < steps; i++) {
            double t = (i + 0.5) * step;
            double closing =
                    encounter.follower().speedAtMps(t) - encounter.leader().speedAtMps(t);
            if (closing > 0) {
                double ttc = encounter.gapAt(TimeSpan.seconds(t)).inMetres() / closing;
                least = Math.min(least, ttc);
                exposed += ttc <= tau ? step : 0;
                integrated += ttc <= tau ? (tau - ttc) * step : 0;
            }
        }
        TimeToCollision course = encounter.timeToCollision();
        if (course.smallest() instanceof TimeToCollision.Smallest.Reached reached && least < 100) {
            // samples cannot lie below the smallest value, and one of them lies near it
            assertThat(reached.value().inSeconds())
                    .isLessThanOrEqualTo(least + 1e-9)
                    .isCloseTo(least, within(2e-3 * (1 + least)));
        }
        assertThat(course.exposed(TimeSpan.seconds(tau)).inSeconds()).isCloseTo(exposed, within(4 * step));
        assertThat(course.integratedS2(TimeSpan.seconds(tau))).isCloseTo(integrated, within(1e-4));
    }

    @Property(tries = 100, seed = "41")
    void exposureGrowsWithTheThreshold(
            @ForAll @DoubleRange(min = 0.2, max = 3) double tau,
            @ForAll @DoubleRange(min = 0.01, max = 2) double more,
            @ForAll @DoubleRange(min = 5, max = 60) double gapM) {
        TimeToCollision course = of(Trajectory.stop(25, 0, 0.2, 6), Trajectory.stop(28, 1.3, 0.3, 7), gapM);
        assertThat(course.exposed(TimeSpan.seconds(tau + more)).inSeconds())
                .isGreaterThanOrEqualTo(course.exposed(TimeSpan.seconds(tau)).inSeconds());
        assertThat(course.integratedS2(TimeSpan.seconds(tau + more)))
                .isGreaterThanOrEqualTo(course.integratedS2(TimeSpan.seconds(tau)));
    }

    @Test
    void thresholdMustBePositive() {
        TimeToCollision course =
                of(Trajectory.startingAt(15).build(), Trajectory.startingAt(20).build(), 50);
        assertThatThrownBy(() -> course.exposed(TimeSpan.seconds(0)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("time-to-collision threshold must be in (0, 10000] s, got 0 s");
        assertThatThrownBy(() -> course.at(TimeSpan.seconds(-1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("time must be in [0, 1000000] s, got -1 s");
    }

    /** Equal speeds, a leader that brakes at once: h = g − b t²/2, c = b t, ∫ (τ − h/c) dt in closed form. */
    @Property(tries = 100)
    void aCourseFromEndlessOnIntegratesToItsClosedForm(
            @ForAll @DoubleRange(min = -6, max = 1) double tenToTheGap,
            @ForAll @DoubleRange(min = -2, max = 4) double of10) {
        double g = Math.pow(10, tenToTheGap);
        double tau = Math.pow(10, of10);
        double b = 6;
        double contactS = Math.sqrt(2 * g / b);
        // h = τ c at the root of b t²/2 + τ b t − g, written without cancellation
        double fromS = 2 * g / (b * (tau + Math.sqrt(tau * tau + 2 * g / b)));
        double integral = tau * (contactS - fromS)
                - g / b * Math.log(contactS / fromS)
                + (contactS * contactS - fromS * fromS) / 4;
        TimeToCollision course =
                of(Trajectory.stop(40, 0, 0, b), Trajectory.startingAt(40).build(), g);
        assertThat(course.integratedS2(TimeSpan.seconds(tau)))
                .isCloseTo(integral, within(1e-9 * tau * contactS + 1e-12));
    }
}
