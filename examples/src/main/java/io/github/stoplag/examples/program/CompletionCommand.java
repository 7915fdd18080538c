package io.github.stoplag.examples.program;

import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Prints what a shell needs to complete the names of the programs and of their options. */
@Command(
        name = "completion",
        description = "Prints a script with which bash and zsh complete the programs and their options.",
        footer = {
            "",
            "Once in a shell, or in its start-up file:",
            "  source <(java -jar stoplag.jar completion)",
            "The script also makes stoplag a command that runs this jar, unless there is one of that name."
        })
public final class CompletionCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line parser
    private CommandSpec spec;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "show this help and end")
    @SuppressWarnings("unused") // the command line parser acts on it
    private boolean help;

    @Override
    public Integer call() {
        String program = spec.root().name();
        String script = AutoComplete.bash(program, spec.root().commandLine());
        spec.commandLine().getOut().print(script + command(program, home()));
        spec.commandLine().getOut().flush();
        return ExitCode.OK;
    }

    /** Gives the lines that make a name run a jar, none if the program does not come from a jar. */
    static String command(String name, Path home) {
        if (!String.valueOf(home.getFileName()).endsWith(".jar")) {
            return "";
        }
        String quoted = "'" + home.toString().replace("'", "'\\''") + "'";
        return "\ncommand -v %1$s > /dev/null || %1$s() { java -jar %2$s \"$@\"; }\n".formatted(name, quoted);
    }

    private static Path home() {
        try {
            return Path.of(CompletionCommand.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException("the place of the program has no path", e);
        }
    }
}
