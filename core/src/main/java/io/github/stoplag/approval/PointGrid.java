package io.github.stoplag.approval;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * The test points of FMVSS 108 for stop and tail lamps, all nineteen of them in five groups.
 *
 * <p>A stop lamp meets a group if the sum over its points reaches the group's minimum and no point is below 60 % of its
 * own; a tail lamp if the sum reaches it. Points and minima in {@code fmvss108_points.csv} (49 CFR 571.108, Tables VIII
 * and IX).
 *
 * <pre>{@code
 * PointGrid.stop(1).least("H-V"); // 80 cd
 * }</pre>
 */
public final class PointGrid {
    private static final Table TABLE = Table.read(PointGrid.class, "fmvss108_points.csv");
    private static final double STOP_POINT_SHARE = 0.6;
    private static final String SUM = "sum ";

    private final String lamp;
    private final double pointShare;
    private final Map<String, Double> minima = new LinkedHashMap<>();
    private final Map<String, String> groups = new LinkedHashMap<>();

    private PointGrid(String lamp, int sections, double pointShare) {
        Check.inRange("lighted sections", sections, 1, 3, "");
        this.lamp = lamp;
        this.pointShare = pointShare;
        for (Map<String, String> row : TABLE.rows()) {
            minima.put(TABLE.text(row, "point"), TABLE.number(row, lamp + "_min_cd_" + sections));
            groups.put(TABLE.text(row, "point"), TABLE.text(row, "group"));
        }
    }

    /**
     * Gives the points of a stop lamp.
     *
     * @param sections its lighted sections, 1 to 3
     * @return the grid
     * @throws IllegalArgumentException if the number of sections is out of range
     */
    public static PointGrid stop(int sections) {
        return new PointGrid("stop", sections, STOP_POINT_SHARE);
    }

    /**
     * Gives the points of a tail lamp.
     *
     * @param sections its lighted sections, 1 to 3
     * @return the grid
     * @throws IllegalArgumentException if the number of sections is out of range
     */
    public static PointGrid tail(int sections) {
        return new PointGrid("tail", sections, 0);
    }

    /** {@return the names of the test points, such as {@code H-V} or {@code 5U-10L}} */
    public List<String> points() {
        return minima.keySet().stream().filter(point -> !point.startsWith(SUM)).toList();
    }

    /**
     * Gives a point's minimum.
     *
     * @param point its name
     * @return the least intensity there
     * @throws IllegalArgumentException if there is no such point
     */
    public LuminousIntensity least(String point) {
        Double cd = minima.get(point);
        if (cd == null || point.startsWith(SUM)) {
            throw new IllegalArgumentException("test point must be one of " + points() + ", got \"" + point + "\"");
        }
        return LuminousIntensity.candela(cd);
    }

    /**
     * A lamp held against the grid.
     *
     * @param met whether every group is met
     * @param failures one line a group or point that is not met
     * @param source law and tables
     */
    public record Result(boolean met, List<String> failures, Source source) {

        /**
         * Refuses nulls.
         *
         * @param met whether every group is met
         * @param failures one line a group or point that is not met
         * @param source law and tables
         * @throws NullPointerException if one that is required is null
         */
        public Result {
            Objects.requireNonNull(failures, "failures");
            Objects.requireNonNull(source, "source");
        }
    }

    /**
     * Checks a lamp.
     *
     * @param measured the intensity at every test point
     * @return the verdict
     * @throws IllegalArgumentException if the points given are not those of the grid
     */
    public Result check(Map<String, LuminousIntensity> measured) {
        Objects.requireNonNull(measured, "measured");
        if (!measured.keySet().equals(Set.copyOf(points()))) {
            throw new IllegalArgumentException(
                    "a lamp must be measured at exactly the points " + points() + ", got " + measured.keySet());
        }
        List<String> failures = new ArrayList<>();
        Map<String, Double> sums = new LinkedHashMap<>();
        measured.forEach((point, intensity) -> {
            double cd = intensity.inCandela();
            sums.merge(SUM + groups.get(point), cd, Double::sum);
            double leastCd = pointShare * least(point).inCandela();
            if (cd < leastCd) {
                failures.add(point + ": " + intensity + " is below " + Numbers.text(100 * pointShare) + " % of "
                        + least(point));
            }
        });
        sums.forEach((group, cd) -> {
            double leastCd = minima.getOrDefault(group, 0.0);
            if (cd < leastCd * (1 - 1e-12)) {
                failures.add(group + ": " + Numbers.text(cd) + " cd is below " + Numbers.text(leastCd) + " cd");
            }
        });
        return new Result(
                failures.isEmpty(),
                List.copyOf(failures),
                Source.seen(
                        "49 CFR 571.108, edition of 1 October 2025",
                        lamp.equals("stop") ? "Table IX, p. 469-470" : "Table VIII, p. 468"));
    }
}
