package io.github.stoplag.kernel;

import static io.github.stoplag.Refusals.assertMessage;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class TrajectoryTest {
    @Test
    void standardStopHasFourPhases() {
        Trajectory stop = Trajectory.stop(20, 1.0, 0.5, 8);
        assertThat(stop.phases())
                .containsExactly(
                        new Trajectory.Phase(0, 0, 20, 0, 0),
                        new Trajectory.Phase(1, 20, 20, 0, 16),
                        new Trajectory.Phase(1.5, 20 + 0.5 * (20 - 0.5 * (0.5 * 16 / 6)), 18, 8, 0),
                        new Trajectory.Phase(3.75, stop.restPositionM().orElseThrow(), 0, 0, 0));
        assertThat(stop.restPositionM().orElseThrow())
                .isCloseTo(StopKernel.stoppingDistanceM(20, 1.0, 0.5, 8), within(1e-13));
        assertThat(stop.restS().orElseThrow()).isCloseTo(StopKernel.stoppingTimeS(20, 1.0, 0.5, 8), within(1e-14));
    }

    @Test
    void stopInsideTheBuildUpSkipsFullBraking() {
        Trajectory stop = Trajectory.stop(1, 0, 2, 8);
        assertThat(stop.phases()).hasSize(2);
        assertThat(stop.restS().orElseThrow()).isCloseTo(Math.sqrt(0.5), within(1e-15));
        assertThat(stop.restPositionM().orElseThrow()).isCloseTo(2 * Math.sqrt(0.5) / 3, within(1e-15));
    }

    @Test
    void motionThatNeverStopsHasNoPhaseOfRest() {
        assertThat(Trajectory.startingAt(20).build().phases()).containsExactly(new Trajectory.Phase(0, 0, 20, 0, 0));
        assertThat(Trajectory.startingAt(20).changeTo(-2, 0).build().phases())
                .containsExactly(new Trajectory.Phase(0, 0, 20, -2, 0));
    }

    @Test
    void phaseThatNoVehicleCanBeInIsRefused() {
        assertThatThrownBy(() -> new Trajectory.Phase(Double.POSITIVE_INFINITY, 0, 20, 0, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("start of a phase must be in [0, ");
        assertThatThrownBy(() -> new Trajectory.Phase(0, Double.NaN, 20, 0, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("position at the start of a phase must be in [0, ")
                .hasMessageEndingWith(" m, got NaN m");
        assertThatThrownBy(() -> new Trajectory.Phase(0, 0, -1, 0, 0)).hasMessageStartingWith("speed at the start");
        assertThatThrownBy(() -> new Trajectory.Phase(0, 0, 1, Double.NaN, 0)).hasMessageStartingWith("deceleration");
        assertThatThrownBy(() -> new Trajectory.Phase(0, 0, 1, 0, Double.NaN)).hasMessageStartingWith("jerk");
    }

    @Test
    void vehicleAtRestStaysThereWhateverFollows() {
        Trajectory once = Trajectory.startingAt(10)
                .changeTo(5, 0)
                .hold(10)
                .changeTo(-3, 1)
                .hold(5)
                .build();
        assertThat(once.restS()).hasValue(2);
        assertThat(once.positionAtM(100)).isEqualTo(10);
        assertThat(once.speedAtMps(100)).isZero();
        assertThat(once.decelerationAtMps2(100)).isZero();
    }

    @Test
    void standingVehicleMayDriveOffAtOnce() {
        Trajectory start = Trajectory.startingAt(0).changeTo(-4, 0).build();
        assertThat(start.restS()).isEmpty();
        assertThat(start.positionAtM(20)).isCloseTo(800, within(1e-10));
        Trajectory softly = Trajectory.startingAt(0).changeTo(-4, 2).build();
        assertThat(softly.restS()).isEmpty();
        assertThat(softly.speedAtMps(2)).isCloseTo(4, within(1e-14));
        assertThat(Trajectory.startingAt(0).build().restS()).hasValue(0);
    }

    @Test
    void vehicleThatSpeedsUpUnderRisingDecelerationComesBackToRest() {
        // v = 2 τ − τ²/2 from deceleration −2 rising at 1 m/s³: rest at τ = 4, s = τ² − τ³/6 = 16/3
        Trajectory hump =
                Trajectory.startingAt(0).changeTo(-2, 0).changeTo(8, 10).build();
        assertThat(hump.restS().orElseThrow()).isCloseTo(4, within(1e-14));
        assertThat(hump.restPositionM().orElseThrow()).isCloseTo(16.0 / 3, within(1e-14));
    }

    @Test
    void brakeReleasedInTimeNeverStops() {
        Trajectory released =
                Trajectory.startingAt(20).changeTo(6, 0.2).hold(1).cruise(3).build();
        assertThat(released.restS()).isEmpty();
        assertThat(released.restPositionM()).isEmpty();
        assertThat(released.speedAtMps(1e5)).isCloseTo(20 - 0.6 - 6, within(1e-12));
        assertThat(released.toString()).startsWith("Trajectory[Phase[startS=0.0");
    }

    @Test
    void positionIsTheIntegralOfSpeed() {
        Trajectory motion = Trajectory.startingAt(18)
                .cruise(0.7)
                .changeTo(3, 0.4)
                .hold(1)
                .changeTo(-1, 0.6)
                .hold(2)
                .changeTo(7, 0.5)
                .build();
        double step = 1e-4;
        double position = 0;
        for (double t = 0; t < 12; t += step) {
            position += step * motion.speedAtMps(t + step / 2);
            assertThat(motion.positionAtM(t + step)).isCloseTo(position, within(1e-6));
        }
    }

    @Test
    void badInputIsNamed() {
        assertMessage(() -> Trajectory.startingAt(-1), "speed must be in [0, 150] m/s, got -1 m/s");
        assertMessage(() -> Trajectory.startingAt(Double.NaN), "speed must be in [0, 150] m/s, got NaN m/s");
        assertMessage(() -> Trajectory.stop(10, -0.5, 0, 5), "brake onset must be in [0, 1000000] s, got -0.5 s");
        assertMessage(() -> Trajectory.stop(10, 0, 0, -5), "deceleration must be in [0, 200] m/s², got -5 m/s²");
        assertMessage(
                () -> Trajectory.startingAt(10).changeTo(201, 1),
                "deceleration must be in [-200, 200] m/s², got 201 m/s²");
        assertMessage(
                () -> Trajectory.startingAt(10).hold(Double.POSITIVE_INFINITY),
                "duration must be in [0, 1000000] s, got Infinity s");
        Trajectory motion = Trajectory.startingAt(10).build();
        assertMessage(() -> motion.positionAtM(-1), "time must be in [0, 1000000] s, got -1 s");
        assertMessage(() -> motion.speedAtMps(Double.NaN), "time must be in [0, 1000000] s, got NaN s");
    }
}
