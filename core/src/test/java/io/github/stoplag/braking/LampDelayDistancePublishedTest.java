package io.github.stoplag.braking;

import io.github.stoplag.PublishedTableTest;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.List;

/** Facts of the trade: how far a vehicle runs during the delay of a lamp. Common practice, no source. */
class LampDelayDistancePublishedTest extends PublishedTableTest {
    @Override
    protected List<String> tables() {
        return List.of("lamp_delay_distance.csv");
    }

    @Override
    protected double compute(Row row) {
        double number = row.number("speed");
        Speed speed = row.text("speed_unit").equals("mph") ? Speed.mph(number) : Speed.kmh(number);
        // a delay lengthens the stop by what is run in it, whatever the brakes
        Deceleration any = Deceleration.mps2(6.5);
        BrakeResponse response = new BrakeResponse(TimeSpan.seconds(0.1), TimeSpan.seconds(0.3));
        Stop early = (Stop) Stop.of(speed, TimeSpan.seconds(1), response, any);
        Stop late = (Stop) Stop.of(speed, TimeSpan.seconds(1 + row.number("time_s")), response, any);
        Distance extra = Distance.metres(
                late.stoppingDistance().inMetres() - early.stoppingDistance().inMetres());
        return switch (row.text("unit")) {
            case "ft" -> extra.inFeet();
            case "in" -> extra.inInches();
            default -> extra.inMetres();
        };
    }
}
