package io.github.stoplag.examples.following;

import io.github.stoplag.examples.file.CsvText;
import io.github.stoplag.following.ChainLink;
import io.github.stoplag.following.Impact;
import io.github.stoplag.following.PairOutcome;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Speed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The table of events of a chain in order of time; a field is left empty where the quantity does not exist. */
final class EventsCsv {
    /** The columns; the program's help says what each holds. */
    static final List<String> HEADER = List.of(
            "time_s",
            "vehicle",
            "event",
            "position_m",
            "speed_mps",
            "gap_ahead_m",
            "closing_speed_mps",
            "speed_lost_mps",
            "speed_gained_ahead_mps",
            "energy_lost_j",
            "undisturbed");

    private EventsCsv() {}

    private record Event(double timeS, int index, String what) {}

    static String of(ChainRun run) {
        List<Event> events = new ArrayList<>();
        for (int i = 0; i < run.count(); i++) {
            add(run, i, events);
        }
        events.sort(Comparator.comparingDouble(Event::timeS).thenComparingInt(Event::index));
        return CsvText.of(HEADER, events.stream().map(event -> fields(run, event)));
    }

    private static void add(ChainRun run, int index, List<Event> events) {
        double latencyS =
                run.scenario().chain().members().get(index).lampLatency().inSeconds();
        run.pedalS(index).ifPresent(pressedS -> {
            events.add(new Event(pressedS, index, "pedal_pressed"));
            if (index + 1 < run.count()) {
                events.add(new Event(pressedS + latencyS, index, "lamp_seen"));
            }
        });
        Trajectory motion = run.motions().get(index);
        motion.phases().stream()
                .filter(phase -> phase.speedMps() > 0 && (phase.decelMps2() > 0 || phase.jerkMps3() > 0))
                .findFirst()
                .ifPresent(phase -> events.add(new Event(phase.startS(), index, "braking_starts")));
        motion.restS().ifPresent(atS -> events.add(new Event(atS, index, "standstill")));
        if (index > 0) {
            PairOutcome outcome = run.links().get(index - 1).outcome();
            events.add(new Event(
                    ChainRun.atS(outcome), index, outcome instanceof PairOutcome.Contact ? "contact" : "smallest_gap"));
        }
    }

    private static List<String> fields(ChainRun run, Event event) {
        int index = event.index();
        Optional<ChainLink> touching =
                event.what().equals("contact") ? Optional.of(run.links().get(index - 1)) : Optional.empty();
        Optional<Impact> impact = touching.flatMap(link -> impact(run, link));
        boolean undisturbed = touching.map(ChainLink::undisturbed)
                .orElse(event.timeS() <= run.touchedS().get(index));
        Optional<Double> gapM = touching.isPresent() ? Optional.of(0.0) : run.gapM(index, event.timeS());
        return List.of(
                Numbers.fixed(event.timeS(), 4),
                ChainRun.name(index),
                event.what(),
                Numbers.fixed(run.frontM(index, event.timeS()), 3),
                Numbers.fixed(run.motions().get(index).speedAtMps(event.timeS()), 3),
                CsvText.field(gapM, gap -> gap, 3),
                CsvText.field(
                        touching.flatMap(ChainLink::contact).map(PairOutcome.Contact::closingSpeed), Speed::inMps, 3),
                CsvText.field(impact.map(Impact::followerChange), Speed::inMps, 3),
                CsvText.field(impact.map(Impact::leaderChange), Speed::inMps, 3),
                CsvText.field(impact, Impact::energyLostJ, 0),
                undisturbed ? "yes" : "no");
    }

    /** What a link's contact does to both vehicles. */
    static Optional<Impact> impact(ChainRun run, ChainLink link) {
        return link.contact()
                .map(contact -> Impact.of(
                        contact,
                        run.scenario().masses().get(link.follower() - 1),
                        run.scenario().masses().get(link.follower()),
                        run.scenario().restitution()));
    }
}
