package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Contact probabilities too small for draws, down to 1e-12 and below: the gap is integrated out, and all else is drawn
 * where contact happens instead of where scenarios lie.
 *
 * <pre>
 *   P = E[F(g*(X))] = mean of F(g*(x(z))) φ(z)/q(z),   z drawn from q = normal with mean m and covariance C
 * </pre>
 *
 * <p>Symbols: F, g* of {@link ConditionalContact}, F by its exact function; x(z) the plan's values from normal scores
 * z; φ their density. m and C are those of the scores weighted by F, found step by step: first every gap is shortened
 * by a slack that makes contact common, and the slack shrinks to 0 as fast as a twentieth of the points still carries
 * the weight. Scores run over scrambled Sobol sequences, {@value ReplicatedContact#REPLICATES} independent scrambles
 * give the interval, Student's t over their means.
 *
 * <p>The probability is that given a possible scenario, as {@link PairModel} rejects others. Valid where one region of
 * the scores brings in nearly all contacts; several regions far apart, such as a distribution with two humps, can leave
 * one out and its share with it: then a plan for each is right. Checked against quadrature and closed forms from 0.3 to
 * 1e-12.
 *
 * <p>Source: cross-entropy method, Rubinstein &amp; Kroese 2004; importance sampling, Hammersley &amp; Handscomb 1964
 * (both from memory).
 */
public final class RareContact {
    private static final int STEP_POINTS = 1 << 11;
    private static final int MOST_STEPS = 60;
    private static final int LAST_STEPS = 2;
    private static final double CARRYING_SHARE = 0.05;
    private static final double WIDENING = 1.25;
    private static final long PILOT_POINTS = 1 << 9;
    private static final long MOST_POINTS = 1 << 24;
    private static final double MARGIN = 1.5;

    private final ConditionalContact contact;

    /**
     * A rare probability.
     *
     * @param replicates the means of the scrambles; their mean is the estimate
     * @param interval its interval
     * @param scenarios how many scenarios were computed, the search for the region included
     */
    public record Estimate(Moments replicates, Interval interval, long scenarios) {

        /**
         * Refuses nulls.
         *
         * @param replicates the means of the scrambles; their mean is the estimate
         * @param interval its interval
         * @param scenarios how many scenarios were computed, the search for the region included
         * @throws NullPointerException if one that is required is null
         */
        public Estimate {
            Objects.requireNonNull(interval, "interval");
            Objects.requireNonNull(replicates, "replicates");
        }

        /** {@return the contact probability} */
        public double probability() {
            return replicates.mean();
        }

        /** {@return the half-width of the interval over the probability; infinite for a probability of 0} */
        public double halfWidthRatio() {
            return probability() > 0 ? 0.5 * (interval.hi() - interval.lo()) / probability() : Double.POSITIVE_INFINITY;
        }

        @Override
        public String toString() {
            return "contact probability " + Numbers.text(probability(), 4) + ", " + interval + ", " + scenarios
                    + " scenarios where contact happens, gap integrated out";
        }
    }

    private RareContact(ConditionalContact contact) {
        this.contact = contact;
    }

    /**
     * Takes a plan that draws the gap or time gap.
     *
     * @param plan the plan; its design and size do not matter
     * @param lamps the lamps' names, as for {@link PairModel#of}
     * @return the estimator
     * @throws IllegalArgumentException as {@link ConditionalContact#of}
     */
    public static RareContact of(Plan plan, String... lamps) {
        Objects.requireNonNull(lamps, "lamps");
        return new RareContact(
                ConditionalContact.of(plan.withExactQuantiles(), lamps).withExactShares());
    }

    /**
     * Estimates the contact probability with a lamp. Drivers who do not respond are a case of its own: where there are
     * any, contact is not rare.
     *
     * @param lamp the lamp
     * @param halfWidthRatio the half-width of the interval over the probability, [1e-4, 0.5]
     * @param confidence the confidence, [0.5, 1)
     * @param seed the seed
     * @return the estimate; probability 0 where contact is impossible in every scenario looked at
     * @throws IllegalArgumentException if an argument is out of range, there is no such lamp, no scenario is a possible
     *     combination, or 2²⁴ points a scramble do not reach the half-width
     */
    public Estimate probability(String lamp, double halfWidthRatio, double confidence, long seed) {
        Check.inRange("relative half-width of the interval", halfWidthRatio, 1e-4, 0.5, "");
        Interval.z(confidence);
        int at = PairModel.lampIndex(contact.lamps(), lamp);
        CounterRandom random = CounterRandom.of(seed);
        List<Case> cases = new ArrayList<>();
        for (ReplicatedContact.Case one : ReplicatedContact.Case.of(contact.plan())) {
            cases.add(new Case(one, at, random.bits(3, cases.size())));
        }
        long points = PILOT_POINTS;
        for (int attempt = 0; ; attempt++) {
            Moments moments = new Moments();
            for (int r = 0; r < ReplicatedContact.REPLICATES; r++) {
                CounterRandom scramble = CounterRandom.of(random.bits(4 + attempt, r));
                double sum = 0;
                for (Case one : cases) {
                    sum += one.share * one.mean(scramble, points);
                }
                moments.add(sum);
            }
            long scenarios = cases.stream().mapToLong(one -> one.scenarios).sum();
            Estimate estimate = new Estimate(moments, Interval.ofRepetitions(moments, confidence), scenarios);
            if (moments.max() == 0 || (attempt > 0 && estimate.halfWidthRatio() <= halfWidthRatio)) {
                return estimate;
            }
            double more = estimate.halfWidthRatio() / halfWidthRatio * (attempt == 0 ? MARGIN : 1);
            while (more > 1) {
                points *= 2;
                more /= 2;
            }
            if (points > MOST_POINTS) {
                throw new IllegalArgumentException("relative half-width must be within reach of 2^24 points, got "
                        + Numbers.text(halfWidthRatio) + " where " + estimate);
            }
        }
    }

    /** Responding drivers or others: the columns, the model and the region where contact happens. */
    private final class Case {
        private final double share;
        private final int lamp;
        private final ScrambledPlan scrambled;
        private final List<String> names;
        private final double[][] columns;
        private final double[][] inputs;
        private final double[][] outputs;
        private final double[][] scores;
        private final double[] weight = new double[RowBlock.ROWS];
        private final Model.Evaluator evaluator = contact.evaluator();
        private final Rejects rejects;
        private final double possible;
        private final Tilt tilt;
        private long scenarios;

        Case(ReplicatedContact.Case one, int lamp, long seed) {
            share = one.share();
            this.lamp = lamp;
            scrambled = new ScrambledPlan(one.plan());
            names = one.plan().columns();
            columns = new double[names.size()][RowBlock.ROWS];
            inputs = contact.inputs().stream()
                    .map(column -> columns[names.indexOf(column)])
                    .toArray(double[][]::new);
            outputs = new double[contact.outputs().size()][RowBlock.ROWS];
            scores = new double[scrambled.scores()][RowBlock.ROWS];
            rejects = new Rejects(names, RowBlock.ROWS);
            possible = possibleShare(CounterRandom.of(CounterRandom.of(seed).bits(6, 0)));
            tilt = one.sees() ? search(CounterRandom.of(seed)) : Tilt.none(scrambled.scores());
        }

        double mean(CounterRandom scramble, long points) {
            double sum = 0;
            for (long from = 0; from < points; from += RowBlock.ROWS) {
                int count = (int) Math.min(RowBlock.ROWS, points - from);
                double[] probability = evaluate(evaluator, scramble, from, count, tilt);
                for (int i = 0; i < count; i++) {
                    sum += weight[i] == 0 ? 0 : probability[i] * weight[i];
                }
            }
            return sum / points / possible;
        }

        private double[] evaluate(Model.Evaluator model, CounterRandom scramble, long from, int count, Tilt with) {
            scrambled.fill(scramble, from, count, columns, with, weight, scores);
            rejects.beginRows(from, columns);
            model.evaluate(count, inputs, outputs, rejects);
            scenarios += count;
            for (int i = 0; i < count && rejects.any(); i++) {
                weight[i] = rejects.isRejected(i) ? 0 : weight[i];
            }
            return outputs[2 * lamp];
        }

        /** The share of the plan's scenarios that are possible: all, nearly. */
        private double possibleShare(CounterRandom scramble) {
            int left = 0;
            for (int from = 0; from < STEP_POINTS; from += RowBlock.ROWS) {
                evaluate(evaluator, scramble, from, RowBlock.ROWS, Tilt.none(scrambled.scores()));
                for (int i = 0; i < RowBlock.ROWS; i++) {
                    left += weight[i] == 0 ? 0 : 1;
                }
            }
            if (left == 0) {
                throw new IllegalArgumentException("a plan must have possible scenarios, got " + rejects.entries());
            }
            return left / (double) STEP_POINTS;
        }

        /** Shrinks the slack to nothing and fits the tilt at each step. */
        private Tilt search(CounterRandom random) {
            Tilt now = Tilt.none(scrambled.scores());
            double slack = contact.medianGap();
            int atZero = 0;
            for (int step = 0; step < MOST_STEPS && atZero < LAST_STEPS; step++) {
                CounterRandom scramble = CounterRandom.of(random.bits(5, step));
                slack = leastSlack(scramble, now, slack);
                atZero += slack == 0 ? 1 : 0;
                Step sample = sample(scramble, now, slack);
                if (!(sample.carrying > 1)) {
                    break;
                }
                now = Tilt.fitted(STEP_POINTS, sample.scores, sample.weight, WIDENING);
            }
            return now;
        }

        /** The least slack with which enough of the points carry the weight, by halving. */
        private double leastSlack(CounterRandom scramble, Tilt with, double most) {
            if (sample(scramble, with, 0).carrying >= CARRYING_SHARE * STEP_POINTS) {
                return 0;
            }
            double lo = 0;
            double hi = most;
            for (int halving = 0; halving < 8; halving++) {
                double middle = 0.5 * (lo + hi);
                boolean enough = sample(scramble, with, middle).carrying >= CARRYING_SHARE * STEP_POINTS;
                lo = enough ? lo : middle;
                hi = enough ? middle : hi;
            }
            return hi;
        }

        private Step sample(CounterRandom scramble, Tilt with, double slack) {
            Step step = new Step(scores.length);
            Model.Evaluator model = contact.evaluatorWithSlack(slack);
            double sum = 0;
            double squares = 0;
            for (int from = 0; from < STEP_POINTS; from += RowBlock.ROWS) {
                double[] probability = evaluate(model, scramble, from, RowBlock.ROWS, with);
                for (int i = 0; i < RowBlock.ROWS; i++) {
                    double w = weight[i] == 0 ? 0 : probability[i] * weight[i];
                    step.weight[from + i] = w;
                    sum += w;
                    squares += w * w;
                }
                for (int d = 0; d < scores.length; d++) {
                    System.arraycopy(scores[d], 0, step.scores[d], from, RowBlock.ROWS);
                }
            }
            // the weights' own effective number (Kish)
            step.carrying = squares > 0 ? sum / squares * sum : 0;
            return step;
        }
    }

    /** One sample of the search. */
    private static final class Step {
        private final double[] weight = new double[STEP_POINTS];
        private final double[][] scores;
        private double carrying;

        Step(int dimensions) {
            scores = new double[dimensions][STEP_POINTS];
        }
    }
}
