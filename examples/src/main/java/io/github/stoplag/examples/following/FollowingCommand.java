package io.github.stoplag.examples.following;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.program.ScenarioCommand;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** The program {@code following}: from a pair or chain to its contacts, a table and two pictures. */
@Command(
        name = "following",
        description = {
            "Says who touches whom, when and how hard, when the first of a pair or chain of",
            "vehicles brakes and each driver sees only the stop lamp ahead."
        },
        footer = {
            "",
            "Writes events.csv, time_space.svg and gap_time.svg. Columns of events.csv:",
            "  time_s                  time since vehicle 1's brake pedal is pressed",
            "  vehicle                 its number, 1 for the first",
            "  event                   pedal_pressed (its stop-lamp circuit closes),",
            "                          lamp_seen (by the driver behind), braking_starts,",
            "                          standstill, smallest_gap, contact",
            "  position_m              its front, from vehicle 1's front at time 0",
            "  speed_mps               its speed, just before a contact",
            "  gap_ahead_m             gap to the vehicle ahead",
            "  closing_speed_mps       contact: how much faster than the one ahead",
            "  speed_lost_mps          contact: what it loses by the impact",
            "  speed_gained_ahead_mps  contact: what the one ahead gains",
            "  energy_lost_j           contact: energy turned into deformation",
            "  undisturbed             no after an earlier contact: motion after a",
            "                          contact is not modelled",
            "Exit code: 0 done; 1 failed; 2 an input cannot be used: one line says why,",
            "and nothing is written."
        })
public final class FollowingCommand extends ScenarioCommand {
    private static final String EVENTS = "events.csv";

    @Option(names = "--chain", description = "take the shipped chain of vehicles instead of the shipped pair")
    private boolean chain;

    @Override
    protected String shipped() {
        return chain ? FollowingScenario.CHAIN : FollowingScenario.PAIR;
    }

    @Override
    protected ScenarioFile.Vocabulary vocabulary() {
        return FollowingScenario.vocabulary();
    }

    @Override
    protected void checkOptions(boolean given) {
        if (chain && given) {
            throw new InputException("--chain and --scenario: give one of the two");
        }
    }

    @Override
    protected List<String> fileNames() {
        return List.of(EVENTS, "time_space.svg", "gap_time.svg");
    }

    @Override
    protected Results results(ScenarioFile file) {
        ChainRun run = ChainRun.of(FollowingScenario.of(file));
        Map<String, String> files = new LinkedHashMap<>();
        files.put(EVENTS, EventsCsv.of(run));
        List.of(TimeSpaceDiagram.of(run), GapChart.of(run))
                .forEach(figure -> files.put(figure.fileName(), figure.svg()));
        return new Results(FollowingText.of(run), files);
    }
}
