package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;

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
        Interval interval = upTo(100).interval(0.5, 0.95).orElseThrow();
        assertThat(interval.lo()).isBetween(40 * (1 - 2 * QuantileSketch.RELATIVE_ERROR), 40.0);
        assertThat(interval.hi()).isBetween(61.0, 61 * (1 + 2 * QuantileSketch.RELATIVE_ERROR));
    }

    /** Below six values not even the extremes hold the median with 95 %: 1 - 2 / 2^n (the sign test). */
    @Test
    void fewValuesHaveNoInterval() {
        assertThat(upTo(5).interval(0.5, 0.95)).isEmpty();
        assertThat(upTo(300).interval(0.99, 0.95)).isEmpty();
        assertThat(upTo(1000).interval(0.99, 0.95)).isPresent();
    }
}
