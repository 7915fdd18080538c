package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.chance.ArcSine;
import io.github.stoplag.chance.CurvilinearTrapezoidal;
import io.github.stoplag.chance.Distribution;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The worked examples of the Guide and of its first supplement: {@code guide_examples.csv} says which were seen. */
class GuideExamplesTest {
    private static final int MILLION = 1_000_000;
    private static final Map<String, double[]> PUBLISHED = read();
    private static final Set<String> CHECKED = new HashSet<>();

    private static Map<String, double[]> read() {
        try (InputStream in = GuideExamplesTest.class.getResourceAsStream("guide_examples.csv")) {
            Map<String, double[]> rows = new TreeMap<>();
            new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> line.split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", -1))
                    .forEach(cells -> rows.put(
                            cells[0] + ": " + cells[1].replace("\"", ""),
                            new double[] {Double.parseDouble(cells[2]), Double.parseDouble(cells[3])}));
            return rows;
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void check(String example, String quantity, double computed) {
        String key = example + ": " + quantity;
        double[] row = Objects.requireNonNull(PUBLISHED.get(key), key);
        assertThat(computed).as(key).isCloseTo(row[0], within(row[1]));
        CHECKED.add(key);
    }

    @AfterAll
    static void everyFigureIsChecked() {
        assertThat(CHECKED).isEqualTo(PUBLISHED.keySet());
    }

    /** l = l_s + d − l_s (δα θ + α_s δθ), the end gauge of H.1, with all its degrees of freedom. */
    @Test
    void endGauge() {
        Measurand length = gauge(0).student("l_s", 50_000_623, 25, 18)
                .student("d", 215, 5.8, 24)
                .student("d1", 0, 3.9, 5)
                .student("d2", 0, 6.7, 8)
                .input("alpha_s", new Distribution.Uniform(9.5e-6, 13.5e-6))
                .normal("theta", -0.1, 0.2)
                .input("cycle", new ArcSine(-0.5, 0.5))
                .student("delta_alpha", 0, 1e-6 / Math.sqrt(3), 50)
                .student("delta_theta", 0, 0.05 / Math.sqrt(3), 2);
        UncertaintyBudget budget = length.budget(0.99);
        check("H.1", "value", budget.estimate().value());
        check("H.1", "standard uncertainty", budget.estimate().standardUncertainty());
        check("H.1", "degrees of freedom", budget.degreesOfFreedom());
        check("H.1", "expanded at 99 %", budget.expanded());
        assertThat(budget.toString())
                .startsWith("50000838 ± 93 at 99 % (k = 2.92, Student's t with 16 degrees of freedom;"
                        + " standard uncertainty 32)\n  l_s: 25 from a standard uncertainty of 25\n  d: 5.8 from");
        // α_s, θ and the cycle have no slope: their partners are zero at the estimate
        assertThat(budget.contributions().get(4).contribution()).isZero();
        assertThat(length.contributionsByHolding(10_000, 1).get(4).contribution())
                .isZero();
        assertThat(budget.contributions().get(8).coefficient()).isCloseTo(-50_000_623 * 11.5e-6, within(1e-6));
    }

    private static Measurand gauge(double nominal) {
        return Measurand.of(x -> x[0] + x[1] + x[2] + x[3] - x[0] * (x[7] * (x[5] + x[6]) + x[4] * x[8]) - nominal);
    }

    /** Five readings of voltage, current and phase at once. */
    @Test
    void resistanceAndReactance() {
        double[] volt = {5.007, 4.994, 5.005, 4.990, 4.999};
        double[] ampere = {19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3};
        double[] phase = {1.0456, 1.0438, 1.0468, 1.0428, 1.0433};
        List<String> names = List.of("V", "I", "phi");
        Measurand r = Measurand.of(x -> x[0] / x[1] * Math.cos(x[2])).readings(names, volt, ampere, phase);
        Measurand x = Measurand.of(at -> at[0] / at[1] * Math.sin(at[2])).readings(names, volt, ampere, phase);
        Measurand z = Measurand.of(at -> at[0] / at[1]).readings(names, volt, ampere, phase);
        Measurand[] all = {r, x, z};
        String[] name = {"R", "X", "Z"};
        for (int i = 0; i < 3; i++) {
            Measurand.Estimate first = all[i].firstOrder(0.95);
            check("H.2", name[i], first.value());
            check("H.2", "u(" + name[i] + ")", first.standardUncertainty());
            for (int j = i + 1; j < 3; j++) {
                check("H.2", "r(" + name[i] + "," + name[j] + ")", all[i].correlationWith(all[j]));
            }
            // the second way of H.2.4: the result of each set of readings, and their mean
            double[] sets = new double[5];
            Measurand one = all[i];
            Arrays.setAll(sets, k -> one.at(volt[k], ampere[k], phase[k]));
            Moments moments = new Moments();
            moments.add(sets, 5);
            assertThat(first.value()).isCloseTo(moments.mean(), within(2e-3));
            assertThat(first.standardUncertainty()).isCloseTo(moments.standardDeviation() / Math.sqrt(5), within(2e-3));
            assertThat(one.budget(0.95).degreesOfFreedom()).isCloseTo(4, within(1e-9));
            assertThat(one.budget(0.95).coverageFactor()).isCloseTo(2.776, within(5e-4));
        }
        // normal inputs with the same correlations drawn together
        Measurand joint = Measurand.of(at -> at[0] / at[1] * Math.cos(at[2]))
                .normal("V", 4.999, 3.2e-3)
                .normal("I", 19.661e-3, 9.5e-6)
                .normal("phi", 1.04446, 7.5e-4)
                .correlate("V", "I", -0.36)
                .correlate("V", "phi", 0.86)
                .correlate("I", "phi", -0.65);
        Measurand.Estimate drawn = joint.monteCarlo(0.95, 200_000, 5);
        assertThat(drawn.value()).isCloseTo(127.732, within(0.001));
        assertThat(drawn.standardUncertainty()).isCloseTo(joint.firstOrder(0.95).standardUncertainty(), within(0.0005));
        // from the rounded figures of the Guide's table, not from its readings
        assertThat(drawn.standardUncertainty()).isCloseTo(0.071, within(0.0015));
    }

    @ParameterizedTest
    @CsvSource({"9.2.2, normal, 1", "9.2.3, rectangle, 1", "9.2.4, rectangle, 10"})
    void additiveModels(String example, String shape, double last) {
        Measurand y = Measurand.of(x -> x[0] + x[1] + x[2] + x[3]);
        for (int i = 0; i < 4; i++) {
            double u = i == 3 ? last : 1;
            double half = u * Math.sqrt(3);
            y = shape.equals("normal")
                    ? y.normal("x" + i, 0, u)
                    : y.input("x" + i, new Distribution.Uniform(-half, half));
        }
        Measurand.Estimate drawn = y.monteCarlo(0.95, MILLION, 922);
        check(example, "Monte Carlo u", drawn.standardUncertainty());
        check(example, "Monte Carlo hi", drawn.coverage().hi());
        assertThat(y.firstOrder(0.95).standardUncertainty()).isCloseTo(Math.sqrt(3 + last * last), within(1e-4));
    }

    /** Mass against a reference in air; the densities have no slope and a joint effect. */
    @Test
    void massCalibration() {
        Measurand mass = Measurand.of(x -> (x[0] + x[1]) * (1 + (x[2] - 1.2) * (1 / x[3] - 1 / x[4])) - 100_000)
                .normal("m_R_mg", 100_000, 0.05)
                .normal("dm_R_mg", 1.234, 0.02)
                .input("air_density", new Distribution.Uniform(1.1, 1.3))
                .input("density", new Distribution.Uniform(7000, 9000))
                .input("reference_density", new Distribution.Uniform(7950, 8050));
        check("9.3", "first order u", mass.firstOrder(0.95).standardUncertainty());
        Measurand.Estimate shortest = mass.monteCarloShortest(0.95, MILLION, 93);
        check("9.3", "Monte Carlo u", shortest.standardUncertainty());
        check("9.3", "shortest lo", shortest.coverage().lo());
        check("9.3", "shortest hi", shortest.coverage().hi());
        assertThat(mass.compare(0.95, MILLION, 93).verdict()).isEqualTo(MeasurandComparison.Verdict.DISAGREE);
    }

    /** δY = X₁² + X₂²; the moments are known: x₁² + 2u² and 4 x₁² u² + 4 u⁴ (1 + r²). */
    @ParameterizedTest
    @CsvSource({"0, 0", "0.01, 0", "0.05, 0", "0, 0.9", "0.01, 0.9", "0.05, 0.9"})
    void comparisonLoss(String x1, String r) {
        double u = 0.005;
        double at = Double.parseDouble(x1);
        double correlation = Double.parseDouble(r);
        Measurand loss = Measurand.of(x -> x[0] * x[0] + x[1] * x[1])
                .normal("x1", at, u)
                .normal("x2", 0, u)
                .correlate("x1", "x2", correlation);
        Measurand.Estimate shortest = loss.monteCarloShortest(0.95, MILLION, 94);
        String example = "9.4 x1=" + x1 + " r=" + r;
        check(example, "Monte Carlo value", shortest.value());
        check(example, "Monte Carlo u", shortest.standardUncertainty());
        check(example, "shortest hi", shortest.coverage().hi());
        double exact = Math.sqrt(4 * at * at * u * u + 4 * Math.pow(u, 4) * (1 + correlation * correlation));
        assertThat(shortest.standardUncertainty()).isCloseTo(exact, within(0.005 * exact));
        // the first-order way sees the slope 2 x₁ alone
        assertThat(loss.firstOrder(0.95).standardUncertainty()).isCloseTo(2 * at * u, within(1e-15));
        // held one by one, each input shows its own part: √(4 x² u² + 2 u⁴)
        assertThat(Math.abs(loss.contributionsByHolding(100_000, 1).get(0).contribution()))
                .isCloseTo(Math.sqrt(4 * at * at * u * u + 2 * Math.pow(u, 4)), within(1e-6 + 0.01 * at * u));
    }

    /** The gauge of H.1 with the laws of the supplement: t, rectangle, normal, arcsine, curvilinear trapezoid. */
    @Test
    void gaugeBlock() {
        Measurand firstOrder = gauge(50_000_000)
                .student("L_s", 50_000_623, 25, 18)
                .student("D", 215, 6, 24)
                .student("d1", 0, 4, 5)
                .student("d2", 0, 7, 8)
                .input("alpha_s", new Distribution.Uniform(9.5e-6, 13.5e-6))
                .normal("theta_0", -0.1, 0.2)
                .input("cycle", new ArcSine(-0.5, 0.5))
                .student("delta_alpha", 0, 1e-6 / Math.sqrt(3), 50)
                .student("delta_theta", 0, 0.05 / Math.sqrt(3), 2);
        UncertaintyBudget budget = firstOrder.budget(0.99);
        check("9.5", "first order value", budget.estimate().value());
        check("9.5", "first order u", budget.estimate().standardUncertainty());
        check("9.5", "first order lo", budget.estimate().coverage().lo());
        check("9.5", "first order hi", budget.estimate().coverage().hi());
        Measurand laws = gauge(50_000_000)
                .student("L_s", 50_000_623, 25, 18)
                .student("D", 215, 6, 24)
                .student("d1", 0, 4, 5)
                .student("d2", 0, 7, 8)
                .input("alpha_s", new Distribution.Uniform(9.5e-6, 13.5e-6))
                .normal("theta_0", -0.1, 0.2)
                .input("cycle", new ArcSine(-0.5, 0.5))
                .input("delta_alpha", new CurvilinearTrapezoidal(-1e-6, 1e-6, 0.1e-6), 50)
                .input("delta_theta", new CurvilinearTrapezoidal(-0.05, 0.05, 0.025), 2);
        Measurand.Estimate drawn = laws.monteCarloShortest(0.99, MILLION, 95);
        check("9.5", "Monte Carlo value", drawn.value());
        check("9.5", "Monte Carlo u", drawn.standardUncertainty());
        check("9.5", "shortest lo", drawn.coverage().lo());
        check("9.5", "shortest hi", drawn.coverage().hi());
    }
}
