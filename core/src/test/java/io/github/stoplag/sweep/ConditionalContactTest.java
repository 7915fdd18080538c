package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.Empirical;
import io.github.stoplag.driver.LogNormalReaction;
import io.github.stoplag.driver.ReactionStudy;
import io.github.stoplag.kernel.GapEvent;
import io.github.stoplag.kernel.GapKernel;
import io.github.stoplag.source.Table;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Supplier;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConditionalContactTest {
    private static final int DRAWS = 200_000;
    // of some 20 intervals with fixed seeds, one fails by chance in 500 choices of seeds
    private static final double CONFIDENCE = 0.9999;
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private static ConditionalTally run(ConditionalContact contact) {
        return Sweep.of(contact.plan(), contact)
                .withThreads(2)
                .run(() -> new ConditionalTally(contact))
                .tally();
    }

    /**
     * With equal speeds and equal braking there is contact if and only if delay + lag exceeds the time gap; P is Φ((μ_d
     * − μ_g)/√(σ_d² + σ_g²)) at no lag. Mean, and the factor from E[F²], by quadrature.
     */
    @Test
    void logNormalOracle() {
        Table headways = Table.read(LogNormalOracleTest.class, "headway.csv");
        LogNormalReaction reaction = (LogNormalReaction)
                ReactionStudy.published("sivak-1982").response().orElseThrow().reaction();
        double[] lags = {0.25, 0};
        for (Map<String, String> row : headways.rows()) {
            double mu = headways.number(row, "mu_ln_s");
            double sigma = headways.number(row, "sigma_ln");
            Plan plan = Plan.of(Design.random(DRAWS), 71)
                    .axis(Axis.drawn("speed", "mps", new Distribution.Uniform(10, 35)))
                    .axis(Axis.drawn("time_gap", "s", new Distribution.LogNormal(mu, sigma)))
                    .axis(Axis.drawn("reaction", "s", reaction.distribution()))
                    .axis(Axis.drawn("follower_decel", "mps2", new Distribution.TruncatedNormal(6, 1.5, 3, 9)))
                    .axis(Axis.constant("lamp_latency_slow", "s", lags[0]))
                    .axis(Axis.constant("lamp_latency_instant", "s", lags[1]));
            ConditionalTally tally = run(ConditionalContact.of(plan, "slow", "instant"));
            double spread = Math.hypot(reaction.sigma(), sigma);
            double closed = NORMAL.cumulativeProbability((reaction.mu() - mu) / spread);
            LogNormalDistribution gap = LogNormalDistribution.of(mu, sigma);
            double slow = mean(reaction, t -> gap.cumulativeProbability(t + lags[0]));
            double square = mean(reaction, t -> Math.pow(gap.cumulativeProbability(t), 2));
            Moments instant = tally.contactProbability("instant");
            assertThat(instant.meanInterval(CONFIDENCE).contains(closed)).isTrue();
            assertThat(tally.contactProbability("slow").meanInterval(CONFIDENCE).contains(slow))
                    .isTrue();
            assertThat(tally.difference("slow", "instant")
                            .meanInterval(CONFIDENCE)
                            .contains(slow - closed))
                    .isTrue();
            double factor = closed * (1 - closed) / (square - closed * closed);
            assertThat(factor).isGreaterThan(1.5);
            assertThat(tally.varianceReduction("instant")).isCloseTo(factor, within(0.05 * factor));
        }
    }

    /**
     * Drivers who never respond run into a leader that stops: P = (1 − r) + r Φ(…), and two lamps differ by r times
     * what they differ for those who respond. Drawn and with the gap integrated out.
     */
    @Test
    void driversWhoNeverRespondAreScenarios() {
        double responding = 0.72;
        Plan plan = Plan.of(Design.random(DRAWS), 74)
                .axis(Axis.drawn("speed", "mps", new Distribution.Uniform(10, 35)))
                .axis(Axis.drawn("time_gap", "s", new Distribution.LogNormal(0.1, 0.4)))
                .axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(0.17, 0.44)))
                .axis(Axis.drawn("follower_decel", "mps2", new Distribution.TruncatedNormal(6, 1.5, 3, 9)))
                .axis(Axis.constant("lamp_latency_slow", "s", 0.25))
                .axis(Axis.constant("lamp_latency_instant", "s", 0))
                .axis(PairModel.responding(responding));
        double closed = NORMAL.cumulativeProbability((0.17 - 0.1) / Math.hypot(0.44, 0.4));
        LogNormalDistribution gap = LogNormalDistribution.of(0.1, 0.4);
        double slow = mean(LogNormalReaction.ofLogParameters(0.17, 0.44), t -> gap.cumulativeProbability(t + 0.25));
        double all = 1 - responding + responding * closed;
        double gain = responding * (slow - closed);
        PairModel model = PairModel.of(plan, "slow", "instant");
        PairTally drawn = Sweep.of(plan, model)
                .withThreads(2)
                .run(() -> new PairTally(model))
                .tally();
        assertThat(drawn.lamp("instant").contactProbability().wilson(CONFIDENCE).contains(all))
                .isTrue();
        assertThat(drawn.compare("slow", "instant")
                        .differenceInterval(CONFIDENCE)
                        .contains(gain))
                .isTrue();
        ConditionalTally integrated = run(ConditionalContact.of(plan, "slow", "instant"));
        assertThat(integrated.contactInterval("instant", CONFIDENCE).contains(all))
                .isTrue();
        assertThat(integrated.differenceInterval("slow", "instant", CONFIDENCE).contains(gain))
                .isTrue();
        assertThat(model.respondingRatio()).isEqualTo(responding);
        assertThat(model.population())
                .isEqualTo(
                        "Only 72 % of the drivers respond to the lamp, the other 28 % never brake; all shares are of both"
                                + " together.");
        Plan half = plan.without("responds_ratio")
                .without("lamp_latency_instant_s")
                .axis(Axis.list("responds", "ratio", 0, 0.5, 1));
        PairModel halves = PairModel.of(half, "slow");
        assertThat(Sweep.of(half, halves).run(() -> new PairTally(halves)).rejects())
                .singleElement()
                .satisfies(entry -> assertThat(entry.reason()).isEqualTo("responds must be 0 or 1"));
    }

    private static double mean(LogNormalReaction reaction, DoubleUnaryOperator probability) {
        return new IterativeLegendreGaussIntegrator(32, 1e-12, 1e-12)
                .integrate(
                        1_000_000,
                        z -> NORMAL.density(z)
                                * probability.applyAsDouble(Math.exp(reaction.mu() + reaction.sigma() * z)),
                        -9,
                        9);
    }

    private static Plan varied(String gapName, String gapUnit, Distribution gap) {
        return Plan.of(Design.random(DRAWS), 72)
                .axis(Axis.drawn("speed", "mps", new Distribution.Uniform(8, 38)))
                .axis(Axis.drawn("follower_speed", "mps", new Distribution.Uniform(8, 38)))
                .axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(0.17, 0.44)))
                .axis(Axis.drawn(gapName, gapUnit, gap))
                .axis(Axis.drawn("leader_decel", "mps2", new Distribution.TruncatedNormal(7, 1.5, 2, 10)))
                .axis(Axis.drawn("follower_decel", "mps2", new Distribution.TruncatedNormal(7, 1.5, 2, 10)))
                .axis(Axis.drawn("brake_build_up", "s", new Distribution.Uniform(0, 0.6)))
                .axis(Axis.drawn("friction", "ratio", new Distribution.Uniform(0.2, 0.9)))
                .axis(Axis.drawn("grade", "ratio", new Distribution.Uniform(-0.1, 0.1)))
                .axis(Axis.constant("lamp_latency_led", "s", 0.01));
    }

    /**
     * Without bias against the plain Monte Carlo, also where part of the gap's distribution is out of range and
     * rejected.
     */
    @Test
    void plainMonteCarloAgrees() {
        Map<Distribution, Plan> plans = Map.of(
                new Distribution.LogNormal(0.2, 0.5), varied("time_gap", "s", new Distribution.LogNormal(0.2, 0.5)),
                new Distribution.TruncatedNormal(20, 25, -40, 80),
                        varied("gap", "m", new Distribution.TruncatedNormal(20, 25, -40, 80)),
                new Distribution.Uniform(-1, 3), varied("time_gap", "s", new Distribution.Uniform(-1, 3)));
        Distribution observed = Empirical.of(0, 0, 0.8, 1.1, 1.1, 1.9, 2.4, 6);
        assertAgree(varied("time_gap", "s", observed));
        plans.values().forEach(ConditionalContactTest::assertAgree);
    }

    private static void assertAgree(Plan plan) {
        PairModel model = PairModel.of(plan, "led");
        Proportion plain = Sweep.of(plan.withSeed(73), model)
                .withThreads(2)
                .run(() -> new PairTally(model))
                .tally()
                .lamp("led")
                .contactProbability();
        ConditionalTally tally = run(ConditionalContact.of(plan, "led"));
        Moments conditional = tally.contactProbability("led");
        double p = plain.value();
        double error = Math.sqrt(p * (1 - p) / plain.count() + conditional.variance() / conditional.count());
        assertThat(conditional.mean()).as("%s", plan).isCloseTo(p, within(4 * error));
        assertThat(p).isBetween(0.2, 0.8);
        assertThat(tally.varianceReduction("led")).isGreaterThan(1);
        assertThat(tally.toString())
                .startsWith("led: contact probability 0.")
                .contains(" at 95 %, gap integrated out over ", "not a crash rate");
    }

    /** Row by row: the library's distribution function at the gap that the kernel needs, by its own search. */
    @Test
    void everyRowIsTheDistributionAtTheGapNeeded() {
        Plan full = varied("time_gap", "s", new Distribution.LogNormal(0.2, 0.5));
        ConditionalContact contact = ConditionalContact.of(full, "led");
        Plan plan = contact.plan();
        LogNormalDistribution gap = LogNormalDistribution.of(0.2, 0.5);
        int rows = 1000;
        double[][] columns = new double[plan.axes().size()][rows];
        plan.scenarios().fill(0, rows, columns);
        double[][] inputs = contact.inputs().stream()
                .map(column -> columns[plan.columns().indexOf(column)])
                .toArray(double[][]::new);
        double[][] outputs = new double[2][rows];
        contact.evaluator().evaluate(rows, inputs, outputs, new Rejects(plan.columns(), rows));
        GapEvent event = new GapEvent();
        for (int i = 0; i < rows; i++) {
            double grade = columns[plan.columns().indexOf("grade_ratio")][i];
            double friction = columns[plan.columns().indexOf("friction_ratio")][i];
            double road = 9.80665 * (friction + grade) / Math.sqrt(1 + grade * grade);
            double followerMps = columns[plan.columns().indexOf("follower_speed_mps")][i];
            double buildUpS = columns[plan.columns().indexOf("brake_build_up_s")][i];
            double neededM = GapKernel.pairGapNeededM(
                    columns[plan.columns().indexOf("speed_mps")][i],
                    0,
                    buildUpS,
                    Math.min(road, columns[plan.columns().indexOf("leader_decel_mps2")][i]),
                    followerMps,
                    columns[plan.columns().indexOf("reaction_s")][i] + 0.01,
                    buildUpS,
                    Math.min(road, columns[plan.columns().indexOf("follower_decel_mps2")][i]),
                    event);
            assertThat(outputs[1][i]).isCloseTo(neededM, within(1e-9));
            assertThat(outputs[0][i]).isCloseTo(gap.cumulativeProbability(neededM / followerMps), within(3e-9));
        }
    }

    @Test
    void anyNumberOfThreadsGivesTheSameBits() {
        ConditionalContact contact =
                ConditionalContact.of(varied("time_gap", "s", new Distribution.LogNormal(0.2, 0.5)), "led");
        Sweep sweep = Sweep.of(contact.plan(), contact);
        Moments one = sweep.withThreads(1)
                .run(() -> new ConditionalTally(contact))
                .tally()
                .contactProbability("led");
        Moments four = sweep.withThreads(4)
                .run(() -> new ConditionalTally(contact))
                .tally()
                .contactProbability("led");
        assertThat(four.mean()).isEqualTo(one.mean());
        assertThat(four.variance()).isEqualTo(one.variance());
    }

    /** Speeds alike, a reaction time and a time gap that are log-normal: P(contact) = Φ((μ_d − μ_g)/√(σ_d² + σ_g²)). */
    private static ConditionalContact rare(double probability, double gapSigma, int draws, long seed) {
        double spread = Math.hypot(0.44, gapSigma);
        double mu = 0.17 - NORMAL.inverseCumulativeProbability(probability) * spread;
        Plan plan = Plan.of(Design.random(draws), seed)
                .axis(Axis.constant("speed", "mps", 25))
                .axis(Axis.drawn("time_gap", "s", new Distribution.LogNormal(mu, gapSigma)))
                .axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(0.17, 0.44)))
                .axis(Axis.constant("follower_decel", "mps2", 7))
                .axis(Axis.constant("lamp_latency_led", "s", 0));
        return ConditionalContact.of(plan, "led");
    }

    /**
     * Share of 200 intervals at 95 % that hold the closed form, within [0, 1] all of them; the normal ones cover 0.38
     * to 0.92 here.
     */
    @ParameterizedTest
    @CsvSource({"1e-4, 0.1, 2000", "1e-4, 0.38, 2000", "1e-3, 0.1, 2000", "1e-4, 0.1, 5000", "0.2, 0.38, 2000"})
    void intervalsCoverAsOftenAsTheySay(double probability, double gapSigma, int draws) {
        int covered = 0;
        int repetitions = 200;
        ConditionalContact contact = rare(probability, gapSigma, draws, 900);
        for (int k = 0; k < repetitions; k++) {
            Interval interval = Sweep.of(contact.plan().replicate(k), contact)
                    .withThreads(1)
                    .run(() -> new ConditionalTally(contact))
                    .tally()
                    .contactInterval("led", 0.95);
            assertThat(interval.lo()).isBetween(0.0, 1.0);
            assertThat(interval.hi()).isBetween(interval.lo(), 1.0);
            covered += interval.contains(probability) ? 1 : 0;
        }
        // three standard errors of a share of 0.95 below it
        assertThat(covered / (double) repetitions).isGreaterThan(0.95 - 3 * Math.sqrt(0.95 * 0.05 / repetitions));
    }

    @Test
    void boundedIntervalIsTheNormalOneForManyValuesAndNeverEmpty() {
        Moments zeros = new Moments();
        zeros.add(new double[1000], 1000);
        double square = 1.959964 * 1.959964 / 1000;
        // Wilson's interval of 0 hits of 1000
        assertThat(zeros.boundedMeanInterval(0.95, 0, 1).lo()).isZero();
        assertThat(zeros.boundedMeanInterval(0.95, 0, 1).hi()).isCloseTo(square / (1 + square), within(1e-8));
        // both ways round: none, and no difference
        assertThat(zeros.boundedMeanInterval(0.95, -1, 0).lo()).isCloseTo(-square / (1 + square), within(1e-8));
        assertThat(zeros.boundedMeanInterval(0.95, -1, 1).hi()).isCloseTo(square / (1 + square), within(1e-8));
        // values of 0 and 1 only: Wilson's interval at least
        Moments hits = new Moments();
        for (int i = 0; i < 500; i++) {
            hits.add(i < 40 ? 1 : 0);
        }
        Interval wilson = new Proportion(40, 500).wilson(0.95);
        assertThat(hits.boundedMeanInterval(0.95, 0, 1).hi()).isCloseTo(wilson.hi(), within(1e-12));
        assertThat(hits.boundedMeanInterval(0.95, 0, 1).lo()).isLessThanOrEqualTo(wilson.lo());
        ConditionalTally many = run(rare(0.3, 0.38, 200_000, 5));
        Interval normal = many.contactProbability("led").meanInterval(0.95);
        Interval bounded = many.contactInterval("led", 0.95);
        assertThat(bounded.hi() - bounded.lo())
                .isBetween(normal.hi() - normal.lo(), 1.02 * (normal.hi() - normal.lo()));
        assertThatThrownBy(() -> hits.boundedMeanInterval(0.95, 0, 0.5))
                .hasMessage("values must be in [0, 0.5], got 0 to 1");
        assertThatThrownBy(() -> hits.boundedMeanInterval(0.95, 1, 1))
                .hasMessage("bounds must be finite lo < hi, got 1 and 1");
        assertThatThrownBy(() -> hits.boundedMeanInterval(0.95, Double.NaN, 1))
                .hasMessage("bounds must be finite lo < hi, got NaN and 1");
        assertThatThrownBy(() -> hits.boundedMeanInterval(0.95, 0, Double.POSITIVE_INFINITY))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("bounds must be finite lo < hi, got 0 and ");
    }

    @Test
    void aSavedTallyGoesOnWithTheSameBits() throws IOException {
        Plan plan = varied("time_gap", "s", new Distribution.LogNormal(0.2, 0.5))
                .axis(Axis.constant("lamp_latency_filament", "s", 0.2));
        ConditionalContact contact = ConditionalContact.of(plan, "filament", "led");
        Sweep sweep = Sweep.of(contact.plan(), contact);
        Supplier<ConditionalTally> tally = () -> new ConditionalTally(contact);
        CheckpointFormat format = CheckpointFormat.of(contact.plan());
        byte[] straight = saved(format, sweep.run(tally));
        byte[] cut = saved(format, sweep.run(tally, tally.get(), 0, 2));
        SweepResult<ConditionalTally> resumed =
                sweep.resume(tally, format.read(new DataInputStream(new ByteArrayInputStream(cut)), tally.get()));
        assertThat(saved(format, resumed)).isEqualTo(straight);
        assertThat(resumed.tally().differenceInterval("filament", "led", 0.95).lo())
                .isPositive();
        ConditionalTally one =
                new ConditionalTally(ConditionalContact.of(plan.without("lamp_latency_filament_s"), "led"));
        assertThatThrownBy(() -> format.read(new DataInputStream(new ByteArrayInputStream(cut)), one))
                .isInstanceOf(IOException.class)
                .hasMessage("saved statistics must be of the lamps [led], got [filament, led]");
    }

    private static byte[] saved(CheckpointFormat format, SweepResult<ConditionalTally> result) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        format.write(result, new DataOutputStream(bytes));
        return bytes.toByteArray();
    }

    /** A follower that never brakes needs any gap; one that stands needs none. */
    @Test
    void extremesAreCertain() {
        Plan plan = Plan.of(Design.grid(), 1)
                .axis(Axis.constant("speed", "mps", 20))
                .axis(Axis.list("follower_speed", "mps", 0, 20, 20))
                .axis(Axis.list("follower_decel", "mps2", 0))
                .axis(Axis.constant("leader_decel", "mps2", 5))
                .axis(Axis.constant("reaction", "s", 1))
                .axis(Axis.constant("lamp_latency_led", "s", 0));
        ConditionalContact contact = ConditionalContact.of(
                plan.axis(Axis.drawn("time_gap", "s", new Distribution.LogNormal(0.2, 0.5))), "led");
        Moments probability = run(contact).contactProbability("led");
        assertThat(probability.min()).isZero();
        assertThat(probability.max()).isEqualTo(1);
        assertThat(probability.mean()).isCloseTo(2 / 3.0, within(1e-15));
    }

    @Test
    void badPlansAreNamed() {
        Plan listed = Plan.of(Design.random(10), 1)
                .axis(Axis.constant("speed", "mps", 20))
                .axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(0.2, 0.5)))
                .axis(Axis.constant("follower_decel", "mps2", 5))
                .axis(Axis.constant("lamp_latency_led", "s", 0));
        assertThatThrownBy(() -> ConditionalContact.of(listed.axis(Axis.list("gap", "m", 10, 20)), "led"))
                .hasMessage(
                        "to be integrated out, gap_m must be drawn independently of the other axes, got gap_m: [10.0, 20.0]");
        Plan correlated = listed.axis(Axis.drawn("time_gap", "s", new Distribution.Uniform(1, 2)))
                .correlate("reaction_s", "time_gap_s", 0.3);
        assertThatThrownBy(() -> ConditionalContact.of(correlated, "led"))
                .hasMessageStartingWith("to be integrated out, time_gap_s must be drawn independently")
                .hasMessageEndingWith(", correlated");
        Plan far = listed.axis(Axis.drawn("gap", "m", new Distribution.Uniform(-10, -1)));
        assertThatThrownBy(() -> ConditionalContact.of(far, "led"))
                .hasMessage("at least 0.001 of the distribution of gap_m must lie in [0, 100000], got 0");
        assertThatThrownBy(() -> listed.without("gap_m"))
                .hasMessage(
                        "an axis to take out must be one of [speed_mps, reaction_s, follower_decel_mps2, lamp_latency_led_s]"
                                + " without correlation, got gap_m");
        Plan plan = listed.axis(Axis.drawn("gap", "m", new Distribution.Uniform(1, 50)));
        ConditionalTally tally = new ConditionalTally(ConditionalContact.of(plan, "led"));
        assertThatThrownBy(() -> tally.contactProbability("dark")).hasMessage("lamp must be one of [led], got dark");
        Plan apart = listed.axis(Axis.drawn("gap", "m", new Distribution.Uniform(90_000, 99_000)));
        ConditionalTally never = run(ConditionalContact.of(apart, "led"));
        assertThatThrownBy(() -> never.varianceReduction("led"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("contact probability must be in (0, 1) to compare variances, got 0 with lamp led");
        assertThatThrownBy(() -> tally.difference("led", "led"))
                .hasMessage("lamps must be compared in the order of [led], got led with led");
    }
}
