package io.github.stoplag.film;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import java.util.Arrays;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What a film shows of one lamp: for each frame its number, its time stamp if there is one, the mean grey value of the
 * lamp's region and the share of clipped pixels in it.
 *
 * <p>Grey values are raw: nothing undone, nothing scaled. Ranges: at least 8 frames and at most 2,000,000, numbers from
 * 0 and strictly increasing (frames may be missing), stamps in seconds as the file has them, strictly increasing or
 * none at all; shares [0, 1]; the middle row of the region counts for a rolling shutter.
 *
 * <p>The mean of a region is taken after the transfer curve: where the region is unevenly bright, let the reader undo
 * the curve pixel by pixel, average the light and hand it on with {@link TransferCurve#LINEAR}.
 */
public final class GreySeries {
    private static final int FEWEST = 8;
    private static final int MOST = 2_000_000;

    private final String label;
    private final int[] frame;
    private final double @Nullable [] stampS;
    private final double[] grey;
    private final double[] clippedShare;
    private final double middleRow;
    private final double rows;

    private GreySeries(Builder b) {
        label = b.label;
        frame = Arrays.copyOf(b.frame, b.size);
        stampS = b.stamped ? Arrays.copyOf(b.stampS, b.size) : null;
        grey = Arrays.copyOf(b.grey, b.size);
        clippedShare = Arrays.copyOf(b.clippedShare, b.size);
        middleRow = b.middleRow;
        rows = b.rows;
    }

    /**
     * Starts the series of a lamp.
     *
     * @param label the lamp's name
     * @return a builder to which frames are added one by one
     * @throws IllegalArgumentException if the name is blank
     */
    public static Builder of(String label) {
        Objects.requireNonNull(label, "label");
        if (label.isBlank()) {
            throw new IllegalArgumentException("a filmed lamp must have a name, got an empty text");
        }
        return new Builder(label);
    }

    /** {@return the lamp's name} */
    public String label() {
        return label;
    }

    /** {@return how many frames there are} */
    public int size() {
        return frame.length;
    }

    /** {@return whether the frames carry time stamps} */
    public boolean isStamped() {
        return stampS != null;
    }

    /**
     * {@return the number of a frame}
     *
     * @param index the place in the series, from 0
     */
    public int frame(int index) {
        return frame[index];
    }

    /**
     * {@return the place of a frame in the series, negative if the film does not have it}
     *
     * @param number the frame's number
     */
    public int indexOf(int number) {
        return Arrays.binarySearch(frame, number);
    }

    /**
     * {@return the time stamp of a frame in seconds as the file has it, NaN without stamps}
     *
     * @param index the place in the series, from 0
     */
    public double stampS(int index) {
        return stampS == null ? Double.NaN : stampS[index];
    }

    /**
     * {@return the mean grey value of a frame}
     *
     * @param index the place in the series, from 0
     */
    public double grey(int index) {
        return grey[index];
    }

    /**
     * {@return the share of clipped pixels of a frame}
     *
     * @param index the place in the series, from 0
     */
    public double clippedShare(int index) {
        return clippedShare[index];
    }

    /** {@return the middle row of the region, counted from the first row read out} */
    public double middleRow() {
        return middleRow;
    }

    /** {@return how many rows the region has} */
    public double rows() {
        return rows;
    }

    /**
     * Cuts a piece out, such as one switching of several.
     *
     * @param fromIndex the first place kept
     * @param toIndex the place after the last kept
     * @return the shorter series
     * @throws IllegalArgumentException if the piece is not inside the series or has fewer than 8 frames
     */
    public GreySeries part(int fromIndex, int toIndex) {
        Check.inRange("first place of a part", fromIndex, 0, size(), "");
        Check.inRange("end of a part", toIndex, fromIndex, size(), "");
        Builder builder = of(label).region(middleRow, rows);
        for (int i = fromIndex; i < toIndex; i++) {
            builder.add(frame[i], stampS(i), grey[i], clippedShare[i]);
        }
        return builder.build();
    }

    @Override
    public String toString() {
        return label + ", " + size() + " frames";
    }

    /** Collects the frames of one lamp as they are read; it is not safe for use by several threads. */
    public static final class Builder {
        private final String label;
        private int size;
        private boolean stamped;
        private int[] frame = new int[64];
        private double[] stampS = new double[64];
        private double[] grey = new double[64];
        private double[] clippedShare = new double[64];
        private double middleRow;
        private double rows;

        private Builder(String label) {
            this.label = label;
        }

        String label() {
            return label;
        }

        /**
         * Says where in the picture the lamp is, for a rolling shutter.
         *
         * @param middle the middle row of the region, [0, 1e5]
         * @param count how many rows it has, [0, 1e5]
         * @return this builder
         * @throws IllegalArgumentException if either is out of range
         */
        public Builder region(double middle, double count) {
            middleRow = Check.inRange("middle row of a region", middle, 0, 1e5, "");
            rows = Check.inRange("rows of a region", count, 0, 1e5, "");
            return this;
        }

        /**
         * Adds a frame without a time stamp.
         *
         * @param number the frame's number
         * @param meanGrey the mean grey value of the region
         * @param clipped the share of clipped pixels, [0, 1]
         * @return this builder
         * @throws IllegalArgumentException if a value is out of range or order
         */
        public Builder add(int number, double meanGrey, double clipped) {
            return add(number, Double.NaN, meanGrey, clipped);
        }

        /**
         * Adds a frame.
         *
         * @param number the frame's number, above that of the frame before
         * @param timeStampS its time stamp in seconds, above that of the frame before, [-1e6, 1e6] s; NaN for none,
         *     then for all frames
         * @param meanGrey the mean grey value of the region, [-1e9, 1e9]
         * @param clipped the share of clipped pixels, [0, 1]
         * @return this builder
         * @throws IllegalArgumentException if a value is out of range or order
         */
        public Builder add(int number, double timeStampS, double meanGrey, double clipped) {
            Check.inRange("number of a frame", number, 0, Integer.MAX_VALUE, "");
            Check.inRange("grey of frame " + number, meanGrey, -1e9, 1e9, "");
            Check.inRange("clipped share of frame " + number, clipped, 0, 1, "");
            checkOrder(number, timeStampS);
            if (size == frame.length) {
                grow();
            }
            frame[size] = number;
            stampS[size] = timeStampS;
            grey[size] = meanGrey;
            clippedShare[size] = clipped;
            size++;
            return this;
        }

        private void checkOrder(int number, double timeStampS) {
            boolean has = !Double.isNaN(timeStampS);
            if (size == 0) {
                stamped = has;
            } else if (number <= frame[size - 1]) {
                throw new IllegalArgumentException(
                        "frames must be in order, got frame " + number + " after frame " + frame[size - 1]);
            }
            if (has != stamped) {
                throw new IllegalArgumentException("either every frame or none must have a time stamp, frame " + number
                        + (has ? " has one" : " has none"));
            }
            if (has) {
                Ranges.TIME.check("time stamp of frame " + number, timeStampS);
                if (size > 0 && !(timeStampS > stampS[size - 1])) {
                    throw new IllegalArgumentException("time stamp of frame " + number + " must be after that of frame "
                            + frame[size - 1] + ", " + Numbers.text(stampS[size - 1]) + " s, got "
                            + Numbers.text(timeStampS) + " s");
                }
            }
        }

        private void grow() {
            if (size >= MOST) {
                throw new IllegalArgumentException("a film must have at most " + Numbers.text(MOST)
                        + " frames: cut it to the switching, or take one lamp's part");
            }
            int capacity = Math.min(MOST, 2 * size);
            frame = Arrays.copyOf(frame, capacity);
            stampS = Arrays.copyOf(stampS, capacity);
            grey = Arrays.copyOf(grey, capacity);
            clippedShare = Arrays.copyOf(clippedShare, capacity);
        }

        /**
         * {@return the series}
         *
         * @throws IllegalArgumentException if there are fewer than 8 frames
         */
        public GreySeries build() {
            Check.inRange("frames of " + label, size, FEWEST, MOST, "");
            return new GreySeries(this);
        }
    }
}
