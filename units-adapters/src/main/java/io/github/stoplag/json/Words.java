package io.github.stoplag.json;

import java.util.Locale;
import java.util.Map;

/** Java names as names in JSON. */
final class Words {
    private static final Map<String, String> UNIT_BY_GETTER = Map.ofEntries(
            Map.entry("inMetres", "m"),
            Map.entry("inSeconds", "s"),
            Map.entry("inMps", "mps"),
            Map.entry("inMps2", "mps2"),
            Map.entry("inRatio", "ratio"),
            Map.entry("inKg", "kg"),
            Map.entry("inPascals", "pa"),
            Map.entry("inKelvin", "k"),
            Map.entry("inVolts", "v"),
            Map.entry("inAmperes", "a"),
            Map.entry("inOhms", "ohm"),
            Map.entry("inWatts", "w"),
            Map.entry("inCandela", "cd"),
            Map.entry("inCdPerM2", "cd_per_m2"),
            Map.entry("inLumens", "lm"),
            Map.entry("inLux", "lx"),
            Map.entry("inPerMinute", "per_min"));

    private Words() {}

    /** Gives a unit by the method that gives the value in it: {@code inMps} is {@code mps}. */
    static String unit(String getter) {
        String unit = UNIT_BY_GETTER.get(getter);
        if (unit == null) {
            throw new IllegalArgumentException("no unit is known for " + getter);
        }
        return unit;
    }

    /** Gives {@code closing_speed} for {@code closingSpeed}. */
    static String snake(String name) {
        return name.replaceAll("(?<=[a-z0-9])(?=[A-Z])|(?<=[A-Z])(?=[A-Z][a-z])", "_")
                .toLowerCase(Locale.ROOT);
    }

    static String snake(Class<?> type) {
        return snake(type.getSimpleName());
    }

    /** Gives {@code no-contact} for {@code NoContact} and for {@code NO_CONTACT}. */
    static String kebab(String name) {
        return snake(name).replace('_', '-');
    }
}
