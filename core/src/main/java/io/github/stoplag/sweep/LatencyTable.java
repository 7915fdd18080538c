package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Range;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Collection;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * From a lamp's circuit closing to its light being detected, tabulated over several unknowns at once: polynomials
 * instead of a simulation for every scenario.
 *
 * <p>The box of the unknowns is cut into cells until each holds a product of Chebyshev series whose error at places
 * held out is at most the accuracy asked for; see {@link #largestError} for what was found. Where the lamp is never
 * seen the answer is NaN. A cell that the border of being seen runs through, or whose course is too steep for a series,
 * is halved up to 10 times, then left to the simulation itself, so that neither NaN nor a moment is ever interpolated
 * across the border; {@link #simulatedRatio} says how much of the box that is. Whether the lamp is seen has to be
 * monotone along each unknown, as it is for supply, resistance and temperatures: corners then tell.
 *
 * <p>Moments are rounded to 1 ns before they are used and all else is plain arithmetic: a table has the same bits on
 * every JDK. Accuracy: [1e-7, 1] s. Unknowns: 1 to 8. Source of the method: Trefethen, Approximation Theory and
 * Approximation Practice (2013), chapters 3 to 8, from memory.
 */
public final class LatencyTable implements Evident {
    private static final double PER_SECOND = 1e9;
    private static final Range ACCURACY = Range.closed("accuracy of a table of detection", 1e-7, 1, "s");
    private static final int MOST_AXES = 8;

    private final List<TableAxis> axes;
    private final Function<double[], Detection> moment;
    private final double accuracyS;
    private final LatencyFit fit;
    private final LatencyFit.Node root;

    private LatencyTable(List<TableAxis> axes, Function<double[], Detection> moment, double accuracyS) {
        this.axes = axes;
        this.moment = moment;
        this.accuracyS = accuracyS;
        fit = new LatencyFit(axes, this::simulatedS, accuracyS);
        root = fit.fit();
    }

    /**
     * Tabulates.
     *
     * @param axes the unknowns, none of them degenerate
     * @param moment the simulation: when the lamp is detected, given one value for each unknown
     * @param accuracy the largest error allowed, [1e-7, 1] s
     * @return the table
     * @throws IllegalArgumentException if accuracy or number of unknowns is out of range, if 20,000 simulations do not
     *     reach the accuracy, or as the simulation throws
     */
    public static LatencyTable of(List<TableAxis> axes, Function<double[], Detection> moment, TimeSpan accuracy) {
        Objects.requireNonNull(accuracy, "accuracy");
        Objects.requireNonNull(axes, "axes");
        Objects.requireNonNull(moment, "moment");
        if (axes.isEmpty() || axes.size() > MOST_AXES) {
            throw new IllegalArgumentException("unknowns of a table must be in [1, 8], got " + axes.size());
        }
        return new LatencyTable(List.copyOf(axes), moment, ACCURACY.check(accuracy.inSeconds()));
    }

    private double simulatedS(double[] values) {
        return moment.apply(values.clone())
                .time()
                .map(at -> Math.rint(at.inSeconds() * PER_SECOND) / PER_SECOND)
                .orElse(Double.NaN);
    }

    /** {@return the unknowns, in the order in which values are given} */
    public List<TableAxis> axes() {
        return axes;
    }

    /** {@return the columns of the unknowns, with units} */
    public List<String> inputs() {
        return axes.stream().map(TableAxis::column).toList();
    }

    /**
     * Makes an evaluator with its own scratch, for one thread.
     *
     * @return the evaluator
     */
    public Evaluator evaluator() {
        return new Evaluator(this);
    }

    /** {@return the largest error allowed} */
    public TimeSpan accuracy() {
        return TimeSpan.seconds(accuracyS);
    }

    /** {@return the largest error found at the places held out, 16 for each unknown in every cell} */
    public TimeSpan largestError() {
        return TimeSpan.seconds(fit.worstS());
    }

    /** {@return how many onsets were simulated} */
    public int onsets() {
        return fit.onsets();
    }

    /** {@return how many cells the box was cut into} */
    public int cells() {
        return fit.cells();
    }

    /** {@return the share of the box in which the lamp is never seen, whole cells alone} */
    public double neverSeenRatio() {
        return fit.darkRatio();
    }

    /** {@return the share of the box in which every evaluation is a simulation} */
    public double simulatedRatio() {
        return fit.directRatio();
    }

    /**
     * Gives a digest of all that decides the table's values: unknowns, cells and coefficients.
     *
     * @return SHA-256 in hexadecimal digits, the same on every JDK
     */
    public String digest() {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            inputs().forEach(column -> sha.update(column.getBytes(StandardCharsets.UTF_8)));
            add(sha, root);
            return HexFormat.of().formatHex(sha.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    private void add(MessageDigest sha, LatencyFit.Node node) {
        add(sha, node.lo);
        add(sha, node.hi);
        if (node.cell != null) {
            add(sha, node.cell.coefficients());
        } else if (node.lower != null && node.upper != null) {
            add(sha, node.lower);
            add(sha, node.upper);
        } else {
            // left dark or to the simulation, of which a corner speaks
            add(sha, simulatedS(node.lo), node.dark ? 1 : 0);
        }
    }

    private static void add(MessageDigest sha, double... values) {
        ByteBuffer bytes = ByteBuffer.allocate(Double.BYTES * values.length);
        for (double value : values) {
            bytes.putDouble(value);
        }
        sha.update(bytes.array());
    }

    /**
     * Says what the simulation rests on: in the middle of the box, with the caveats that only its corners have.
     *
     * @return the evidence
     */
    @Override
    public Evidence evidence() {
        double[] at = axes.stream()
                .mapToDouble(axis ->
                        TableAxis.between(axis.range().lo(), axis.range().hi(), 0))
                .toArray();
        Evidence middle = moment.apply(at.clone()).evidence();
        Map<String, Caveat> caveats = new TreeMap<>();
        for (int corner = 0; corner < 1 << axes.size(); corner++) {
            for (int axis = 0; axis < at.length; axis++) {
                Range range = axes.get(axis).range();
                at[axis] = (corner >> axis & 1) == 0 ? range.lo() : range.hi();
            }
            collect(moment.apply(at.clone()).caveats(), caveats);
        }
        middle.caveats().forEach(caveat -> caveats.remove(withoutFigures(caveat)));
        return middle.with(Evidence.of("tabulated over "
                        + axes.stream()
                                .map(axis ->
                                        axis.range().name() + " " + axis.range().toString())
                                .collect(Collectors.joining(", "))
                        + ": " + onsets() + " onsets, " + cells() + (cells() == 1 ? " cell" : " cells")
                        + ", largest error at places held out " + Numbers.text(1e6 * fit.worstS(), 2) + " µs; "
                        + Numbers.text(100 * neverSeenRatio(), 3) + " % of the box never seen, "
                        + Numbers.text(100 * simulatedRatio(), 3) + " % at its border simulated"))
                .withCaveats(caveats.values());
    }

    private static void collect(Collection<Caveat> from, Map<String, Caveat> to) {
        from.forEach(caveat -> to.putIfAbsent(withoutFigures(caveat), caveat));
    }

    /** One caveat with other figures in another corner is the same caveat. */
    private static String withoutFigures(Caveat caveat) {
        return caveat.toString().replaceAll("[0-9]+([.][0-9]+)?", "#");
    }

    @Override
    public String toString() {
        return "detection by " + String.join(", ", inputs());
    }

    /** A table on one thread: no allocation but where it has to simulate. */
    public static final class Evaluator {
        private final LatencyTable table;
        private final Range[] ranges;
        private final String[] outside;
        private final double[] at;
        private final double[] scratch;

        private Evaluator(LatencyTable table) {
            this.table = table;
            ranges = table.axes.stream().map(TableAxis::range).toArray(Range[]::new);
            outside = Arrays.stream(ranges)
                    .map(range -> range.name() + " must be in " + range + " of the table of detection")
                    .toArray(String[]::new);
            at = new double[ranges.length];
            scratch = new double[table.fit.largest()];
        }

        /**
         * Gives the moment of detection.
         *
         * @param values one value for each unknown
         * @return the time from the circuit closing in seconds; NaN where the lamp is never seen
         * @throws IllegalArgumentException if a value is outside its interval or their number is not that of the
         *     unknowns
         */
        public double latencyS(double[] values) {
            if (values.length != ranges.length) {
                throw new IllegalArgumentException(
                        "values of one row of " + table + " must be " + ranges.length + ", got " + values.length);
            }
            for (int axis = 0; axis < ranges.length; axis++) {
                at[axis] = ranges[axis].check(values[axis]);
            }
            return lookUpS();
        }

        /**
         * Gives the moments of detection of rows of columns. A row outside the box is rejected and given as NaN.
         *
         * @param count how many rows
         * @param columns one array for each unknown
         * @param latencyS where the moments go
         * @param rejects where rows outside the box are reported
         */
        public void latenciesS(int count, double[][] columns, double[] latencyS, Rejects rejects) {
            for (int i = 0; i < count; i++) {
                latencyS[i] = take(columns, i, rejects) ? lookUpS() : Double.NaN;
            }
        }

        private boolean take(double[][] columns, int row, Rejects rejects) {
            for (int axis = 0; axis < ranges.length; axis++) {
                at[axis] = columns[axis][row];
                if (!ranges[axis].contains(at[axis])) {
                    rejects.reject(row, outside[axis]);
                    return false;
                }
            }
            return true;
        }

        private double lookUpS() {
            LatencyFit.Node node = table.root;
            while (node.lower != null && node.upper != null) {
                node = at[node.axis] <= node.cut ? node.lower : node.upper;
            }
            if (node.cell != null) {
                return node.cell.value(at, scratch);
            }
            return node.dark ? Double.NaN : table.simulatedS(at);
        }
    }
}
