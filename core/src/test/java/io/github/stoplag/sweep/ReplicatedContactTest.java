package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.chance.Distribution;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Scrambled replicates against a product of Gauss rules, and how often their intervals hold. */
class ReplicatedContactTest {
    /** {@code -Dstoplag.coverage.seeds=1000} for the long form. */
    private static final int SEEDS = Integer.getInteger("stoplag.coverage.seeds", 40);

    private static final int NODES = 18;
    private static final double RESPONDING = 0.72;

    // the shape of the shipped plan, invented
    private static final Plan PLAN = Plan.of(Design.random(1), 1)
            .axis(Axis.drawn("speed", "mps", new Distribution.TruncatedNormal(30.6, 3.3, 22.2, 38.9)))
            .axis(Axis.drawn("time_gap", "s", new Distribution.LogNormal(0.07, 0.42)))
            .axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(0.17, 0.44)))
            .axis(Axis.drawn("leader_decel", "mps2", new Distribution.TruncatedNormal(5.4, 0.7, 3.1, 7.8)))
            .axis(Axis.drawn("follower_decel", "mps2", new Distribution.TruncatedNormal(6.5, 1, 4, 9)))
            .axis(Axis.constant("brake_build_up", "s", 0.2))
            .axis(Axis.constant("lamp_latency_filament", "s", 0.2))
            .axis(Axis.constant("lamp_latency_led", "s", 0.01));
    private static double exact;
    private static double exactLed;

    /** E[F(g*)] as a product rule over the four scores, from −7.5 to 7.5 standard deviations or the ends of the law. */
    @BeforeAll
    static void quadrature() {
        ConditionalContact contact = ConditionalContact.of(PLAN, "filament", "led");
        Plan plan = contact.plan();
        List<String> names = plan.columns();
        double[][] columns = new double[names.size()][RowBlock.ROWS];
        double[][] inputs = contact.inputs().stream()
                .map(name -> columns[names.indexOf(name)])
                .toArray(double[][]::new);
        double[][] outputs = new double[4][RowBlock.ROWS];
        Model.Evaluator evaluator = contact.evaluator();
        Rejects rejects = new Rejects(names, RowBlock.ROWS);
        int[] nodes = {NODES, 3 * NODES, NODES, NODES};
        double[][] at = new double[4][];
        double[][] weight = new double[4][];
        for (int d = 0; d < 4; d++) {
            rule(plan.axes().get(d).distribution().orElseThrow(), nodes[d], d, at, weight);
        }
        for (int a = 4; a < names.size(); a++) {
            Arrays.fill(columns[a], plan.axes().get(a).level(0));
        }
        double[] product = new double[RowBlock.ROWS];
        int total = NODES * 3 * NODES * NODES * NODES;
        for (int from = 0; from < total; from += RowBlock.ROWS) {
            int count = Math.min(RowBlock.ROWS, total - from);
            for (int i = 0; i < count; i++) {
                int rest = from + i;
                product[i] = 1;
                for (int d = 0; d < 4; d++) {
                    columns[d][i] = at[d][rest % nodes[d]];
                    product[i] *= weight[d][rest % nodes[d]];
                    rest /= nodes[d];
                }
            }
            rejects.beginRows(from, columns);
            evaluator.evaluate(count, inputs, outputs, rejects);
            for (int i = 0; i < count; i++) {
                exact += product[i] * (outputs[0][i] - outputs[2][i]);
                exactLed += product[i] * outputs[2][i];
            }
        }
    }

    private static void rule(Distribution law, int nodes, int d, double[][] at, double[][] weight) {
        GaussIntegrator gauss = new GaussIntegratorFactory().legendre(nodes);
        at[d] = new double[nodes];
        weight[d] = new double[nodes];
        boolean bounded = law instanceof Distribution.TruncatedNormal;
        double lo = bounded ? law.quantile(0) : 0.17 - 7.5 * 0.44;
        double hi = bounded ? law.quantile(1) : 0.17 + 7.5 * 0.44;
        double sum = 0;
        for (int k = 0; k < nodes; k++) {
            double x = 0.5 * (lo + hi) + 0.5 * (hi - lo) * gauss.getPoint(k);
            double z = bounded ? score((Distribution.TruncatedNormal) law, x) : (x - 0.17) / 0.44;
            at[d][k] = bounded ? x : Math.min(30, Math.exp(x));
            weight[d][k] = gauss.getWeight(k) * Math.exp(-0.5 * z * z);
            sum += weight[d][k];
        }
        for (int k = 0; k < nodes; k++) {
            weight[d][k] /= sum;
        }
    }

    private static double score(Distribution.TruncatedNormal law, double x) {
        return (x - law.mean()) / law.standardDeviation();
    }

    @Test
    void replicatesAgreeWithQuadrature() {
        ReplicatedContact.Result result =
                ReplicatedContact.of(PLAN, "filament", "led").run(16, 1 << 13, 7);
        assertThat(result.differenceInterval("filament", "led", 0.999).contains(exact))
                .isTrue();
        assertThat(result.interval("led", 0.999).contains(exactLed)).isTrue();
        assertThat(result.difference("filament", "led").mean()).isCloseTo(exact, within(3e-5));
        assertThat(result.rejects()).isEmpty();
        assertThat(result.toString())
                .matches("(?s)filament: contact probability 0[.]4331[0-9]*, standard uncertainty 0[.]0000[0-9]*,"
                        + " \\[0[.]43.*\nfilament less led: 0[.]082.*\n16 scrambles of 8192 points, .*");
    }

    /** The long form asks for 93 to 97 % of 1,000 seeds; the short one for what 40 seeds can tell. */
    @Test
    void intervalsHoldAsOftenAsTheySay() {
        ReplicatedContact contact = ReplicatedContact.of(PLAN, "filament", "led");
        int fixed = 0;
        int wanted = 0;
        for (int seed = 0; seed < SEEDS; seed++) {
            fixed += contact.run(16, 1 << 9, seed)
                            .differenceInterval("filament", "led", 0.95)
                            .contains(exact)
                    ? 1
                    : 0;
            Interval interval =
                    contact.within("filament", "led", 3e-4, 0.95, seed).differenceInterval("filament", "led", 0.95);
            assertThat(interval.hi() - interval.lo()).isLessThanOrEqualTo(6e-4);
            wanted += interval.contains(exact) ? 1 : 0;
        }
        // three standard deviations of a binomial beside 93 to 97 %
        double slack = SEEDS >= 1000 ? 0 : 3 * Math.sqrt(0.95 * 0.05 / SEEDS);
        assertThat(fixed / (double) SEEDS).isBetween(0.93 - slack, 0.97 + slack);
        assertThat(wanted / (double) SEEDS).isBetween(0.93 - slack, 0.97 + slack);
    }

    /** The lamp does nothing for those who do not respond: the difference shrinks to the responding share of it. */
    @Test
    void respondingDriversAreWeighted() {
        Plan plan = PLAN.axis(Axis.drawn("responds", "ratio", new Distribution.Bernoulli(RESPONDING)));
        ReplicatedContact.Result all =
                ReplicatedContact.of(plan, "filament", "led").run(8, 1 << 10, 7);
        ReplicatedContact.Result responding =
                ReplicatedContact.of(PLAN, "filament", "led").run(8, 1 << 10, 7);
        assertThat(all.difference("filament", "led").mean()).isCloseTo(RESPONDING * exact, within(3e-4));
        assertThat(all.probability("led").mean())
                .isCloseTo(0.28 + RESPONDING * responding.probability("led").mean(), within(2e-3));
    }

    /** A product of linear functions: the error of a scramble falls as n^−1.5, of a shift as 1/n. */
    @Test
    void scramblesConvergeFasterThanShifts() {
        SobolPoints points = new SobolPoints(3);
        double[][] x = new double[3][1 << 12];
        double[][] deviation = new double[2][2];
        for (int size = 0; size < 2; size++) {
            int n = 1 << (6 + 6 * size);
            for (int kind = 0; kind < 2; kind++) {
                Moments moments = new Moments();
                for (int r = 0; r < 40; r++) {
                    for (int d = 0; d < 3; d++) {
                        long key = CounterRandom.of(31 + r).bits(kind, d);
                        if (kind == 0) {
                            points.fill(d, key, 0, n, x[d]);
                        } else {
                            points.fillScrambled(d, key, 0, n, x[d]);
                        }
                    }
                    double sum = 0;
                    for (int i = 0; i < n; i++) {
                        sum += (0.5 + x[0][i]) * (0.5 + x[1][i]) * (0.5 + x[2][i]);
                    }
                    moments.add(sum / n);
                }
                assertThat(moments.mean()).isCloseTo(1, within(0.01));
                deviation[kind][size] = moments.standardDeviation();
            }
        }
        assertThat(deviation[0][0] / deviation[0][1]).isBetween(20.0, 150.0);
        assertThat(deviation[1][0] / deviation[1][1]).isGreaterThan(180);
    }

    /** Every scramble of 2ᵏ points has one in each of 2ᵏ cells of each axis. */
    @Test
    void aScrambleKeepsItsStrata() {
        double[] x = new double[256];
        for (int d = 0; d < 5; d++) {
            new SobolPoints(5).fillScrambled(d, 0x9E3779B97F4A7C15L * (d + 1), 256, 256, x);
            assertThat(Arrays.stream(x)
                            .mapToInt(u -> (int) (256 * u))
                            .distinct()
                            .count())
                    .isEqualTo(256);
        }
    }

    @Test
    void refusals() {
        ReplicatedContact contact = ReplicatedContact.of(PLAN, "filament", "led");
        assertThatThrownBy(() -> contact.run(1, 64, 1)).hasMessage("replicates must be in [2, 1000], got 1");
        assertThatThrownBy(() -> contact.within("filament", "led", 0, 0.95, 1))
                .hasMessage("half-width of the interval must be in [1e-9, 1], got 0");
        assertThatThrownBy(() -> contact.within("filament", "lde", 0.01, 0.95, 1))
                .hasMessageContaining("lde");
        assertThatThrownBy(() -> Interval.ofRepetitions(new Moments(), 0.95))
                .hasMessage("repetitions must be at least 2, got 0");
    }
}
