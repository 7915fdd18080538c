package io.github.stoplag.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class PairBatchTest {
    private static final int ROWS = 150_001;

    private final double[][] in = new double[9][ROWS];
    private final double[] timeS = new double[ROWS];
    private final double[] smallestGapM = new double[ROWS];
    private final double[] closingMps = new double[ROWS];
    private final PairBatch batch = new PairBatch();

    private void run(int count) {
        batch.outcomes(
                count, in[0], in[1], in[2], in[3], in[4], in[5], in[6], in[7], in[8], timeS, smallestGapM, closingMps);
    }

    private void put(int row, Scenario s) {
        s.put(in, row);
    }

    @Test
    void everyRowHasTheBitsOfTheScalarKernel() {
        SplittableRandom random = new SplittableRandom(41);
        Scenario[] scenarios = new Scenario[ROWS];
        for (int i = 0; i < ROWS; i++) {
            scenarios[i] = i % 2 == 0 ? Scenario.typical(random) : Scenario.extreme(random);
            if (i % 97 == 0) {
                // the border itself: a graze by its own gap needed
                scenarios[i] = scenarios[i].withGap(Math.min(1e5, scenarios[i].gapNeededM(new GapEvent())));
            }
            put(i, scenarios[i]);
        }
        run(ROWS);
        GapEvent event = new GapEvent();
        int contacts = 0;
        for (int i = 0; i < ROWS; i++) {
            scenarios[i].event(event);
            contacts += event.contact() ? 1 : 0;
            assertThat(Double.compare(closingMps[i], event.closingSpeedMps()))
                    .as("%s", scenarios[i])
                    .isZero();
            assertThat(timeS[i]).as("%s", scenarios[i]).isEqualTo(event.timeS());
            assertThat(smallestGapM[i]).as("%s", scenarios[i]).isEqualTo(event.smallestGapM());
        }
        assertThat(contacts).isBetween(ROWS / 5, ROWS * 4 / 5);
    }

    @Test
    void hugeAndTinyNumbersGoTheScalarWay() {
        double[] odd = {0, Double.MIN_VALUE, 1e-300, 1e-7, 1, 1e5, 1e150, 1e308};
        SplittableRandom random = new SplittableRandom(42);
        GapEvent event = new GapEvent();
        int rows = 5000;
        Scenario[] scenarios = new Scenario[rows];
        for (int i = 0; i < rows; i++) {
            double[] v = random.ints(9, 0, odd.length).mapToDouble(k -> odd[k]).toArray();
            scenarios[i] = new Scenario(v[0], v[1], v[2], v[3], v[4], v[5], v[6], v[7], Math.min(v[8], 1e5));
            put(i, scenarios[i]);
        }
        run(rows);
        for (int i = 0; i < rows; i++) {
            scenarios[i].event(event);
            assertThat(Double.compare(timeS[i], event.timeS()))
                    .as("%s", scenarios[i])
                    .isZero();
            assertThat(Double.compare(closingMps[i], event.closingSpeedMps()))
                    .as("%s", scenarios[i])
                    .isZero();
        }
    }

    @Test
    void badRowsAreNamed() {
        for (int i = 0; i < 2000; i++) {
            put(i, new Scenario(20, 0, 0, 8, 20, 1, 0, 8, 30));
        }
        for (int column = 0; column < 9; column++) {
            for (double bad : new double[] {-1, Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
                double good = in[column][1234];
                in[column][1234] = bad;
                assertThatThrownBy(() -> run(2000))
                        .isInstanceOf(IllegalArgumentException.class)
                        .hasMessageStartingWith("row 1234: ")
                        .hasMessageContaining(", got ");
                in[column][1234] = good;
            }
        }
        in[7][1999] = -3;
        assertThatThrownBy(() -> run(2000))
                .hasMessage("row 1999: follower deceleration must be finite and not negative, got -3 m/s²");
    }

    @Test
    void onlyTheFirstRowsAreTouched() {
        put(0, new Scenario(20, 0, 0, 8, 20, 1, 0, 8, 30));
        Arrays.fill(timeS, -5);
        run(1);
        assertThat(timeS[1]).isEqualTo(-5);
        // equal speeds and brakes, follower 1 s late: 30 − 20 × 1 m are left when he stops at 1 + 20/8 s
        assertThat(smallestGapM[0]).isEqualTo(10);
        assertThat(timeS[0]).isEqualTo(3.5);
    }
}
