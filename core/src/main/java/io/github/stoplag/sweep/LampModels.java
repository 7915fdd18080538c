package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;

/**
 * Reads the lines of a plan file that describe lamps: lamp kinds and eyes are a matter of the programs, the plan only
 * needs the latencies that follow.
 */
public interface LampModels {
    /**
     * The values that a column of a plan can take.
     *
     * @param lo the lowest
     * @param hi the highest
     */
    record Span(double lo, double hi) {
        private static final double TAIL = 1e-7;

        /**
         * Finds them: from the lowest to the highest level, or all that is drawn of the column's range; of a law
         * without an end all but a ten-millionth there.
         *
         * @param axis the axis
         * @param column its column
         * @return the values
         * @throws IllegalArgumentException if none is in the column's range
         */
        public static Span of(Axis axis, PairColumn column) {
            double[] ends = axis.distribution()
                    .map(Span::ends)
                    .orElseGet(() -> Arrays.stream(axis.levels()).sorted().toArray());
            double lo = Math.max(ends[0], column.range().lo());
            double hi = Math.min(ends[ends.length - 1], column.range().hi());
            if (!(lo <= hi)) {
                throw new IllegalArgumentException(column.refusal() + ", got " + axis);
            }
            return new Span(lo, hi);
        }

        private static double[] ends(Distribution law) {
            double lo = law.quantile(0);
            double hi = law.quantile(1);
            return new double[] {
                Double.isInfinite(lo) ? law.quantile(TAIL) : lo, Double.isInfinite(hi) ? law.upperQuantile(TAIL) : hi
            };
        }
    }

    /** No lamp is described; every latency must be an axis. */
    LampModels NONE = new LampModels() {
        @Override
        public boolean has(String key) {
            return false;
        }

        @Override
        public String keys() {
            return "";
        }

        @Override
        public Map<String, LampLatency> read(
                String plan, NavigableMap<String, String> lines, List<String> lamps, Map<PairColumn, Span> intervals) {
            return Map.of();
        }
    };

    /**
     * Says whether a key is one of its own.
     *
     * @param key the key
     * @return true if it is
     */
    boolean has(String key);

    /**
     * Lists its keys, for a message about an unknown one.
     *
     * @return in words, possibly empty
     */
    String keys();

    /**
     * Works out the latencies.
     *
     * @param plan the name of the plan file, for messages
     * @param lines the file's lines with a key of its own
     * @param lamps the plan's lamps
     * @param intervals the values that the plan's columns of the circuit can take
     * @return the latency of each lamp that the lines describe
     */
    Map<String, LampLatency> read(
            String plan, NavigableMap<String, String> lines, List<String> lamps, Map<PairColumn, Span> intervals);
}
