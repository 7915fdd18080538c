package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.chance.ArcSine;
import io.github.stoplag.chance.CurvilinearTrapezoidal;
import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.StudentT;
import io.github.stoplag.chance.Trapezoidal;
import io.github.stoplag.chance.Triangular;
import java.util.List;
import org.apache.commons.statistics.distribution.TDistribution;
import org.apache.commons.statistics.distribution.TrapezoidalDistribution;
import org.apache.commons.statistics.distribution.TriangularDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The laws of the Guide's inputs against another library, their closed moments and their own inverse. */
class UncertaintyLawsTest {
    private static final double[] SHARES = {1e-12, 1e-6, 0.001, 0.024, 0.1, 0.3, 0.49, 0.5, 0.51, 0.7, 0.99, 0.999999};

    static List<Distribution> laws() {
        return List.of(
                new StudentT(2, 3, 1),
                new StudentT(-1, 0.5, 4),
                new StudentT(0, 1, 1000),
                new Triangular(-1, 2, 3),
                new Triangular(0, 0, 1),
                new ArcSine(-1, 3),
                new Trapezoidal(-2, 4, 0.4),
                new Trapezoidal(-2, 4, 0),
                new Trapezoidal(-2, 4, 1),
                new CurvilinearTrapezoidal(-0.05, 0.05, 0.025),
                new CurvilinearTrapezoidal(1, 3, 1e-3));
    }

