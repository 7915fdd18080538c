package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.sight.Detector;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sweep.Axis;
import io.github.stoplag.sweep.Design;
import io.github.stoplag.sweep.PairModel;
import io.github.stoplag.sweep.Plan;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Reads the keys of a plan file. */
final class PlanReader {
    private static final int LONGEST_TITLE = 120;
    private static final String TITLE = "title";
    private static final String INVENTED = "invented";
    private static final String DESIGN = "design";
    private static final String SCENARIOS = "scenarios";
    private static final String SEED = "seed";
    private static final String LAMPS = "lamps";
    private static final String CORRELATIONS = "correlations";
    private static final String MODEL = "lamp_model_";
    private static final String EYE = "eye";
    private static final Key<TimeSpan> EYE_TIME = Key.time(EYE, null, 0.001, 2);
    private static final Key<LuminousIntensity> EYE_THRESHOLD = Key.intensity(EYE, null, 1e-6, 10_000);
    private static final List<String> DESIGNS = List.of("grid", "random", "latin-hypercube", "sobol");
    private static final Pattern LAMP = Pattern.compile("[a-z][a-z0-9_]*");

    static final ScenarioFile.Vocabulary VOCABULARY = vocabulary();

    private PlanReader() {}

    private static ScenarioFile.Vocabulary vocabulary() {
        List<String> fixed = Stream.concat(
                        Stream.of(TITLE, INVENTED, DESIGN, SCENARIOS, SEED, LAMPS, EYE, CORRELATIONS),
                        AxisKind.vehicleNames())
                .toList();
        Predicate<String> has = key -> {
            String axis =
                    key.endsWith(PlanAxis.SOURCE) ? key.substring(0, key.length() - PlanAxis.SOURCE.length()) : key;
            return fixed.contains(key)
                    || AxisKind.vehicleNames().anyMatch(axis::equals)
                    || axis.startsWith(AxisKind.LATENCY)
                    || key.startsWith(MODEL);
        };
        return new ScenarioFile.Vocabulary(
                has,
                String.join(", ", fixed) + ", " + AxisKind.LATENCY + "<lamp> or " + MODEL + "<lamp>, and "
                        + PlanAxis.SOURCE + " behind the name of an axis");
    }

    static PlanFile read(ScenarioFile file) {
        String title = file.text(TITLE, null);
        if (title.length() > LONGEST_TITLE) {
            throw file.bad(TITLE, title, "must have 1 to " + LONGEST_TITLE + " characters, got " + title.length());
        }
        boolean invented = file.word(INVENTED, "no", List.of("yes", "no")).equals("yes");
        List<String> lamps = lamps(file);
        List<PlanAxis> axes = new ArrayList<>();
        for (AxisKind kind : AxisKind.all(lamps)) {
            if (file.has(kind.name())) {
                axes.add(PlanAxis.read(file, kind));
            }
        }
        Plan plan = Plan.of(design(file), seed(file));
        for (PlanAxis axis : axes) {
            plan = plan.axis(axis.axis());
        }
        plan = correlated(file, plan, lamps);
        Plan whole = plan;
        file.making(List.of(DESIGN), whole::size);
        Map<String, SupplyLamp> tables = tables(file, lamps);
        PairModel model = file.making(
                List.of(LAMPS),
                () -> PairModel.of(withLatencies(whole, tables.keySet()), lamps.toArray(String[]::new)));
        file.refuseUnused(PlanReader::unused);
        return new PlanFile(file.name(), title, invented, axes, whole, model, tables);
    }

    private static String unused(String key) {
        if (key.startsWith(AxisKind.LATENCY) || key.startsWith(MODEL)) {
            return "its lamp is not among " + LAMPS;
        }
        return key.equals(EYE) ? "no " + MODEL + "<lamp> needs it" : "there is no such axis";
    }

    /** Reads the lamps whose latency follows from the supply. */
    private static Map<String, SupplyLamp> tables(ScenarioFile file, List<String> lamps) {
        Map<String, SupplyLamp> tables = new TreeMap<>();
        for (String lamp : lamps) {
            if (file.has(MODEL + lamp)) {
                tables.put(lamp, table(file, MODEL + lamp));
                if (file.has(AxisKind.LATENCY + lamp) || !file.has(AxisKind.SUPPLY.name())) {
                    throw file.bad(
                            MODEL + lamp,
                            file.text(MODEL + lamp, null),
                            "needs the axis " + AxisKind.SUPPLY.name() + " and no axis " + AxisKind.LATENCY + lamp);
                }
            }
        }
        if (tables.isEmpty() && file.has(AxisKind.SUPPLY.name())) {
            throw file.bad(
                    AxisKind.SUPPLY.name(),
                    file.text(AxisKind.SUPPLY.name(), null),
                    "is not used: no " + MODEL + "<lamp> follows it");
        }
        return tables;
    }

