package io.github.stoplag.examples.gallery;

import io.github.stoplag.braking.Stop;
import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.StackedBars;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.lampswap.LampSwap;
import io.github.stoplag.examples.lampswap.Scenario;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Pictures of the stop of one vehicle. */
final class GalleryStops {
    private static final List<StackedBars.Part> PARTS = List.of(
            new StackedBars.Part("until the filament stop lamp ahead is seen", 4),
            new StackedBars.Part("reaction of the driver", 1),
            new StackedBars.Part("dead time and build-up of the brakes", 3),
            new StackedBars.Part("full braking", 2));

    private GalleryStops() {}

    /** What the car behind travels from the moment the stop lamp ahead is switched on until it stands, part by part. */
    static Figure stopping(LampSwap swap, boolean metric) {
        double seenS = swap.lamps().get(0).seen().orElseThrow().inSeconds();
        String unit = metric ? "m" : "ft";
        String speedUnit = metric ? "km/h" : "mph";
        List<StackedBars.Bar> bars = new ArrayList<>();
        for (int v : metric ? new int[] {30, 50, 70, 90, 110, 130} : new int[] {20, 30, 40, 50, 60, 70, 80}) {
            Speed speed = metric ? Speed.kmh(v) : Speed.mph(v);
            bars.add(
                    new StackedBars.Bar(String.valueOf(v), parts(swap.scenario().follower(), speed, seenS, metric)));
        }
        Scenario.Vehicle car = swap.scenario().follower();
        return new StackedBars(
                        List.of("invented data; reaction " + car.reaction() + ", full braking " + car.deceleration()),
                        "distance (" + unit + ")",
                        "speed (" + speedUnit + ")",
                        PARTS,
                        bars,
                        unit)
                .figure(
                        metric ? "stopping_metric" : "stopping_us",
                        "Stopping distance by part, in " + (metric ? "metres" : "feet"),
                        "From the stop lamp ahead being switched on to standstill: " + inWords(bars, speedUnit, unit));
    }

    private static List<Double> parts(Scenario.Vehicle car, Speed speed, double seenS, boolean metric) {
        Stop stop = (Stop) Stop.of(speed, car.reaction(), car.response(), car.deceleration());
        Trajectory motion = stop.trajectory();
        double reactionS = car.reaction().inSeconds();
        double fullS = reactionS
                + car.response().deadTime().inSeconds()
                + car.response().buildUp().inSeconds();
        double reactionM = motion.positionAtM(reactionS);
        double buildUpM = motion.positionAtM(fullS) - reactionM;
        double fullM = stop.stoppingDistance().inMetres() - buildUpM - reactionM;
        return Stream.of(speed.inMps() * seenS, reactionM, buildUpM, fullM)
                .map(metres -> metric ? metres : metres / Distance.METRES_PER_FOOT)
                .toList();
    }

    private static String inWords(List<StackedBars.Bar> bars, String speedUnit, String unit) {
        StringBuilder words = new StringBuilder();
        for (StackedBars.Bar bar : bars) {
            words.append(words.isEmpty() ? "" : ", ")
                    .append(Text.digits(bar.sum()))
                    .append(' ')
                    .append(unit)
                    .append(" from ")
                    .append(bar.label())
                    .append(' ')
                    .append(speedUnit);
        }
        return words.append('.').toString();
    }
}
