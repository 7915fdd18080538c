package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.kernel.GapKernel;
import io.github.stoplag.quantity.Numbers;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/**
 * Conditional Monte Carlo for a pair: the gap is not drawn but integrated out. For each scenario of all other inputs x
 * the model gives the probability of contact over the gap's distribution,
 *
 * <pre>
 *   P(contact | x) = P(gap &lt; g*(x)) = F(g*(x)),   or F(g*(x)/v) for a time gap at the follower's speed v
 *   P(contact) = E[F(g*(X))],   estimated by the mean
 * </pre>
 *
 * <p>Symbols: g* the gap that just avoids contact [m], F the cumulative distribution function of the gap [m] or time
 * gap [s]. Like the plain Monte Carlo, which rejects gaps outside the range of {@link PairModel}, F is taken given that
 * the gap lies in that range.
 *
 * <p>The mean is without bias, and its variance is at most that of the share of contacts: Var(1{contact}) =
 * Var(P(contact | X)) + E[P (1 − P)]. How much smaller depends on how much of the scatter comes from the gap.
 *
 * <p>Outputs per lamp: {@code contact_probability_<lamp>} and {@code gap_needed_<lamp>_m}, at most 10⁵ m. F comes from
 * a table with an error of at most 10⁻⁹ where that is cheaper. The leader brakes in every scenario: see
 * {@link PairModel#STATEMENT}.
 *
 * <p>Example: {@code ConditionalContact contact = ConditionalContact.of(plan, "led")}, then {@code
 * Sweep.of(contact.plan(), contact).run(() -> new ConditionalTally(contact))}.
 *
 * <p>Source: the law of total variance; Hammersley &amp; Handscomb, Monte Carlo Methods, 1964 (from memory).
 */
public final class ConditionalContact implements Model {
    private static final double LEAST_SHARE = 1e-3;
    private static final double LARGEST_GAP_M = PairColumn.GAP.range().hi();

    private final PairModel pair;
    private final Axis gapAxis;
    private final Plan plan;
    private final List<String> lamps;
    private final List<String> inputs;
    private final PairColumn gapColumn;
    private final CdfTable gap;
    private final double longest;
    private final double below;
    private final double share;

    private ConditionalContact(Plan plan, PairModel pair, Axis gapAxis, Distribution distribution, boolean exact) {
        this.pair = pair;
        this.gapAxis = gapAxis;
        this.plan = plan.without(gapAxis.column());
        lamps = pair.lamps();
        gapColumn = PairColumn.gapOf(plan);
        inputs = pair.inputs().stream()
                .filter(column -> !column.equals(gapColumn.column()))
                .toList();
        gap = exact ? CdfTable.exact(distribution) : CdfTable.of(distribution);
        longest = gapColumn.range().hi();
        below = distribution.cdf(-Double.MIN_VALUE);
        share = distribution.cdf(longest) - below;
        if (!(share >= LEAST_SHARE)) {
            throw new IllegalArgumentException("at least 0.001 of the distribution of " + gapColumn.column()
                    + " must lie in [0, " + Numbers.text(longest) + "], got " + Numbers.text(share));
        }
    }

    /**
     * Makes the model for a plan that draws the gap or time gap.
     *
     * @param plan the plan of a {@link PairModel}
     * @param lamps the lamps' names, as for {@link PairModel#of}
     * @return the model; run it on its own {@link #plan()}
     * @throws IllegalArgumentException if the plan is not one of a pair, the gap is not drawn or is correlated, or
     *     hardly any of its distribution is in range
     */
    public static ConditionalContact of(Plan plan, String... lamps) {
        Objects.requireNonNull(lamps, "lamps");
        PairModel pair = PairModel.of(plan, lamps);
        Axis axis = plan.axes().stream()
                .filter(a -> a.column().equals(PairColumn.gapOf(plan).column()))
                .findFirst()
                .orElseThrow();
        boolean correlated = plan.correlations().stream()
                .anyMatch(c -> c.first().equals(axis.column()) || c.second().equals(axis.column()));
        if (axis.distribution().isEmpty() || correlated) {
            throw new IllegalArgumentException(
                    "to be integrated out, " + axis.column() + " must be drawn independently of the other axes, got "
                            + axis + (correlated ? ", correlated" : ""));
        }
        return new ConditionalContact(plan, pair, axis, axis.distribution().orElseThrow(), false);
    }

