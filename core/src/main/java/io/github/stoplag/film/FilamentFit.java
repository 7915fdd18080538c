package io.github.stoplag.film;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.sweep.Interval;
import io.github.stoplag.sweep.Measurand.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/**
 * The filament behind one or several filmed curves: coil factor, filament temperature and series resistance for which
 * the model of {@link FilamentLamp} gives the filmed times best.
 *
 * <pre>
 *   least over p:  Σ (t − t₀ − m(p))ᵀ C⁻¹ (t − t₀ − m(p)) + Σ ((p − p₀)/s)²
 *   covariance     (JᵀJ)⁻¹, J the derivatives of all terms, each over its standard uncertainty, at seven places along
 *                  the combination told worst, all else fitted anew at each: such valleys are bent
 *   singular values of J of the curves alone, each parameter over its s: below 1, what was thought beforehand
 *   tells more of a combination than the curves do
 * </pre>
 *
 * <p>Symbols: t filmed times of levels, C their covariance, t₀ the moment of switching of each curve (fitted unless
 * {@link LevelTimes#fromSwitch}), m times of the model, p parameters, p₀ and s what is thought of them beforehand.
 * Beforehand, where nothing else is set (assumed): coil factor 0.72 ± 0.1, filament temperature 2750 K ± 150 K, series
 * resistance 5 % ± 4 % of the hot filament's. Ranges [0.5, 1], [2000, 3200] K, [0, 30 %].
 *
 * <p>One curve tells about one combination of the three: two voltages, or on and off, tell more. {@link #caveats} names
 * what the curves cannot tell apart.
 *
 * <p>Immutable. Sources: generalised least squares with prior terms, JCGM 100:2008, 5.1 and H.3 (from memory).
 */
public final class FilamentFit implements Evident {
    /** What is fitted, in the order of {@link #covariance}. */
    public enum Parameter {
        /** The coil factor f. */
        COIL_FACTOR(0, "coil factor", "", 0.5, 1, 1e-4),
        /** The filament's temperature at the design voltage in K. */
        FILAMENT_TEMPERATURE(1, "filament temperature", "K", 2000, 3200, 0.5),
        /** The series resistance over the hot filament's, both at the design voltage. */
        SERIES_RESISTANCE(2, "series resistance over the filament's", "", 0, 0.3, 1e-4);

        private final int place;
        private final String text;
        private final String unit;
        private final double lo;
        private final double hi;
        private final double step;

        Parameter(int place, String text, String unit, double lo, double hi, double step) {
            this.place = place;
            this.text = text;
            this.unit = unit;
            this.lo = lo;
            this.hi = hi;
            this.step = step;
        }

        /** {@return its name in plain words} */
        public String text() {
            return text;
        }
    }

    private record Curve(LevelTimes times, SupplyConditions conditions, RealMatrix whitening) {}

    private static final int PARAMETERS = Parameter.values().length;
    private static final List<Parameter> ALL = List.of(Parameter.values());
    private static final double COVERAGE = 0.95;
    private static final double NORMAL_95 = 1.959963984540054;
    private static final double TAKES_PART = 0.35;
    /** Places along the combination told worst, in its standard uncertainties, and how firmly one is held there. */
    private static final double[] PLACES = {-2.7, -1.8, -0.9, 0, 0.9, 1.8, 2.7};

    private static final double HELD = 1e-3;
    private static final double WIDE_ZERO_S = 10;
    private static final double ZERO_STEP_S = 1e-5;

    private final Builder given;
    private final double[] point;
    private final List<Place> valley;
    private final RealVector mean;
    private final RealMatrix covariance;
    private final double[] singularValues;
    private final double chiSquare;
    private final int freedom;
    private final Evidence evidence;

    /** A place along the valley, with the covariance across it. */
    @SuppressWarnings("ArrayRecordComponent") // numbers that nobody compares
    private record Place(double[] point, RealMatrix covariance, double weight) {}

