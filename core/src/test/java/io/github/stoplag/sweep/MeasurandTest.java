package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.quantity.Numbers;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeasurandTest {
    private static final int MILLION = 1_000_000;
    private static final Distribution UNIT_RECTANGLE = new Distribution.Uniform(-Math.sqrt(3), Math.sqrt(3));

    private static double sum(double[] x) {
        return Arrays.stream(x).sum();
    }

    private static void assertInterval(Measurand.Estimate estimate, double u, double half, double within) {
        assertThat(estimate.value()).isCloseTo(0, within(0.05));
        assertThat(estimate.standardUncertainty()).isCloseTo(u, within(within));
        assertThat(estimate.coverage().lo()).isCloseTo(-half, within(within));
        assertThat(estimate.coverage().hi()).isCloseTo(half, within(within));
    }

    /** JCGM 101:2008, 9.2.2: four standard normals; u 2.0, interval ±3.92 by both (from memory). */
    @Test
    void additiveModelOfNormals() {
        Measurand y = Measurand.of(MeasurandTest::sum)
                .normal("x1", 0, 1)
                .normal("x2", 0, 1)
                .normal("x3", 0, 1)
                .normal("x4", 0, 1);
        assertInterval(y.firstOrder(0.95), 2, 3.92, 0.005);
        assertInterval(y.monteCarlo(0.95, MILLION, 91), 2, 3.92, 0.02);
        assertThat(y.compare(0.95, MILLION, 91).verdict()).isEqualTo(MeasurandComparison.Verdict.AGREE);
    }

    /**
     * The distribution function of a sum of independent rectangles of half widths aᵢ: Σ over all signs e of Π eᵢ ·
     * max(0, y + Σ eᵢ aᵢ)ⁿ, over n! Π 2 aᵢ.
     */
    private static double sumOfRectanglesCdf(double y, double... half) {
        int n = half.length;
        double sum = 0;
        double scale = 1;
        for (int signs = 0; signs < 1 << n; signs++) {
            double shifted = y;
            int product = 1;
            for (int i = 0; i < n; i++) {
                int sign = (signs >> i & 1) == 0 ? 1 : -1;
                shifted += sign * half[i];
                product *= sign;
            }
            sum += product * Math.pow(Math.max(0, shifted), n);
        }
        for (int i = 0; i < n; i++) {
            scale *= (i + 1) * 2 * half[i];
        }
        return sum / scale;
    }

    /**
     * Four rectangles of standard deviation 1: ±3.920 to first order (1.96 · 2), ±3.879 exactly by the closed form.
     * JCGM 101:2008, 9.2.3 gives ±3.92 and ±3.88 (from memory).
     */
    @Test
    void additiveModelOfRectangles() {
        double root = Math.sqrt(3);
        assertThat(sumOfRectanglesCdf(3.8794, root, root, root, root)).isCloseTo(0.975, within(1e-6));
        Measurand y = Measurand.of(MeasurandTest::sum)
                .input("x1", UNIT_RECTANGLE)
                .input("x2", UNIT_RECTANGLE)
                .input("x3", UNIT_RECTANGLE)
                .input("x4", UNIT_RECTANGLE);
        assertInterval(y.firstOrder(0.95), 2, 3.92, 0.005);
        assertInterval(y.monteCarlo(0.95, MILLION, 92), 2, 3.8794, 0.012);
    }

    /**
     * One rectangle of standard deviation 10 besides three of 1: √103 = 10.149 and ±19.89 to first order, ±17.016
     * exactly by the closed form. The case is that of JCGM 101:2008, 9.2.4 (from memory); its rounded figures are not
     * quoted, as its text was not at hand.
     */
    @Test
    void additiveModelWithOneDominantRectangle() {
        double root = Math.sqrt(3);
        assertThat(sumOfRectanglesCdf(17.0158, root, root, root, 10 * root)).isCloseTo(0.975, within(1e-6));
        Measurand y = Measurand.of(MeasurandTest::sum)
                .input("x1", UNIT_RECTANGLE)
                .input("x2", UNIT_RECTANGLE)
                .input("x3", UNIT_RECTANGLE)
                .input("x4", new Distribution.Uniform(-10 * root, 10 * root));
        assertInterval(y.firstOrder(0.95), Math.sqrt(103), 1.959964 * Math.sqrt(103), 0.005);
        assertInterval(y.monteCarlo(0.95, MILLION, 93), Math.sqrt(103), 17.0158, 0.05);
        assertThat(y.compare(0.95, MILLION, 93).verdict()).isEqualTo(MeasurandComparison.Verdict.DISAGREE);
    }

    /** s = v t + v²/(2a): the contributions are the partial derivatives times the uncertainties, up to third order. */
    @Test
    void stoppingDistance() {
        Measurand distance = Measurand.of(x -> StopKernel.stoppingDistanceM(x[0], x[1], 0, x[2]))
                .normal("speed_mps", 25, 0.1)
                .normal("reaction_s", 1, 0.05)
                .normal("decel_mps2", 7, 0.05);
        double[] derivatives = {1 + 25 / 7.0, 25, -625 / (2 * 49.0)};
        double[] u = {0.1, 0.05, 0.05};
        double square = 0;
        for (int i = 0; i < 3; i++) {
            assertThat(distance.contributions().get(i).contribution()).isCloseTo(derivatives[i] * u[i], within(1e-3));
            square += Math.pow(derivatives[i] * u[i], 2);
        }
        MeasurandComparison both = distance.compare(0.95, MILLION, 94);
        assertThat(both.firstOrder().value()).isCloseTo(25 + 625 / 14.0, within(1e-12));
        assertThat(both.firstOrder().standardUncertainty()).isCloseTo(Math.sqrt(square), within(2e-3));
        assertThat(both.monteCarlo().standardUncertainty()).isCloseTo(Math.sqrt(square), within(0.01));
        assertThat(both.verdict()).isEqualTo(MeasurandComparison.Verdict.AGREE);
        // a driver's spread of reaction times is no small uncertainty: first order fails, and says so
        Measurand driver = Measurand.of(x -> StopKernel.stoppingDistanceM(25, x[0], 0, 7))
                .input("reaction_s", new Distribution.LogNormal(0.17, 0.44));
        MeasurandComparison wide = driver.compare(0.95, MILLION, 95);
        assertThat(wide.verdict()).isEqualTo(MeasurandComparison.Verdict.DISAGREE);
        // mean of a log-normal times 25 m/s, and its quantile
        assertThat(wide.firstOrder().value() - 625 / 14.0)
                .isCloseTo(25 * Math.exp(0.17 + 0.44 * 0.44 / 2), within(1e-2));
        assertThat(wide.monteCarlo().coverage().hi() - 625 / 14.0)
                .isCloseTo(25 * Math.exp(0.17 + 0.44 * 1.959964), within(0.4));
    }

    /** Distance gained by a faster lamp, v (t₁ − t₂): linear in the times, a product with the speed. */
    @Test
    void distanceGained() {
        Measurand gained = Measurand.of(x -> x[0] * (x[1] - x[2]))
                .normal("speed_mps", 25, 0.3)
                .normal("latency_filament_s", 0.2, 0.01)
                .normal("latency_led_s", 0.01, 0.002);
        double exact = Math.sqrt(Math.pow(0.19 * 0.3, 2) + 625 * (1e-4 + 4e-6) + 0.09 * (1e-4 + 4e-6));
        MeasurandComparison both = gained.compare(0.95, MILLION, 96);
        assertThat(both.firstOrder().value()).isCloseTo(4.75, within(1e-12));
        assertThat(both.firstOrder().standardUncertainty()).isCloseTo(exact, within(1e-4));
        assertThat(both.monteCarlo().standardUncertainty()).isCloseTo(exact, within(1e-3));
        assertThat(both.verdict()).isEqualTo(MeasurandComparison.Verdict.AGREE);
        assertThat(both.firstOrder().toString()).isEqualTo("4.75, standard uncertainty 0.26, [4.24, 5.26] at 95 %");
    }

    /**
     * JCGM 100:2008, 7.2.6 (from memory): the uncertainty to two digits, the estimate to the same place; its example of
     * 7.2.2 is a mass of 100.021 47 g with 0.35 mg.
     */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "100.02147 | 0.00035 | '100.02147, standard uncertainty 0.00035, [100.02078, 100.02216] at 95 %'",
                "51234567 | 345678 | '5.123E+7, standard uncertainty 3.5E+5, [5.056E+7, 5.191E+7] at 95 %'",
                "51234567 | 3.4567 | '51234567.0, standard uncertainty 3.5, [51234560.2, 51234573.8] at 95 %'",
                "10.05762 | 0.0274 | '10.058, standard uncertainty 0.027, [10.004, 10.111] at 95 %'",
                "1234.5 | 99.7 | '1230, standard uncertainty 100, [1040, 1430] at 95 %'"
            })
    void valueAndEndsAreRoundedToThePlaceOfTheUncertainty(double value, double u, String text) {
        double half = 1.96 * u;
        Interval interval = new Interval(value - half, value + half, 0.95);
        assertThat(new Measurand.Estimate(value, u, interval)).hasToString(text);
    }

    @Test
    void estimateRefusesWhatIsNoNumber() {
        Interval interval = new Interval(1, 2, 0.95);
        assertThatThrownBy(() -> new Measurand.Estimate(Double.NaN, 1, interval))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageEndingWith(", got NaN and 1");
        assertThatThrownBy(() -> new Measurand.Estimate(1, -1, interval)).hasMessageEndingWith(", got 1 and -1");
    }

    /** f = x with u = 9.9: both ways are the same, and 10⁴ draws cannot show it. */
    @Test
    void tooFewDrawsLeaveItUndecided() {
        Measurand same = Measurand.of(x -> x[0]).normal("x", 0, 9.9);
        for (long seed = 0; seed < 20; seed++) {
            MeasurandComparison few = same.compare(0.95, 10_000, seed);
            assertThat(few.verdict()).isNotEqualTo(MeasurandComparison.Verdict.DISAGREE);
        }
        MeasurandComparison few = same.compare(0.95, 10_000, 97);
        assertThat(few.verdict()).isEqualTo(MeasurandComparison.Verdict.UNDECIDED);
        assertThat(few.tolerance()).isCloseTo(0.05, within(1e-15));
        // √(p(1 − p)/n) over the density at the quantile
        double z = 1.959964;
        double density = Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI) / 9.9;
        double scatter = Math.sqrt(0.025 * 0.975 / 10_000) / density;
        assertThat(few.loScatter()).isCloseTo(scatter, within(0.25 * scatter));
        assertThat(few.hiScatter()).isCloseTo(scatter, within(0.25 * scatter));
        assertThat(few.drawsForStableEnds()).isBetween(1e7, 1e8);
        assertThat(few.toString()).contains("; tolerance 0.05, undecided: the Monte Carlo ends scatter by 0.");
    }

    /** The stated scatter of the ends against that of 200 repetitions, for a skew result. */
    @Test
    void scatterOfTheEndsIsThatOfRepetitions() {
        Measurand skew = Measurand.of(x -> x[0]).input("x", new Distribution.LogNormal(0, 0.8));
        Moments lo = new Moments();
        Moments hi = new Moments();
        double loStated = 0;
        double hiStated = 0;
        for (int k = 0; k < 200; k++) {
            MeasurandComparison one = skew.compare(0.95, 4000, k);
            lo.add(one.monteCarlo().coverage().lo());
            hi.add(one.monteCarlo().coverage().hi());
            loStated += one.loScatter() / 200;
            hiStated += one.hiScatter() / 200;
        }
        assertThat(loStated / lo.standardDeviation()).isBetween(0.85, 1.15);
        assertThat(hiStated / hi.standardDeviation()).isBetween(0.85, 1.15);
    }

    /** Closed forms of a log-normal: mean e^(μ + σ²/2), standard deviation that times √(e^(σ²) − 1). */
    @Test
    void logNormalInputsHaveTheirOwnUncertainty() {
        for (double sigma : new double[] {0.1, 1, 2, 3, 5}) {
            Measurand y = Measurand.of(x -> 2 * x[0]).input("x", new Distribution.LogNormal(0.3, sigma));
            double mean = Math.exp(0.3 + sigma * sigma / 2);
            double u = mean * Math.sqrt(Math.exp(sigma * sigma) - 1);
            assertThat(y.firstOrder(0.95).value()).isCloseTo(2 * mean, within(1e-12 * mean));
            assertThat(y.firstOrder(0.95).standardUncertainty()).isCloseTo(2 * u, within(1e-10 * u));
        }
    }

    /** u = 0.0996 is 0.10 to two digits, so δ = 0.005 and not 0.0005; u = 0.0994 is 0.099. */
    @Test
    void toleranceFollowsTheRoundedUncertainty() {
        assertThat(tolerance(0.0997)).isCloseTo(0.005, within(1e-15));
        assertThat(tolerance(0.0985)).isCloseTo(0.0005, within(1e-15));
        assertThat(tolerance(12.6)).isCloseTo(0.5, within(1e-15));
    }

    // a rectangle's standard deviation is that of a million even points within 10⁻³
    private static double tolerance(double u) {
        return Measurand.of(x -> u * x[0])
                .input("x", UNIT_RECTANGLE)
                .compare(0.95, MILLION, 98)
                .tolerance();
    }

    @Test
    void aFunctionThatGivesNoNumberIsNamed() {
        Measurand root =
                Measurand.of(x -> Math.sqrt(x[0]) + x[1]).normal("x_m", 1, 0.5).normal("y_m", 0, 1);
        assertThatThrownBy(() -> root.monteCarlo(0.95, 10_000, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("the function must give a finite number for every input, got NaN at x_m=-0.");
        Measurand wide = Measurand.of(x -> Math.sqrt(x[0])).normal("x_m", 1, 2);
        assertThatThrownBy(() -> wide.firstOrder(0.95))
                .hasMessage("the function must give a finite number for every input, got NaN at x_m=-1");
        Measurand never = Measurand.of(x -> StopKernel.stoppingDistanceM(25, 1, 0, Math.max(0, x[0])))
                .normal("decel_mps2", 0.5, 1);
        assertThatThrownBy(() -> never.compare(0.95, 10_000, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("the function must give a finite number for every input, got "
                        + Numbers.text(Double.POSITIVE_INFINITY) + " at decel_mps2=-0.5");
    }

    @Test
    void badInputIsNamed() {
        Measurand y = Measurand.of(MeasurandTest::sum);
        assertThatThrownBy(() -> y.normal("x", 0, 0))
                .hasMessage("standard uncertainty of x must be in (0, 1e9], got 0");
        assertThatThrownBy(() -> y.normal("x", 0, 1).monteCarlo(0.95, 10, 1))
                .hasMessage("draws must be in [1000, 2e7], got 10");
        assertThatThrownBy(() -> y.normal("x", 0, 1).firstOrder(0.3))
                .hasMessage("confidence must be in [0.5, 1), got 0.3");
    }
}
