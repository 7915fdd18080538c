package io.github.stoplag.examples.teach;

import io.github.stoplag.worked.UnitSystem;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** Units written out in a question, and the system of units a stated value belongs to. */
final class SpelledUnits {
    private static final Map<Pattern, String> WORDS = words();
    private static final Pattern CUSTOMARY =
            Pattern.compile(".*[0-9] ?(?:mph|mi/h|mi|ft|ft/s|ft/s(?:²|2|\\^2)|in|yd|['\u2032\"\u2033])");
    private static final Pattern NEITHER = Pattern.compile(".*[0-9] ?(?:kn|g)");

    private SpelledUnits() {}

    private static Map<Pattern, String> words() {
        Map<Pattern, String> words = new LinkedHashMap<>();
        words.put(after("miles? (?:per|an) hour"), "mph");
        words.put(after("kilomet(?:re|er)s? (?:per|an) hour|km per hour"), "km/h");
        words.put(after("met(?:re|er)s? per second squared"), "m/s²");
        words.put(after("met(?:re|er)s? per second"), "m/s");
        words.put(after("(?:feet|foot) per second squared"), "ft/s²");
        words.put(after("(?:feet|foot) per second"), "ft/s");
        words.put(after("met(?:re|er)s?"), "m");
        words.put(after("feet|foot"), "ft");
        words.put(after("seconds?|secs?"), "s");
        words.put(after("milliseconds?"), "ms");
        words.put(after("percent|per cent"), "%");
        words.put(after("ohms"), "ohm");
        words.put(after("volts?"), "V");
        words.put(after("watts?"), "W");
        words.put(after("amp(?:ere)?s?"), "A");
        return words;
    }

    private static Pattern after(String words) {
        return Pattern.compile("(?<=[0-9]) ?(?:" + words + ")(?![\\p{L}])", Pattern.CASE_INSENSITIVE);
    }

    /** Writes units as symbols. */
    static String shortened(String text) {
        String plain = text;
        for (Map.Entry<Pattern, String> word : WORDS.entrySet()) {
            plain = word.getKey().matcher(plain).replaceAll(" " + word.getValue());
        }
        return plain;
    }

    /** The system a value is stated in; none for knots, the acceleration of gravity and what is alike in both. */
    static Optional<UnitSystem> system(Measure measure, String value) {
        return switch (measure) {
            case SPEED, DISTANCE, DECELERATION ->
                NEITHER.matcher(value).matches()
                        ? Optional.empty()
                        : Optional.of(CUSTOMARY.matcher(value).matches() ? UnitSystem.US_CUSTOMARY : UnitSystem.METRIC);
            default -> Optional.empty();
        };
    }
}
