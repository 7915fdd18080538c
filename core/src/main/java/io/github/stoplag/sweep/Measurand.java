package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.StudentT;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * A quantity computed from uncertain inputs: its uncertainty by the first-order law of propagation and by propagation
 * of whole distributions.
 *
 * <pre>
 *   first order (GUM):  u_c² = Σ uᵢ²,  uᵢ = ½ (f(…, xᵢ + u(xᵢ), …) − f(…, xᵢ − u(xᵢ), …)),  U = k u_c
 *   Monte Carlo (JCGM 101):  y = mean, u = standard deviation, the same share cut from both ends of the sorted values
 * </pre>
 *
 * <p>Correlated inputs: u_c² = Σ Σ uᵢ uⱼ rᵢⱼ to first order; draws are joint, by correlated normal scores, which for
 * normal inputs is their joint normal law and for others keeps each input's own law. The two ways agree where f is
 * nearly linear over the inputs' spread and the result nearly normal; where they do not, trust the Monte Carlo. {@link
 * MeasurandComparison#verdict()} is the test of JCGM 101.
 *
 * <p>Inputs known from few readings have degrees of freedom: {@link #budget} gives those of the result by Welch and
 * Satterthwaite and the coverage factor k of Student's t.
 *
 * <p>Source: JCGM 100:2008 (GUM), 5.1.2, 5.2.2, the numerical form of 5.1.3 note 2, G.4 and G.6.4; JCGM 101:2008, 7, 8
 * and annex B (from memory). Tested on H.1 and H.2 of the first and 9.2 to 9.5 of the second; the tests tell which of
 * their figures were seen and which are from memory.
 */
public final class Measurand {
    private static final int MOST_DRAWS = 20_000_000;
    /** Four degrees of freedom computed as 3.9999999999 are four. */
    private static final double ROUNDING = 1e-9;

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
            return valueText() + ", standard uncertainty " + uncertaintyText() + ", ["
                    + at(coverage.lo(), place) + ", " + at(coverage.hi(), place) + "] at "
                    + Numbers.text(100 * coverage.confidence(), 4) + " %";
        }

        String valueText() {
            return at(value, rounded(standardUncertainty).scale());
        }

        String uncertaintyText() {
            return plain(rounded(standardUncertainty));
        }

        private static BigDecimal rounded(double uncertainty) {
            return new BigDecimal(uncertainty).round(new MathContext(2, RoundingMode.HALF_EVEN));
        }

        /** Rounds to a decimal place, which lies before the point if it is negative. */
        private static String at(double value, int place) {
            if (!Double.isFinite(value)) {
                return Double.toString(value);
            }
            return plain(new BigDecimal(value).setScale(place, RoundingMode.HALF_EVEN));
        }

        static String plain(BigDecimal digits) {
            boolean plain = digits.scale() > -3 && digits.scale() < 8;
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
    public record Contribution(String input, double standardUncertainty, double contribution) {

        /**
         * Refuses nulls.
         *
         * @param input the input
         * @param standardUncertainty its standard uncertainty
         * @param contribution its part uᵢ of the result's, with the sign of its effect
         * @throws NullPointerException if one that is required is null
         */
        public Contribution {
            Objects.requireNonNull(input, "input");
        }

        /** {@return the sensitivity coefficient cᵢ: contribution over standard uncertainty} */
        public double coefficient() {
            return contribution / standardUncertainty;
        }
    }

    private final Function function;
    private final MeasurandInputs inputs;

    private Measurand(Function function, MeasurandInputs inputs) {
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
        Objects.requireNonNull(function, "function");
        return new Measurand(function, MeasurandInputs.NONE);
    }

    /**
     * Adds an input; its estimate and standard uncertainty are the mean and standard deviation of its distribution: of
     * a log-normal exp(μ + σ²/2) and that times √(exp(σ²) − 1), of others by quadrature of the quantile function.
     * Student's t has its scale as standard uncertainty and its degrees of freedom, as {@link #student} says.
     *
     * <p>The draws of a log-normal with σ above about 2 hardly determine its standard deviation: most of it lies in
     * values too rare to be drawn.
     *
     * @param name the input with its unit, as in column names
     * @param distribution what is known of it
     * @return the new measurand
     * @throws IllegalArgumentException if there is an input of this name
     */
    public Measurand input(String name, Distribution distribution) {
        Objects.requireNonNull(name, "name");
        return input(name, distribution, Double.POSITIVE_INFINITY);
    }

    /**
     * Adds an input whose uncertainty is itself uncertain: ν = ½ (Δu/u)⁻² degrees of freedom (JCGM 100:2008, G.4.2,
     * from memory).
     *
     * @param name the input with its unit, as in column names
     * @param distribution what is known of it
     * @param degreesOfFreedom ν, at least 1, infinite for an uncertainty that is exact
     * @return the new measurand
     * @throws IllegalArgumentException if there is an input of this name, or ν is below 1
     */
    public Measurand input(String name, Distribution distribution, double degreesOfFreedom) {
        Objects.requireNonNull(name, "name");
        return new Measurand(function, inputs.with(MeasurandInputs.Input.of(name, distribution, degreesOfFreedom)));
    }

    /**
     * Adds a normal input; for the Monte Carlo it is cut at eight standard uncertainties.
     *
     * @param name the input with its unit, as in column names
     * @param estimate the estimate
     * @param standardUncertainty the standard uncertainty, above 0
     * @return the new measurand
     * @throws IllegalArgumentException if the uncertainty is not above 0 or there is an input of this name
     */
    public Measurand normal(String name, double estimate, double standardUncertainty) {
        Objects.requireNonNull(name, "name");
        Check.above("standard uncertainty of " + name, standardUncertainty, 0, 1e9, "");
        double reach = 8 * standardUncertainty;
        Distribution distribution =
                new Distribution.TruncatedNormal(estimate, standardUncertainty, estimate - reach, estimate + reach);
        return new Measurand(
                function,
                inputs.with(new MeasurandInputs.Input(
                        name, distribution, estimate, standardUncertainty, Double.POSITIVE_INFINITY)));
    }

    /**
     * Adds an input known from few readings: to first order u with ν degrees of freedom, in the Monte Carlo Student's t
     * scaled by u, which spreads more than u (JCGM 101:2008, 6.4.9, from memory).
     *
     * @param name the input with its unit, as in column names
     * @param estimate the estimate, such as the mean of n readings
     * @param standardUncertainty u, such as their standard deviation over √n, above 0
     * @param degreesOfFreedom ν, such as n − 1, [1, 1e6]
     * @return the new measurand
     * @throws IllegalArgumentException if an argument is out of range or there is an input of this name
     */
    public Measurand student(String name, double estimate, double standardUncertainty, double degreesOfFreedom) {
        Objects.requireNonNull(name, "name");
        Check.above("standard uncertainty of " + name, standardUncertainty, 0, 1e9, "");
        return input(name, new StudentT(estimate, standardUncertainty, degreesOfFreedom));
    }

    /**
     * Adds inputs read at the same time, several times over: mean x̄, standard uncertainty s/√n and n − 1 degrees of
     * freedom of each, and the correlation of each pair, r = Σ (xₖ − x̄)(yₖ − ȳ)/((n − 1) s_x s_y) (JCGM 100:2008, 4.2
     * and 5.2.3, from memory).
     *
     * @param names the inputs with their units
     * @param readings for each input its n readings, n at least 2 and the same for all
     * @return the new measurand
     * @throws IllegalArgumentException if there are not as many readings of each input, fewer than two, or all readings
     *     of an input are the same
     */
    public Measurand readings(List<String> names, double[]... readings) {
        Objects.requireNonNull(names, "names");
        Objects.requireNonNull(readings, "readings");
        return new Measurand(function, inputs.withReadings(names, readings));
    }

    /**
     * Lets two inputs depend on each other.
     *
     * @param first one input
     * @param second the other
     * @param correlation their correlation coefficient r = u(x, y)/(u(x) u(y)), [−1, 1]
     * @return the new measurand
     * @throws IllegalArgumentException if r is out of range, an input is not there, or both are the same
     */
    public Measurand correlate(String first, String second, double correlation) {
        return new Measurand(function, inputs.correlate(first, second, correlation));
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
            double[] at = inputs.estimates();
            double u = inputs.get(i).standardUncertainty();
            at[i] += u;
            double above = value(at);
            at[i] -= 2 * u;
            list.add(new Contribution(inputs.get(i).name(), u, 0.5 * (above - value(at))));
        }
        return list;
    }

    /**
     * Gives what each input brings in by the other way: the standard deviation of the result while that input alone is
     * drawn and all others are held at their estimates (JCGM 101:2008, annex B, from memory). It sees what a slope at
     * the estimate does not, but no joint effect of two inputs.
     *
     * @param draws how many for each input, [1000, 2e7]
     * @param seed the seed
     * @return the contributions in the order of the inputs, with the sign of the slope
     * @throws IllegalArgumentException if the draws are out of range or the function gives no finite number
     */
    public List<Contribution> contributionsByHolding(int draws, long seed) {
        List<Contribution> slopes = contributions();
        List<Contribution> list = new ArrayList<>();
        for (int i = 0; i < inputs.size(); i++) {
            Moments moments = new Moments();
            moments.add(drawn(inputs.onlyVarying(i), draws, seed), draws);
            double signed =
                    Math.copySign(moments.standardDeviation(), slopes.get(i).contribution());
            list.add(new Contribution(inputs.get(i).name(), inputs.get(i).standardUncertainty(), signed));
        }
        return list;
    }

    /**
     * Computes the quantity from values of the inputs, whatever their uncertainty.
     *
     * @param values one value for each input in order
     * @return the quantity
     * @throws IllegalArgumentException if their number is not that of the inputs, or the function gives no finite
     *     number
     */
    public double at(double... values) {
        Objects.requireNonNull(values, "values");
        Check.inRange("number of values", values.length, inputs.size(), inputs.size(), "");
        return value(values.clone());
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

    /**
     * Propagates to first order; the interval takes the result as normal, or as Student's t where inputs have degrees
     * of freedom.
     *
     * @param confidence the coverage probability, [0.5, 1)
     * @return value, combined standard uncertainty and expanded interval
     * @throws IllegalArgumentException as {@link #budget}
     */
    public Estimate firstOrder(double confidence) {
        return budget(confidence).estimate();
    }

    /**
     * Propagates to first order and shows the working: contributions, effective degrees of freedom, coverage factor.
     *
     * <p>ν = u_c⁴/Σ uᵢ⁴/νᵢ (Welch-Satterthwaite), cut to a whole number for k = t_p(ν). Correlated inputs that were
     * read together, with the same degrees of freedom, count as one term.
     *
     * @param confidence the coverage probability p, [0.5, 1)
     * @return the budget
     * @throws IllegalArgumentException if the probability is out of range, the function gives no finite number, the
     *     correlations contradict each other, or correlated inputs have different degrees of freedom
     */
    public UncertaintyBudget budget(double confidence) {
        double value = value(inputs.estimates());
        List<Contribution> contributions = contributions();
        double[] parts =
                contributions.stream().mapToDouble(Contribution::contribution).toArray();
        double u = Math.sqrt(Math.max(0, inputs.covariance(parts, parts)));
        double freedom = inputs.effectiveDegreesOfFreedom(parts, u);
        double whole = Math.max(1, Math.floor(freedom * (1 + ROUNDING)));
        double k = Interval.coverageFactor(confidence, whole);
        Interval interval = new Interval(value - k * u, value + k * u, confidence);
        return new UncertaintyBudget(new Estimate(value, u, interval), contributions, whole, k);
    }

    /**
     * Gives the correlation of two results of the same inputs, to first order: r(y, z) = Σ Σ uᵢ(y) uⱼ(z) rᵢⱼ/(u(y)
     * u(z)) (JCGM 100:2008, H.2.3, from memory).
     *
     * @param other another quantity of the same inputs
     * @return the correlation coefficient, [−1, 1]
     * @throws IllegalArgumentException if the inputs are not the same, or one result has no uncertainty
     */
    public double correlationWith(Measurand other) {
        Objects.requireNonNull(other, "other");
        if (!inputs.equals(other.inputs)) {
            throw new IllegalArgumentException(
                    "correlated results must have the same inputs, got " + inputs + " and " + other.inputs);
        }
        double[] mine =
                contributions().stream().mapToDouble(Contribution::contribution).toArray();
        double[] theirs = other.contributions().stream()
                .mapToDouble(Contribution::contribution)
                .toArray();
        double square = inputs.covariance(mine, mine) * inputs.covariance(theirs, theirs);
        if (!(square > 0)) {
            throw new IllegalArgumentException("correlated results must have standard uncertainties above 0, got 0");
        }
        return inputs.covariance(mine, theirs) / Math.sqrt(square);
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
        return estimate(drawn(inputs, draws, seed), confidence);
    }

    /**
     * Propagates the distributions; the interval is the shortest that holds the share of the draws (JCGM 101:2008,
     * 5.3.4 and 7.7, from memory): for a skew result it leaves more out on the side of the long tail.
     *
     * @param confidence the coverage probability, [0.5, 1)
     * @param draws how many, [1000, 2e7]
     * @param seed the seed
     * @return mean, standard deviation and shortest interval of the drawn values
     * @throws IllegalArgumentException if an argument is out of range or the function gives no finite number
     */
    public Estimate monteCarloShortest(double confidence, int draws, long seed) {
        Interval.z(confidence);
        double[] values = drawn(inputs, draws, seed);
        Estimate symmetric = estimate(values, confidence);
        int inside = Math.min(draws - 1, (int) Math.round(confidence * draws));
        int best = 0;
        for (int from = 1; from + inside < draws; from++) {
            best = values[from + inside] - values[from] < values[best + inside] - values[best] ? from : best;
        }
        return new Estimate(
                symmetric.value(),
                symmetric.standardUncertainty(),
                new Interval(values[best], values[best + inside], confidence));
    }

    private double[] drawn(MeasurandInputs varying, int draws, long seed) {
        Check.inRange("draws", draws, 1000, MOST_DRAWS, "");
        double[] values = new double[draws];
        varying.draw(draws, seed, (index, at) -> values[index] = value(at));
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
        double[] values = drawn(inputs, draws, seed);
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
