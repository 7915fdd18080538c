package io.github.stoplag.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.kernel.FrictionKernel;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.junit.jupiter.api.Test;

class SlipCurveTest {
    private static final Source OWN = Source.assumed("test curve");

    @Test
    void meetsThePeaksOfAllSurfaces() {
        Table table = Table.read(SlipCurveTest.class, "slip_peaks.csv");
        assertThat(table.rows()).hasSameSizeAs(SlipCurve.published()).allSatisfy(row -> {
            SlipCurve curve = SlipCurve.published(table.text(row, "surface"));
            assertThat(curve.slipAtPeak()).isCloseTo(table.number(row, "slip_at_peak"), within(1.5e-4));
            assertThat(curve.peak().inRatio()).isCloseTo(table.number(row, "peak"), within(1e-4));
            assertThat(curve.locked().inRatio()).isCloseTo(table.number(row, "locked"), within(1e-4));
        });
    }

    /** Second method: Brent's search for the maximum. */
    @Test
    void thePeakIsTheMaximumOfTheCurve() {
        for (SlipCurve curve : SlipCurve.published()) {
            String surface = curve.surface();
            double found = new BrentOptimizer(1e-10, 1e-12)
                    .optimize(
                            new MaxEval(500),
                            new UnivariateObjectiveFunction(
                                    slip -> curve.at(slip).inRatio()),
                            GoalType.MAXIMIZE,
                            new SearchInterval(0, 1, Math.min(0.5, curve.slipAtPeak() * 1.1)))
                    .getValue();
            assertThat(curve.peak().inRatio()).as(surface).isCloseTo(found, within(1e-9));
            double h = 1e-6;
            if (curve.slipAtPeak() < 1) {
                double p = curve.slipAtPeak();
                assertThat((curve.at(p + h).inRatio() - curve.at(p - h).inRatio()) / (2 * h))
                        .isCloseTo(0, within(1e-6));
            }
        }
    }

    @Test
    void antiLockBeatsLockedWheelsWhereTheCurveFalls() {
        SlipCurve dry = SlipCurve.published("dry asphalt");
        assertThat(dry.antiLock(1)).isEqualTo(dry.peak());
        assertThat(dry.antiLock(0.75).inRatio()).isGreaterThan(dry.locked().inRatio());
        assertThat(dry.source().standing()).isEqualTo(Standing.SEEN);
        SlipCurve ice = SlipCurve.published("ice");
        assertThat(ice.peak()).isEqualTo(ice.locked());
        assertThatThrownBy(() -> dry.antiLock(1.1)).hasMessage("adhesion utilization must be in (0, 1], got 1.1");
    }

    @Test
    void aCurveStillRisingAtFullSlipPeaksLocked() {
        SlipCurve rising = SlipCurve.of("own", 1, 2, 0.1, OWN);
        assertThat(rising.slipAtPeak()).isEqualTo(1);
        assertThat(rising.at(0)).isEqualTo(FrictionCoefficient.of(0));
        assertThat(rising.locked().inRatio()).isCloseTo(FrictionKernel.slipRatio(1, 1, 2, 0.1), within(0.0));
    }

    @Test
    void namesWhatIsWrong() {
        assertThatThrownBy(() -> SlipCurve.of("own", 1, 20, 1.2, OWN))
                .hasMessage("slip curve coefficient c3 must be in [0, 1], got 1.2");
        assertThatThrownBy(() -> SlipCurve.of("own", 0, 20, 0, OWN))
                .hasMessage("slip curve coefficient c1 must be in (0, 2], got 0");
        assertThatThrownBy(() -> SlipCurve.published("dry asphalt").at(-0.1))
                .hasMessage("slip must be in [0, 1], got -0.1");
        assertThatThrownBy(() -> SlipCurve.published("mud"))
                .hasMessageStartingWith("slip curve must be one of ")
                .hasMessageEndingWith("got \"mud\"");
    }
}
