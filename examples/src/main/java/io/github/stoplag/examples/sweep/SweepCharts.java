package io.github.stoplag.examples.sweep;

import io.github.stoplag.examples.draw.DistributionChart;
import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.HeatMap;
import io.github.stoplag.examples.draw.ProbabilityChart;
import io.github.stoplag.examples.draw.SensitivityChart;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.draw.TornadoChart;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.sweep.ContactMap;
import io.github.stoplag.sweep.Interval;
import io.github.stoplag.sweep.LampTally;
import io.github.stoplag.sweep.Proportion;
import io.github.stoplag.sweep.SamplingError;
import io.github.stoplag.sweep.Sensitivities;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** The pictures of a sweep. */
final class SweepCharts {
    static final List<String> IDS =
            List.of("contact_by_gap", "contact_by_gap_and_speed", "closing_speed", "variance_shares", "one_axis_held");

    private static final double KMH = 3.6;
    private static final int FEWEST = 200;
    private static final int MAP_COLUMNS = 12;
    private static final int MOST_ROWS = 8;
    private static final double SHOWN_SHARE = 0.999;
    private static final List<Integer> STYLES = List.of(0, 1, 3, 4, 5);
    private static final List<Double> PERCENT_BOUNDS = List.of(5.0, 20.0, 50.0, 80.0);

    private final SweepStudy study;
    private final ContactMap map;

    private SweepCharts(SweepStudy study) {
        this.study = study;
        this.map = study.outcome().map();
    }

    static List<Figure> of(SweepStudy study) {
        List<Figure> figures = new ArrayList<>();
        if (study.anyValid()) {
            SweepCharts charts = new SweepCharts(study);
            charts.byGap().ifPresent(figures::add);
            charts.byGapAndSpeed().ifPresent(figures::add);
            charts.closingSpeed().ifPresent(figures::add);
            charts.shares().ifPresent(figures::add);
            charts.held().ifPresent(figures::add);
        }
        return figures;
    }

    private String gapLabel() {
        return map.gap().column().equals("gap_m") ? "gap (m)" : "time gap (s)";
    }

    private int style(int lamp) {
        return STYLES.get(lamp % STYLES.size());
    }

    private List<String> notes(String... more) {
        List<String> notes = new ArrayList<>(study.marks());
        notes.addAll(List.of(more));
        return notes;
    }

    private String probabilities() {
        return study.lamps().stream()
                .map(lamp -> lamp + " "
                        + SweepText.percent(
                                study.tally().lamp(lamp).contactProbability().value()))
                .collect(Collectors.joining(", "));
    }

    private Optional<Figure> byGap() {
        List<ProbabilityChart.Curve> curves = new ArrayList<>();
        for (int lamp = 0; lamp < study.lamps().size(); lamp++) {
            List<ProbabilityChart.Point> points = points(study.lamps().get(lamp));
            if (points.size() < 2) {
                return Optional.empty();
            }
            curves.add(new ProbabilityChart.Curve(
                    study.lamps().get(lamp) + ", "
                            + SweepText.percent(study.tally()
                                    .lamp(study.lamps().get(lamp))
                                    .contactProbability()
                                    .value())
                            + " over all gaps",
                    style(lamp),
                    points));
        }
        return Optional.of(new ProbabilityChart(notes(bands(), edges()), gapLabel(), "contact probability (%)", curves)
                .figure(
                        IDS.get(0),
                        "Probability of contact by gap",
                        "Contact probability falls with the gap; over all gaps " + probabilities() + "."));
    }

    private String bands() {
        return switch (study.samplingError()) {
            case INDEPENDENT -> "bands: 95 % Wilson intervals";
            case SPREAD -> "bands: 95 % intervals of independent draws, as a rule too wide here";
            case NONE -> "shares of the combinations of a grid, without sampling error";
        };
    }

    private static String edges() {
        return "without the outermost " + Numbers.text(100 * ContactMap.TAIL_RATIO)
                + " % of a drawn gap or speed at either end";
    }

