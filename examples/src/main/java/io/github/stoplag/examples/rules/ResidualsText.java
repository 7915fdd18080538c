package io.github.stoplag.examples.rules;

import io.github.stoplag.braking.PublishedRow;
import io.github.stoplag.braking.PublishedRow.Quantity;
import io.github.stoplag.braking.Residual;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The printed tables: one block a rule, one line a speed, one column a quantity, notes below by number. */
final class ResidualsText {
    private ResidualsText() {}

    static List<String> of(List<RuleResiduals> rules) {
        List<String> lines = new ArrayList<>();
        lines.add("Published stopping rules beside their printed tables.");
        lines.add("Each cell: the printed figure, then published minus computed. [n] points to a note.");
        lines.add("mem: the figure is from memory, der: derived; without a mark it was seen in the source or a copy.");
        for (RuleResiduals rule : rules) {
            lines.add("");
            lines.addAll(block(rule));
        }
        lines.add("");
        lines.addAll(summary(rules));
        return lines;
    }

    private static List<String> block(RuleResiduals rule) {
        List<String> lines = new ArrayList<>();
        lines.add(rule.rule().key() + ": " + rule.rule().rule().name());
        lines.add("  " + rule.rule().rule().source());
        if (!rule.rule().note().isEmpty()) {
            lines.add("  " + rule.rule().note());
        }
        List<String> notes = rule.residuals().stream()
                .map(residual -> residual.row().note())
                .filter(note -> !note.isEmpty())
                .distinct()
                .toList();
        aligned(grid(rule, notes)).forEach(line -> lines.add("  " + line));
        for (int i = 0; i < notes.size(); i++) {
            lines.add("  [" + (i + 1) + "] " + notes.get(i));
        }
        return lines;
    }

    /**
     * A header and a line for each speed, grade and detail; three columns a quantity: figure, unit, residual with its
     * marks.
     */
    private static List<List<String>> grid(RuleResiduals rule, List<String> notes) {
        Set<Quantity> quantities = new LinkedHashSet<>();
        Map<String, Map<Quantity, Residual>> byCase = new LinkedHashMap<>();
        for (Residual residual : rule.residuals()) {
            PublishedRow row = residual.row();
            quantities.add(row.quantity());
            String condition = row.condition().replaceFirst(", " + row.quantity(), "");
            byCase.computeIfAbsent(condition, c -> new LinkedHashMap<>()).put(row.quantity(), residual);
        }
        List<List<String>> grid = new ArrayList<>();
        List<String> header = new ArrayList<>(List.of(""));
        quantities.forEach(quantity -> header.addAll(List.of(quantity.toString(), "", "")));
        grid.add(header);
        byCase.forEach((condition, residuals) -> {
            List<String> line = new ArrayList<>(List.of(condition));
            for (Quantity quantity : quantities) {
                Residual residual = residuals.get(quantity);
                line.addAll(residual == null ? List.of("", "", "") : cells(residual, notes));
            }
            grid.add(line);
        });
        return grid;
    }

    /** Figures to the right of their column, all else to the left. */
    private static List<String> aligned(List<List<String>> grid) {
        int[] widths = new int[grid.get(0).size()];
        for (List<String> line : grid.subList(1, grid.size())) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], line.get(i).length());
            }
        }
        // a heading spans the three columns of its quantity
        List<String> header = grid.get(0);
        for (int i = 1; i < widths.length; i += 3) {
            int span = widths[i] + widths[i + 1] + widths[i + 2] + 2;
            widths[i + 2] += Math.max(0, header.get(i).length() - span);
        }
        List<String> lines = new ArrayList<>();
        StringBuilder heading = new StringBuilder(" ".repeat(widths[0]));
        for (int i = 1; i < widths.length; i += 3) {
            heading.append("   ").append(padded(header.get(i), widths[i] + widths[i + 1] + widths[i + 2] + 2));
        }
        lines.add(heading.toString().stripTrailing());
        for (List<String> line : grid.subList(1, grid.size())) {
            StringBuilder text = new StringBuilder(padded(line.get(0), widths[0]));
            for (int i = 1; i < widths.length; i += 3) {
                String figure = line.get(i);
                text.append("   ")
                        .append(" ".repeat(widths[i] - figure.length()))
                        .append(figure)
                        .append(' ')
                        .append(padded(line.get(i + 1), widths[i + 1]))
                        .append(' ')
                        .append(padded(line.get(i + 2), widths[i + 2]));
            }
            lines.add(text.toString().stripTrailing());
        }
        return lines;
    }

    private static String padded(String text, int width) {
        return text + " ".repeat(width - text.length());
    }

    private static List<String> cells(Residual residual, List<String> notes) {
        PublishedRow row = residual.row();
        String marks = switch (row.source().standing()) {
            case SEEN -> "";
            case FROM_MEMORY -> " mem";
            case DERIVED -> " der";
            default -> " " + row.source().standing();
        };
        if (!row.note().isEmpty()) {
            marks += " [" + (notes.indexOf(row.note()) + 1) + "]";
        } else if (!residual.withinPrint()) {
            marks += " NOT EXPLAINED";
        }
        return List.of(row.printed(), row.unit(), residual.text() + marks);
    }

    private static List<String> summary(List<RuleResiduals> rules) {
        List<Residual> all =
                rules.stream().flatMap(rule -> rule.residuals().stream()).toList();
        long agree = all.stream().filter(Residual::withinPrint).count();
        long unexplained =
                all.stream().filter(residual -> !residual.explained()).count();
        Map<String, Long> standings = all.stream()
                .collect(Collectors.groupingBy(
                        residual -> residual.row().source().standing().toString(),
                        TreeMap::new,
                        Collectors.counting()));
        return List.of(
                rules.size() + (rules.size() == 1 ? " rule, " : " rules, ") + all.size() + " printed figures: " + agree
                        + " agree to half a unit of their last digit, " + (all.size() - agree - unexplained)
                        + " differ with a note, " + unexplained + " differ without.",
                "Standing of the figures: "
                        + standings.entrySet().stream()
                                .map(entry -> entry.getValue() + " " + entry.getKey())
                                .collect(Collectors.joining(", "))
                        + ".",
                "A rule describes a test or a design driver, not your vehicle, road or driver. It is no proof of safety;",
                "local codes and the regulation's own text go first.");
    }
}