    private FilamentFit(Builder given, LeastSquares.Solution solution) {
        this.given = given;
        point = solution.point().toArray();
        valley = valley(solution);
        mean = new ArrayRealVector(point.length);
        valley.forEach(place -> mean.combineToSelf(1, place.weight, new ArrayRealVector(place.point)));
        RealMatrix total = new Array2DRowRealMatrix(point.length, point.length);
        for (Place place : valley) {
            RealVector away = new ArrayRealVector(place.point).subtract(mean);
            total = total.add(place.covariance.add(away.outerProduct(away)).scalarMultiply(place.weight));
        }
        covariance = total;
        int data = given.curves.stream().mapToInt(c -> c.times.timesS().length).sum();
        chiSquare = solution.sumOfSquares();
        // terms of what was thought beforehand and the parameters they are of cancel
        freedom = data
                - (int) given.curves.stream()
                        .filter(c -> !c.times.zeroIsSwitch())
                        .count();
        Told told = told(solution.jacobian());
        singularValues = told.singularValues;
        evidence = evidence(told);
    }

    /**
     * Starts a fit of a lamp known by its rating.
     *
     * @param ratedVoltage the design voltage
     * @param ratedPower the power drawn at it
     * @return a builder to which curves are added
     * @throws IllegalArgumentException if voltage or power is out of the range of {@link FilamentLamp#builder}
     */
    public static Builder of(Voltage ratedVoltage, Power ratedPower) {
        Objects.requireNonNull(ratedPower, "ratedPower");
        Objects.requireNonNull(ratedVoltage, "ratedVoltage");
        return new Builder(ratedVoltage, ratedPower);
    }

