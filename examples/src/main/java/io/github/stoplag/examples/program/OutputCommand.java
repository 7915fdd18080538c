package io.github.stoplag.examples.program;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Collection;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** A program with a folder for its results. */
public abstract class OutputCommand implements Callable<Integer> {
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
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "${sys:stoplag.output:-stoplag-results}/${COMMAND-NAME}",
            description = "folder for the results, replaced as a whole; default: ${DEFAULT-VALUE}")
    private Path out = Path.of("");

    /** Gives the folder asked for. */
    protected Path out() {
        return out;
    }

    /** Says where a page is that was written, if there is one. */
    protected void pages(Path folder, Collection<String> names) {
        names.stream()
                .filter(name -> name.endsWith(".html"))
                .forEach(name -> printer().println("Page to open: " + OutputFolder.shown(folder.resolve(name))));
    }

    protected PrintWriter printer() {
        return spec.commandLine().getOut();
    }

    protected PrintWriter errors() {
        return spec.commandLine().getErr();
    }
}
