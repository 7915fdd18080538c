package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.examples.file.Keys;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.examples.lamps.FilamentInput;
import io.github.stoplag.examples.lamps.FilmedInput;
import io.github.stoplag.examples.lamps.LampInput;
import io.github.stoplag.examples.lamps.LampKind;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.Lens;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.sweep.FilamentUnknowns;
import io.github.stoplag.sweep.LampLatency;
import io.github.stoplag.sweep.LampModels;
import io.github.stoplag.sweep.PairColumn;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/** The lamps that a plan file describes by a line {@code lamp_model_<lamp>}, in the words of the other programs. */
final class DescribedLamps implements LampModels {
    static final LampModels IN_PLANS = new DescribedLamps();

    private static final Keys KEYS = new Keys();
    private static final String EYE = KEYS.add("eye");
    private static final String MODEL = "lamp_model_";
    private static final ScenarioFile.Vocabulary VOCABULARY = Keys.vocabulary(
            key -> key.startsWith(MODEL),
            MODEL + "<lamp>",
            KEYS,
            Criterion.KEYS,
            FilamentInput.MODEL,
            FilmedInput.KEYS);

    private DescribedLamps() {}

    @Override
    public boolean has(String key) {
        return VOCABULARY.has().test(key);
    }

    @Override
    public String keys() {
        return VOCABULARY.listed();
    }

    @Override
    public Map<String, LampLatency> read(
            String plan, NavigableMap<String, String> lines, List<String> lamps, Map<PairColumn, Span> intervals) {
        ScenarioFile file = ScenarioFile.of(plan, lines, VOCABULARY);
        Map<String, LampLatency> latencies = new TreeMap<>();
        for (String lamp : lamps) {
            if (file.has(MODEL + lamp)) {
                latencies.put(lamp, latency(file, MODEL + lamp, seenBy(file), intervals));
            }
        }
        file.refuseUnused(DescribedLamps::unused);
        return latencies;
    }

    /** Reads who looks: the short form for the usual eye, or any criterion by its keys. */
    private static Criterion seenBy(ScenarioFile file) {
        return file.has(EYE) ? Criterion.eye(file, EYE) : Criterion.asked(file);
    }

    private static LampLatency latency(
            ScenarioFile file, String key, Criterion seenBy, Map<PairColumn, Span> intervals) {
        LampInput lamp = LampKind.read(file, key);
        String origin = file.text(key, null) + "; seen by " + seenBy.criterion();
        if (lamp.followsSupply() && lamp.bulb().isEmpty()) {
            throw file.bad(
                    key,
                    file.text(key, null),
                    "a plan takes no set with a filament lamp, and none that flashes: give its times as axis "
                            + PairColumn.LATENCY.axis(key.substring(MODEL.length())));
        }
        if (lamp.bulb().isEmpty()) {
            LampInput.Light light = lamp.switchedOn().apply(SupplyConditions.of(Voltage.volts(12)));
            return file.making(
                    List.of(key), () -> LampLatency.fixed(light.seenBy(seenBy).orElseThrow(), origin));
        }
        FilamentLamp bulb = lamp.bulb().orElseThrow();
        Span supply = intervals.get(PairColumn.SUPPLY);
        if (supply == null) {
            throw file.bad(key, file.text(key, null), "needs the axis " + PairColumn.SUPPLY.axis());
        }
        FilamentUnknowns known = FilamentUnknowns.of(
                        bulb,
                        SupplyConditions.of(Voltage.volts(supply.hi())).withLens(Lens.RED),
                        lamp.given(),
                        seenBy.detector())
                .withTailLit(seenBy.tail());
        return file.making(List.of(key), () -> LampLatency.following(known, intervals, origin + "; behind a red lens"));
    }

    private static String unused(String key) {
        return key.startsWith(MODEL) ? "its lamp is not among lamps" : "no " + MODEL + "<lamp> needs it";
    }
}