    private List<Place> valley(LeastSquares.Solution solution) {
        RealMatrix local = solution.covariance();
        RealMatrix scaled = new Array2DRowRealMatrix(PARAMETERS, PARAMETERS);
        for (int i = 0; i < PARAMETERS; i++) {
            for (int j = 0; j < PARAMETERS; j++) {
                double scale = given.spread[i] * given.spread[j];
                scaled.setEntry(i, j, scale > 0 ? local.getEntry(i, j) / scale : 0);
            }
        }
        SingularValueDecomposition parts = new SingularValueDecomposition(scaled);
        double along = Math.sqrt(parts.getSingularValues()[0]);
        double[] direction = parts.getU().getColumn(0);
        if (given.free().size() < 2) {
            return List.of(new Place(point, local, 1));
        }
        List<LeastSquares.Solution> found = new ArrayList<>();
        List<RealMatrix> across = new ArrayList<>();
        double[] logWeight = new double[PLACES.length];
        double top = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < PLACES.length; k++) {
            LeastSquares.Solution there = given.solve(point, direction, PLACES[k] * along, HELD * along);
            found.add(there);
            across.add(there.covariance());
            // the volume across the valley counts too
            double logVolume = 0;
            for (double value : new SingularValueDecomposition(there.jacobian()).getSingularValues()) {
                logVolume -= value > 0 ? Math.log(value) : 0;
            }
            logWeight[k] = -there.sumOfSquares() / 2 + logVolume;
            top = Math.max(top, logWeight[k]);
        }
        double sum = 0;
        for (double log : logWeight) {
            sum += Math.exp(log - top);
        }
        List<Place> places = new ArrayList<>();
        for (int k = 0; k < PLACES.length; k++) {
            places.add(new Place(found.get(k).point().toArray(), across.get(k), Math.exp(logWeight[k] - top) / sum));
        }
        return places;
    }

    /**
     * Gives a fitted parameter.
     *
     * @param parameter which
     * @return its mean, standard uncertainty and 95 % interval, of normal shape, cut at its range; {@link #lamp} has
     *     the most likely value
     */
    public Estimate estimate(Parameter parameter) {
        int k = parameter.place;
        double u = Math.sqrt(covariance.getEntry(k, k));
        return new Estimate(
                mean.getEntry(k),
                u,
                new Interval(
                        Math.max(parameter.lo, mean.getEntry(k) - NORMAL_95 * u),
                        Math.min(parameter.hi, mean.getEntry(k) + NORMAL_95 * u),
                        COVERAGE));
    }

    /** The covariance of two parameters in their units. */
    double covariance(Parameter a, Parameter b) {
        return covariance.getEntry(a.place, b.place);
    }

    /**
     * {@return the correlation of two parameters, [−1, 1]}
     *
     * @param a one
     * @param b the other
     */
    public double correlationRatio(Parameter a, Parameter b) {
        return covariance(a, b) / Math.sqrt(covariance(a, a) * covariance(b, b));
    }

    /** {@return how well the curves alone tell the parameters: the singular values, greatest first} */
    public List<Double> singularValues() {
        return IntStream.range(0, singularValues.length)
                .mapToObj(k -> singularValues[k])
                .toList();
    }

    /** {@return whether the curves tell all that is fitted better than what was thought beforehand} */
    public boolean isIdentified() {
        return singularValues[singularValues.length - 1] >= 1;
    }

    /** {@return the lamp as fitted} */
    public FilamentLamp lamp() {
        return given.lamp(point);
    }

    /**
     * {@return conditions with the fitted series resistance in the circuit}
     *
     * @param conditions the supply and all else
     */
    public SupplyConditions circuit(SupplyConditions conditions) {
        return given.circuit(point, conditions);
    }

    /**
     * Predicts how the fitted lamp comes on under other conditions.
     *
     * @param conditions the supply and all else; the fitted series resistance is put in
     * @return the onset
     */
    public FilamentOnset switchOn(SupplyConditions conditions) {
        return lamp().switchOn(circuit(conditions));
    }

    /**
     * Predicts when the fitted lamp reaches a level under other conditions, with the uncertainty of the fit.
     *
     * @param rising whether it comes on, not goes out
     * @param conditions the supply and all else
     * @param levelRatio the level relative to the switched light, (0, 1)
     * @return the time since switching in seconds; its uncertainty is first-order across the valley,
     *     JCGM 100:2008, 5.2, and followed along it
     */
    public Estimate timeToLevelS(boolean rising, SupplyConditions conditions, double levelRatio) {
        double value = 0;
        double square = 0;
        for (Place place : valley) {
            double there = given.model(place.point, rising, conditions, new double[] {levelRatio})[0];
            RealVector slope = slope(place.point, rising, conditions, levelRatio);
            value += place.weight * there;
            square += place.weight * (there * there + slope.dotProduct(place.covariance.operate(slope)));
        }
        double u = Math.sqrt(Math.max(0, square - value * value));
        return new Estimate(value, u, new Interval(value - NORMAL_95 * u, value + NORMAL_95 * u, COVERAGE));
    }

    private RealVector slope(double[] at, boolean rising, SupplyConditions conditions, double levelRatio) {
        double[] levels = {levelRatio};
        RealVector slope = new ArrayRealVector(at.length);
        for (Parameter parameter : Parameter.values()) {
            int k = parameter.place;
            double[] above = at.clone();
            double[] below = at.clone();
            above[k] = Math.min(parameter.hi, at[k] + parameter.step);
            below[k] = Math.max(parameter.lo, at[k] - parameter.step);
            double change = given.model(above, rising, conditions, levels)[0]
                    - given.model(below, rising, conditions, levels)[0];
            slope.setEntry(k, change / (above[k] - below[k]));
        }
        return slope;
    }

    /**
     * {@return the least sum of squares over what is expected of it: about 1 for a lamp as the model has it, more where
     * model or uncertainties of the curves do not hold}
     */
    public double misfitRatio() {
        return chiSquare / freedom;
    }

    /** What the curves alone tell: singular values and, for each below 1, the parameters that take part. */
    @SuppressWarnings("ArrayRecordComponent") // numbers that nobody compares
    private record Told(double[] singularValues, List<String> mixed) {}

    private Told told(RealMatrix jacobian) {
        int data = given.curves.stream().mapToInt(c -> c.times.timesS().length).sum();
        // the moments of switching are taken out first: what they explain tells nothing of the lamp
        RealMatrix curves = jacobian.getSubMatrix(0, data - 1, 0, PARAMETERS - 1);
        RealMatrix zeros = jacobian.getSubMatrix(0, data - 1, PARAMETERS, point.length - 1);
        RealMatrix known = zeros.transpose().multiply(zeros);
        for (int c = 0; c < given.curves.size(); c++) {
            known.addToEntry(c, c, Math.pow(1 / given.zeroSpreadS(c), 2));
        }
        RealMatrix gram = curves.transpose().multiply(curves);
        RealMatrix cross = zeros.transpose().multiply(curves);
        gram = gram.subtract(cross.transpose()
                .multiply(new CholeskyDecomposition(known).getSolver().solve(cross)));
        List<Parameter> free = given.free();
        RealMatrix scaled = new Array2DRowRealMatrix(free.size(), free.size());
        for (int i = 0; i < free.size(); i++) {
            for (int j = 0; j < free.size(); j++) {
                int a = free.get(i).place;
                int b = free.get(j).place;
                scaled.setEntry(i, j, gram.getEntry(a, b) * given.spread[a] * given.spread[b]);
            }
        }
        SingularValueDecomposition parts = new SingularValueDecomposition(scaled);
        double[] values = new double[free.size()];
        List<String> mixed = new ArrayList<>();
        for (int k = 0; k < values.length; k++) {
            values[k] = Math.sqrt(Math.max(0, parts.getSingularValues()[k]));
            if (values[k] < 1) {
                RealVector direction = parts.getV().getColumnVector(k);
                mixed.add(IntStream.range(0, free.size())
                        .filter(i -> Math.abs(direction.getEntry(i)) > TAKES_PART)
                        .mapToObj(i -> free.get(i).text)
                        .collect(Collectors.joining(" and ")));
            }
        }
        return new Told(values, mixed);
    }

    private Evidence evidence(Told told) {
        Evidence rests = Evidence.of("fit of " + given.curves.size()
                + (given.curves.size() == 1 ? " curve" : " curves") + " by least squares, beforehand: "
                + given.beforehand());
        for (Curve curve : given.curves) {
            rests = rests.with(curve.times.evidence());
        }
        for (String mixed : told.mixed) {
            boolean one = !mixed.contains(" and ");
            rests = rests.withCaveatIf(
                    true,
                    one
                            ? "the curves hardly tell " + mixed + ": what was thought of it beforehand decides"
                            : "the curves cannot tell " + mixed + " apart: what was thought of them beforehand decides;"
                                    + " film another voltage, or on and off");
        }
        for (Parameter parameter : given.free()) {
            double at = point[parameter.place];
            double margin = 1e-6 * (parameter.hi - parameter.lo);
            rests = rests.withCaveatIf(
                    at <= parameter.lo + margin || at >= parameter.hi - margin,
                    parameter.text + " lies at the end of its range, " + Numbers.text(at) + " " + parameter.unit
                            + ": the rating, the supply or the levels may be wrong");
        }
        return rests.withCaveatIf(
                chiSquare > freedom + 4 * Math.sqrt(2.0 * freedom),
                "the fitted model leaves the curves by more than their uncertainty: sum of squares "
                        + Numbers.text(chiSquare, 3) + " where about " + freedom + " is expected");
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public String toString() {
        return IntStream.range(0, PARAMETERS)
                .mapToObj(k -> ALL.get(k).text + " " + estimate(ALL.get(k)))
                .collect(Collectors.joining(", "));
    }

    /** Collects curves and what is thought beforehand. */
    public static final class Builder {
        private final Voltage ratedVoltage;
        private final Power ratedPower;
        private final double[] mean = {0.72, 2750, 0.05};
        private final double[] spread = {0.1, 150, 0.04};
        private final List<Curve> curves = new ArrayList<>();

        private Builder(Voltage ratedVoltage, Power ratedPower) {
            FilamentLamp.builder(ratedVoltage, ratedPower);
            this.ratedVoltage = ratedVoltage;
            this.ratedPower = ratedPower;
        }

        /**
         * Says what is thought of the coil factor beforehand.
         *
         * @param factor the coil factor f, [0.5, 1]
         * @param uncertaintyRatio its standard uncertainty, [0, 1]; 0 holds it
         * @return this builder
         * @throws IllegalArgumentException if a value is out of range
         */
        public Builder coilFactor(double factor, double uncertaintyRatio) {
            return beforehand(Parameter.COIL_FACTOR, factor, uncertaintyRatio);
        }

        /**
         * Says what is thought of the filament's temperature at the design voltage beforehand.
         *
         * @param temperature the temperature, [2000, 3200] K
         * @param uncertaintyK its standard uncertainty in K, [0, 3200]; 0 holds it
         * @return this builder
         * @throws IllegalArgumentException if a value is out of range
         */
        public Builder filamentTemperature(Temperature temperature, double uncertaintyK) {
            return beforehand(Parameter.FILAMENT_TEMPERATURE, temperature.inKelvin(), uncertaintyK);
        }

        /**
         * Says what is thought of the series resistance beforehand.
         *
         * @param seriesRatio the resistance over that of the hot filament, [0, 0.3]
         * @param uncertaintyRatio its standard uncertainty, [0, 0.3]; 0 holds it
         * @return this builder
         * @throws IllegalArgumentException if a value is out of range
         */
        public Builder seriesResistance(double seriesRatio, double uncertaintyRatio) {
            return beforehand(Parameter.SERIES_RESISTANCE, seriesRatio, uncertaintyRatio);
        }

        private Builder beforehand(Parameter parameter, double value, double standardUncertainty) {
            Check.inRange(parameter.text, value, parameter.lo, parameter.hi, parameter.unit);
            Check.inRange(
                    "standard uncertainty of " + parameter.text, standardUncertainty, 0, parameter.hi, parameter.unit);
            mean[parameter.place] = value;
            spread[parameter.place] = standardUncertainty;
            return this;
        }

        /**
         * Adds a curve.
         *
         * @param times the filmed times
         * @param conditions the supply, surroundings and lens it was filmed under; the series resistance is fitted
         *     instead of theirs
         * @return this builder
         */
        public Builder curve(LevelTimes times, SupplyConditions conditions) {
            Objects.requireNonNull(conditions, "conditions");
            RealMatrix lower =
                    new CholeskyDecomposition(new Array2DRowRealMatrix(times.covarianceS2()), 1e-9, 0).getL();
            curves.add(new Curve(
                    times,
                    conditions,
                    new SingularValueDecomposition(lower).getSolver().getInverse()));
            return this;
        }

        /**
         * Fits.
         *
         * @return the fit
         * @throws IllegalStateException if no curve was added, or the search does not settle
         */
        public FilamentFit fit() {
            if (curves.isEmpty()) {
                throw new IllegalStateException("a fit must have a curve, got none");
            }
            double[] start = new double[PARAMETERS + curves.size()];
            System.arraycopy(mean, 0, start, 0, PARAMETERS);
            for (int c = 0; c < curves.size(); c++) {
                Curve curve = curves.get(c);
                double[] levels = curve.times.levelRatios();
                double modelS = model(start, curve.times.rising(), curve.conditions, levels)[levels.length / 2];
                start[PARAMETERS + c] =
                        curve.times.zeroIsSwitch() ? 0 : curve.times.timesS()[levels.length / 2] - modelS;
            }
            return new FilamentFit(this, solve(start, new double[PARAMETERS], 0, 1));
        }

        /** Fits from a start, held at a distance from it along a direction of parameters over their spreads. */
        private LeastSquares.Solution solve(double[] start, double[] direction, double distance, double firmness) {
            int n = start.length;
            double[] step = new double[n];
            double[] lo = new double[n];
            double[] hi = new double[n];
            for (Parameter parameter : Parameter.values()) {
                int k = parameter.place;
                step[k] = parameter.step;
                // a fixed parameter has no room
                lo[k] = spread[k] == 0 ? mean[k] : parameter.lo;
                hi[k] = spread[k] == 0 ? mean[k] : parameter.hi;
            }
            for (int c = PARAMETERS; c < n; c++) {
                step[c] = ZERO_STEP_S;
                lo[c] = -1e7;
                hi[c] = 1e7;
            }
            LeastSquares.Residuals held = p -> {
                double[] all = residuals(p);
                double moved = -distance;
                for (int k = 0; k < PARAMETERS; k++) {
                    moved += spread[k] > 0 ? direction[k] * (p[k] - start[k]) / spread[k] : 0;
                }
                all[all.length - 1] = moved / firmness;
                return all;
            };
            return LeastSquares.solve(held, start, step, lo, hi);
        }

        private double[] residuals(double[] p) {
            List<Double> all = new ArrayList<>();
            for (int c = 0; c < curves.size(); c++) {
                Curve curve = curves.get(c);
                double[] model = model(p, curve.times.rising(), curve.conditions, curve.times.levelRatios());
                double[] timesS = curve.times.timesS();
                for (int i = 0; i < model.length; i++) {
                    model[i] = timesS[i] - p[PARAMETERS + c] - model[i];
                }
                for (double value : curve.whitening.operate(model)) {
                    all.add(value);
                }
            }
            for (int k = 0; k < PARAMETERS; k++) {
                all.add(spread[k] == 0 ? 0 : (p[k] - mean[k]) / spread[k]);
            }
            for (int c = 0; c < curves.size(); c++) {
                LevelTimes times = curves.get(c).times;
                all.add(times.zeroIsSwitch() ? p[PARAMETERS + c] / zeroSpreadS(c) : 0);
            }
            // and a place for what holds a fit along the valley
            all.add(0.0);
            return all.stream().mapToDouble(Double::doubleValue).toArray();
        }

        private double zeroSpreadS(int curve) {
            LevelTimes times = curves.get(curve).times;
            return times.zeroIsSwitch() ? Math.max(1e-7, times.zeroU().inSeconds()) : WIDE_ZERO_S;
        }

        private double[] model(double[] p, boolean rising, SupplyConditions conditions, double[] levels) {
            FilamentLamp lamp = lamp(p);
            SupplyConditions inCircuit = circuit(p, conditions);
            if (rising) {
                return lamp.timesToLevelsS(inCircuit, levels);
            }
            var decay = lamp.switchOff(inCircuit);
            double[] times = new double[levels.length];
            for (int i = 0; i < times.length; i++) {
                times[i] = decay.timeToLevelS(levels[i]).orElseThrow();
            }
            return times;
        }

        private FilamentLamp lamp(double[] p) {
            return FilamentLamp.builder(ratedVoltage, ratedPower)
                    .coilFactor(p[Parameter.COIL_FACTOR.place])
                    .filamentTemperature(Temperature.kelvin(p[Parameter.FILAMENT_TEMPERATURE.place]))
                    .build();
        }

        private SupplyConditions circuit(double[] p, SupplyConditions conditions) {
            double ratedOhm = ratedVoltage.inVolts() * ratedVoltage.inVolts() / ratedPower.inWatts();
            return conditions.withSeriesResistance(Resistance.ohms(ratedOhm * p[Parameter.SERIES_RESISTANCE.place]));
        }

        private List<Parameter> free() {
            return IntStream.range(0, PARAMETERS)
                    .filter(k -> spread[k] > 0)
                    .mapToObj(k -> ALL.get(k))
                    .toList();
        }

        private String beforehand() {
            return IntStream.range(0, PARAMETERS)
                    .mapToObj(k -> ALL.get(k).text + " " + Numbers.text(mean[k])
                            + (spread[k] == 0 ? " held" : " ± " + Numbers.text(spread[k]))
                            + (ALL.get(k).unit.isEmpty() ? "" : " " + ALL.get(k).unit))
                    .collect(Collectors.joining(", "));
        }
    }
}
