package io.github.stoplag.examples;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.examples.file.Key;
import io.github.stoplag.quantity.NamedUnit;
import io.github.stoplag.quantity.Units;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import org.assertj.core.data.Offset;

/**
 * A spelling of a unit of the one table, which every door that reads the quantity must take.
 *
 * @param unit the unit
 * @param spelling one of its spellings
 */
public record Spelled(NamedUnit unit, String spelling) {
    private static final List<String> LOCALES = List.of("", "de-DE", "tr-TR", "ar-EG-u-nu-arab", "hi-IN-u-nu-deva");

    /**
     * Shows every spelling of every unit of a quantity to a door, in capitals too where they are read, in five locales.
     */
    public static void each(Units units, Consumer<Spelled> door) {
        Locale before = Locale.getDefault();
        try {
            for (String tag : LOCALES) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                units.list().forEach(unit -> all(unit).forEach(door));
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    private static List<Spelled> all(NamedUnit unit) {
        List<String> spellings = new ArrayList<>(unit.exactSpellings());
        for (String spelling : unit.looseSpellings()) {
            spellings.add(spelling);
            spellings.add(spelling.toUpperCase(Locale.ROOT));
        }
        return spellings.stream().map(spelling -> new Spelled(unit, spelling)).toList();
    }

    /** Gives a text of a value in this unit. */
    public String text(double si) {
        return (BigDecimal.valueOf(unit.fromSi(si)).toPlainString() + " " + spelling).strip();
    }

    /** Checks that a key of a file reads a value inside its range in every spelling of its quantity. */
    public static <T> void readBy(Key<T> key) {
        Units units = Units.having(key.range().unit()).orElseThrow();
        double wanted = key.range().lo() + 0.3 * (key.range().hi() - key.range().lo());
        double si = units.unit(key.range().unit()).toSi(wanted);
        each(
                units,
                spelled -> assertThat(key.measure().applyAsDouble(key.parse().apply(spelled.text(si))))
                        .as("%s = %s", key.name(), spelled.text(si))
                        .isCloseTo(wanted, Offset.offset(1e-9 * (1 + Math.abs(wanted)))));
    }
}
