package io.github.stoplag.sweep;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;

/**
 * A tally whose content can be written down and taken up again, here or on another machine, with the same bits.
 *
 * <p>A tally made of {@link Moments}, {@link QuantileSketch} and {@link Histogram} saves and restores these in a fixed
 * order.
 *
 * @param <T> the tally's own type
 */
public interface SavableTally<T extends SavableTally<T>> extends Tally<T> {
    /**
     * Writes the content.
     *
     * @param out where it goes
     * @throws IOException if it cannot be written
     */
    void save(DataOutput out) throws IOException;

    /**
     * Replaces the content by one that was saved. After a failure the tally must not be used.
     *
     * @param in where it comes from
     * @throws IOException if it cannot be read, ends too early, or holds something else
     */
    void restore(DataInput in) throws IOException;
}