    /**
     * Gives the same model with F from its exact function everywhere: several times slower, and right to many digits
     * where contact is rarer than a table's error of 10⁻⁹.
     *
     * @return the new model
     */
    public ConditionalContact withExactShares() {
        return new ConditionalContact(
                plan.axis(gapAxis), pair, gapAxis, gapAxis.distribution().orElseThrow(), true);
    }

    /**
     * Gives the plan without the gap.
     *
     * @return the plan to run
     */
    public Plan plan() {
        return plan;
    }

    /**
     * Gives the lamps' names.
     *
     * @return the names in order
     */
    public List<String> lamps() {
        return lamps;
    }

    /**
     * Gives the name of the output that is a lamp's contact probability.
     *
     * @param lamp the lamp
     * @return {@code contact_probability_<lamp>}
     */
    public static String probabilityColumn(String lamp) {
        Objects.requireNonNull(lamp, "lamp");
        return "contact_probability_" + lamp;
    }

    /**
     * Gives the name of the output that is the gap needed with a lamp.
     *
     * @param lamp the lamp
     * @return {@code gap_needed_<lamp>_m}
     */
    public static String gapNeededColumn(String lamp) {
        Objects.requireNonNull(lamp, "lamp");
        return "gap_needed_" + lamp + "_m";
    }

    @Override
    public List<String> inputs() {
        return inputs;
    }

    @Override
    public List<String> outputs() {
        return lamps.stream()
                .flatMap(lamp -> Stream.of(probabilityColumn(lamp), gapNeededColumn(lamp)))
                .toList();
    }

    @Override
    public Evaluator evaluator() {
        return new OnOneThread(0);
    }

    /** Takes each gap as shorter than drawn: a step on the way to what is rare. */
    Evaluator evaluatorWithSlack(double slack) {
        return new OnOneThread(slack);
    }

    /** The gap or time gap that half of the drawn ones fall short of. */
    double medianGap() {
        return gapAxis.distribution().orElseThrow().quantile(0.5);
    }

    private final class OnOneThread implements Evaluator {
        private final PairColumns pair = new PairColumns(inputs, lamps);
        private final double[] farM = new double[RowBlock.ROWS];
        private final double[] timeS = new double[RowBlock.ROWS];
        private final double[] closingMps = new double[RowBlock.ROWS];

        private final boolean[] never = new boolean[RowBlock.ROWS];
        private final double slack;

        OnOneThread(double slack) {
            this.slack = slack;
            // from the largest gap there is, the smallest gap tells how much of it was needed
            Arrays.fill(farM, LARGEST_GAP_M);
        }

        @Override
        public void evaluate(int count, double[][] columns, double[][] outputs, Rejects rejects) {
            pair.take(count, columns, rejects);
            pair.limit(count, columns, rejects);
            boolean anyNever = pair.takeOutNonBraking(count, never);
            for (int lamp = 0; lamp < lamps.size(); lamp++) {
                double[] probability = outputs[2 * lamp];
                double[] neededM = outputs[2 * lamp + 1];
                pair.outcomes(lamp, count, columns, farM, timeS, neededM, closingMps, rejects);
                for (int i = 0; i < count; i++) {
                    neededM[i] = anyNever && never[i] ? LARGEST_GAP_M : LARGEST_GAP_M - neededM[i];
                }
                probabilities(count, neededM, probability);
            }
        }

        private void probabilities(int count, double[] neededM, double[] probability) {
            double[] followerMps = pair.followerMps();
            boolean inTime = gapColumn == PairColumn.TIME_GAP;
            double perShare = 1 / share;
            for (int i = 0; i < count; i++) {
                // the kernel's rule: a touch is no contact; a follower that stands needs no gap
                double pushedM = neededM[i] - GapKernel.GRAZING_M;
                double pushed = (inTime ? pushedM / followerMps[i] : pushedM) + slack;
                double part = pushed > 0 ? gap.cdf(Math.min(pushed, longest)) - below : 0;
                probability[i] = Math.min(1, part * perShare);
            }
        }
    }
}
