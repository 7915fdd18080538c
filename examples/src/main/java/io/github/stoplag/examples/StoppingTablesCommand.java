package io.github.stoplag.examples;

import io.github.stoplag.braking.PublishedRule;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The program {@code stopping-tables}: every published stopping rule beside its printed table. */
@Command(
        name = "stopping-tables",
        description = {
            "Prints published stopping rules beside the tables they were published with:",
            "each printed figure, and published minus computed."
        },
        footer = {
            "",
            "Writes residuals.csv with every figure of every rule.",
            "Exit code: 0 done; 1 failed, or a figure differs without an explanation;",
            "2 an input cannot be used: one line says why, and nothing is written."
        })
final class StoppingTablesCommand implements Callable<Integer> {
    private static final String RESIDUALS = "residuals.csv";

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
            names = "--rule",
            paramLabel = "KEY",
            description = "print only this rule, for example uk-highway-code; can be given more than once;"
                    + " the file holds all")
    private List<String> keys = List.of();

    @Option(
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "${sys:stoplag.output:-examples/target}/stopping-tables",
            description = "folder for the results, replaced as a whole; default: examples/target/stopping-tables")
    private Path out = Path.of("");

    @Override
    public Integer call() throws IOException {
        OutputFolder folder = OutputFolder.of(out, List.of(RESIDUALS));
        List<PublishedRule> printed = keys.isEmpty()
                ? PublishedRule.all()
                : keys.stream().map(StoppingTablesCommand::rule).toList();
        List<RuleResiduals> all = RuleResiduals.of(PublishedRule.all());
        folder.replaceWith(Map.of(RESIDUALS, ResidualsCsv.of(all)));
        PrintWriter printer = spec.commandLine().getOut();
        ResidualsText.of(RuleResiduals.of(printed)).forEach(printer::println);
        printer.println("Written to " + OutputFolder.shown(out) + ": " + RESIDUALS + " with "
                + all.stream().mapToInt(rule -> rule.residuals().size()).sum() + " figures.");
        return all.stream().allMatch(RuleResiduals::explained) ? ExitCode.OK : ExitCode.SOFTWARE;
    }

    private static PublishedRule rule(String key) {
        try {
            return PublishedRule.named(key);
        } catch (IllegalArgumentException e) {
            throw new InputException("--rule = " + key + ": " + e.getMessage(), e);
        }
    }
}
