package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;

/**
 * Contact probabilities and the difference of two lamps with an interval as narrow as asked for: the gap is integrated
 * out, all else runs over scrambled Sobol sequences, and independent scrambles tell the error.
 *
 * <p>P = mean over R replicates of the mean of P(contact | x) over n points, by {@link ConditionalContact}; interval P
 * ± t s/√R, s the standard deviation of the replicates, t with R − 1 degrees of freedom. Whether the driver responds is
 * no dimension either: both cases are computed and weighted. The error falls about as 1/n, where that of draws falls as
 * 1/√n. All lamps see the same points.
 *
 * <p>Range: plans whose gap is drawn independently; up to 2³⁰ points a replicate. The result has the same bits on every
 * JDK. See {@link PairModel#STATEMENT} for what the probability says. Source: Owen, Annals of Statistics 25, 1997
 * (scrambled nets; from memory).
 */
public final class ReplicatedContact {
    /** The replicates that {@link #within} takes. */
    public static final int REPLICATES = 16;

    private static final long PILOT_POINTS = 1 << 9;
    private static final long MOST_POINTS = 1L << 30;
    private static final double MARGIN = 1.5;
    private static final int FEW = 1 << 14;

    private final ConditionalContact contact;

    /** A case of whether the driver responds, with its share. */
    record Case(double share, Plan plan, boolean sees) {
        /** Without response the lamp does not matter, and the outcome hardly varies: few points do. */
        long points(long points) {
            return sees ? points : Math.max(1, points / 64);
        }

        static List<Case> of(Plan plan) {
            String responds = PairColumn.RESPONDS.column();
            for (Axis axis : plan.axes()) {
                boolean alone = plan.correlations().stream()
                        .noneMatch(c -> c.first().equals(responds) || c.second().equals(responds));
                if (axis.column().equals(responds) && axis.distribution().isPresent() && alone) {
                    double share = 1 - axis.distribution().orElseThrow().cdf(0.5);
                    List<Case> cases = new ArrayList<>();
                    for (int yes = 0; yes <= 1; yes++) {
                        double part = yes == 1 ? share : 1 - share;
                        if (part > 0) {
                            Plan with = plan.without(responds).axis(Axis.constant("responds", "ratio", yes));
                            cases.add(new Case(part, with, yes == 1));
                        }
                    }
                    return cases;
                }
            }
            return List.of(new Case(1, plan, true));
        }
    }

    /** What the replicates say. */
    public static final class Result {
        private final List<String> lamps;
        private final double[][] means;
        private final long points;
        private final List<Rejects.Entry> rejects;

        private Result(List<String> lamps, double[][] means, long points, List<Rejects.Entry> rejects) {
            this.lamps = lamps;
            this.means = means;
            this.points = points;
            this.rejects = Check.copyOf("rejects", rejects);
        }

        /**
         * Gives the contact probability with a lamp.
         *
         * @param lamp the lamp
         * @return the replicates' means; their mean is the estimate
         * @throws IllegalArgumentException if there is no such lamp
         */
        public Moments probability(String lamp) {
            Moments moments = new Moments();
            moments.add(means[PairModel.lampIndex(lamps, lamp)], means[0].length);
            return moments;
        }

        /**
         * Gives the difference of two lamps' contact probabilities.
         *
         * @param first one lamp
         * @param second the other
         * @return the replicates' differences, the first's less the second's
         * @throws IllegalArgumentException if there is no such lamp
         */
        public Moments difference(String first, String second) {
            double[] one = means[PairModel.lampIndex(lamps, first)];
            double[] other = means[PairModel.lampIndex(lamps, second)];
            Moments moments = new Moments();
            moments.add(
                    IntStream.range(0, one.length)
                            .mapToDouble(r -> one[r] - other[r])
                            .toArray(),
                    one.length);
            return moments;
        }

