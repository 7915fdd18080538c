package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Units;
import io.github.stoplag.source.KeyValues;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Reads the keys of a plan file. */
final class PlanReader {
    static final String TITLE = "title";
    static final String INVENTED = "invented";
    static final String DESIGN = "design";
    static final String SCENARIOS = "scenarios";
    static final String SEED = "seed";
    static final String LAMPS = "lamps";
    static final String CORRELATIONS = "correlations";
    private static final List<String> KEYS = List.of(TITLE, INVENTED, DESIGN, SCENARIOS, SEED, LAMPS, CORRELATIONS);
    private static final List<String> DESIGNS =
            Stream.of(Design.Kind.values()).map(PlanReader::word).toList();
    private static final String YES = "yes";
    private static final int LONGEST_TITLE = 120;
    private static final Pattern LAMP = Pattern.compile("[a-z][a-z0-9_]*");

    private final PlanLines lines;
    private final LampModels models;
    private final List<String> lamps;

    private PlanReader(PlanLines lines, LampModels models) {
        this.lines = lines;
        this.models = models;
        refuseUnknown();
        lamps = lamps();
    }

    static String word(Design.Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static PlanFile read(String name, String text, LampModels models) {
        NavigableMap<String, String> given;
        try {
            given = KeyValues.read(new StringReader(text));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(name + ": " + e.getMessage(), e);
        }
        return new PlanReader(new PlanLines(name, given), models).plan();
    }

    private PlanFile plan() {
        String title = lines.text(TITLE, null);
        if (title.length() > LONGEST_TITLE) {
            throw lines.bad(TITLE, title, "must have 1 to " + LONGEST_TITLE + " characters, got " + title.length());
        }
        boolean invented = lines.word(INVENTED, "no", List.of(YES, "no")).equals(YES);
        NavigableMap<String, String> described = new TreeMap<>();
        lines.given().forEach((key, value) -> {
            if (models.has(key)) {
                described.put(key, value);
            }
        });
        Map<String, PlanAxis> circuit = circuit();
        Map<String, LampLatency> latencies =
                new TreeMap<>(models.read(lines.name(), described, lamps, spans(circuit.values())));
        refuseUnused(circuit, latencies);
        List<PlanAxis> axes = axes(circuit, latencies);
        Plan plan = Plan.of(design(), lines.whole(SEED, "1"));
        for (PlanAxis axis : axes) {
            plan = plan.axis(axis.axis());
        }
        Plan whole = correlated(plan);
        lines.making(List.of(DESIGN), whole::size);
        return lines.making(
                List.of(LAMPS),
                () -> new PlanFile(
                        lines.name(), new PlanFile.Heading(title, invented), axes, whole, lamps, latencies, described));
    }

    private Map<String, PlanAxis> circuit() {
        Map<String, PlanAxis> circuit = new TreeMap<>();
        for (PairColumn column : PairColumn.values()) {
            if (column.isOfCircuit() && lines.has(column.axis())) {
                circuit.put(column.axis(), PlanAxis.read(lines, column.axis(), column));
            }
        }
        return circuit;
    }

    private Map<PairColumn, LampModels.Span> spans(Iterable<PlanAxis> circuit) {
        Map<PairColumn, LampModels.Span> spans = new EnumMap<>(PairColumn.class);
        for (PlanAxis axis : circuit) {
            PairColumn column = PairColumn.of(axis.axis().column()).orElseThrow();
            spans.put(column, lines.making(List.of(column.axis()), () -> LampModels.Span.of(axis.axis(), column)));
        }
        return spans;
    }

    private List<PlanAxis> axes(Map<String, PlanAxis> circuit, Map<String, LampLatency> latencies) {
        List<PlanAxis> axes = new ArrayList<>();
        for (PairColumn column : PairColumn.values()) {
            if (column == PairColumn.LATENCY) {
                lamps.forEach(lamp -> latency(lamp, latencies).ifPresent(axes::add));
            } else if (circuit.containsKey(column.axis())) {
                axes.add(circuit.get(column.axis()));
            } else if (lines.has(column.axis())) {
                axes.add(PlanAxis.read(lines, column.axis(), column));
            } else if (column == PairColumn.RESPONDS) {
                PlanAxis.responding(lines).ifPresent(axes::add);
            }
        }
        return axes;
    }

    private Optional<PlanAxis> latency(String lamp, Map<String, LampLatency> latencies) {
        String key = PairColumn.LATENCY.axis(lamp);
        LampLatency model = latencies.get(lamp);
        if (lines.has(key)) {
            if (model != null) {
                throw lines.bad(key, lines.text(key, null), "the lamp is described too; one of the two must go");
            }
            return Optional.of(PlanAxis.read(lines, key, PairColumn.LATENCY));
        }
        if (model == null || model.table().isPresent()) {
            return Optional.empty();
        }
        Axis axis = Axis.constant(key, PairColumn.LATENCY.unit(), model.fixedS());
        return Optional.of(
                PlanAxis.of(axis.from(new Source("the lamp model for " + model.origin(), "", Standing.DERIVED))));
    }

    private void refuseUnknown() {
        lines.given().forEach((key, value) -> {
            String axis =
                    key.endsWith(PlanAxis.SOURCE) ? key.substring(0, key.length() - PlanAxis.SOURCE.length()) : key;
            if (!KEYS.contains(key) && !models.has(key) && column(axis).isEmpty()) {
                throw lines.bad(key, value, "unknown key; the keys are " + vocabulary());
            }
        });
    }

    private String vocabulary() {
        return Stream.concat(KEYS.stream(), Stream.of(PairColumn.values()).map(PairColumn::axis))
                        .collect(Collectors.joining(", "))
                + ", " + PlanAxis.SOURCE + " behind the name of an axis"
                + (models.keys().isEmpty() ? "" : ", " + models.keys());
    }

    /** Finds the column of an axis's key, which holds no unit. */
    private static Optional<PairColumn> column(String key) {
        return Stream.of(PairColumn.values())
                .filter(column -> PairColumn.of(column.unit().isEmpty() ? key : key + "_" + column.unit())
                        .filter(found -> found == column)
                        .isPresent())
                .findFirst();
    }

    private void refuseUnused(Map<String, PlanAxis> circuit, Map<String, LampLatency> latencies) {
        circuit.keySet().stream()
                .filter(key -> latencies.values().stream().noneMatch(LampLatency::followsCircuit))
                .findFirst()
                .ifPresent(key -> {
                    throw lines.bad(key, lines.text(key, null), "is not used: no lamp of the plan follows it");
                });
        lines.given().forEach((key, value) -> {
            boolean source = key.endsWith(PlanAxis.SOURCE);
            String axis = source ? key.substring(0, key.length() - PlanAxis.SOURCE.length()) : key;
            if (source && !lines.has(axis)) {
                throw lines.bad(key, value, "is not used: there is no such axis");
            }
            boolean other = lamps.stream()
                    .noneMatch(lamp -> PairColumn.LATENCY.axis(lamp).equals(axis));
            if (!models.has(key) && column(axis).equals(Optional.of(PairColumn.LATENCY)) && other) {
                throw lines.bad(key, value, "is not used: its lamp is not among " + LAMPS);
            }
        });
    }

    private List<String> lamps() {
        List<String> names = lines.list(LAMPS);
        for (String lamp : names) {
            if (!LAMP.matcher(lamp).matches() || names.indexOf(lamp) != names.lastIndexOf(lamp)) {
                throw lines.bad(
                        LAMPS,
                        String.join(", ", names),
                        "must be different names of lower-case letters, digits and _, got " + lamp);
            }
        }
        return names;
    }

    private Design design() {
        Design.Kind kind = Design.Kind.valueOf(lines.word(DESIGN, word(Design.Kind.RANDOM), DESIGNS)
                .toUpperCase(Locale.ROOT)
                .replace('-', '_'));
        long count = kind == Design.Kind.GRID ? lines.whole(SCENARIOS, "1") : lines.whole(SCENARIOS, null);
        return lines.making(List.of(DESIGN, SCENARIOS), () -> new Design(kind, count));
    }

    private Plan correlated(Plan plan) {
        Plan joined = plan;
        for (String entry : lines.has(CORRELATIONS) ? lines.list(CORRELATIONS) : List.<String>of()) {
            String[] words = entry.split("\\s+", -1);
            if (words.length != 3) {
                throw lines.bad(CORRELATIONS, entry, "must be two axes and a number, as in: speed time_gap 0.3");
            }
            Plan before = joined;
            joined = lines.making(
                    List.of(CORRELATIONS),
                    () -> before.correlate(columnOf(words[0]), columnOf(words[1]), Units.NUMBER.parseSi(words[2])));
        }
        return joined;
    }

    private String columnOf(String key) {
        List<String> keys = Stream.of(PairColumn.values())
                .flatMap(column -> column.isOfLamp() ? lamps.stream().map(column::axis) : Stream.of(column.axis()))
                .toList();
        if (!keys.contains(key)) {
            throw new IllegalArgumentException("an axis must be one of " + keys + ", got " + key);
        }
        PairColumn column = column(key).orElseThrow();
        return column.unit().isEmpty() ? key : key + "_" + column.unit();
    }
}
