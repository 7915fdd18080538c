package io.github.stoplag.examples.program;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.ExitCode;

/** A program that prints a report and replaces a folder with its results, all of them or none. */
public abstract class ProgramCommand extends OutputCommand {
    private static final String PICTURE = ".svg";

    /**
     * What a run gives.
     *
     * @param lines the printed report
     * @param files the content of each result file by its name; none if the run writes nothing
     * @param exitCode 0 if all is well
     */
    public record Results(List<String> lines, Map<String, byte[]> files, int exitCode) {
        public Results(List<String> lines, Map<String, String> texts) {
            this(lines, utf8(texts), ExitCode.OK);
        }

        public static Map<String, byte[]> utf8(Map<String, String> texts) {
            Map<String, byte[]> bytes = new LinkedHashMap<>();
            texts.forEach((name, text) -> bytes.put(name, text.getBytes(StandardCharsets.UTF_8)));
            return bytes;
        }
    }

    /** Gives the folder for the results of this run. */
    protected Path folder(Path asked) {
        return asked;
    }

    /** Gives the names of all files that a run of this program may write. */
    protected abstract List<String> fileNames();

    /** Says whether a file may be one that an earlier run of this program wrote. */
    protected boolean mayWrite(String name) {
        return fileNames().contains(name);
    }

    /**
     * Computes everything, and writes nothing.
     *
     * @throws io.github.stoplag.examples.file.InputException if an input cannot be used
     */
    protected abstract Results results();

    @Override
    public Integer call() {
        OutputFolder folder = OutputFolder.of(folder(out()), this::mayWrite);
        Results results = results();
        if (results.files().isEmpty()) {
            results.lines().forEach(printer()::println);
            return results.exitCode();
        }
        folder.replaceWith(results.files());
        results.lines().forEach(printer()::println);
        printer()
                .println("Written to " + OutputFolder.shown(folder(out())) + ": "
                        + named(List.copyOf(results.files().keySet())));
        pages(folder(out()), results.files().keySet());
        return results.exitCode();
    }

    private static String named(List<String> files) {
        List<String> others =
                files.stream().filter(name -> !name.endsWith(PICTURE)).toList();
        int pictures = files.size() - others.size();
        return String.join(", ", others) + (pictures == 0 ? "." : " and " + pictures + " pictures.");
    }
}
