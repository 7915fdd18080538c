package io.github.stoplag.examples;

import java.util.List;
import java.util.Map;
import picocli.CommandLine.ExitCode;

/** A program that prints a report and replaces a folder with its results, all of them or none. */
abstract class ProgramCommand extends OutputCommand {
    private static final String PICTURE = ".svg";

    /**
     * What a run gives.
     *
     * @param lines the printed report
     * @param files the content of each result file by its name
     * @param exitCode 0 if all is well
     */
    record Results(List<String> lines, Map<String, String> files, int exitCode) {
        Results(List<String> lines, Map<String, String> files) {
            this(lines, files, ExitCode.OK);
        }
    }

    /** Gives the names of all files that a run of this program may write. */
    abstract List<String> fileNames();

    /**
     * Computes everything, and writes nothing.
     *
     * @throws InputException if an input cannot be used
     */
    abstract Results results();

    @Override
    public Integer call() {
        OutputFolder folder = OutputFolder.of(out(), fileNames());
        Results results = results();
        folder.replaceWith(results.files());
        results.lines().forEach(printer()::println);
        printer().println("Written to " + OutputFolder.shown(out()) + ": " + named(fileNames()));
        return results.exitCode();
    }

    private static String named(List<String> files) {
        List<String> others =
                files.stream().filter(name -> !name.endsWith(PICTURE)).toList();
        int pictures = files.size() - others.size();
        return String.join(", ", others) + (pictures == 0 ? "." : " and " + pictures + " pictures.");
    }
}
