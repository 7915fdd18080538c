package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.Keys;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.examples.lamps.FilamentInput;
import io.github.stoplag.examples.lamps.FilmedInput;
import io.github.stoplag.examples.lamps.LampInput;
import io.github.stoplag.examples.lamps.LampKind;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Voltage;
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
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads the keys of a plan file. */
final class PlanReader {
    private static final Keys KEYS = new Keys();
    private static final String DESIGN = KEYS.add("design");
    private static final String SCENARIOS = KEYS.add("scenarios");
    private static final String SEED = KEYS.add("seed");
    private static final String LAMPS = KEYS.add("lamps");
    private static final String EYE = KEYS.add("eye");
    private static final String CORRELATIONS = KEYS.add("correlations");
    private static final String MODEL = "lamp_model_";
    private static final List<String> DESIGNS = List.of("grid", "random", "latin-hypercube", "sobol");
    private static final Pattern LAMP = Pattern.compile("[a-z][a-z0-9_]*");

    static final ScenarioFile.Vocabulary VOCABULARY = vocabulary();

    private PlanReader() {}

    private static ScenarioFile.Vocabulary vocabulary() {
        Keys axes = new Keys();
        AxisKind.vehicleNames().forEach(axes::add);
        return Keys.vocabulary(
                key -> {
                    String axis = key.endsWith(PlanAxis.SOURCE)
                            ? key.substring(0, key.length() - PlanAxis.SOURCE.length())
                            : key;
                    return axes.has(axis) || axis.startsWith(AxisKind.LATENCY) || key.startsWith(MODEL);
                },
                AxisKind.LATENCY + "<lamp> or " + MODEL + "<lamp>, and " + PlanAxis.SOURCE
                        + " behind the name of an axis",
                Heading.KEYS,
                KEYS,
                axes,
                Criterion.KEYS,
                FilamentInput.MODEL,
                FilmedInput.KEYS);
    }

    static PlanFile read(ScenarioFile file) {
        Heading heading = Heading.of(file);
        List<String> lamps = lamps(file);
        List<PlanAxis> axes = new ArrayList<>();
        Map<String, LampInput> modelled = modelled(file, lamps);
        @Nullable Criterion seenBy = modelled.isEmpty() ? null : seenBy(file);
        for (AxisKind kind : AxisKind.all(lamps)) {
            LampInput lamp = modelled.get(kind.lamp());
            if (file.has(kind.name())) {
                axes.add(PlanAxis.read(file, kind));
            } else if (seenBy != null && lamp != null && lamp.bulb().isEmpty()) {
                axes.add(fixed(file, kind, kind.lamp(), lamp, seenBy));
            } else if (kind.equals(AxisKind.RESPONDS)) {
                PlanAxis.responding(file).ifPresent(axes::add);
            }
        }
        Plan plan = Plan.of(design(file), seed(file));
        for (PlanAxis axis : axes) {
            plan = plan.axis(axis.axis());
        }
        plan = correlated(file, plan, lamps);
        Plan whole = plan;
        file.making(List.of(DESIGN), whole::size);
        Map<String, SupplyLamp> tables = tables(file, modelled, seenBy);
        PairModel model = file.making(
                List.of(LAMPS),
                () -> PairModel.of(withLatencies(whole, tables.keySet()), lamps.toArray(String[]::new)));
        file.refuseUnused(PlanReader::unused);
        return new PlanFile(file.name(), heading.title(), heading.invented(), axes, whole, model, tables);
    }

    private static String unused(String key) {
        if (key.startsWith(AxisKind.LATENCY) || key.startsWith(MODEL)) {
            return "its lamp is not among " + LAMPS;
        }
        return key.equals(EYE) || Criterion.KEYS.has(key) || FilamentInput.MODEL.has(key) || FilmedInput.KEYS.has(key)
                ? "no " + MODEL + "<lamp> needs it"
                : "there is no such axis";
    }

    /** Tabulates the lamps whose latency follows from the supply. */
    private static Map<String, SupplyLamp> tables(
            ScenarioFile file, Map<String, LampInput> modelled, @Nullable Criterion seenBy) {
        Map<String, SupplyLamp> tables = new TreeMap<>();
        for (Map.Entry<String, LampInput> entry : modelled.entrySet()) {
            FilamentLamp bulb = entry.getValue().bulb().orElse(null);
            if (bulb != null && seenBy != null) {
                if (!file.has(AxisKind.SUPPLY.name())) {
                    throw needs(file, entry.getKey());
                }
                LuminousIntensity atRated = entry.getValue().given();
                tables.put(
                        entry.getKey(),
                        file.making(List.of(MODEL + entry.getKey()), () -> SupplyLamp.of(bulb, atRated, seenBy)));
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

    /** Reads the lamps that a plan models, by their names. */
    private static Map<String, LampInput> modelled(ScenarioFile file, List<String> lamps) {
        Map<String, LampInput> modelled = new TreeMap<>();
        for (String lamp : lamps) {
            if (file.has(MODEL + lamp)) {
                LampInput input = LampKind.read(file, MODEL + lamp);
                if (input.followsSupply() && input.bulb().isEmpty()) {
                    throw file.bad(
                            MODEL + lamp,
                            file.text(MODEL + lamp, null),
                            "a plan takes no set with a filament lamp, and none that flashes: give its times as axis "
                                    + AxisKind.LATENCY + lamp);
                }
                modelled.put(lamp, input);
                if (file.has(AxisKind.LATENCY + lamp)) {
                    throw needs(file, lamp);
                }
            }
        }
        return modelled;
    }

    private static InputException needs(ScenarioFile file, String lamp) {
        return file.bad(
                MODEL + lamp,
                file.text(MODEL + lamp, null),
                "needs the axis " + AxisKind.SUPPLY.name() + " and no axis " + AxisKind.LATENCY + lamp);
    }

    /** Reads who looks: the short form for the usual eye, or any criterion by its keys. */
    private static Criterion seenBy(ScenarioFile file) {
        return file.has(EYE) ? Criterion.eye(file, EYE) : Criterion.asked(file);
    }

    /** The latency of a lamp that the supply does not change. */
    private static PlanAxis fixed(ScenarioFile file, AxisKind kind, String lamp, LampInput input, Criterion seenBy) {
        String key = MODEL + lamp;
        LampInput.Light light = input.switchedOn().apply(SupplyConditions.of(Voltage.volts(12)));
        double latencyS = file.making(
                List.of(key), () -> light.seenBy(seenBy).orElseThrow().inSeconds());
        return PlanAxis.modelled(kind, latencyS, file.text(key, null) + "; seen by " + seenBy.criterion());
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
