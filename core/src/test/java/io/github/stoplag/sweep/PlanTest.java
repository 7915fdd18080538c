package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.Empirical;
import io.github.stoplag.chance.StandardNormal;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlanTest {
    private static final Distribution UNIT = new Distribution.Uniform(0, 1);

    private static double[][] values(Plan plan, int count) {
        double[][] columns = new double[plan.axes().size()][count];
        plan.scenarios().fill(0, count, columns);
        return columns;
    }

    @Test
    void gridHasEveryCombinationOnceFirstAxisSlowest() {
        Plan plan = Plan.of(Design.grid(), 1)
                .axis(Axis.list("speed", "mps", 10, 20))
                .axis(Axis.constant("reaction", "s", 1.5))
                .axis(Axis.range("gap", "m", 5, 15, 3));
        assertThat(plan.size()).isEqualTo(6);
        double[][] columns = values(plan, 6);
        assertThat(columns[0]).containsExactly(10, 10, 10, 20, 20, 20);
        assertThat(columns[1]).containsOnly(1.5);
        assertThat(columns[2]).containsExactly(5, 10, 15, 5, 10, 15);
        assertThat(plan.columns()).containsExactly("speed_mps", "reaction_s", "gap_m");
    }

    @Test
    void repeatedGridDrawsAnewInEachCombination() {
        Plan plan = Plan.of(Design.grid(1000), 2)
                .axis(Axis.list("speed", "mps", 10, 20, 30))
                .axis(Axis.drawn("share", "", UNIT));
        double[][] columns = values(plan, 3000);
        assertThat(columns[0][999]).isEqualTo(10);
        assertThat(columns[0][1000]).isEqualTo(20);
        assertThat(Arrays.stream(columns[1]).distinct().count()).isEqualTo(3000);
    }

    @Property(tries = 60, seed = "51")
    void latinHypercubeHasOneInEveryStratumOfEveryAxis(
            @ForAll @IntRange(min = 1, max = 3000) int n, @ForAll long seed) {
        Plan plan = Plan.of(Design.latinHypercube(n), seed)
                .axis(Axis.drawn("a", "", UNIT))
                .axis(Axis.drawn("b", "", UNIT));
        for (double[] column : values(plan, n)) {
            Set<Integer> strata = new HashSet<>();
            for (double u : column) {
                assertThat(u).isBetween(0x1p-53, 1 - 0x1p-53);
                strata.add((int) Math.floor(u * n * (1 + 1e-12) - 1e-12));
            }
            assertThat(strata).hasSizeGreaterThanOrEqualTo(n - 1);
        }
    }

    /** A correlated pair keeps one draw in every stratum of both axes, and its correlation. */
    @ParameterizedTest
    @CsvSource({"20000, 0.6", "20000, -0.95", "999, 0.3", "1, 0.5", "20000, 1"})
    void latinHypercubeKeepsTheStrataOfCorrelatedAxes(int n, double rho) {
        Plan plan = Plan.of(Design.latinHypercube(n), 53)
                .axis(Axis.drawn("a", "", UNIT))
                .axis(Axis.drawn("b", "", UNIT))
                .axis(Axis.drawn("c", "", UNIT))
                .correlate("a", "c", rho);
        double[][] columns = values(plan, n);
        for (double[] column : columns) {
            assertThat(Arrays.stream(column).mapToLong(u -> (long) (u * n)).distinct())
                    .hasSize(n);
        }
        if (n > 1) {
            double[][] scores = Arrays.stream(columns)
                    .map(column ->
                            Arrays.stream(column).map(StandardNormal::quantile).toArray())
                    .toArray(double[][]::new);
            // four standard errors (1 − ρ²)/√n; the strata can only make it narrower
            double error = 4 * (1 - rho * rho) / Math.sqrt(n) + 1e-3;
            assertThat(new PearsonsCorrelation().correlation(scores[0], scores[2]))
                    .isCloseTo(rho, within(error));
        }
        // any scenario alone as in the whole
        assertThat(plan.scenarios().at(n / 2)[2]).isEqualTo(columns[2][n / 2]);
        assertThatThrownBy(
                        () -> plan.withDesign(Design.latinHypercube(20_000_000)).scenarios())
                .hasMessage(
                        "a Latin hypercube with correlated axes must have at most 16777216 scenarios, got 20000000");
    }

    @Test
    void correlationRefusesWhatIsNoNumberInItsRange() {
        for (double rho : new double[] {Double.NaN, 1.01, -2}) {
            assertThatThrownBy(() -> new Plan.Correlation("a", "b", rho))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("correlation of a and b must be in [-1, 1], got ");
        }
    }

    @Property(tries = 60, seed = "52")
    void keyedOrderIsAPermutation(@ForAll @IntRange(min = 1, max = 5000) int n, @ForAll long key) {
        Permutation permutation = new Permutation(n, key);
        boolean[] met = new boolean[n];
        for (int i = 0; i < n; i++) {
            int to = (int) permutation.at(i);
            assertThat(met[to]).isFalse();
            met[to] = true;
        }
    }

    @Test
    void sobolPointsAreThoseOfTheLibrary() {
        int axes = 12;
        SobolSequenceGenerator library = new SobolSequenceGenerator(axes);
        SobolPoints own = new SobolPoints(axes);
        double[][] columns = new double[axes][4096];
        for (int d = 0; d < axes; d++) {
            own.fill(d, 0, 0, 4096, columns[d]);
        }
        for (int i = 0; i < 4096; i++) {
            double[] point = library.nextVector();
            for (int d = 0; d < axes; d++) {
                assertThat(columns[d][i]).isCloseTo(point[d], within(0x1p-52));
            }
        }
        double[] far = new double[3];
        own.fill(7, 0, 1_000_000_007L, 3, far);
        assertThat(far[0]).isCloseTo(library.skipTo(1_000_000_007)[7], within(0x1p-52));
        own.fill(7, 0, Integer.MAX_VALUE, 1, far);
        assertThat(far[0]).isCloseTo(library.skipTo(Integer.MAX_VALUE)[7], within(0x1p-52));
    }

    @Test
    void shiftedSobolStillStratifiesAndIntegratesBetterThanChance() {
        int n = 1 << 14;
        double worst = 0;
        for (int replicate = 0; replicate < 8; replicate++) {
            Plan plan = Plan.of(Design.sobol(n), 5).replicate(replicate);
            for (int d = 0; d < 6; d++) {
                plan = plan.axis(Axis.drawn("x" + d, "", UNIT));
            }
            double[][] columns = values(plan, n);
            double sum = 0;
            for (int i = 0; i < n; i++) {
                double product = 1;
                for (double[] column : columns) {
                    product *= 1 + (column[i] - 0.5);
                }
                sum += product;
            }
            worst = Math.max(worst, Math.abs(sum / n - 1));
        }
        // exact integral 1; the standard error of independent draws is √(((1 + 1/12)⁶ − 1)/n) = 0.0062
        assertThat(worst).isLessThan(0.0062 / 5);
    }

    @Property(tries = 40, seed = "53")
    void anyStretchHasTheSameBits(
            @ForAll @IntRange(min = 0, max = 3) int kind,
            @ForAll @LongRange(min = 0, max = 70_000) long first,
            @ForAll @IntRange(min = 1, max = 300) int count) {
        Design design = switch (kind) {
            case 0 -> Design.grid(8000);
            case 1 -> Design.random(80_000);
            case 2 -> Design.latinHypercube(80_000);
            default -> Design.sobol(80_000);
        };
        Plan plan = Plan.of(design, 54)
                .axis(Axis.range("level", "", 1, 10, 10))
                .axis(Axis.drawn("a", "s", new Distribution.LogNormal(0.1, 0.4)))
                .axis(Axis.drawn("b", "mps2", new Distribution.TruncatedNormal(7, 1, 2, 9)))
                .axis(Axis.drawn("c", "m", Empirical.of(1, 2, 5)))
                .correlate("a_s", "c_m", 0.6);
        double[][] whole = new double[4][count];
        plan.scenarios().fill(first, count, whole);
        for (int i = 0; i < count; i += 37) {
            double[] one = plan.scenarios().at(first + i);
            for (int a = 0; a < 4; a++) {
                assertThat(one[a]).isEqualTo(whole[a][i]);
            }
        }
    }

    @Test
    void copulaKeepsTheDistributionsAndHasItsCorrelation() {
        int n = 200_000;
        Plan plan = Plan.of(Design.random(n), 55)
                .axis(Axis.drawn("a", "", new Distribution.LogNormal(0, 0.5)))
                .axis(Axis.drawn("b", "", UNIT))
                .correlate("a", "b", -0.7)
                .withExactQuantiles();
        double[][] columns = values(plan, n);
        double[] z1 = Arrays.stream(columns[0]).map(x -> Math.log(x) / 0.5).toArray();
        double[] z2 = Arrays.stream(columns[1]).map(StandardNormal::quantile).toArray();
        // standard error (1 − ρ²)/√n = 0.0011
        assertThat(new PearsonsCorrelation().correlation(z1, z2)).isCloseTo(-0.7, within(0.005));
        assertThat(Arrays.stream(columns[1]).average().orElseThrow()).isCloseTo(0.5, within(0.003));
        assertThat(Arrays.stream(z2).map(z -> z * z).average().orElseThrow()).isCloseTo(1, within(0.015));
    }

    @Test
    void tablesGiveTheExactValuesToTheirAccuracy() {
        Plan plan = Plan.of(Design.random(50_000), 56)
                .axis(Axis.drawn("a", "s", new Distribution.LogNormal(0.1, 0.4)))
                .axis(Axis.drawn("b", "mps2", new Distribution.TruncatedNormal(7, 1, 2, 9)));
        double[][] fast = values(plan, 50_000);
        double[][] exact = values(plan.withExactQuantiles(), 50_000);
        for (int i = 0; i < 50_000; i++) {
            assertThat(fast[0][i]).isCloseTo(exact[0][i], within(2e-9 * exact[0][i]));
            assertThat(fast[1][i]).isCloseTo(exact[1][i], within(2e-6 * exact[1][i]));
        }
    }

    /** Products that leave the range of long: 0 and below 0 there. */
    @Test
    void gridsBeyondAllCountingAreRefused() {
        Plan least = Plan.of(Design.grid(1L << 48), 1);
        assertThat(least.axis(Axis.constant("x", "", 1)).size()).isEqualTo(1L << 48);
        assertThat(Plan.of(Design.grid(1L << 32), 1)
                        .axis(Axis.range("x", "", 0, 1, 1 << 16))
                        .size())
                .isEqualTo(1L << 48);
        for (Plan plan : new Plan[] {
            least.axis(Axis.range("x", "", 0, 1, 65_536)),
            Plan.of(Design.grid(1L << 44), 1).axis(Axis.range("x", "", 0, 1, 1_000_000)),
            least.axis(Axis.list("x", "", 1, 2))
        }) {
            assertThatThrownBy(plan::size)
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("a grid must have at most 2^48 scenarios, got more with axes [x]");
        }
    }

    @Test
    void badPlansAreNamed() {
        Plan plan = Plan.of(Design.random(10), 1).axis(Axis.constant("gap", "m", 5));
        assertThatThrownBy(() -> plan.axis(Axis.constant("gap", "m", 6)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("axes must have different columns, got gap_m beside [gap_m]");
        assertThatThrownBy(() -> plan.correlate("gap_m", "x", 0.5))
                .hasMessage("a correlation must join two drawn axes of [gap_m] that are in no other, got gap_m and x");
        assertThatThrownBy(() -> plan.correlate("gap_m", "x", 1.5))
                .hasMessage("correlation of gap_m and x must be in [-1, 1], got 1.5");
        assertThatThrownBy(() -> Axis.list("Gap", "m", 1))
                .hasMessage("name and unit of an axis must be lower-case letters, digits and _, got \"Gap\" and \"m\"");
        assertThatThrownBy(() -> Axis.list("gap", "m", 1, Double.NaN))
                .hasMessage("axis gap_m must have 1 to 1000000 finite levels, got [1.0, NaN]");
        assertThatThrownBy(() -> Axis.range("gap", "m", 5, 5, 3))
                .hasMessage("range of axis gap_m must have lo < hi and 2 to 1000000 levels, got 5 to 5 in 3");
        assertThatThrownBy(() -> Design.sobol(1L << 32))
                .hasMessage("scenarios of a SOBOL design must be in [1, 2147483648], got 4294967296");
        assertThatThrownBy(() -> plan.scenarios().fill(5, 6, new double[1][6]))
                .hasMessage("scenarios must be in [0, 9], got 6 from 5 on");
        Plan full = plan;
        for (int i = 1; i < 400; i++) {
            full = full.axis(Axis.constant("x" + i, "", i));
        }
        Plan most = full;
        assertThatThrownBy(() -> most.axis(Axis.constant("y", "", 1)))
                .hasMessage("a plan must have at most 400 axes, got y as one more");
        assertThatThrownBy(() -> plan.chunkSize(1)).hasMessage("chunk must be in [0, 0], got 1");
    }
}
