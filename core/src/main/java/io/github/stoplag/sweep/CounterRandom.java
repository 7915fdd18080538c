package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Numbers;
import java.util.Objects;

/**
 * Random numbers by position: each is a function of (seed, axis, scenario index) alone, so that any chunk can be drawn
 * on any thread, in any order, with the same bits.
 *
 * <p>SplitMix64 read at a given place instead of in turn:
 *
 * <pre>
 *   z = seed + (2⁴⁸ axis + index + 1) γ                       modulo 2⁶⁴
 *   z ← (z ⊕ z≫30) · 0xbf58476d1ce4e5b9;  z ← (z ⊕ z≫27) · 0x94d049bb133111eb;  bits = z ⊕ z≫31
 *   u = (⌊bits/2¹²⌋ + ½) 2⁻⁵²                                  in (0, 1), never 0 or 1
 * </pre>
 *
 * <p>γ = 0x9e3779b97f4a7c15, the odd integer nearest to 2⁶⁴/φ. Range: index [0, 2⁴⁸), axis [0, 2¹⁶). The map from place
 * to bits is one to one: within a seed no two places share a number. Two different seeds read the same sequence from
 * other starts; that two axes of theirs overlap has a probability of about axes² · scenarios · 2⁻⁴⁷/2¹⁶, below 10⁻⁶ for
 * ten axes and 10⁹ scenarios.
 *
 * <p>Integer arithmetic and one exact conversion: the same bits on every JDK and processor.
 *
 * <p>Source: Steele, Lea &amp; Flood, Fast splittable pseudorandom number generators, OOPSLA 2014 (γ and the sequence);
 * the multipliers are variant 13 of Stafford's mixing functions, 2011 (from memory; tested against the JDK's
 * {@code SplittableRandom}, which is the same sequence).
 */
public final class CounterRandom {
    /** How many scenarios an axis has room for: 2⁴⁸. */
    public static final long MOST_SCENARIOS = 1L << 48;

    /** How many axes there is room for: 2¹⁶. */
    public static final int MOST_AXES = 1 << 16;

    private static final long GAMMA = 0x9e3779b97f4a7c15L;
    private static final double UNIT = 0x1p-52;

    private final long seed;

    private CounterRandom(long seed) {
        this.seed = seed;
    }

    /**
     * Makes the numbers of a seed.
     *
     * @param seed any number
     * @return the numbers
     */
    public static CounterRandom of(long seed) {
        return new CounterRandom(seed);
    }

    /**
     * Gives 64 random bits.
     *
     * @param axis the axis, [0, 2¹⁶)
     * @param index the scenario, [0, 2⁴⁸)
     * @return the bits
     * @throws IllegalArgumentException if axis or index is out of range
     */
    public long bits(int axis, long index) {
        return mix(place(axis, index, 1));
    }

    /**
     * Gives a number that is uniform in (0, 1).
     *
     * @param axis the axis, [0, 2¹⁶)
     * @param index the scenario, [0, 2⁴⁸)
     * @return a multiple of 2⁻⁵³ with 2⁻⁵³ ≤ u ≤ 1 − 2⁻⁵³
     * @throws IllegalArgumentException if axis or index is out of range
     */
    public double uniform(int axis, long index) {
        return toUnit(bits(axis, index));
    }

    /**
     * Fills an array with the uniform numbers of consecutive scenarios.
     *
     * @param axis the axis, [0, 2¹⁶)
     * @param firstIndex the first scenario, [0, 2⁴⁸)
     * @param count how many
     * @param uniform where they go, from 0 on
     * @throws IllegalArgumentException if axis or indices are out of range
     */
    public void fill(int axis, long firstIndex, int count, double[] uniform) {
        Objects.requireNonNull(uniform, "uniform");
        long z = place(axis, firstIndex, count);
        for (int i = 0; i < count; i++) {
            uniform[i] = toUnit(mix(z));
            z += GAMMA;
        }
    }

    private long place(int axis, long index, int count) {
        if (axis < 0 || axis >= MOST_AXES) {
            throw new IllegalArgumentException("axis must be in [0, 65535], got " + axis);
        }
        if (index < 0 || index > MOST_SCENARIOS - count) {
            throw new IllegalArgumentException("scenario index must be in [0, 2^48), got " + index
                    + (count == 1 ? "" : " and " + Numbers.text(count - 1.0) + " more"));
        }
        return seed + ((long) axis * MOST_SCENARIOS + index + 1) * GAMMA;
    }

    static double toUnit(long bits) {
        return ((bits >>> 12) + 0.5) * UNIT;
    }

    static long mix(long bits) {
        long z = (bits ^ (bits >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }
}
