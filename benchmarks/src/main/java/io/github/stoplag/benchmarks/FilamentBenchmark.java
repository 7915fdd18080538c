package io.github.stoplag.benchmarks;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.lamp.Tungsten;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.events.EventHandler;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Times to 10, 50 and 90 % of a filament lamp's light: the quadrature against Commons Math's Dormand-Prince 8(5,3) with
 * three events. Both start from the supply voltage; the integrator is told the three temperatures in advance, which
 * favours it.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class FilamentBenchmark {
    private static final double[] LEVELS = {0.1, 0.5, 0.9};
    private static final double STEFAN_BOLTZMANN = 5.670374419e-8;
    private static final double AMBIENT_K = 300;
    private static final double AGREEMENT = 1e-11;

    private final FilamentLamp lamp =
            FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26)).build();
    private final SupplyConditions conditions = SupplyConditions.of(Voltage.volts(13.5));
    private final double[] levelsK = new double[LEVELS.length];

    /**
     * Works the three temperatures out and checks that both ways agree to 1e-11, else the comparison would be unfair.
     */
    @Setup
    public void setUp() {
        FilamentOnset onset = lamp.switchOn(conditions);
        for (int i = 0; i < LEVELS.length; i++) {
            TimeSpan at = onset.timeToLevel(LEVELS[i]).orElseThrow();
            levelsK[i] = onset.temperatureAt(at).inKelvin();
        }
        double[] fast = timesByQuadrature();
        double[] slow = timesByIntegratorAtEqualAccuracy();
        for (int i = 0; i < LEVELS.length; i++) {
            if (!(Math.abs(fast[i] / slow[i] - 1) <= AGREEMENT)) {
                throw new IllegalStateException(
                        "times to level " + LEVELS[i] + " differ: " + fast[i] + " and " + slow[i]);
            }
        }
    }

    /**
     * Times to three levels without a curve.
     *
     * @return the times in seconds
     */
    @Benchmark
    public double[] timesByQuadrature() {
        return lamp.timesToLevelsS(conditions, LEVELS);
    }

    /**
     * The whole onset curve, which can be asked for any time.
     *
     * @return the onset
     */
    @Benchmark
    public FilamentOnset onsetCurve() {
        return lamp.switchOn(conditions);
    }

    /**
     * The rival at the tolerance at which its times are as true as the quadrature's.
     *
     * @return the times in seconds
     */
    @Benchmark
    public double[] timesByIntegratorAtEqualAccuracy() {
        return integrate(1e-13, 1e-15);
    }

    /**
     * The rival at a tolerance at which its times are good to about 5e-8.
     *
     * @return the times in seconds
     */
    @Benchmark
    public double[] timesByIntegratorLoose() {
        return integrate(1e-8, 1e-10);
    }

    private double[] integrate(double tolerance, double eventTolerance) {
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-9, 0.1, tolerance, tolerance);
        double[] times = new double[LEVELS.length];
        for (int i = 0; i < LEVELS.length; i++) {
            integrator.addEventHandler(new Passing(levelsK[i], times, i), 0.05, eventTolerance, 100);
        }
        double[] y = {AMBIENT_K};
        integrator.integrate(new HeatBalance(lamp), 0, y, 0.3, y);
        return times;
    }

    private static final class HeatBalance implements FirstOrderDifferentialEquations {
        private final double volt;
        private final double ratedOhm;
        private final double hotOhmM;
        private final double areaM2;
        private final double gasWPerK;
        private final double massKg;

        HeatBalance(FilamentLamp lamp) {
            double kelvin = lamp.filamentTemperature().inKelvin();
            double watt = lamp.ratedPower().inWatts();
            double gasShare = 0.18;
            volt = lamp.ratedVoltage().inVolts();
            ratedOhm = lamp.ratedResistance().inOhms();
            hotOhmM = Tungsten.resistivityOhmM(kelvin);
            areaM2 = watt * (1 - gasShare) / exitance(kelvin);
            gasWPerK = watt * gasShare / (kelvin - AMBIENT_K);
            massKg = lamp.wireMass().inKg();
        }

        private static double exitance(double kelvin) {
            double square = kelvin * kelvin;
            return Tungsten.totalEmissivityRatio(kelvin)
                    * STEFAN_BOLTZMANN
                    * (square * square - AMBIENT_K * AMBIENT_K * AMBIENT_K * AMBIENT_K);
        }

        @Override
        public int getDimension() {
            return 1;
        }

        @Override
        public void computeDerivatives(double t, double[] y, double[] rate) {
            double kelvin = y[0];
            double ohm = ratedOhm * Tungsten.resistivityOhmM(kelvin) / hotOhmM;
            double loss = areaM2 * exitance(kelvin) + gasWPerK * (kelvin - AMBIENT_K);
            rate[0] = (volt * volt / ohm - loss) / (massKg * Tungsten.specificHeatJPerKgK(kelvin));
        }
    }

    private static final class Passing implements EventHandler {
        private final double kelvin;
        private final double[] times;
        private final int index;

        Passing(double kelvin, double[] times, int index) {
            this.kelvin = kelvin;
            this.times = times;
            this.index = index;
        }

        @Override
        public void init(double t0, double[] y0, double t) {}

        @Override
        public double g(double t, double[] y) {
            return y[0] - kelvin;
        }

        @Override
        public Action eventOccurred(double t, double[] y, boolean increasing) {
            times[index] = t;
            return index == LEVELS.length - 1 ? Action.STOP : Action.CONTINUE;
        }

        @Override
        public void resetState(double t, double[] y) {}
    }
}
