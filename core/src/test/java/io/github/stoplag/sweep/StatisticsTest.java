package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;
import org.apache.commons.math3.util.CombinatoricsUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StatisticsTest {
    @Property(tries = 100, seed = "71")
    void mergedMomentsEqualAnIndependentLibrary(
            @ForAll @Size(min = 2, max = 200) List<@DoubleRange(min = -1e6, max = 1e6) Double> list,
            @ForAll @IntRange(min = 0, max = 200) int cut) {
        double[] values = list.stream().mapToDouble(x -> x).toArray();
        int middle = Math.min(cut, values.length);
        Moments merged = new Moments();
        merged.add(Arrays.copyOfRange(values, 0, middle), middle);
        Moments later = new Moments();
        for (int i = middle; i < values.length; i++) {
            later.add(values[i]);
            later.add(Double.NaN);
        }
        merged.absorb(later);
        DescriptiveStatistics library = new DescriptiveStatistics(values);
        assertThat(merged.count()).isEqualTo(values.length);
        assertThat(merged.mean()).isCloseTo(library.getMean(), within(1e-9));
        assertThat(merged.variance()).isCloseTo(library.getVariance(), within(1e-9 * (1 + library.getVariance())));
        assertThat(merged.min()).isEqualTo(library.getMin());
        assertThat(merged.max()).isEqualTo(library.getMax());
    }

    @Property(tries = 200, seed = "72")
    void sketchedQuantilesKeepTheirErrorAndMergeExactly(
            @ForAll long seed, @ForAll @DoubleRange(min = 0, max = 1) double p) {
        SplittableRandom random = new SplittableRandom(seed);
        int n = random.nextInt(1, 2000);
        double[] values = random.doubles(n)
                .map(u -> Math.exp(14 * u - 6) * (random.nextInt(3) - 0.5))
                .toArray();
        values[0] = Double.NaN;
        values[n / 2] = 0;
        QuantileSketch whole = new QuantileSketch();
        whole.add(values, n);
        QuantileSketch merged = new QuantileSketch();
        QuantileSketch part = new QuantileSketch();
        for (int i = 0; i < n; i++) {
            (i % 3 == 0 ? merged : part).add(values[i]);
        }
        merged.absorb(part);
        double[] sorted =
                Arrays.stream(values).filter(x -> !Double.isNaN(x)).sorted().toArray();
        if (sorted.length == 0) {
            return;
        }
        double exact = sorted[(int) Math.max(1, Math.ceil(p * sorted.length)) - 1];
        assertThat(whole.quantile(p))
                .isCloseTo(exact, within(QuantileSketch.RELATIVE_ERROR * Math.abs(exact) * 1.0000001));
        assertThat(merged.quantile(p)).isEqualTo(whole.quantile(p));
        assertThat(whole.quantile(0)).isEqualTo(sorted[0]);
        assertThat(whole.quantile(1)).isEqualTo(sorted[sorted.length - 1]);
    }

    /** Quantiles of values spread evenly over the exponents of a double, against the sorted values. */
    @ParameterizedTest
    @CsvSource({"5e7, 6e7", "1e-12, 1e-7", "1e-300, 1e300", "-6e7, -5e7", "-1e-9, 1e-9", "2.5e-308, 1.7e308"})
    void sketchKeepsItsErrorOverTheWholeRangeOfDoubles(double lo, double hi) {
        double[] values = new SplittableRandom(73)
                .doubles(2000)
                .map(u -> lo > 0 ? Math.exp(Math.log(lo) + u * (Math.log(hi) - Math.log(lo))) : lo + u * (hi - lo))
                .map(x -> Math.max(lo, Math.min(hi, x)))
                .toArray();
        QuantileSketch sketch = new QuantileSketch();
        sketch.add(values, values.length);
        Arrays.sort(values);
        for (int rank = 1; rank <= values.length; rank += 37) {
            double exact = values[rank - 1];
            assertThat(sketch.quantile((rank - 0.5) / values.length))
                    .isCloseTo(exact, within(QuantileSketch.RELATIVE_ERROR * Math.abs(exact) * 1.0000001));
            assertThat(sketch.shareUpTo(exact * (1 + Math.signum(exact) * 0.004)))
                    .isGreaterThanOrEqualTo((double) rank / values.length);
        }
    }

    @Test
    void infiniteValuesAreCountedAsSuchAndTheSmallestAsZero() {
        QuantileSketch sketch = new QuantileSketch();
        for (double x : new double[] {
            Double.NEGATIVE_INFINITY, -Double.MIN_VALUE, -0.0, 0.0, Double.MIN_VALUE, 7, Double.POSITIVE_INFINITY
        }) {
            sketch.add(x);
        }
        assertThat(sketch.quantile(0)).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(sketch.quantile(0.5)).isZero();
        assertThat(sketch.quantile(0.8)).isCloseTo(7, within(7 * QuantileSketch.RELATIVE_ERROR));
        assertThat(sketch.quantile(1)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(sketch.shareUpTo(Double.MAX_VALUE)).isEqualTo(6.0 / 7);
        assertThat(sketch.shareUpTo(-1e300)).isEqualTo(1.0 / 7);
        sketch.clear();
        assertThatThrownBy(() -> sketch.quantile(0.5))
                .hasMessage("a quantile needs at least 1 value and a probability in [0, 1], got 0 values and 0.5");
    }

    /** A thread keeps its tallies for the next chunk: what they once held must not show in the saved bytes. */
    @Test
    void savedBytesTellOfTheValuesAlone() throws IOException {
        QuantileSketch used = new QuantileSketch();
        used.add(1e9);
        used.clear();
        QuantileSketch fresh = new QuantileSketch();
        for (QuantileSketch sketch : List.of(used, fresh)) {
            sketch.add(-3);
        }
        assertThat(bytes(used)).isEqualTo(bytes(fresh));
        QuantileSketch restored = new QuantileSketch();
        restored.restore(new DataInputStream(new ByteArrayInputStream(bytes(fresh))));
        assertThat(restored.count()).isEqualTo(1);
        assertThat(bytes(restored)).isEqualTo(bytes(fresh));
    }

    private static byte[] bytes(QuantileSketch sketch) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        sketch.save(new DataOutputStream(bytes));
        return bytes.toByteArray();
    }

    @Test
    void histogramCountsEveryValueOnce() {
        Histogram histogram = Histogram.of(0, 10, 5);
        histogram.add(new double[] {-1, 0, 1.999, 2, 9.999, 10, 11, Double.NaN, 99}, 8);
        assertThat(histogram.counts()).containsExactly(2, 1, 0, 0, 1);
        assertThat(histogram.below()).isEqualTo(1);
        assertThat(histogram.above()).isEqualTo(2);
        assertThat(histogram.edge(3)).isEqualTo(6);
        assertThatThrownBy(() -> histogram.absorb(Histogram.of(0, 10, 4)))
                .hasMessage("histograms must have the same bins, got 5 bins from 0 to 10 and 4 bins from 0 to 10");
    }

    @Test
    void wilsonEqualsAnIndependentLibrary() {
        for (int[] c : new int[][] {{0, 10}, {1, 10}, {5, 17}, {999, 1000}, {10, 10}, {147_154, 1_000_000}}) {
            Interval own = new Proportion(c[0], c[1]).wilson(0.95);
            var library = new WilsonScoreInterval().createInterval(c[1], c[0], 0.95);
            assertThat(own.lo()).isCloseTo(library.getLowerBound(), within(1e-12));
            assertThat(own.hi()).isCloseTo(library.getUpperBound(), within(1e-12));
        }
    }

    /** Every outcome of 60 draws with its multinomial probability: no simulation. */
    @Test
    void pairedIntervalCoversAsOftenAsItSays() {
        int n = 60;
        double[][] cases = {{0.05, 0.05}, {0.10, 0.02}, {0.20, 0.10}, {0.03, 0.01}, {0.15, 0.0}};
        for (double[] p : cases) {
            double covered = 0;
            for (int b = 0; b <= n; b++) {
                for (int c = 0; b + c <= n; c++) {
                    double log = CombinatoricsUtils.factorialLog(n)
                            - CombinatoricsUtils.factorialLog(b)
                            - CombinatoricsUtils.factorialLog(c)
                            - CombinatoricsUtils.factorialLog(n - b - c);
                    double probability = Math.exp(log)
                            * Math.pow(p[0], b)
                            * Math.pow(p[1], c)
                            * Math.pow(1 - p[0] - p[1], n - b - c);
                    Interval interval = new PairedProportions(0, b, c, n - b - c).differenceInterval(0.95);
                    covered += interval.contains(p[0] - p[1]) ? probability : 0;
                }
            }
            assertThat(covered).as(Arrays.toString(p)).isBetween(0.93, 0.995);
        }
    }

    @Test
    void commonDrawsNarrowTheComparison() {
        PairedProportions paired = new PairedProportions(14_000, 900, 100, 85_000);
        assertThat(paired.difference()).isCloseTo(0.008, within(1e-15));
        Interval common = paired.differenceInterval(0.95);
        double apart = Math.sqrt(0.149 * 0.851 / 1e5 + 0.141 * 0.859 / 1e5) * 1.96;
        assertThat(common.hi() - common.lo()).isLessThan(2 * apart / 3);
        assertThat(common.contains(0.008)).isTrue();
        assertThat(common.lo()).isPositive();
    }

    @Test
    void badInputIsNamed() {
        assertThatThrownBy(() -> new Proportion(3, 2))
                .hasMessage("a proportion needs 0 <= hits <= count and count > 0, got 3 of 2");
        assertThatThrownBy(() -> new Proportion(1, 2).wilson(1)).hasMessage("confidence must be in [0.5, 1), got 1");
        assertThatThrownBy(() -> new PairedProportions(0, 0, 0, 0))
                .hasMessage("counts must not be negative and not all 0, got 0, 0, 0, 0");
        assertThatThrownBy(() -> new Moments().mean()).hasMessage("statistics need at least 1 values, got 0");
        assertThatThrownBy(() -> Histogram.of(1, 1, 5))
                .hasMessage("a histogram must have finite lo < hi and 1 to 100000 bins, got 1 to 1 in 5");
    }
}
