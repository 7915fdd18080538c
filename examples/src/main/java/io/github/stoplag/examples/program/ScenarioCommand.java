package io.github.stoplag.examples.program;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.Resource;
import io.github.stoplag.examples.file.ScenarioFile;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Option;

/** A program that works on a scenario file, the shipped one unless told otherwise. */
public abstract class ScenarioCommand extends ProgramCommand {
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
    protected void checkOptions(boolean given) {}

    /** Gives the name of the scenario that comes with the program. */
    protected abstract String shipped();

    /** Gives the keys of its scenarios. */
    protected abstract ScenarioFile.Vocabulary vocabulary();

    /**
     * Computes everything from a scenario, and writes nothing.
     *
     * @throws InputException if the scenario cannot be used
     */
    protected abstract Results results(ScenarioFile file);

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
    protected final Results results() {
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