        /**
         * Gives an interval of the contact probability.
         *
         * @param lamp the lamp
         * @param confidence the confidence, [0.5, 1)
         * @return the interval, of Student's t over the replicates
         * @throws IllegalArgumentException if there is no such lamp or the confidence is out of range
         */
        public Interval interval(String lamp, double confidence) {
            return Interval.ofRepetitions(probability(lamp), confidence);
        }

        /**
         * Gives an interval of the difference of two lamps' contact probabilities.
         *
         * @param first one lamp
         * @param second the other
         * @param confidence the confidence, [0.5, 1)
         * @return the interval of the first's less the second's
         * @throws IllegalArgumentException if there is no such lamp or the confidence is out of range
         */
        public Interval differenceInterval(String first, String second, double confidence) {
            return Interval.ofRepetitions(difference(first, second), confidence);
        }

        /** {@return the points of each replicate} */
        public long points() {
            return points;
        }

        /** {@return the scenarios whose inputs are no possible combination, all replicates together; not counted} */
        public List<Rejects.Entry> rejects() {
            return rejects;
        }

        private static Measurand.Estimate estimate(Moments replicates) {
            return new Measurand.Estimate(
                    replicates.mean(),
                    replicates.standardDeviation() / Math.sqrt((double) replicates.count()),
                    Interval.ofRepetitions(replicates, 0.95));
        }

        @Override
        public String toString() {
            StringBuilder text = new StringBuilder();
            for (String lamp : lamps) {
                text.append(lamp)
                        .append(": contact probability ")
                        .append(estimate(probability(lamp)))
                        .append('\n');
            }
            for (int i = 1; i < lamps.size(); i++) {
                text.append(lamps.get(0))
                        .append(" less ")
                        .append(lamps.get(i))
                        .append(": ")
                        .append(estimate(difference(lamps.get(0), lamps.get(i))))
                        .append('\n');
            }
            return text.append(means[0].length)
                    .append(" scrambles of ")
                    .append(points)
                    .append(" points, gap integrated out\n")
                    .append(PairModel.STATEMENT)
                    .toString();
        }
    }

    private ReplicatedContact(ConditionalContact contact) {
        this.contact = contact;
    }

    /**
     * Takes a plan that draws the gap or time gap.
     *
     * @param plan the plan; its design and size do not matter
     * @param lamps the lamps' names, as for {@link PairModel#of}
     * @return the integral
     * @throws IllegalArgumentException as {@link ConditionalContact#of}
     */
    public static ReplicatedContact of(Plan plan, String... lamps) {
        Objects.requireNonNull(lamps, "lamps");
        Objects.requireNonNull(plan, "plan");
        return new ReplicatedContact(ConditionalContact.of(plan, lamps));
    }

    /**
     * Computes.
     *
     * @param replicates how many independent scrambles, [2, 1000]
     * @param points the points of each, [1, 2³⁰], at best a power of two
     * @param seed the seed of all scrambles
     * @return the probabilities
     * @throws IllegalArgumentException if an argument is out of range, or a replicate has no possible scenario
     */
    public Result run(int replicates, long points, long seed) {
        Check.inRange("replicates", replicates, 2, 1000, "");
        Check.inRange("points of a replicate", (double) points, 1, MOST_POINTS, "");
        double[][] means = new double[contact.lamps().size()][replicates];
        Rejects total = new Rejects(contact.plan().columns(), 0);
        // tables of quantiles are worth their making from some ten thousand points on
        boolean few = replicates * points <= FEW;
        for (Case one : Case.of(few ? contact.plan().withExactQuantiles() : contact.plan())) {
            OneCase run = new OneCase(one.plan());
            for (int r = 0; r < replicates; r++) {
                double[] mean =
                        run.means(CounterRandom.of(CounterRandom.of(seed).bits(1, r)), one.points(points), total);
                for (int lamp = 0; lamp < mean.length; lamp++) {
                    means[lamp][r] += one.share() * mean[lamp];
                }
            }
        }
        return new Result(contact.lamps(), means, points, total.entries());
    }

