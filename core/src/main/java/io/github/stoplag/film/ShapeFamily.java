package io.github.stoplag.film;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.Lens;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.sweep.CounterRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.stat.correlation.Covariance;

/**
 * What is thought beforehand of how a lamp's light may rise or fall: the logarithm of the speed dx/dt at the levels of
 * {@link RiseShape} is a mean plus normal multiples of a few patterns; the rise time is as likely in one decade as in
 * another.
 *
 * <p>Three families stand side by side, and the film chooses among them by how well each foretells it: electronic lamps
 * (first-order, any speed up to 0.2 s), filaments (the model of {@code lamp} over the spread of bulbs, supplies, wiring
 * and lenses) and any other course, with bends and ends of its own. Where the film cannot choose, all keep their
 * weight.
 */
@SuppressWarnings("ArrayRecordComponent") // columns of numbers; nobody compares families
record ShapeFamily(
        String name,
        double weight,
        double[] mean,
        double[][] patterns,
        double shortestS,
        double longestS,
        boolean mayBeSudden) {
    static final int COUNT = 3;

    private static final int LAMPS = 160;
    private static final int FILAMENT_PATTERNS = 3;
    /** By how much real filaments may leave the model's courses. */
    private static final double BEYOND_MODEL = 0.05;

    private static final double WIDER = 1.25;
    private static final double STEP = 1e-3;

    private static final ShapeFamily ELECTRONIC = new ShapeFamily(
            "electronic",
            0.45,
            at(x -> Math.log(1 - x)),
            new double[][] {at(x -> 0.1 * Math.log(1 - x))},
            1e-5,
            0.2,
            true);
    private static final ShapeFamily OTHER = new ShapeFamily(
            "other",
            0.1,
            at(x -> 0.4 * Math.log(x + 0.003) + 0.9 * Math.log(1 - x)),
            new double[][] {
                at(x -> 0.35 * Math.log(x + 0.003)),
                at(x -> 0.35 * Math.log(1 - x)),
                at(x -> 0.3 * Math.cos(0.5 * stretched(x))),
                at(x -> 0.3 * Math.sin(0.5 * stretched(x))),
                at(x -> 0.25 * Math.cos(stretched(x))),
                at(x -> 0.25 * Math.sin(stretched(x)))
            },
            1e-5,
            3,
            true);

    /** The filament families are worked out when first used. */
    private static final class Filaments {
        static final ShapeFamily RISING = filament(true);
        static final ShapeFamily FALLING = filament(false);
    }

    static List<ShapeFamily> all(boolean rising) {
        return List.of(ELECTRONIC, rising ? Filaments.RISING : Filaments.FALLING, OTHER);
    }

    int patternCount() {
        return patterns.length;
    }

    void logSpeed(double[] parameters, int from, double[] result) {
        System.arraycopy(mean, 0, result, 0, mean.length);
        for (int j = 0; j < patterns.length; j++) {
            double factor = parameters[from + j];
            double[] pattern = patterns[j];
            for (int k = 0; k < result.length; k++) {
                result[k] += factor * pattern[k];
            }
        }
    }

    private static double stretched(double x) {
        return Math.log((x + 0.003) / (1.003 - x));
    }

    private static double[] at(DoubleUnaryOperator f) {
        double[] values = new double[RiseShape.LEVELS.length];
        for (int k = 0; k < values.length; k++) {
            values[k] = f.applyAsDouble(RiseShape.LEVELS[k]);
        }
        return values;
    }

    private static ShapeFamily filament(boolean rising) {
        double[][] rows = new double[LAMPS][];
        for (int lamp = 0; lamp < LAMPS; lamp++) {
            rows[lamp] = logSpeeds(timesOf(lamp, rising));
        }
        double[] mean = new double[RiseShape.LEVELS.length];
        for (double[] row : rows) {
            for (int k = 0; k < mean.length; k++) {
                mean[k] += row[k] / LAMPS;
            }
        }
        EigenDecomposition parts =
                new EigenDecomposition(new Covariance(new Array2DRowRealMatrix(rows)).getCovarianceMatrix());
        List<double[]> patterns = new ArrayList<>();
        for (int j = 0; j < FILAMENT_PATTERNS; j++) {
            double scale = WIDER * Math.sqrt(Math.max(0, parts.getRealEigenvalue(j)));
            patterns.add(parts.getEigenvector(j).mapMultiply(scale).toArray());
        }
        patterns.add(at(x -> BEYOND_MODEL * Math.cos(0.7 * stretched(x))));
        patterns.add(at(x -> BEYOND_MODEL * Math.sin(0.7 * stretched(x))));
        return new ShapeFamily("filament", 0.45, mean, patterns.toArray(double[][]::new), 0.02, 2, false);
    }

    /** The times to levels of one bulb of the spread, of the bulb's own numbers drawn by position. */
    private static DoubleUnaryOperator timesOf(int lamp, boolean rising) {
        CounterRandom random = CounterRandom.of(20_240_601);
        double ratedV = 13.5;
        FilamentLamp bulb = FilamentLamp.builder(Voltage.volts(ratedV), Power.watts(between(random, lamp, 0, 5, 30)))
                .filamentTemperature(Temperature.kelvin(between(random, lamp, 1, 2450, 3050)))
                .coilFactor(between(random, lamp, 6, 0.55, 0.95))
                .gasLossShare(between(random, lamp, 2, 0, 0.35))
                .build();
        SupplyConditions on = SupplyConditions.of(Voltage.volts(ratedV * between(random, lamp, 3, 0.75, 1.12)))
                .withSeriesResistance(
                        Resistance.ohms(bulb.ratedResistance().inOhms() * between(random, lamp, 4, 0, 0.15)))
                .withAmbientTemperature(Temperature.kelvin(between(random, lamp, 5, 253, 320)))
                .withLens(List.of(Lens.values()).get(lamp % Lens.values().length));
        return rising
                ? x -> bulb.switchOn(on).timeToLevelS(x).orElseThrow()
                : x -> bulb.switchOff(on).timeToLevelS(1 - x).orElseThrow();
    }

    private static double between(CounterRandom random, int lamp, int axis, double lo, double hi) {
        return lo + (hi - lo) * random.uniform(axis, lamp);
    }

    /** ln(dx/dt) times the rise time, by differences of times over a small step of ln(x/(1 − x)). */
    private static double[] logSpeeds(DoubleUnaryOperator timeS) {
        double riseS = timeS.applyAsDouble(0.9) - timeS.applyAsDouble(0.1);
        return at(level -> {
            double x = Math.max(level, 1e-4);
            double below = x / (x + (1 - x) * Math.exp(STEP));
            double above = x / (x + (1 - x) * Math.exp(-STEP));
            return Math.log(riseS * (above - below) / (timeS.applyAsDouble(above) - timeS.applyAsDouble(below)));
        });
    }
}
