package io.github.stoplag.examples.draw;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Results in the words and units that drivers use, metric and US customary side by side. */
public final class Text {
    private static final int DIGITS = 3;
    private static final int WIDTH = 118;

    private Text() {}

    public static String digits(double value) {
        return Numbers.text(value, DIGITS);
    }

    public static String speed(Speed speed) {
        return speed.format("km/h", 0) + " (" + speed.format("mph", 0) + ")";
    }

    public static String distance(Distance distance) {
        return metres(distance) + " (" + distance.formatFeetAndInches() + ")";
    }

    public static String metres(Distance distance) {
        return distance.format("m", distance.inMetres() < 9.995 ? 2 : 1);
    }

    public static String milliseconds(double timeS) {
        return Numbers.fixed(timeS * 1000, timeS < 0.01 ? 1 : 0) + " ms";
    }

    public static String seconds(double timeS) {
        return Numbers.fixed(timeS, 3) + " s";
    }

    /** Breaks a sentence at spaces; what follows the first line stands under its text. */
    public static List<String> wrapped(String start, String sentence) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder(start);
        boolean fresh = true;
        for (String word : sentence.split(" ", -1)) {
            if (!fresh && line.length() + 1 + word.length() > WIDTH) {
                lines.add(line.toString());
                line = new StringBuilder(" ".repeat(start.length()));
                fresh = true;
            }
            line.append(fresh ? "" : " ").append(word);
            fresh = false;
        }
        lines.add(line.toString());
        return lines;
    }

    /** Lays rows out in columns. */
    public static List<String> columns(List<List<String>> rows) {
        int count = rows.stream().mapToInt(List::size).max().orElse(0);
        List<Integer> widths = IntStream.range(0, count)
                .map(i -> rows.stream()
                        .filter(row -> row.size() > i)
                        .mapToInt(row -> row.get(i).length())
                        .max()
                        .orElse(0))
                .boxed()
                .toList();
        return rows.stream()
                .map(row -> "  "
                        + IntStream.range(0, row.size())
                                .mapToObj(i -> row.get(i)
                                        + " ".repeat(widths.get(i) - row.get(i).length()))
                                .collect(Collectors.joining("  "))
                                .stripTrailing())
                .toList();
    }
}
