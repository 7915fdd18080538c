package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** The seeds are fixed; each statistic is asked to be no rarer than one in ten thousand. */
class CounterRandomTest {
    private static final double RARE = 1e-4;

    @Test
    void axisZeroIsTheJdksSequence() {
        for (long seed : new long[] {0, 1, -7, 1234567, Long.MIN_VALUE}) {
            SplittableRandom jdk = new SplittableRandom(seed);
            for (long i = 0; i < 1000; i++) {
                assertThat(CounterRandom.of(seed).bits(0, i)).isEqualTo(jdk.nextLong());
            }
        }
    }

    /** First outputs of SplitMix64 from seed 1234567 as published with its reference code (from memory). */
    @Test
    void publishedOutputs() {
        String[] published = {
            "6457827717110365317",
            "3203168211198807973",
            "9817491932198370423",
            "4593380528125082431",
            "16408922859458223821"
        };
        for (int i = 0; i < published.length; i++) {
            assertThat(Long.toUnsignedString(CounterRandom.of(1234567).bits(0, i)))
                    .isEqualTo(published[i]);
        }
    }

    @Test
    void fillingEqualsReadingOneByOne() {
        double[] block = new double[1000];
        CounterRandom random = CounterRandom.of(99);
        random.fill(5, 1L << 40, block.length, block);
        for (int i = 0; i < block.length; i++) {
            assertThat(block[i]).isEqualTo(random.uniform(5, (1L << 40) + i)).isBetween(0x1p-53, 1 - 0x1p-53);
        }
        assertThat(CounterRandom.toUnit(0)).isEqualTo(0x1p-53);
        assertThat(CounterRandom.toUnit(-1)).isEqualTo(1 - 0x1p-53);
    }

    @Test
    void uniformByChiSquareInBlocksOfHighAndLowBits() {
        int n = 1 << 20;
        for (int axis = 0; axis < 8; axis++) {
            long[] high = new long[256];
            long[] middle = new long[256];
            for (int i = 0; i < n; i++) {
                long bits = CounterRandom.of(20).bits(axis, i);
                high[(int) (bits >>> 56)]++;
                middle[(int) (bits >>> 12) & 255]++;
            }
            assertNotRare(chiSquare(high, n), 255);
            assertNotRare(chiSquare(middle, n), 255);
        }
    }

    @Test
    void neighboursInARowAreIndependent() {
        // pairs (uᵢ, uᵢ₊lag) in 64 × 64 cells, and the serial correlation, N(0, 1/n) if independent
        int n = 1 << 20;
        double[] u = new double[n + 64];
        CounterRandom.of(21).fill(0, 0, u.length, u);
        for (int lag : new int[] {1, 2, 3, 7, 64}) {
            assertIndependent(u, 0, u, lag, n);
        }
    }

    @Test
    void axesAndSeedsAreIndependent() {
        int n = 1 << 20;
        double[] first = new double[n];
        double[] second = new double[n];
        CounterRandom.of(22).fill(0, 0, n, first);
        for (int axis : new int[] {1, 2, 3, 100, 65535}) {
            CounterRandom.of(22).fill(axis, 0, n, second);
            assertIndependent(first, 0, second, 0, n);
        }
        for (long seed : new long[] {23, 24, -22, 22L << 32}) {
            CounterRandom.of(seed).fill(0, 0, n, second);
            assertIndependent(first, 0, second, 0, n);
        }
    }

    private static void assertIndependent(double[] a, int aFrom, double[] b, int bFrom, int n) {
        long[] cells = new long[64 * 64];
        double product = 0;
        for (int i = 0; i < n; i++) {
            double x = a[aFrom + i];
            double y = b[bFrom + i];
            cells[((int) (x * 64)) * 64 + (int) (y * 64)]++;
            product += (x - 0.5) * (y - 0.5);
        }
        assertNotRare(chiSquare(cells, n), 64 * 64 - 1);
        double z = product / n * 12 * Math.sqrt(n);
        assertThat(NormalDistribution.of(0, 1).survivalProbability(Math.abs(z))).isGreaterThan(RARE);
    }

    private static double chiSquare(long[] observed, double n) {
        double expected = n / observed.length;
        double sum = 0;
        for (long o : observed) {
            sum += (o - expected) * (o - expected) / expected;
        }
        return sum;
    }

    private static void assertNotRare(double chiSquare, double degrees) {
        ChiSquaredDistribution distribution = ChiSquaredDistribution.of(degrees);
        assertThat(distribution.survivalProbability(chiSquare)).isBetween(RARE, 1 - RARE);
    }

    @Test
    void badPlacesAreNamed() {
        assertThatThrownBy(() -> CounterRandom.of(1).bits(-1, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("axis must be in [0, 65535], got -1");
        assertThatThrownBy(() -> CounterRandom.of(1).uniform(0, 1L << 48))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("scenario index must be in [0, 2^48), got 281474976710656");
        assertThatThrownBy(() -> CounterRandom.of(1).fill(0, (1L << 48) - 5, 6, new double[6]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("scenario index must be in [0, 2^48), got 281474976710651 and 5 more");
    }
}
