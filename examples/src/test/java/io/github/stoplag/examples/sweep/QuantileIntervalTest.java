package io.github.stoplag.examples.sweep;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.sweep.Interval;
import io.github.stoplag.sweep.QuantileSketch;
import org.junit.jupiter.api.Test;

/** Intervals of quantiles. */
class QuantileIntervalTest {
    private static QuantileSketch upTo(int n) {
        QuantileSketch sketch = new QuantileSketch();
        for (int i = 1; i <= n; i++) {
            sketch.add(i);
        }
        return sketch;
    }

    /** The tabulated ranks for the median of 100 values at 95 % are 40 and 61 (common practice, from memory). */
    @Test
    void medianOfHundredLiesBetweenTheTabulatedRanks() {
        Interval interval = QuantileInterval.of(upTo(100), 0.5).orElseThrow();
        assertThat(interval.lo()).isBetween(40 * (1 - 2 * QuantileSketch.RELATIVE_ERROR), 40.0);
        assertThat(interval.hi()).isBetween(61.0, 61 * (1 + 2 * QuantileSketch.RELATIVE_ERROR));
    }

    /** Below six values not even the extremes hold the median with 95 %: 1 - 2 / 2^n (the sign test). */
    @Test
    void fewValuesHaveNoInterval() {
        assertThat(QuantileInterval.of(upTo(5), 0.5)).isEmpty();
        assertThat(QuantileInterval.of(upTo(300), 0.99)).isEmpty();
        assertThat(QuantileInterval.of(upTo(1000), 0.99)).isPresent();
    }
}