    private static SupplyLamp table(ScenarioFile file, String key) {
        List<String> figures = file.list(key);
        if (figures.size() != 3) {
            throw file.bad(
                    key,
                    String.join(", ", figures),
                    "must be design voltage, power and intensity there, as in: 13.5 V, 26 W, 60 cd");
        }
        Voltage voltage = file.parse(Key.voltage(key, null, 1, 60), figures.get(0));
        Power power = file.parse(Key.power(key, null, 1, 100), figures.get(1));
        LuminousIntensity intensity = file.parse(Key.intensity(key, null, 0.1, 10_000), figures.get(2));
        List<String> eye = file.has(EYE) ? file.list(EYE) : List.of("0.1 s", "3 cd");
        if (eye.size() != 2) {
            throw file.bad(EYE, String.join(", ", eye), "must be time constant and threshold, as in: 0.1 s, 3 cd");
        }
        Detector detector = file.making(
                List.of(EYE),
                () -> IntegratingEye.of(file.parse(EYE_TIME, eye.get(0)), file.parse(EYE_THRESHOLD, eye.get(1))));
        return file.making(
                List.of(key),
                () -> SupplyLamp.of(FilamentLamp.builder(voltage, power).build(), intensity, detector));
    }

    /** The model of the pair wants a column for each latency, whatever it holds. */
    static Plan withLatencies(Plan plan, Set<String> lamps) {
        Plan all = plan;
        for (String lamp : lamps) {
            all = all.axis(Axis.constant(AxisKind.LATENCY + lamp, "s", 0));
        }
        return all;
    }

    private static List<String> lamps(ScenarioFile file) {
        List<String> lamps = file.list(LAMPS);
        for (String lamp : lamps) {
            if (!LAMP.matcher(lamp).matches() || lamps.indexOf(lamp) != lamps.lastIndexOf(lamp)) {
                throw file.bad(
                        LAMPS,
                        String.join(", ", lamps),
                        "must be different names of lower-case letters, digits and _, got " + lamp);
            }
        }
        return lamps;
    }

    private static Design design(ScenarioFile file) {
        String word = file.word(DESIGN, "random", DESIGNS);
        Design.Kind kind = Design.Kind.valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_'));
        String text = file.text(SCENARIOS, kind == Design.Kind.GRID ? "1" : null);
        long count = whole(file, SCENARIOS, text);
        return file.making(List.of(DESIGN, SCENARIOS), () -> new Design(kind, count));
    }

    private static long seed(ScenarioFile file) {
        return whole(file, SEED, file.text(SEED, "1"));
    }

    private static long whole(ScenarioFile file, String key, String text) {
        try {
            return Long.parseLong(text);
        } catch (NumberFormatException e) {
            throw file.bad(key, text, "not a whole number; write it like 1000000");
        }
    }

    private static Plan correlated(ScenarioFile file, Plan plan, List<String> lamps) {
        Plan joined = plan;
        for (String entry : file.has(CORRELATIONS) ? file.list(CORRELATIONS) : List.<String>of()) {
            String[] words = entry.split("\\s+", -1);
            if (words.length != 3) {
                throw file.bad(CORRELATIONS, entry, "must be two axes and a number, as in: speed time_gap 0.3");
            }
            String first = column(file, words[0], lamps);
            String second = column(file, words[1], lamps);
            double rho = file.parse(Key.number(CORRELATIONS, null, -1, 1, ""), words[2]);
            Plan before = joined;
            joined = file.making(List.of(CORRELATIONS), () -> before.correlate(first, second, rho));
        }
        return joined;
    }

    private static String column(ScenarioFile file, String name, List<String> lamps) {
        return AxisKind.all(lamps).stream()
                .filter(kind -> kind.name().equals(name))
                .map(AxisKind::column)
                .findFirst()
                .orElseThrow(() -> file.bad(
                        CORRELATIONS,
                        name,
                        "must be one of "
                                + AxisKind.all(lamps).stream()
                                        .map(AxisKind::name)
                                        .toList()));
    }
}
