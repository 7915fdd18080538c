package io.github.stoplag.examples.circuit;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.source.Evidence;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The printed report of {@code circuit}. */
final class CircuitText {
    private CircuitText() {}

    static List<String> of(CircuitStudy study, List<CircuitSection> sections) {
        List<String> lines = new ArrayList<>();
        lines.add(study.scenario().heading().toString());
        lines.add("Bulb: " + study.scenario().filament().origin());
        for (CircuitSection section : sections) {
            lines.add("");
            lines.add(section.title());
            section.answers().forEach(answer -> lines.addAll(Text.wrapped("  ", answer)));
            section.rows().stream()
                    .filter(row -> !row.unit().isEmpty())
                    .forEach(row -> lines.add(
                            String.format(Locale.ROOT, "    %-62s %9s %s", row.quantity(), row.shown(), row.unit())
                                    .stripTrailing()));
        }
        Evidence evidence = CircuitStudy.evidence(sections);
        block(lines, "What it rests on", evidence.basis().stream());
        block(lines, "Caveats", once(evidence.caveats().stream().map(Object::toString)));
        block(lines, "Cautions", evidence.cautions().stream().map(Object::toString));
        lines.add("");
        return lines;
    }

    private static void block(List<String> lines, String title, Stream<String> items) {
        lines.add("");
        lines.add(title);
        items.forEach(item -> lines.addAll(Text.wrapped("  - ", item)));
    }

    /** Joins statements that differ in their numbers only. */
    private static Stream<String> once(Stream<String> statements) {
        Map<String, List<String>> alike = statements.collect(Collectors.groupingBy(
                text -> text.replaceAll("[0-9.]+", "#"), LinkedHashMap::new, Collectors.toList()));
        return alike.values().stream()
                .map(same -> same.get(0) + (same.size() == 1 ? "" : " (and " + (same.size() - 1) + " more like this)"));
    }
}
