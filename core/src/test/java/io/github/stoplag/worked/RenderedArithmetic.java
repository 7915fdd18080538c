package io.github.stoplag.worked;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Recalculates every line of a rendered solution from its own text. */
final class RenderedArithmetic {
    private static final Pattern NEAREST = Pattern.compile("rounded to the nearest ([0-9.]+), halves up");
    private static final Pattern DOWN = Pattern.compile("lowered to the next multiple of ([0-9.]+)");
    private static final Pattern UP = Pattern.compile("raised to the next multiple of ([0-9.]+)");

    private RenderedArithmetic() {}

    /** Checks all steps and checks; returns how many lines were recalculated. */
    static int check(Solution solution, int carriedDigits) {
        String text = solution.document().toText();
        int lines = 0;
        for (String line : text.split("\n", -1)) {
            if (line.startsWith("  ") && line.split(" [=≈] ", -1).length > 2) {
                checkLine(line, carriedDigits);
                lines++;
            }
        }
        assertThat(lines).as(text).isGreaterThanOrEqualTo(1);
        return lines;
    }

    private static void checkLine(String line, int carriedDigits) {
        int noteAt = line.indexOf("   (");
        String note = noteAt < 0 ? "" : line.substring(noteAt);
        // the label may hold signs of its own, so the sides are counted from the end
        List<String> sides = List.of((noteAt < 0 ? line : line.substring(0, noteAt)).split(" [=≈] ", -1));
        String printed = sides.get(sides.size() - 1);
        String substitution = sides.get(sides.size() - 2);
        if (substitution.matches(".*\\p{L}_.*") || substitution.matches("\\p{L}+")) {
            // a formula that is one symbol whose number is the result
            return;
        }
        double recalculated = Arithmetic.of(substitution);
        double result = Arithmetic.of(printed);
        Matcher nearest = NEAREST.matcher(note);
        Matcher up = UP.matcher(note);
        Matcher down = DOWN.matcher(note);
        if (nearest.find()) {
            assertThat(Math.abs(recalculated - result))
                    .as(line)
                    .isLessThanOrEqualTo(Double.parseDouble(nearest.group(1)) / 2 + 1e-9);
        } else if (up.find()) {
            assertThat(result - recalculated).as(line).isBetween(-1e-9, Double.parseDouble(up.group(1)) - 1e-9);
        } else if (down.find()) {
            assertThat(recalculated - result).as(line).isBetween(-1e-9, Double.parseDouble(down.group(1)) - 1e-9);
        } else {
            double half = 0.5 * Math.pow(10, Math.floor(Math.log10(Math.abs(result))) + 1 - carriedDigits);
            double tolerance = line.contains("≈") ? half * (1 + 1e-6) : Math.abs(result) * 1e-10;
            assertThat(Math.abs(recalculated - result)).as(line).isLessThanOrEqualTo(tolerance);
        }
    }
}
