package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.Source;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * One named input of a sweep with its unit: a list of levels or a distribution to draw from.
 *
 * <p>The column of an axis is its name and unit, for example {@code lamp_latency_s}; a plain ratio has no unit.
 */
public final class Axis {
    private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9_]*");
    static final int MOST_LEVELS = 1_000_000;

    private final String column;
    private final double[] levels;
    private final Optional<Distribution> distribution;
    private final Optional<Source> source;

    private Axis(String column, double[] levels, Optional<Distribution> distribution, Optional<Source> source) {
        this.column = column;
        this.levels = levels;
        this.distribution = distribution;
        this.source = source;
    }

    /**
     * Makes an axis of given levels.
     *
     * @param name the name in lower case, for example {@code gap}
     * @param unit the unit as in column names, for example {@code m}; empty for a ratio
     * @param levels the values, in the unit
     * @return the axis
     * @throws IllegalArgumentException if the name is malformed, there is no level or one is not finite
     */
    public static Axis list(String name, String unit, double... levels) {
        Objects.requireNonNull(levels, "levels");
        Objects.requireNonNull(unit, "unit");
        String column = column(name, unit);
        if (levels.length == 0
                || levels.length > MOST_LEVELS
                || !Arrays.stream(levels).allMatch(Double::isFinite)) {
            throw new IllegalArgumentException("axis " + column + " must have 1 to 1000000 finite levels, got "
                    + (levels.length > MOST_LEVELS ? levels.length + " of them" : Arrays.toString(levels)));
        }
        return new Axis(column, levels.clone(), Optional.empty(), Optional.empty());
    }

    /**
     * Makes an axis that has the same value in every scenario.
     *
     * @param name the name in lower case
     * @param unit the unit as in column names; empty for a ratio
     * @param value the value, in the unit
     * @return the axis
     * @throws IllegalArgumentException if the name is malformed or the value is not finite
     */
    public static Axis constant(String name, String unit, double value) {
        Objects.requireNonNull(unit, "unit");
        return list(name, unit, value);
    }

    /**
     * Makes an axis of evenly spaced levels, both ends among them.
     *
     * @param name the name in lower case
     * @param unit the unit as in column names; empty for a ratio
     * @param lo the first level
     * @param hi the last level
     * @param count how many levels, at least 2
     * @return the axis
     * @throws IllegalArgumentException if the name is malformed, lo is not below hi or there are fewer than 2 levels
     */
    public static Axis range(String name, String unit, double lo, double hi, int count) {
        Objects.requireNonNull(unit, "unit");
        if (!(lo < hi && count >= 2 && count <= MOST_LEVELS)) {
            throw new IllegalArgumentException("range of axis " + column(name, unit)
                    + " must have lo < hi and 2 to 1000000 levels, got " + Numbers.text(lo) + " to " + Numbers.text(hi)
                    + " in " + count);
        }
        double[] levels = new double[count];
        for (int i = 0; i < count; i++) {
            levels[i] = i == count - 1 ? hi : lo + i * ((hi - lo) / (count - 1));
        }
        return list(name, unit, levels);
    }

    /**
     * Makes an axis whose values are drawn.
     *
     * @param name the name in lower case
     * @param unit the unit as in column names; empty for a ratio
     * @param distribution how the values spread, in the unit
     * @return the axis
     * @throws IllegalArgumentException if the name is malformed
     */
    public static Axis drawn(String name, String unit, Distribution distribution) {
        Objects.requireNonNull(distribution, "distribution");
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(unit, "unit");
        return new Axis(column(name, unit), new double[0], Optional.of(distribution), Optional.empty());
    }

    /**
     * Gives the axis with a note of where its values come from.
     *
     * @param newSource who published them, or that they are assumed
     * @return the axis with its source
     */
    public Axis from(Source newSource) {
        Objects.requireNonNull(newSource, "newSource");
        return new Axis(column, levels, distribution, Optional.of(newSource));
    }

    /**
     * Gives the column name: name and unit.
     *
     * @return for example {@code gap_m}
     */
    public String column() {
        return column;
    }

    /**
     * Gives the levels.
     *
     * @return a copy, empty for an axis that is drawn
     */
    public double[] levels() {
        return levels.clone();
    }

    /**
     * Gives the distribution.
     *
     * @return the distribution, or nothing for an axis of levels
     */
    public Optional<Distribution> distribution() {
        return distribution;
    }

    /**
     * Gives where the values come from.
     *
     * @return the source, if one was given
     */
    public Optional<Source> source() {
        return source;
    }

    int levelCount() {
        return levels.length;
    }

    double level(int index) {
        return levels[index];
    }

    Axis renamed(String newColumn) {
        return new Axis(newColumn, levels, distribution, source);
    }

    private static String column(String name, String unit) {
        String column = unit.isEmpty() ? name : name + "_" + unit;
        if (!NAME.matcher(column).matches() || name.isEmpty()) {
            throw new IllegalArgumentException(
                    "name and unit of an axis must be lower-case letters, digits and _, got \"" + name + "\" and \""
                            + unit + "\"");
        }
        return column;
    }

    @Override
    public String toString() {
        String values = distribution
                .map(Object::toString)
                .orElseGet(() -> levels.length <= 8
                        ? Arrays.toString(levels)
                        : levels.length + " levels, " + Numbers.text(levels[0]) + " to "
                                + Numbers.text(levels[levels.length - 1]));
        return column + ": " + values + source.map(s -> "; " + s).orElse("");
    }
}
