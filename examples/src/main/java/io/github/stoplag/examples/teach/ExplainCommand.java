package io.github.stoplag.examples.teach;

import io.github.stoplag.examples.program.ProgramCommand;
import io.github.stoplag.examples.program.UnitChoice;
import io.github.stoplag.worked.Document;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/**
 * The program {@code explain}: the working of one question put in words with units.
 *
 * <p>The words of a question are those of {@link Question}.
 */
@Command(
        name = "explain",
        description = {
            "Prints the working of one question put in words with units: given, assumptions,",
            "formula, numbers put in, answer, check by a second way, what to mind.",
            "Quote the question, or write its words one after another."
        },
        footer = {
            "",
            "Ask in your own words, such as: how far to stop from 60 mph in the wet?",
            "What is read is printed above the answer. A question that is not understood",
            "is refused, with the nearest one that works. These are sure to be understood,",
            "their parts in any order:",
            "stop              stop from 60 mph, 1.5 s, wet asphalt, 3 %% down",
            "brake             brake from 100 km/h, 7 m/s²",
            "braking time      braking time from 60 mph, dry asphalt  (reaction: to rest)",
            "react             react at 50 km/h, 1.5 s",
            "skid              skid 25 m, dry asphalt     (speed from marks)",
            "impact speed      impact speed from 60 km/h, 20 m, dry asphalt",
            "lag               lag 0.2 s at 100 km/h      (without a time: bulb behind LED)",
            "deceleration      deceleration 60 mph, 140 ft        (or a time)",
            "drag factor from  drag factor from 30 mph, 45 ft",
            "follow            follow at 60 mph, gap 2 s, lamp 0.2 s, wet asphalt",
            "                  (also gap 30 m, reaction 1 s, leader 50 mph, brakes 0.2 s)",
            "gap needed        gap needed at 60 mph, 1.5 s, wet asphalt",
            "gap length        gap length 2 s at 70 mph",
            "gap in seconds    gap in seconds 30 m at 100 km/h",
            "chain             chain of 5 cars at 100 km/h, gap 40 m, wet asphalt",
            "time to collision time to collision 30 m, 60 mph, leader 40 mph",
            "uncertainty       uncertainty 100 ± 3 km/h, 1.5 ± 0.3 s, 7 ± 0.5 m/s²",
            "hydroplane        hydroplane 32 psi",
            "percentile        percentile 85 %%, study sivak-1982",
            "                  (or mean 1.2 s, sd 0.6 s; of all drivers, silent ones too)",
            "ruler             ruler 20 cm                (reaction time of a catch)",
            "energy            energy 1500 kg, 100 km/h",
            "warm              warm 21 W at 13.5 V, level 50 %%    (or P21W; heating time)",
            "off               off 21 W at 13.5 V, level 10 %%     (how soon it goes dark)",
            "resistor          resistor 21 W at 13.5 V  (also supply 12 V, led 0.2 A,",
            "                  tolerance 5 %%; healthy 1.2 A in place of the bulb)",
            "heat              heat 10 ohm, 14.5 V, 6 K/W, 40 °C",
            "diode             diode 0.8 V, 2 A, 40 K/W, 40 °C",
            "rule              rule uk-highway-code, 40 mph  (as stopping-tables prints)",
            "A number needs its unit, and a word beside it where two would look alike",
            "(friction 0.5, lamp 0.2 s, leader 50 mph). A surface is one of dry asphalt,",
            "wet asphalt, dry concrete, wet concrete, gravel, wet grass, snow, ice, or a",
            "row of the surface table such as asphalt-wet-sliding. Miles per hour beside",
            "metres are answered in metres, as in the UK.",
            "What is assumed for want of a part stands among the assumptions.",
            "Writes files only if asked: solution.html, solution.md.",
            "Exit code: 0 done; 1 failed; 2 the question cannot be used: one line says why,",
            "and nothing is written."
        })
public final class ExplainCommand extends ProgramCommand {
    private static final String PAGE = "solution.html";
    private static final String MARKDOWN = "solution.md";

    @Parameters(arity = "1..*", paramLabel = "QUESTION", description = "the question")
    private List<String> words = List.of();

    @Option(
            names = "--units",
            paramLabel = "SYSTEM",
            description = "metric, uk (metres and mph), us, or both (metric and us) side by side;"
                    + " default: as the question")
    private @Nullable UnitChoice units;

    @Option(names = "--html", description = "also write solution.html, a page with MathML")
    private boolean html;

    @Option(names = "--markdown", description = "also write solution.md, Markdown with LaTeX formulas")
    private boolean markdown;

    @Override
    protected List<String> fileNames() {
        return List.of(PAGE, MARKDOWN);
    }

    @Override
    protected Results results() {
        Question question = Question.of(String.join(" ", words));
        Document document = question.document(units == null ? List.of(question.units()) : units.systems());
        Map<String, String> files = new LinkedHashMap<>();
        if (html) {
            files.put(PAGE, document.toHtml());
        }
        if (markdown) {
            files.put(MARKDOWN, document.toMarkdown());
        }
        return new Results(new ArrayList<>(document.toText().lines().toList()), files);
    }
}
