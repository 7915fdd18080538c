package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * A quantity computed from uncertain inputs: its uncertainty by the first-order law of propagation and by propagation of whole
 * distributions.
 *
 * <pre>
 *   first order (GUM):  u_c² = Σ uᵢ²,  uᵢ = ½ (f(…, xᵢ + u(xᵢ), …) − f(…, xᵢ − u(xᵢ), …)),  U = k u_c
 *   Monte Carlo (JCGM 101):  y = mean, u = standard deviation, shortest tails cut evenly from the sorted values
 * </pre>
 *
 * <p>Inputs are independent. The two agree where f is nearly linear over the inputs' spread and the result nearly normal; where they do
 * not, trust the Monte Carlo. {@link Comparison#agree()} is the test of JCGM 101.
 *
 * <p>Source: JCGM 100:2008 (GUM), 5.1.2 and the numerical form of 5.1.3 note 2; JCGM 101:2008, 7 and 8 (from memory; tested against the worked
 * examples of its clause 9).
 */
public final class Measurand {
    private static final int MOST_DRAWS = 20_000_000;

    /** Computes the quantity from one value for each input. */
    @FunctionalInterface
    public interface Function {
        /**
         * Computes the quantity.
         *
         * @param inputs one value for each input in order
         * @return the quantity
         */
        double of(double[] inputs);
    }

    /**
     * An estimate with its uncertainty.
     *
     * @param value the estimate
     * @param standardUncertainty its standard uncertainty
     * @param coverage the interval that holds the quantity with the stated probability
     */
    public record Estimate(double value, double standardUncertainty, Interval coverage) {
        @Override
        public String toString() {
            return Numbers.text(value) + ", standard uncertainty " + Numbers.text(standardUncertainty, 2) + ", "
                    + coverage;
        }
    }

    /**
     * What one input brings in.
     *
     * @param input the input
     * @param standardUncertainty its standard uncertainty
     * @param contribution its part uᵢ of the result's, with the sign of its effect
     */
    public record Contribution(String input, double standardUncertainty, double contribution) {}

    /**
     * Both ways side by side.
     *
     * @param firstOrder by the law of propagation
     * @param monteCarlo by propagation of distributions
     * @param tolerance half a unit of the last of two significant digits of the Monte Carlo's standard uncertainty
     */
    public record Comparison(Estimate firstOrder, Estimate monteCarlo, double tolerance) {
        /**
         * Says whether the first-order interval is validated: both ends within the tolerance (JCGM 101, 8.1).
         *
         * @return true if they agree
         */
        public boolean agree() {
            return Math.abs(firstOrder.coverage().lo() - monteCarlo.coverage().lo()) <= tolerance
                    && Math.abs(firstOrder.coverage().hi()
                                    - monteCarlo.coverage().hi())
                            <= tolerance;
        }
    }

    private record Input(String name, Distribution distribution, double mean, double standardUncertainty) {}

    private final Function function;
    private final List<Input> inputs;

    private Measurand(Function function, List<Input> inputs) {
        this.function = function;
        this.inputs = inputs;
    }

    /**
     * Starts with a function and no inputs.
     *
     * @param function how the quantity follows from its inputs
     * @return the measurand
     */
    public static Measurand of(Function function) {
        return new Measurand(function, List.of());
    }

    /**
     * Adds an input; its estimate and standard uncertainty are the mean and standard deviation of its distribution, by quadrature of the
     * quantile function.
     *
     * @param name the input with its unit, as in column names
     * @param distribution what is known of it
     * @return the new measurand
     */
    public Measurand input(String name, Distribution distribution) {
        Moments moments = new Moments();
        int points = 200_000;
        double[] values = new double[points];
        DoubleUnaryOperator lower = distribution.quantileFunction();
        DoubleUnaryOperator upper = distribution.upperQuantileFunction();
        for (int k = 0; k < points; k++) {
            double p = (k + 0.5) / points;
            values[k] = p < 0.5 ? lower.applyAsDouble(p) : upper.applyAsDouble((points - k - 0.5) / points);
        }
        moments.add(values, points);
        return with(new Input(name, distribution, moments.mean(), moments.standardDeviation()));
    }

    /**
     * Adds a normal input; for the Monte Carlo it is cut at eight standard uncertainties.
     *
     * @param name the input with its unit, as in column names
     * @param estimate the estimate
     * @param standardUncertainty the standard uncertainty, above 0
     * @return the new measurand
     * @throws IllegalArgumentException if the uncertainty is not above 0
     */
    public Measurand normal(String name, double estimate, double standardUncertainty) {
        Check.above("standard uncertainty of " + name, standardUncertainty, 0, 1e9, "");
        double reach = 8 * standardUncertainty;
        Distribution distribution =
                new Distribution.TruncatedNormal(estimate, standardUncertainty, estimate - reach, estimate + reach);
        return with(new Input(name, distribution, estimate, standardUncertainty));
    }

    private Measurand with(Input input) {
        List<Input> more = new ArrayList<>(inputs);
        more.add(input);
        return new Measurand(function, List.copyOf(more));
    }

    /**
     * Gives what each input brings in.
     *
     * @return the contributions in the order of the inputs
     */
    public List<Contribution> contributions() {
        List<Contribution> list = new ArrayList<>();
        for (int i = 0; i < inputs.size(); i++) {
            double[] at = estimates();
            double u = inputs.get(i).standardUncertainty();
            at[i] += u;
            double above = function.of(at);
            at[i] -= 2 * u;
            list.add(new Contribution(inputs.get(i).name(), u, 0.5 * (above - function.of(at))));
        }
        return list;
    }

    private double[] estimates() {
        return inputs.stream().mapToDouble(Input::mean).toArray();
    }

    /**
     * Propagates to first order; the interval takes the result as normal.
     *
     * @param confidence the coverage probability, [0.5, 1)
     * @return value, combined standard uncertainty and expanded interval
     * @throws IllegalArgumentException if the probability is out of range
     */
    public Estimate firstOrder(double confidence) {
        double value = function.of(estimates());
        double square = 0;
        for (Contribution c : contributions()) {
            square += c.contribution() * c.contribution();
        }
        double u = Math.sqrt(square);
        double half = Interval.z(confidence) * u;
        return new Estimate(value, u, new Interval(value - half, value + half, confidence));
    }

    /**
     * Propagates the distributions; the interval cuts the same share from both tails.
     *
     * @param confidence the coverage probability, [0.5, 1)
     * @param draws how many, [1000, 2e7]; JCGM 101 suggests 10⁶
     * @param seed the seed
     * @return mean, standard deviation and interval of the drawn values
     * @throws IllegalArgumentException if an argument is out of range
     */
    public Estimate monteCarlo(double confidence, int draws, long seed) {
        Interval.z(confidence);
        Check.inRange("draws", draws, 1000, MOST_DRAWS, "");
        Plan plan = Plan.of(Design.random(draws), seed);
        for (int i = 0; i < inputs.size(); i++) {
            plan = plan.axis(Axis.drawn("x" + i, "", inputs.get(i).distribution()));
        }
        double[][] columns = new double[inputs.size()][RowBlock.ROWS];
        double[] at = new double[inputs.size()];
        double[] values = new double[draws];
        Scenarios scenarios = plan.scenarios();
        for (int from = 0; from < draws; from += RowBlock.ROWS) {
            int count = Math.min(RowBlock.ROWS, draws - from);
            scenarios.fill(from, count, columns);
            for (int row = 0; row < count; row++) {
                for (int i = 0; i < at.length; i++) {
                    at[i] = columns[i][row];
                }
                values[from + row] = function.of(at);
            }
        }
        Moments moments = new Moments();
        moments.add(values, draws);
        Arrays.sort(values);
        int cut = (int) Math.floor(0.5 * (1 - confidence) * draws + 0.5);
        Interval interval = new Interval(values[Math.max(0, cut - 1)], values[draws - 1 - cut], confidence);
        return new Estimate(moments.mean(), moments.standardDeviation(), interval);
    }

    /**
     * Puts both ways side by side.
     *
     * @param confidence the coverage probability, [0.5, 1)
     * @param draws how many draws, [1000, 2e7]
     * @param seed the seed
     * @return both estimates and the tolerance of their comparison
     * @throws IllegalArgumentException if an argument is out of range
     */
    public Comparison compare(double confidence, int draws, long seed) {
        Estimate monteCarlo = monteCarlo(confidence, draws, seed);
        double unit = Math.pow(10, Math.floor(Math.log10(monteCarlo.standardUncertainty())) - 1);
        return new Comparison(firstOrder(confidence), monteCarlo, 0.5 * unit);
    }
}