    private List<ProbabilityChart.Point> points(String lamp) {
        List<ProbabilityChart.Point> points = new ArrayList<>();
        for (int x = 0; x < map.gap().count(); x++) {
            Optional<Proportion> found = map.atGap(lamp, x).filter(p -> p.count() >= FEWEST);
            if (found.isPresent()) {
                Proportion p = found.get();
                Interval wilson = p.wilson(SweepStudy.CONFIDENCE);
                boolean exact = study.samplingError() == SamplingError.NONE;
                points.add(new ProbabilityChart.Point(
                        map.gap().middle(x),
                        p.value(),
                        exact ? p.value() : Math.min(p.value(), Math.max(0, wilson.lo())),
                        exact ? p.value() : Math.max(p.value(), Math.min(1, wilson.hi()))));
            }
        }
        return points;
    }

    private Optional<Figure> byGapAndSpeed() {
        int rows = map.speed().count();
        int group = (map.gap().count() + MAP_COLUMNS - 1) / MAP_COLUMNS;
        int columns = map.gap().count() / group;
        if (rows < 2 || columns < 2 || rows > MOST_ROWS) {
            return Optional.empty();
        }
        String lamp = study.reference();
        List<Double> gaps = IntStream.range(0, columns)
                .mapToObj(c ->
                        Math.rint(50 * (map.gap().edge(c * group) + map.gap().edge((c + 1) * group))) / 100)
                .toList();
        List<Double> speeds = IntStream.range(0, rows)
                .mapToObj(r -> Math.rint(KMH * map.speed().middle(r)))
                .toList();
        List<List<OptionalDouble>> cells = IntStream.range(0, rows)
                .mapToObj(r -> IntStream.range(0, columns)
                        .mapToObj(c -> cell(lamp, c * group, group, r))
                        .toList())
                .toList();
        return Optional.of(new HeatMap(
                        notes(edges()),
                        gapLabel() + ", middle of the cell",
                        "speed (km/h)",
                        "fewer than " + FEWEST + " scenarios",
                        "%",
                        PERCENT_BOUNDS,
                        gaps,
                        speeds,
                        cells)
                .figure(
                        IDS.get(1),
                        "Probability of contact in %, " + lamp + " lamp",
                        "Contact probability by gap and speed with the " + lamp + " lamp; over all "
                                + SweepText.percent(study.tally()
                                        .lamp(lamp)
                                        .contactProbability()
                                        .value())
                                + "."));
    }

    private OptionalDouble cell(String lamp, int from, int group, int row) {
        long hits = 0;
        long count = 0;
        for (int x = from; x < from + group; x++) {
            Optional<Proportion> p = map.at(lamp, x, row);
            hits += p.map(Proportion::hits).orElse(0L);
            count += p.map(Proportion::count).orElse(0L);
        }
        return count < FEWEST ? OptionalDouble.empty() : OptionalDouble.of(100.0 * hits / count);
    }

    private Optional<Figure> closingSpeed() {
        double lastMps = study.lampsWithContact()
                .mapToDouble(lamp ->
                        study.tally().lamp(lamp).closingSpeedQuantilesMps().quantile(SHOWN_SHARE))
                .max()
                .orElse(0);
        List<DistributionChart.Steps> steps = new ArrayList<>();
        for (int i = 0; i < study.lamps().size(); i++) {
            if (study.hasContact().test(study.lamps().get(i))) {
                steps.add(steps(study.tally().lamp(study.lamps().get(i)), style(i), lastMps));
            }
        }
        if (steps.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new DistributionChart(
                        notes("dots: medians; " + undrawn(steps)),
                        "closing speed (km/h)",
                        "share of scenarios per 1.8 km/h (%)",
                        steps)
                .figure(
                        IDS.get(2),
                        "Closing speed at contact",
                        steps.stream().map(DistributionChart.Steps::label).collect(Collectors.joining("; ")) + "."));
    }

