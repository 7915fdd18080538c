package io.github.stoplag.examples;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

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
final class FollowingCommand implements Callable<Integer> {
    private static final String EVENTS = "events.csv";

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line parser
    private CommandSpec spec;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "show this help and end")
    @SuppressWarnings("unused") // the command line parser acts on it
    private boolean help;

    @Option(
            names = "--scenario",
            paramLabel = "FILE",
            description = "a scenario in the form that --print-scenario shows; default: a shipped one, invented data")
    private @Nullable Path scenario;

    @Option(names = "--chain", description = "take the shipped chain of vehicles instead of the shipped pair")
    private boolean chain;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "${sys:stoplag.output:-examples/target}/following",
            description = "folder for the results, replaced as a whole; default: examples/target/following")
    private Path out = Path.of("");

    @Option(
            names = "--print-scenario",
            description = "print the shipped scenario with its comments, to be edited, and end")
    private boolean printScenario;

    @Override
    public Integer call() throws IOException {
        PrintWriter printer = spec.commandLine().getOut();
        String shipped = chain ? FollowingScenario.CHAIN : FollowingScenario.PAIR;
        if (printScenario) {
            printer.print(Resource.text(shipped));
            printer.flush();
            return ExitCode.OK;
        }
        if (chain && scenario != null) {
            throw new InputException("--chain and --scenario: give one of the two");
        }
        OutputFolder folder = OutputFolder.of(out, List.of(EVENTS, "time_space.svg", "gap_time.svg"));
        ScenarioFile file = scenario == null
                ? ScenarioFile.shipped(shipped, FollowingScenario.vocabulary())
                : ScenarioFile.read(scenario, FollowingScenario.vocabulary());
        ChainRun run = ChainRun.of(FollowingScenario.of(file));
        Map<String, String> files = new LinkedHashMap<>();
        files.put(EVENTS, EventsCsv.of(run));
        List.of(TimeSpaceDiagram.of(run), GapChart.of(run))
                .forEach(figure -> files.put(figure.fileName(), figure.svg()));
        folder.replaceWith(files);
        FollowingText.of(run).forEach(printer::println);
        printer.println("Written to " + OutputFolder.shown(out) + ": " + String.join(", ", files.keySet()) + ".");
        return ExitCode.OK;
    }
}
