package io.github.stoplag.braking;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.PublishedTableTest;
import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.Road;
import io.github.stoplag.road.RoadDeceleration;
import java.util.List;

/** Worked examples of open textbooks. */
class WorkedExamplesPublishedTest extends PublishedTableTest {
    @Override
    protected List<String> tables() {
        return List.of("worked_examples.csv");
    }

    @Override
    protected double compute(Row row) {
        return switch (row.text("quantity")) {
            case "braking distance" -> stop(row).brakingDistance().inMetres();
            case "stopping distance" -> stop(row).stoppingDistance().inMetres();
            case "stopping time" -> stop(row).duration().inSeconds();
            case "deceleration from distance" ->
                StopKernel.decelerationToStopMps2(row.number("speed_mps"), row.number("distance_m"));
            case "deceleration from time" -> row.number("speed_mps") / row.number("time_s");
            case "road deceleration" -> roadDecelerationMps2(row);
            case "speed from skid" -> StopKernel.speedToStopMps(row.number("distance_m"), roadDecelerationMps2(row));
            default -> throw new IllegalArgumentException(row.text("quantity"));
        };
    }

    private static Stop stop(Row row) {
        StopOutcome outcome = Stop.of(
                Speed.mps(row.number("speed_mps")),
                TimeSpan.seconds(row.numberOr("reaction_s", 0)),
                BrakeResponse.INSTANT,
                Deceleration.mps2(row.number("decel_mps2")));
        return (Stop) outcome;
    }

    private static double roadDecelerationMps2(Row row) {
        Grade grade = Grade.degrees(row.numberOr("grade_deg", 0));
        Road road =
                Road.of(FrictionCoefficient.of(row.number("friction")), grade).withGravity(row.number("gravity_mps2"));
        double kernelMps2 =
                StopKernel.decelerationMps2(row.number("friction"), grade.inRatio(), row.number("gravity_mps2"));
        // the typed face says in words what the kernel says by the sign
        if (road.deceleration() instanceof RoadDeceleration.Holds holds) {
            assertThat(holds.deceleration().inMps2()).isEqualTo(kernelMps2);
        } else {
            assertThat(kernelMps2).isNotPositive();
        }
        return kernelMps2;
    }
}
