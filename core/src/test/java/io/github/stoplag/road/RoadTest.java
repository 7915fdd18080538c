package io.github.stoplag.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import org.junit.jupiter.api.Test;

class RoadTest {
    private static double decelMps2(Road road) {
        return ((RoadDeceleration.Holds) road.deceleration()).deceleration().inMps2();
    }

    @Test
    void levelRoadGivesFrictionTimesStandardGravity() {
        assertThat(decelMps2(Road.level(FrictionCoefficient.of(0.7)))).isCloseTo(0.7 * 9.80665, within(1e-14));
    }

    @Test
    void gradeEntersWithTheExactSlopeAngle() {
        // tan 6° = 0.105104; second way: components along and across the slope by the angle itself
        double angle = Math.toRadians(6);
        double expected = 9.80665 * (0.7 * Math.cos(angle) - Math.sin(angle));
        assertThat(decelMps2(Road.of(FrictionCoefficient.of(0.7), Grade.degrees(-6))))
                .isCloseTo(expected, within(1e-13));
        double uphill = 9.80665 * (0.7 * Math.cos(angle) + Math.sin(angle));
        assertThat(decelMps2(Road.of(FrictionCoefficient.of(0.7), Grade.degrees(6))))
                .isCloseTo(uphill, within(1e-13));
    }

    @Test
    void gravityIsAParameter() {
        Road road = Road.level(FrictionCoefficient.of(0.5)).withGravity(1.62);
        assertThat(decelMps2(road)).isCloseTo(0.81, within(1e-15));
    }

    @Test
    void roadThatCannotHoldTheVehicleIsAnOutcome() {
        RoadDeceleration ice =
                Road.of(FrictionCoefficient.of(0.1), Grade.percent(-12)).deceleration();
        assertThat(ice)
                .isEqualTo(new RoadDeceleration.CannotHold(
                        "friction 0.1 does not slow a vehicle on a grade of -12 %: its acceleration downhill would be"
                                + " 0.194736 m/s²"));
    }

    @Test
    void noFrictionOnALevelRoadDoesNotSlowEither() {
        assertThat(Road.level(FrictionCoefficient.of(0)).deceleration())
                .isEqualTo(new RoadDeceleration.CannotHold("friction 0 does not slow a vehicle on a grade of 0 %: its"
                        + " acceleration downhill would be 0 m/s²"));
    }

    @Test
    void gravityOutOfRangeIsNamed() {
        Road road = Road.level(FrictionCoefficient.of(0.5));
        assertThatThrownBy(() -> road.withGravity(0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gravity must be in [1, 30] m/s², got 0 m/s²");
        assertThatThrownBy(() -> road.withGravity(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gravity must be in [1, 30] m/s², got NaN m/s²");
    }
}
