package io.github.stoplag.examples;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Option;

/** A program that works on a scenario file, the shipped one unless told otherwise. */
abstract class ScenarioCommand extends ProgramCommand {
    @Option(
            names = "--scenario",
            paramLabel = "FILE",
            description = "a scenario in the form that --print-scenario shows; default: a shipped one, invented data")
    private @Nullable Path scenario;

    @Option(
            names = "--print-scenario",
            description = "print the shipped scenario with its comments, to be edited, and end")
    private boolean printScenario;

    /**
     * Refuses options that do not go together, before anything is read.
     *
     * @param given whether a scenario was given
     */
    void checkOptions(boolean given) {}

    /** Gives the name of the scenario that comes with the program. */
    abstract String shipped();

    /** Gives the keys of its scenarios. */
    abstract ScenarioFile.Vocabulary vocabulary();

    /**
     * Computes everything from a scenario, and writes nothing.
     *
     * @throws InputException if the scenario cannot be used
     */
    abstract Results results(ScenarioFile file);

    @Override
    public final Integer call() {
        if (printScenario) {
            printer().print(Resource.text(shipped()));
            printer().flush();
            return ExitCode.OK;
        }
        return super.call();
    }

    @Override
    final Results results() {
        checkOptions(scenario != null);
        ScenarioFile file = scenario == null
                ? ScenarioFile.shipped(shipped(), vocabulary())
                : ScenarioFile.read(scenario, vocabulary());
        try {
            return results(file);
        } catch (IllegalArgumentException e) {
            throw new InputException(file.name() + ": " + e.getMessage(), e);
        }
    }
}
