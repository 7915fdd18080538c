package io.github.stoplag.sweep;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;

/** What a sweep of pairs gathers for one lamp. */
public final class LampTally {
    private static final double FASTEST_MPS = 60;
    private static final int BINS = 120;

    private final String lamp;
    private final double[] contactMps = new double[RowBlock.ROWS];
    private long contacts;
    private long count;
    private final Moments closing = new Moments();
    private final QuantileSketch closingQuantiles = new QuantileSketch();
    private final Histogram closingHistogram = Histogram.of(0, FASTEST_MPS, BINS);
    private final Moments smallestGap = new Moments();

    LampTally(String lamp) {
        this.lamp = lamp;
    }

    void add(RowBlock rows) {
        double[] closingMps = rows.column(PairOutput.CLOSING_SPEED.column(lamp));
        double[] gapM = rows.column(PairOutput.SMALLEST_GAP.column(lamp));
        int valid = 0;
        int contactCount = 0;
        // written always, kept on contact: no branch for the processor to guess
        for (int i = 0; i < rows.count(); i++) {
            contactMps[contactCount] = closingMps[i];
            contactCount += closingMps[i] >= 0 ? 1 : 0;
        }
        if (rows.hasRejects()) {
            for (int i = 0; i < rows.count(); i++) {
                valid += rows.isRejected(i) ? 0 : 1;
            }
        } else {
            valid = rows.count();
        }
        contacts += contactCount;
        count += valid;
        closing.add(contactMps, contactCount);
        closingQuantiles.add(contactMps, contactCount);
        closingHistogram.add(contactMps, contactCount);
        smallestGap.add(gapM, rows.count());
    }

    void absorb(LampTally later) {
        contacts += later.contacts;
        count += later.count;
        closing.absorb(later.closing);
        closingQuantiles.absorb(later.closingQuantiles);
        closingHistogram.absorb(later.closingHistogram);
        smallestGap.absorb(later.smallestGap);
    }

    void clear() {
        contacts = 0;
        count = 0;
        closing.clear();
        closingQuantiles.clear();
        closingHistogram.clear();
        smallestGap.clear();
    }

    void save(DataOutput out) throws IOException {
        SavedState.save(out, "lamp statistics", content -> {
            SavedState.text(content, lamp);
            content.writeLong(contacts);
            content.writeLong(count);
            closing.save(content);
            closingQuantiles.save(content);
            closingHistogram.save(content);
            smallestGap.save(content);
        });
    }

    void restore(DataInput in) throws IOException {
        SavedState.restore(in, "lamp statistics", content -> {
            String saved = SavedState.text(content);
            if (!saved.equals(lamp)) {
                throw new IOException("saved statistics must be of lamp " + lamp + ", got " + saved);
            }
            contacts = content.readLong();
            count = content.readLong();
            closing.restore(content);
            closingQuantiles.restore(content);
            closingHistogram.restore(content);
            smallestGap.restore(content);
        });
    }

    long contacts() {
        return contacts;
    }

    long count() {
        return count;
    }

    /**
     * Gives the lamp's name.
     *
     * @return the name
     */
    public String lamp() {
        return lamp;
    }

    /**
     * Gives the share of valid scenarios that end in contact; see {@link PairModel#STATEMENT}.
     *
     * @return the proportion
     * @throws IllegalArgumentException if no scenario was valid
     */
    public Proportion contactProbability() {
        return new Proportion(contacts, count);
    }

    /**
     * Gives the closing speeds of the contacts.
     *
     * @return count, mean, variance and extremes in m/s
     */
    public Moments closingSpeedMps() {
        return closing;
    }

    /**
     * Gives the quantiles of the closing speeds of the contacts.
     *
     * @return the sketch, in m/s
     */
    public QuantileSketch closingSpeedQuantilesMps() {
        return closingQuantiles;
    }

    /**
     * Gives the closing speeds of the contacts in bins of 0.5 m/s up to 60 m/s.
     *
     * @return the histogram
     */
    public Histogram closingSpeedHistogramMps() {
        return closingHistogram;
    }

    /**
     * Gives the smallest gaps, those of contacts being 0.
     *
     * @return count, mean, variance and extremes in m
     */
    public Moments smallestGapM() {
        return smallestGap;
    }
}
