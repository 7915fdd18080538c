package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;

/**
 * A quantity computed from uncertain inputs: its uncertainty by the first-order law of propagation and by propagation
 * of whole distributions.
 *
 * <pre>
 *   first order (GUM):  u_c² = Σ uᵢ²,  uᵢ = ½ (f(…, xᵢ + u(xᵢ), …) − f(…, xᵢ − u(xᵢ), …)),  U = k u_c
 *   Monte Carlo (JCGM 101):  y = mean, u = standard deviation, the same share cut from both ends of the sorted values
 * </pre>
 *
 * <p>Inputs are independent. The two agree where f is nearly linear over the inputs' spread and the result nearly
 * normal; where they do not, trust the Monte Carlo. {@link MeasurandComparison#verdict()} is the test of JCGM 101.
 *
 * <p>Source: JCGM 100:2008 (GUM), 5.1.2 and the numerical form of 5.1.3 note 2; JCGM 101:2008, 7 and 8 (from memory).
 * Tested on the additive models of JCGM 101, 9.2: the models and the figures of 9.2.2 and 9.2.3 are from memory, those
 * of 9.2.3 and 9.2.4 follow from the closed form of a sum of rectangles; its text was not at hand.
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
        /**
         * Checks that there are numbers.
         *
         * @param value the estimate
         * @param standardUncertainty its standard uncertainty
         * @param coverage the interval that holds the quantity with the stated probability
         * @throws NullPointerException if there is no interval
         * @throws IllegalArgumentException if the estimate is not finite, or its uncertainty is not in [0, ∞)
         */
        public Estimate {
            Objects.requireNonNull(coverage, "coverage interval of an estimate");
            if (!(Double.isFinite(value) && standardUncertainty >= 0 && Double.isFinite(standardUncertainty))) {
                throw new IllegalArgumentException(
                        "an estimate must be finite and its standard uncertainty in [0, ∞), got " + Numbers.text(value)
                                + " and " + Numbers.text(standardUncertainty));
            }
        }

        /**
         * Prints the uncertainty to two significant digits, and value and ends of the interval to the same place (JCGM
         * 100:2008, 7.2.6, from memory).
         */
        @Override
        public String toString() {
            if (standardUncertainty == 0) {
                return Numbers.text(value) + ", standard uncertainty 0, " + coverage;
            }
            int place = rounded(standardUncertainty).scale();
            return at(value, place) + ", standard uncertainty " + at(standardUncertainty, place) + ", ["
                    + at(coverage.lo(), place) + ", " + at(coverage.hi(), place) + "] at "
                    + Numbers.text(100 * coverage.confidence(), 4) + " %";
        }

        private static BigDecimal rounded(double uncertainty) {
            return new BigDecimal(uncertainty).round(new MathContext(2, RoundingMode.HALF_EVEN));
        }

        /** Rounds to a decimal place, which lies before the point if it is negative. */
        private static String at(double value, int place) {
            if (!Double.isFinite(value)) {
                return Double.toString(value);
            }
            BigDecimal digits = new BigDecimal(value).setScale(place, RoundingMode.HALF_EVEN);
            boolean plain = place > -3 && place < 8;
            return digits.signum() == 0 ? "0" : plain ? digits.toPlainString() : digits.toString();
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
     * Adds an input; its estimate and standard uncertainty are the mean and standard deviation of its distribution: of
     * a log-normal exp(μ + σ²/2) and that times √(exp(σ²) − 1), of others by quadrature of the quantile function.
     *
     * <p>The draws of a log-normal with σ above about 2 hardly determine its standard deviation: most of it lies in
     * values too rare to be drawn.
     *
     * @param name the input with its unit, as in column names
     * @param distribution what is known of it
     * @return the new measurand
     */
    public Measurand input(String name, Distribution distribution) {
        if (distribution instanceof Distribution.LogNormal d) {
            double square = d.sigma() * d.sigma();
            double mean = Math.exp(d.mu() + square / 2);
            return with(new Input(name, distribution, mean, mean * Math.sqrt(Math.expm1(square))));
        }
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
     * @throws IllegalArgumentException if the function gives no finite number
     */
    public List<Contribution> contributions() {
        List<Contribution> list = new ArrayList<>();
        for (int i = 0; i < inputs.size(); i++) {
            double[] at = estimates();
            double u = inputs.get(i).standardUncertainty();
            at[i] += u;
            double above = value(at);
            at[i] -= 2 * u;
            list.add(new Contribution(inputs.get(i).name(), u, 0.5 * (above - value(at))));
        }
        return list;
    }

    private double value(double[] at) {
        double value = function.of(at);
        if (!Double.isFinite(value)) {
            StringBuilder text = new StringBuilder(
                    "the function must give a finite number for every input, got " + Numbers.text(value) + " at ");
            for (int i = 0; i < at.length; i++) {
                text.append(i == 0 ? "" : ", ")
                        .append(inputs.get(i).name())
                        .append('=')
                        .append(Numbers.text(at[i]));
            }
            throw new IllegalArgumentException(text.toString());
        }
        return value;
    }

    private double[] estimates() {
        return inputs.stream().mapToDouble(Input::mean).toArray();
    }

    /**
     * Propagates to first order; the interval takes the result as normal.
     *
     * @param confidence the coverage probability, [0.5, 1)
     * @return value, combined standard uncertainty and expanded interval
     * @throws IllegalArgumentException if the probability is out of range or the function gives no finite number
     */
    public Estimate firstOrder(double confidence) {
        double value = value(estimates());
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
     * @throws IllegalArgumentException if an argument is out of range or the function gives no finite number
     */
    public Estimate monteCarlo(double confidence, int draws, long seed) {
        Interval.z(confidence);
        return estimate(drawn(draws, seed), confidence);
    }

    private double[] drawn(int draws, long seed) {
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
                values[from + row] = value(at);
            }
        }
        return values;
    }

    // mean and standard deviation are summed in the order of the draws, before they are sorted
    private static Estimate estimate(double[] values, double confidence) {
        Moments moments = new Moments();
        moments.add(values, values.length);
        Arrays.sort(values);
        int cut = cut(values.length, confidence);
        Interval interval = new Interval(values[Math.max(0, cut - 1)], values[values.length - 1 - cut], confidence);
        return new Estimate(moments.mean(), moments.standardDeviation(), interval);
    }

    private static int cut(int draws, double confidence) {
        return (int) Math.floor(0.5 * (1 - confidence) * draws + 0.5);
    }

    /**
     * Half the step between the values one standard deviation of a rank below and above an end: the end's standard
     * error.
     */
    private static double scatter(double[] sorted, int end, double confidence) {
        double tail = 0.5 * (1 - confidence);
        int ranks = (int) Math.ceil(Math.sqrt(sorted.length * tail * (1 - tail)));
        int below = Math.max(0, end - ranks);
        int above = Math.min(sorted.length - 1, end + ranks);
        return (sorted[above] - sorted[below]) * ranks / (above - below);
    }

    /**
     * Puts both ways side by side.
     *
     * @param confidence the coverage probability, [0.5, 1)
     * @param draws how many draws, [1000, 2e7]
     * @param seed the seed
     * @return both estimates, the tolerance of their comparison and how well the draws determine the ends
     * @throws IllegalArgumentException if an argument is out of range or the function gives no finite number
     */
    public MeasurandComparison compare(double confidence, int draws, long seed) {
        Estimate first = firstOrder(confidence);
        double[] values = drawn(draws, seed);
        Estimate monteCarlo = estimate(values, confidence);
        int cut = cut(draws, confidence);
        return new MeasurandComparison(
                first,
                monteCarlo,
                tolerance(monteCarlo.standardUncertainty()),
                scatter(values, Math.max(0, cut - 1), confidence),
                scatter(values, draws - 1 - cut, confidence),
                draws);
    }

    /** Half a unit of the second significant digit of what u is when rounded to two digits. */
    private static double tolerance(double standardUncertainty) {
        if (standardUncertainty == 0 || !Double.isFinite(standardUncertainty)) {
            return 0;
        }
        return 0.5
                * new BigDecimal(standardUncertainty)
                        .round(new MathContext(2))
                        .ulp()
                        .doubleValue();
    }
}