    /**
     * Computes the difference of two lamps to a wanted half-width: a pilot run tells how many points it takes, and the
     * result comes from new scrambles alone, so that its interval holds.
     *
     * @param first one lamp
     * @param second the other
     * @param halfWidthRatio the half-width of the interval, [1e-9, 1]
     * @param confidence the confidence, [0.5, 1)
     * @param seed the seed
     * @return the probabilities; the half-width is that asked for or a little less
     * @throws IllegalArgumentException if an argument is out of range, a lamp is missing, or 2³⁰ points would not do
     */
    public Result within(String first, String second, double halfWidthRatio, double confidence, long seed) {
        Check.inRange("half-width of the interval", halfWidthRatio, 1e-9, 1, "");
        long points = PILOT_POINTS;
        Result result = run(REPLICATES, points, CounterRandom.of(seed).bits(2, 0));
        for (int attempt = 1; ; attempt++) {
            Interval interval = result.differenceInterval(first, second, confidence);
            double tooWide = 0.5 * (interval.hi() - interval.lo()) / halfWidthRatio;
            if (attempt > 1 && tooWide <= 1) {
                return result;
            }
            double more = tooWide * (attempt == 1 ? MARGIN : 1);
            while (more > 1) {
                points *= 2;
                more /= 2;
            }
            if (points > MOST_POINTS) {
                throw new IllegalArgumentException(
                        "half-width of the interval must be within reach of 2^30 points, got "
                                + Numbers.text(halfWidthRatio) + " where " + result.points() + " points give "
                                + Numbers.text(tooWide * halfWidthRatio, 3));
            }
            result = run(REPLICATES, points, CounterRandom.of(seed).bits(2, attempt));
        }
    }

    /** The columns and the model of one case, on one thread. */
    private final class OneCase {
        private final ScrambledPlan scrambled;
        private final double[][] columns;
        private final double[][] inputs;
        private final double[][] outputs;
        private final Model.Evaluator evaluator = contact.evaluator();
        private final Rejects rejects;

        OneCase(Plan plan) {
            scrambled = new ScrambledPlan(plan);
            columns = new double[plan.axes().size()][RowBlock.ROWS];
            inputs = contact.inputs().stream()
                    .map(column -> columns[plan.columns().indexOf(column)])
                    .toArray(double[][]::new);
            outputs = new double[contact.outputs().size()][RowBlock.ROWS];
            rejects = new Rejects(plan.columns(), RowBlock.ROWS);
        }

        double[] means(CounterRandom scramble, long points, Rejects total) {
            double[] sum = new double[contact.lamps().size()];
            long counted = 0;
            rejects.beginChunk();
            for (long from = 0; from < points; from += RowBlock.ROWS) {
                int count = (int) Math.min(RowBlock.ROWS, points - from);
                scrambled.fill(scramble, from, count, columns);
                rejects.beginRows(from, columns);
                evaluator.evaluate(count, inputs, outputs, rejects);
                for (int lamp = 0; lamp < sum.length; lamp++) {
                    sum[lamp] += sum(outputs[2 * lamp], count);
                }
                counted += count - rejected(count);
            }
            total.absorb(rejects.entries());
            if (counted == 0) {
                throw new IllegalArgumentException(
                        "a replicate must have a possible scenario, got " + rejects.entries());
            }
            for (int lamp = 0; lamp < sum.length; lamp++) {
                sum[lamp] /= counted;
            }
            return sum;
        }

        private double sum(double[] column, int count) {
            double sum = 0;
            for (int i = 0; i < count; i++) {
                sum += rejects.any() && rejects.isRejected(i) ? 0 : column[i];
            }
            return sum;
        }

        private int rejected(int count) {
            int rows = 0;
            for (int i = 0; i < count && rejects.any(); i++) {
                rows += rejects.isRejected(i) ? 1 : 0;
            }
            return rows;
        }
    }
}
