package io.github.stoplag.sweep;

import org.apache.commons.math3.random.SobolSequenceGenerator;

/**
 * Sobol's sequence read at any place: point n is the exclusive or of the direction numbers at the set bits of the Gray
 * code n ⊕ n≫1. The direction numbers (Joe &amp; Kuo) are taken out of Commons Math's generator, whose point 2^(k+1) −
 * 1 has the Gray code 2^k and so is the k-th direction number itself.
 */
final class SobolPoints {
    static final int MOST_DIMENSIONS = 1000;
    static final long MOST_POINTS = 1L << 31;
    private static final int BITS = 31;

    private final long[][] directions;

    SobolPoints(int dimensions) {
        SobolSequenceGenerator generator = new SobolSequenceGenerator(dimensions);
        directions = new long[dimensions][BITS];
        for (int k = 0; k < BITS; k++) {
            double[] point = generator.skipTo((int) ((1L << (k + 1)) - 1));
            for (int d = 0; d < dimensions; d++) {
                directions[d][k] = (long) (point[d] * 0x1p52);
            }
        }
    }

    /** Fills in coordinates of consecutive points, digitally shifted: x ⊕ shift, in the middle of their 2⁻⁵² cell. */
    void fill(int dimension, long shift, long first, int count, double[] uniform) {
        long[] v = directions[dimension];
        long x = shift >>> 12;
        for (long gray = first ^ (first >>> 1); gray != 0; gray &= gray - 1) {
            x ^= v[Long.numberOfTrailingZeros(gray)];
        }
        for (int i = 0; i < count; i++) {
            uniform[i] = CounterRandom.toUnit(x << 12);
            // the highest place is beyond the last point that is allowed
            x ^= v[Math.min(BITS - 1, Long.numberOfTrailingZeros(first + i + 1))];
        }
    }

    /**
     * Fills in coordinates of consecutive points under a random scramble of Owen's kind: each bit of a coordinate is
     * flipped or not by chance that depends on the bits before it. For a smooth function the error falls nearly as
     * n^−1.5, against 1/n of a shift. The scramble is the hash of Laine &amp; Karras (Computer Graphics Forum 30, 2011)
     * with the constants of Burley (JCGT 9, 2020), all from memory and tested by the rate; bits beyond the 32nd are
     * random.
     */
    void fillScrambled(int dimension, long key, long first, int count, double[] uniform) {
        long[] v = directions[dimension];
        int seed = (int) (key >>> 32);
        long x = 0;
        for (long gray = first ^ (first >>> 1); gray != 0; gray &= gray - 1) {
            x ^= v[Long.numberOfTrailingZeros(gray)];
        }
        for (int i = 0; i < count; i++) {
            int scrambled = scramble((int) (x >>> 20), seed);
            long low = CounterRandom.mix(key + scrambled) >>> 32;
            uniform[i] = CounterRandom.toUnit((long) scrambled << 32 | low);
            x ^= v[Math.min(BITS - 1, Long.numberOfTrailingZeros(first + i + 1))];
        }
    }

    private static int scramble(int bits, int seed) {
        int x = Integer.reverse(bits) + seed;
        x ^= x * 0x6c50b47c;
        x ^= x * 0xb82f1e52;
        x ^= x * 0xc7afe638;
        x ^= x * 0x8d22f6e6;
        return Integer.reverse(x);
    }
}
