package io.github.stoplag.examples.rules;

import io.github.stoplag.braking.PublishedRule;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.program.ProgramCommand;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Option;

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
public final class StoppingTablesCommand extends ProgramCommand {
    private static final String RESIDUALS = "residuals.csv";

    @Option(
            names = "--rule",
            paramLabel = "KEY",
            description = "print only this rule, for example uk-highway-code; can be given more than once;"
                    + " the file holds all")
    private List<String> keys = List.of();

    @Override
    protected List<String> fileNames() {
        return List.of(RESIDUALS);
    }

    @Override
    protected Results results() {
        List<PublishedRule> printed = keys.isEmpty()
                ? PublishedRule.published()
                : keys.stream().map(StoppingTablesCommand::rule).toList();
        List<RuleResiduals> all = RuleResiduals.of(PublishedRule.published());
        List<String> lines = new ArrayList<>(ResidualsText.of(RuleResiduals.of(printed)));
        lines.add("All rules are in " + RESIDUALS + " with "
                + all.stream().mapToInt(rule -> rule.residuals().size()).sum() + " figures.");
        return new Results(
                lines,
                Results.utf8(Map.of(RESIDUALS, ResidualsCsv.of(all))),
                all.stream().allMatch(RuleResiduals::explained) ? ExitCode.OK : ExitCode.SOFTWARE);
    }

    private static PublishedRule rule(String key) {
        try {
            return PublishedRule.published(key);
        } catch (IllegalArgumentException e) {
            throw new InputException("--rule = " + key + ": " + e.getMessage(), e);
        }
    }
}
