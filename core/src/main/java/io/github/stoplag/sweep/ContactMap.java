package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * How often each lamp led to contact in equal bins of gap and speed, without {@link #TAIL_RATIO} of a drawn axis
 * at either end.
 */
public final class ContactMap implements SavableTally<ContactMap> {
    private static final int GAP_BINS = 24;
    private static final int SPEED_BINS = 8;
    /** The share of a drawn axis that is left out at either end. */
    public static final double TAIL_RATIO = 0.005;

    /**
     * Equal bins of one column.
     *
     * @param column the axis
     * @param lo the lower end of the first bin
     * @param hi the upper end of the last bin
     * @param count how many
     */
    public record Bins(String column, double lo, double hi, int count) {

        /**
         * Refuses nulls.
         *
         * @param column the axis
         * @param lo the lower end of the first bin
         * @param hi the upper end of the last bin
         * @param count how many
         * @throws NullPointerException if one that is required is null
         */
        public Bins {
            Objects.requireNonNull(column, "column");
        }

        static Bins of(Axis axis, int most) {
            double lo = axis.distribution()
                    .map(drawn -> drawn.quantile(TAIL_RATIO))
                    .orElseGet(() -> Arrays.stream(axis.levels()).min().orElseThrow());
            double hi = axis.distribution()
                    .map(drawn -> drawn.quantile(1 - TAIL_RATIO))
                    .orElseGet(() -> Arrays.stream(axis.levels()).max().orElseThrow());
            Optional<Distribution> drawn = axis.distribution();
            return lo < hi
                    ? new Bins(axis.column(), lo, hi, drawn.isPresent() ? most : Math.min(most, axis.levels().length))
                    : new Bins(axis.column(), lo - 0.5, hi + 0.5, 1);
        }

        int bin(double value) {
            if (!(value >= lo && value <= hi)) {
                return -1;
            }
            return Math.min(count - 1, (int) ((value - lo) * (count / (hi - lo))));
        }

        /**
         * Gives an end of a bin.
         *
         * @param bin the bin, or the count for the upper end of the last
         * @return the lower end
         */
        public double edge(int bin) {
            return lo + bin * ((hi - lo) / count);
        }

        /**
         * Gives the middle of a bin.
         *
         * @param bin the bin
         * @return halfway between its ends
         */
        public double middle(int bin) {
            return 0.5 * (edge(bin) + edge(bin + 1));
        }
    }

    private final Bins gap;
    private final Bins speed;
    private final List<String> lamps;
    private final long[] counts;
    private final long[][] hits;

    private ContactMap(Bins gap, Bins speed, List<String> lamps) {
        this.gap = gap;
        this.speed = speed;
        this.lamps = lamps;
        counts = new long[gap.count * speed.count];
        hits = new long[lamps.size()][counts.length];
    }

    /**
     * Makes an empty map.
     *
     * @param plan the plan, which says where gaps and speeds lie
     * @param lamps the lamps
     * @return the map
     */
    public static ContactMap of(Plan plan, List<String> lamps) {
        Objects.requireNonNull(lamps, "lamps");
        return new ContactMap(
                Bins.of(axis(plan, PairColumn.gapOf(plan).column()), GAP_BINS),
                Bins.of(axis(plan, PairColumn.SPEED.column()), SPEED_BINS),
                List.copyOf(lamps));
    }

    static Axis axis(Plan plan, String column) {
        return plan.axes().get(plan.columns().indexOf(column));
    }

    @Override
    public void add(RowBlock rows) {
        double[] gaps = rows.column(gap.column);
        double[] speeds = rows.column(speed.column);
        for (int lamp = 0; lamp < hits.length; lamp++) {
            double[] contact = rows.column(PairOutput.CONTACT.column(lamps.get(lamp)));
            for (int i = 0; i < rows.count(); i++) {
                int x = gap.bin(gaps[i]);
                int y = speed.bin(speeds[i]);
                if (x >= 0 && y >= 0 && contact[i] >= 0) {
                    int cell = x * speed.count + y;
                    counts[cell] += lamp == 0 ? 1 : 0;
                    hits[lamp][cell] += (long) contact[i];
                }
            }
        }
    }

    @Override
    public void absorb(ContactMap later) {
        for (int cell = 0; cell < counts.length; cell++) {
            counts[cell] += later.counts[cell];
            for (int lamp = 0; lamp < hits.length; lamp++) {
                hits[lamp][cell] += later.hits[lamp][cell];
            }
        }
    }

    @Override
    public void clear() {
        Arrays.fill(counts, 0);
        for (long[] cells : hits) {
            Arrays.fill(cells, 0);
        }
    }

    @Override
    public void save(DataOutput out) throws IOException {
        for (int cell = 0; cell < counts.length; cell++) {
            out.writeLong(counts[cell]);
            for (long[] cells : hits) {
                out.writeLong(cells[cell]);
            }
        }
    }

    @Override
    public void restore(DataInput in) throws IOException {
        for (int cell = 0; cell < counts.length; cell++) {
            counts[cell] = in.readLong();
            for (long[] cells : hits) {
                cells[cell] = in.readLong();
            }
        }
    }

    /**
     * Gives the bins of the gap.
     *
     * @return bins of {@code gap_m} or {@code time_gap_s}
     */
    public Bins gap() {
        return gap;
    }

    /**
     * Gives the bins of the leader's speed.
     *
     * @return bins of {@code speed_mps}
     */
    public Bins speed() {
        return speed;
    }

    /**
     * Gives the share of contacts at a gap and a speed.
     *
     * @param lamp the lamp
     * @param gapBin the bin of the gap
     * @param speedBin the bin of the speed
     * @return the proportion, or nothing if no scenario fell there
     */
    public Optional<Proportion> at(String lamp, int gapBin, int speedBin) {
        int cell = gapBin * speed.count + speedBin;
        return counts[cell] == 0
                ? Optional.empty()
                : Optional.of(new Proportion(hits[lamps.indexOf(lamp)][cell], counts[cell]));
    }

    /**
     * Gives the share of contacts at a gap, over all speeds.
     *
     * @param lamp the lamp
     * @param gapBin the bin of the gap
     * @return the proportion, or nothing if no scenario fell there
     */
    public Optional<Proportion> atGap(String lamp, int gapBin) {
        long contacts = 0;
        long count = 0;
        for (int cell = gapBin * speed.count; cell < (gapBin + 1) * speed.count; cell++) {
            contacts += hits[lamps.indexOf(lamp)][cell];
            count += counts[cell];
        }
        return count == 0 ? Optional.empty() : Optional.of(new Proportion(contacts, count));
    }
}