    /** Says what lies to the right of the picture, be it in the histogram or beyond its end. */
    private String undrawn(List<DistributionChart.Steps> steps) {
        List<Double> edges = steps.get(0).edges();
        double contacts = 0;
        double scenarios = 0;
        for (DistributionChart.Steps lamp : steps) {
            scenarios +=
                    lamp.heights().stream().mapToDouble(Double::doubleValue).sum();
        }
        for (String lamp : study.lampsWithContact().toList()) {
            contacts += 100 * study.tally().lamp(lamp).contactProbability().value();
        }
        return SweepText.percent(Math.max(0, 1 - scenarios / contacts)) + " of the contacts are faster than "
                + Numbers.text(edges.get(edges.size() - 1), 4) + " km/h";
    }

    private DistributionChart.Steps steps(LampTally lamp, int style, double last) {
        long[] counts = lamp.closingSpeedHistogramMps().counts();
        List<Double> edges = new ArrayList<>(List.of(0.0));
        List<Double> heights = new ArrayList<>();
        for (int bin = 0; bin < counts.length && lamp.closingSpeedHistogramMps().edge(bin) <= last; bin++) {
            edges.add(KMH * lamp.closingSpeedHistogramMps().edge(bin + 1));
            heights.add(100.0 * counts[bin] / lamp.contactProbability().count());
        }
        double median = lamp.closingSpeedQuantilesMps().quantile(0.5);
        return new DistributionChart.Steps(
                lamp.lamp() + ", " + SweepText.percent(lamp.contactProbability().value()) + " in contact, median "
                        + SweepText.kmh(median) + " km/h",
                style,
                edges,
                heights,
                OptionalDouble.of(KMH * median));
    }

    private Optional<Figure> shares() {
        Sensitivities s = study.sensitivities().get(0);
        List<SensitivityChart.Index> indices = s.contact().stream()
                .map(i -> new SensitivityChart.Index(
                        label(i.column()),
                        i.first(),
                        SweepText.WHISKER * i.firstStandardError(),
                        i.total(),
                        SweepText.WHISKER * i.totalStandardError()))
                .toList();
        if (indices.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new SensitivityChart(
                        notes("contact (1 or 0), " + s.lamp() + " lamp; whiskers: 1.96 standard errors"
                                + (s.leftOut() == 0
                                        ? ""
                                        : "; " + SweepText.count(s.leftOut()) + " of "
                                                + SweepText.count(Sensitivities.BASE) + " base scenarios left out")),
                        indices)
                .figure(
                        IDS.get(3),
                        "What decides on contact",
                        s.contact().get(0).column() + " has the largest share, "
                                + SweepText.percent(s.contact().get(0).total()) + " with all interactions."));
    }

    private Optional<Figure> held() {
        Sensitivities s = study.sensitivities().get(0);
        if (s.swings().isEmpty()) {
            return Optional.empty();
        }
        double base = 100 * study.tally().lamp(s.lamp()).contactProbability().value();
        List<TornadoChart.Swing> swings = s.swings().stream()
                .map(swing -> new TornadoChart.Swing(
                        label(swing.column()) + ", " + Text.digits(swing.low()) + " to " + Text.digits(swing.high()),
                        100 * swing.atLow().value(),
                        100 * swing.atHigh().value()))
                .toList();
        Sensitivities.Swing widest = s.swings().get(0);
        return Optional.of(new TornadoChart(
                        notes("one axis held at " + s.heldAt() + ", the others drawn"),
                        "contact probability (%), " + s.lamp() + " lamp",
                        base,
                        swings)
                .figure(
                        IDS.get(4),
                        "Contact probability with one axis held",
                        widest.column() + " moves it most, from "
                                + SweepText.percent(widest.atLow().value()) + " to "
                                + SweepText.percent(widest.atHigh().value()) + "."));
    }

    /** Turns a column into words and unit, for example {@code leader decel (m/s²)}. */
    private static String label(String column) {
        int at = column.lastIndexOf('_');
        String name = column.substring(0, Math.max(0, at)).replace('_', ' ');
        return switch (column.substring(at + 1)) {
            case "s" -> name + " (s)";
            case "m" -> name + " (m)";
            case "v" -> name + " (V)";
            case "mps" -> name + " (m/s)";
            case "mps2" -> name + " (m/s²)";
            case "ratio" -> name;
            default -> column.replace('_', ' ');
        };
    }
}
