package io.github.stoplag.examples.gallery;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.HeatMap;
import io.github.stoplag.examples.draw.LineChart;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.following.ChainRun;
import io.github.stoplag.examples.following.FollowingScenario;
import io.github.stoplag.examples.following.TimeSpaceDiagram;
import io.github.stoplag.examples.lampswap.DecisiveInstants;
import io.github.stoplag.examples.lampswap.LampSwap;
import io.github.stoplag.examples.lampswap.Scenario;
import io.github.stoplag.following.BrakingVehicle;
import io.github.stoplag.following.Chain;
import io.github.stoplag.following.Pair;
import io.github.stoplag.following.PairOutcome;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Mass;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** Pictures of vehicles behind one another. */
final class GalleryPairs {
    private GalleryPairs() {}

    /** Where the minibus and the car behind it are, with the filament lamp. */
    static Figure timeSpacePair(LampSwap swap) {
        return TimeSpaceDiagram.of(chain(swap, 1)).named("time_space_pair");
    }

    /** Where the minibus and five cars behind it are, all with filament lamps. */
    static Figure timeSpaceChain(LampSwap swap) {
        return TimeSpaceDiagram.of(chain(swap, 5)).named("time_space_chain");
    }

    /** A minibus and cars behind it, at the speed where the two lamps end differently. */
    private static ChainRun chain(LampSwap swap, int cars) {
        Scenario scenario = swap.scenario();
        Scenario.Leg leg = DecisiveInstants.of(swap).leg();
        TimeSpan seen = swap.lamps().get(0).seen().orElseThrow();
        List<Chain.Member> members = new ArrayList<>();
        members.add(Chain.Member.of(scenario.leader().at(leg.speed()), Distance.metres(0), seen));
        members.addAll(
                Collections.nCopies(cars, Chain.Member.of(scenario.follower().at(leg.speed()), leg.gap(), seen)));
        List<Distance> lengths =
                new ArrayList<>(Collections.nCopies(cars, scenario.follower().length()));
        lengths.add(0, scenario.leader().length());
        return ChainRun.of(new FollowingScenario(
                scenario.heading().title(),
                scenario.heading().invented(),
                Chain.of(members),
                lengths,
                Collections.nCopies(cars + 1, Mass.kg(1400)),
                0,
                Optional.empty()));
    }

    /** How the gap shrinks with each lamp, up to the contact or past the smallest gap. */
    static Figure gap(LampSwap swap) {
        Scenario.Leg leg = DecisiveInstants.of(swap).leg();
        List<LineChart.Series> lines = new ArrayList<>();
        for (LampSwap.Lamp lamp : swap.lamps()) {
            Pair pair = Pair.of(
                    swap.scenario().leader().at(leg.speed()),
                    swap.scenario().follower().at(leg.speed()),
                    leg.gap(),
                    lamp.seen().orElseThrow());
            lines.add(gap(pair, lamp.name(), lines.size()));
        }
        return new LineChart(
                        List.of("invented data; both at " + Text.speed(leg.speed())
                                + "; marks: contact or smallest gap"),
                        "time since the stop lamp is switched on (s)",
                        "gap (m)",
                        lines)
                .figure(
                        "gap_time",
                        "The gap to the vehicle ahead, with each lamp",
                        lines.stream().map(LineChart.Series::label).collect(Collectors.joining("; ", "", ".")));
    }

    private static LineChart.Series gap(Pair pair, String lamp, int style) {
        double decisiveS;
        double endS;
        String label;
        if (pair.outcome() instanceof PairOutcome.Contact contact) {
            decisiveS = contact.at().inSeconds();
            endS = decisiveS;
            label = lamp + ": contact after " + Text.digits(endS) + " s, closing at "
                    + Text.digits(contact.closingSpeed().inKmh()) + " km/h";
        } else {
            PairOutcome.NoContact apart = (PairOutcome.NoContact) pair.outcome();
            decisiveS = apart.at().inSeconds();
            endS = decisiveS + 1;
            label = lamp + ": no contact, smallest gap " + Text.metres(apart.smallestGap());
        }
        List<LineChart.Point> points = DoubleStream.concat(
                        IntStream.rangeClosed(0, 100).mapToDouble(i -> endS * i / 100), DoubleStream.of(decisiveS))
                .sorted()
                .mapToObj(t -> new LineChart.Point(t, gapM(pair, t)))
                .toList();
        return new LineChart.Series(
                label, style, points, List.of(new LineChart.Point(decisiveS, gapM(pair, decisiveS))), false);
    }

    private static double gapM(Pair pair, double timeS) {
        double gapM = pair.gap().inMetres()
                + pair.leaderTrajectory().positionAtM(timeS)
                - pair.followerTrajectory().positionAtM(timeS);
        return Math.max(0, gapM);
    }

    /**
     * Whether the two touch, and how fast, over speed and gap, with one of the lamps (0 the filament, 1 the LED lamp).
     */
    static Figure outcomes(LampSwap swap, int lamp) {
        LampSwap.Lamp fitted = swap.lamps().get(lamp);
        List<Double> speedsKmh =
                IntStream.rangeClosed(3, 13).mapToObj(i -> 10.0 * i).toList();
        List<Double> gapsS = IntStream.rangeClosed(3, 12).mapToObj(i -> i / 5.0).toList();
        List<List<OptionalDouble>> closingKmh = new ArrayList<>();
        for (double gapS : gapsS) {
            closingKmh.add(speedsKmh.stream()
                    .map(kmh -> closingKmh(
                            swap.scenario(), Speed.kmh(kmh), gapS, fitted.seen().orElseThrow()))
                    .toList());
        }
        HeatMap map = new HeatMap(
                List.of("invented data; in the cells: closing speed in km/h, rounded down"),
                "speed of both vehicles (km/h)",
                "gap (s)",
                "no contact",
                "km/h",
                List.of(10.0, 20.0, 30.0, 40.0),
                speedsKmh,
                gapsS,
                closingKmh);
        return map.figure(
                lamp == 0 ? "outcomes_filament" : "outcomes_led",
                "Contact and closing speed with the " + fitted.name() + " lamp",
                map.inWords());
    }

    private static OptionalDouble closingKmh(Scenario scenario, Speed speed, double gapS, TimeSpan seen) {
        BrakingVehicle minibus = scenario.leader().at(speed);
        BrakingVehicle car = scenario.follower().at(speed);
        Distance gap = Distance.metres(speed.inMps() * gapS);
        return Pair.of(minibus, car, gap, seen).outcome() instanceof PairOutcome.Contact contact
                ? OptionalDouble.of(contact.closingSpeed().inKmh())
                : OptionalDouble.empty();
    }
}
