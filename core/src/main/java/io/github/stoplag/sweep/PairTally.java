package io.github.stoplag.sweep;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * What a sweep of pairs gathers: for each lamp contact probability, closing speeds and gaps; for any two lamps the
 * comparison on common random numbers; and how the estimates converged.
 */
public final class PairTally implements SavableTally<PairTally> {
    private final List<String> names;
    private final List<LampTally> lamps = new ArrayList<>();
    // for each pair of lamps i < j: neither, j only, i only, both
    private final long[][][] joint;
    private final List<TracePoint> trace = new ArrayList<>();
    private long scenarios;
    private long absorbedChunks;

    /**
     * The estimates after a number of scenarios.
     *
     * @param scenarios how many, rejected ones included
     * @param contactProbability one proportion for each lamp
     */
    public record TracePoint(long scenarios, List<Proportion> contactProbability) {

        /**
         * Refuses nulls.
         *
         * @param scenarios how many, rejected ones included
         * @param contactProbability one proportion for each lamp
         * @throws NullPointerException if one that is required is null
         */
        public TracePoint {
            Objects.requireNonNull(contactProbability, "contactProbability");
        }
    }

    /**
     * Makes an empty tally.
     *
     * @param model the pair model whose outputs are gathered
     */
    public PairTally(PairModel model) {
        names = model.lamps();
        names.forEach(name -> lamps.add(new LampTally(name)));
        joint = new long[names.size()][names.size()][4];
    }

    @Override
    public void add(RowBlock rows) {
        scenarios += rows.count();
        lamps.forEach(lamp -> lamp.add(rows));
        for (int i = 0; i < names.size(); i++) {
            double[] first = rows.column(PairOutput.CONTACT.column(names.get(i)));
            for (int j = i + 1; j < names.size(); j++) {
                count(first, rows.column(PairOutput.CONTACT.column(names.get(j))), rows.count(), joint[i][j]);
            }
        }
    }

    private static void count(double[] first, double[] second, int rows, long[] cells) {
        for (int r = 0; r < rows; r++) {
            double cell = 2 * first[r] + second[r];
            if (!Double.isNaN(cell)) {
                cells[(int) cell]++;
            }
        }
    }

    @Override
    public void absorb(PairTally later) {
        scenarios += later.scenarios;
        absorbedChunks++;
        for (int i = 0; i < lamps.size(); i++) {
            lamps.get(i).absorb(later.lamps.get(i));
            for (int j = i + 1; j < lamps.size(); j++) {
                for (int cell = 0; cell < 4; cell++) {
                    joint[i][j][cell] += later.joint[i][j][cell];
                }
            }
        }
        // at 1, 2, 4, 8, ... chunks
        if (Long.bitCount(absorbedChunks) == 1 && lamps.stream().allMatch(lamp -> lamp.count() > 0)) {
            trace.add(point());
        }
    }

    private TracePoint point() {
        return new TracePoint(
                scenarios, lamps.stream().map(LampTally::contactProbability).toList());
    }

    @Override
    public void clear() {
        scenarios = 0;
        absorbedChunks = 0;
        lamps.forEach(LampTally::clear);
        trace.clear();
        for (long[][] row : joint) {
            for (long[] cells : row) {
                Arrays.fill(cells, 0);
            }
        }
    }

    @Override
    public void save(DataOutput out) throws IOException {
        SavedState.save(out, "pair statistics", content -> {
            content.writeInt(lamps.size());
            for (LampTally lamp : lamps) {
                lamp.save(content);
            }
            for (long[][] row : joint) {
                for (long[] cells : row) {
                    SavedState.counts(content, cells);
                }
            }
            content.writeLong(scenarios);
            content.writeLong(absorbedChunks);
            content.writeInt(trace.size());
            for (TracePoint point : trace) {
                content.writeLong(point.scenarios());
                for (Proportion proportion : point.contactProbability()) {
                    content.writeLong(proportion.hits());
                    content.writeLong(proportion.count());
                }
            }
        });
    }

    @Override
    public void restore(DataInput in) throws IOException {
        SavedState.restore(in, "pair statistics", content -> {
            int saved = content.readInt();
            if (saved != lamps.size()) {
                throw new IOException("saved statistics must be of the lamps " + names + ", got " + saved + " lamps");
            }
            for (LampTally lamp : lamps) {
                lamp.restore(content);
            }
            for (long[][] row : joint) {
                for (long[] cells : row) {
                    SavedState.counts(content, cells);
                }
            }
            scenarios = content.readLong();
            absorbedChunks = content.readLong();
            restoreTrace(content);
        });
    }

    private void restoreTrace(DataInput in) throws IOException {
        trace.clear();
        for (int left = in.readInt(); left > 0; left--) {
            long scenariosThen = in.readLong();
            List<Proportion> probabilities = new ArrayList<>();
            for (int lamp = 0; lamp < lamps.size(); lamp++) {
                probabilities.add(new Proportion(in.readLong(), in.readLong()));
            }
            trace.add(new TracePoint(scenariosThen, List.copyOf(probabilities)));
        }
    }

    /**
     * Gives the number of scenarios.
     *
     * @return how many, rejected ones included
     */
    public long scenarios() {
        return scenarios;
    }

    /**
     * Gives what was gathered for a lamp.
     *
     * @param name the lamp
     * @return its statistics
     * @throws IllegalArgumentException if there is no such lamp
     */
    public LampTally lamp(String name) {
        return lamps.get(PairModel.lampIndex(names, name));
    }

    /**
     * Compares two lamps on the same draws.
     *
     * @param first the first lamp
     * @param second the second lamp
     * @return how often each led to contact, apart and together
     * @throws IllegalArgumentException if there is no such lamp, both are the same, or no scenario was valid
     */
    public PairedProportions compare(String first, String second) {
        int i = PairModel.lampIndex(names, first);
        int j = PairModel.lampIndex(names, second);
        if (i == j) {
            throw new IllegalArgumentException("two lamps must differ to be compared, got " + first + " twice");
        }
        long[] cells = joint[Math.min(i, j)][Math.max(i, j)];
        return i < j
                ? new PairedProportions(cells[3], cells[2], cells[1], cells[0])
                : new PairedProportions(cells[3], cells[1], cells[2], cells[0]);
    }

    /**
     * Gives how the contact probabilities converged.
     *
     * @return the estimates after 1, 2, 4, 8, … chunks and after all
     */
    public List<TracePoint> trace() {
        List<TracePoint> points = new ArrayList<>(trace);
        boolean last = !points.isEmpty() && points.get(points.size() - 1).scenarios() == scenarios;
        if (!last && lamps.stream().allMatch(lamp -> lamp.count() > 0)) {
            points.add(point());
        }
        return points;
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        for (LampTally lamp : lamps) {
            text.append(lamp.lamp())
                    .append(": contact probability ")
                    .append(lamp.contactProbability())
                    .append('\n');
        }
        return text.append(PairModel.STATEMENT).toString();
    }
}