    @ParameterizedTest
    @MethodSource("laws")
    void quantileAndShareAreInverse(Distribution law) {
        double before = Double.NEGATIVE_INFINITY;
        for (double p : SHARES) {
            double x = law.quantile(p);
            // near its ends an arcsine law is steeper than doubles are dense
            double rounding = law instanceof ArcSine ? 1e-9 : 4e-16;
            assertThat(law.cdf(x)).as(law + " at " + p).isCloseTo(p, within(rounding + 1e-12 * p));
            assertThat(x).isGreaterThan(before);
            if (p >= 0.001) {
                assertThat(law.upperQuantile(1 - p)).isCloseTo(x, within(1e-9 * (1 + Math.abs(x))));
            }
            before = x;
        }
        assertThat(law.quantile(0)).isEqualTo(law.upperQuantile(1));
        assertThat(law.quantile(1)).isEqualTo(law.upperQuantile(0));
        assertThat(law.cdf(law.quantile(0))).isZero();
        assertThat(law.cdf(law.quantile(1))).isEqualTo(1);
        assertThat(law.cdf(Double.NaN)).isNaN();
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 1.5, 2, 3, 4.7, 16, 29, 200, 1e5})
    void studentAgreesWithAnotherLibrary(double freedom) {
        StudentT law = new StudentT(0, 1, freedom);
        TDistribution other = TDistribution.of(freedom);
        for (double p : SHARES) {
            double x = other.inverseCumulativeProbability(p);
            assertThat(law.cdf(x)).isCloseTo(other.cumulativeProbability(x), within(1e-13 + 1e-9 * p));
            assertThat(law.quantile(p)).isCloseTo(x, within(1e-8 * (1 + Math.abs(x))));
        }
        QuantileTable table = QuantileTable.of(law);
        assertThat(table.largestRelativeError()).isLessThan(1e-5);
    }

    /** JCGM 100:2008, table G.2 (from memory). */
    @Test
    void coverageFactors() {
        assertThat(Interval.coverageFactor(0.95, 1)).isCloseTo(12.71, within(0.005));
        assertThat(Interval.coverageFactor(0.95, 4)).isCloseTo(2.78, within(0.005));
        assertThat(Interval.coverageFactor(0.99, 16)).isCloseTo(2.92, within(0.005));
        assertThat(Interval.coverageFactor(0.99, Double.POSITIVE_INFINITY)).isCloseTo(2.576, within(5e-4));
    }

    @Test
    void trapezoidAndTriangleAgreeWithAnotherLibrary() {
        TrapezoidalDistribution other = TrapezoidalDistribution.of(-2, -0.2, 2.2, 4);
        TriangularDistribution triangle = TriangularDistribution.of(-1, 2, 3);
        for (double p : SHARES) {
            assertThat(new Trapezoidal(-2, 4, 0.4).quantile(p))
                    .isCloseTo(other.inverseCumulativeProbability(p), within(1e-12));
            assertThat(new Triangular(-1, 2, 3).quantile(p))
                    .isCloseTo(triangle.inverseCumulativeProbability(p), within(1e-12));
        }
    }

    /** a²/6, a²/2, a² (1 + β²)/6, w²/3 + d²/9. */
    @Test
    void standardUncertaintiesAreThoseOfTheGuide() {
        assertThat(u(new Triangular(-1, 0, 1))).isCloseTo(Math.sqrt(1 / 6.0), within(3e-6));
        assertThat(u(new ArcSine(-1, 1))).isCloseTo(Math.sqrt(1 / 2.0), within(3e-6));
        assertThat(u(new Trapezoidal(-1, 1, 0.4))).isCloseTo(Math.sqrt(1.16 / 6), within(3e-6));
        assertThat(u(new CurvilinearTrapezoidal(-1, 1, 0.3))).isCloseTo(Math.sqrt(1 / 3.0 + 0.01), within(3e-6));
    }

    private static double u(Distribution law) {
        return Measurand.of(x -> x[0]).input("x", law).firstOrder(0.95).standardUncertainty();
    }

    /** The construction of the supplement: limits drawn, then a value between them. */
    @Test
    void curvilinearTrapezoidIsARectangleOfUncertainWidth() {
        CurvilinearTrapezoidal law = new CurvilinearTrapezoidal(-1, 1, 0.3);
        CounterRandom random = CounterRandom.of(11);
        int n = 200_000;
        int below = 0;
        for (int i = 0; i < n; i++) {
            double half = 0.7 + 0.6 * random.uniform(0, i);
            below += half * (2 * random.uniform(1, i) - 1) < -0.8 ? 1 : 0;
        }
        assertThat(below / (double) n).isCloseTo(law.cdf(-0.8), within(0.003));
    }

    @Test
    void draws() {
        Measurand t = Measurand.of(x -> x[0]).student("x", 5, 2, 6);
        Measurand.Estimate drawn = t.monteCarlo(0.95, 1_000_000, 3);
        assertThat(drawn.standardUncertainty()).isCloseTo(2 * Math.sqrt(1.5), within(0.02));
        assertThat(drawn.coverage().hi())
                .isCloseTo(t.firstOrder(0.95).coverage().hi(), within(0.03));
    }

    /** x + y and x − y of two inputs that move together: u² = u_x² + u_y² ± 2 r u_x u_y, drawn and to first order. */
    @Test
    void jointDrawsKeepLawsAndCorrelation() {
        for (double sign : new double[] {1, -1}) {
            Measurand sum = Measurand.of(x -> x[0] + sign * x[1])
                    .normal("x", 1, 3)
                    .input("y", new Distribution.Uniform(0, 2))
                    .correlate("x", "y", 0.6);
            double uy = 1 / Math.sqrt(3);
            double first = Math.sqrt(9 + uy * uy + sign * 2 * 0.6 * 3 * uy);
            assertThat(sum.firstOrder(0.95).standardUncertainty()).isCloseTo(first, within(1e-4));
            // the scores' correlation of 0.6 is 0.6 √(3/π) between a normal and a rectangle
            double drawn = Math.sqrt(9 + uy * uy + sign * 2 * 0.6 * Math.sqrt(3 / Math.PI) * 3 * uy);
            assertThat(sum.monteCarlo(0.95, 1_000_000, 8).standardUncertainty()).isCloseTo(drawn, within(0.005));
        }
        Measurand same = Measurand.of(x -> x[0] - x[1])
                .normal("x", 0, 1)
                .normal("y", 0, 1)
                .correlate("x", "y", 1);
        assertThat(same.firstOrder(0.95).standardUncertainty()).isCloseTo(0, within(1e-7));
        assertThat(same.monteCarlo(0.95, 1000, 8).standardUncertainty()).isCloseTo(0, within(1e-12));
    }

    @Test
    void refusals() {
        Measurand y = Measurand.of(x -> x[0] + x[1] + x[2])
                .normal("a", 0, 1)
                .normal("b", 0, 1)
                .normal("c", 0, 1);
        assertThatThrownBy(() -> y.correlate("a", "d", 0.5))
                .hasMessage("a correlation must join two inputs of [a, b, c], got a and d");
        assertThatThrownBy(() -> y.correlate("a", "b", 1.5))
                .hasMessage("correlation of a and b must be in [-1, 1], got 1.5");
        assertThatThrownBy(() -> y.correlate("a", "b", 0.9)
                        .correlate("b", "c", 0.9)
                        .correlate("a", "c", -0.9)
                        .firstOrder(0.95))
                .hasMessage("correlations must be possible together (a positive semidefinite matrix), got"
                        + " a contradiction at c");
        assertThatThrownBy(() -> y.normal("a", 0, 1))
                .hasMessage("inputs must have different names, got a beside [a, b, c]");
        assertThatThrownBy(() -> y.student("d", 0, 1, 4)
                        .student("e", 0, 1, 5)
                        .correlate("d", "e", 0.1)
                        .budget(0.95))
                .hasMessage("correlated inputs must have the same degrees of freedom, as readings taken together have,"
                        + " got 4 and 5 for e");
        assertThatThrownBy(() -> y.readings(List.of("p", "q"), new double[] {1, 2}, new double[] {1}))
                .hasMessageStartingWith(
                        "simultaneous readings must be at least two of each of [p, q], as many of each");
        assertThatThrownBy(() -> new StudentT(0, 1, 0.5))
                .hasMessage("degrees of freedom must be in [1, 1000000], got 0.5");
        assertThatThrownBy(() -> new CurvilinearTrapezoidal(0, 1, 0.6)).hasMessageEndingWith("got 0, 1 and 0.6");
    }
}
