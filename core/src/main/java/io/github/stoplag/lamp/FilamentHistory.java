package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;

/**
 * A filament lamp under a supply voltage that changes with time: the general path, by integrating the heat balance.
 *
 * <p>C(T) dT/dt = I² R(T) − A ε(T) σ (T⁴ − T0⁴) − G (T − T0), I = U(t)/(R(T) + Rs), beside the energies dEel/dt = I² R
 * and dEloss/dt = the losses. Dormand-Prince 8(5,3) to 1e-11 relative, restarted at every break of the supply; for a
 * step it agrees with the quadrature of {@link FilamentOnset} to 1e-8. Light is relative to the light at the design
 * voltage behind the same lens, since there need not be a final one. Symbols and sources as in {@link FilamentOnset}.
 */
public final class FilamentHistory implements Evident {
    private static final double RELATIVE = 1e-11;
    private static final double LEAST_STEP_S = 1e-13;

    private final FilamentLamp lamp;
    private final SupplyConditions conditions;
    private final SupplyCourse supply;
    private final Photometry photometry;
    private final double ratedLog;
    private final DenseHistory dense;

    private FilamentHistory(FilamentLamp lamp, SupplyConditions conditions, SupplyCourse supply, DenseHistory dense) {
        this.lamp = lamp;
        this.conditions = conditions;
        this.supply = supply;
        this.dense = dense;
        photometry = Photometry.tungsten(conditions.lens());
        ratedLog = photometry.logLuminance(lamp.filamentTemperature().inKelvin());
    }

    /**
     * Runs a lamp on a supply.
     *
     * @param lamp the lamp
     * @param conditions wiring, temperatures and lens; their supply voltage is not used
     * @param supply the supply
     * @param until how long to follow it, (0, 1000] s
     * @return the course of temperature, current, light and energy
     * @throws IllegalArgumentException if the time is out of range or the filament passes 3600 K; the message names
     *     when
     */
    public static FilamentHistory of(
            FilamentLamp lamp, SupplyConditions conditions, SupplyCourse supply, TimeSpan until) {
        Objects.requireNonNull(until, "until");
        double untilS = Check.above("time to follow a filament", until.inSeconds(), 0, 1000, "s");
        HeatBalance balance = HeatBalance.of(lamp, conditions);
        DenseHistory dense = new DenseHistory();
        double[] y = {conditions.initialTemperature().inKelvin(), 0, 0};
        double fromS = 0;
        double[] breaksS = supply.breaksS();
        for (int i = 0; i <= breaksS.length && fromS < untilS; i++) {
            double toS = i < breaksS.length ? Math.min(untilS, breaksS[i]) : untilS;
            if (toS > fromS) {
                run(lamp, balance, supply, dense, fromS, toS, y);
                fromS = toS;
            }
        }
        return new FilamentHistory(lamp, conditions, supply, dense);
    }

    private static void run(
            FilamentLamp lamp,
            HeatBalance balance,
            SupplyCourse supply,
            DenseHistory dense,
            double fromS,
            double toS,
            double[] y) {
        // values just inside the interval, so that a jump at its ends belongs to the neighbours
        double lastS = Math.nextDown(toS);
        FirstOrderDifferentialEquations equations = new FirstOrderDifferentialEquations() {
            @Override
            public int getDimension() {
                return 3;
            }

            @Override
            public void computeDerivatives(double t, double[] state, double[] rate) {
                // a trial step may leave the tungsten tables; it is refused by its error, and accepted ones are checked
                double kelvin = Math.min(Tungsten.MELTING_POINT_K, Math.max(Tungsten.LOWEST_K, state[0]));
                double gainW = balance.filamentW(kelvin, supply.atV(Math.min(t, lastS)));
                double lossW = balance.lossW(kelvin);
                rate[0] = (gainW - lossW) / lamp.wire().heatCapacityJPerK(kelvin);
                rate[1] = gainW;
                rate[2] = lossW;
            }
        };
        double[] absolute = {1e-9, 1e-11, 1e-11};
        double[] relative = {RELATIVE, RELATIVE, RELATIVE};
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(
                Math.min(LEAST_STEP_S, (toS - fromS) / 10), Math.max(toS - fromS, LEAST_STEP_S), absolute, relative);
        integrator.addStepHandler(dense);
        integrator.integrate(equations, fromS, y, toS, y);
        for (double timeS : dense.gridS()) {
            if (!(dense.value(timeS, 0) <= FilamentWire.HIGHEST_K)) {
                throw new IllegalArgumentException("supply of " + lamp.label()
                        + " drives the filament beyond 3600 K, the"
                        + " end of the tungsten tables (it melts at 3695 K), at " + Numbers.text(timeS, 3) + " s: "
                        + supply);
            }
        }
    }

    /** {@return how long the lamp was followed} */
    public TimeSpan end() {
        return TimeSpan.seconds(dense.endS());
    }

    /**
     * Gives the filament's temperature at a time.
     *
     * @param time the time, [0, end]; before 0 the filament is as it was
     * @return T(t)
     * @throws IllegalArgumentException if the time is after the end
     */
    public Temperature temperatureAt(TimeSpan time) {
        return Temperature.kelvin(temperatureK(time.inSeconds()));
    }

    private double temperatureK(double timeS) {
        return timeS < 0 ? conditions.initialTemperature().inKelvin() : dense.value(checked(timeS), 0);
    }

    private double checked(double timeS) {
        return Check.inRange("time in a filament's history", timeS, 0, dense.endS(), "s");
    }

    /**
     * Gives the lamp's current at a time.
     *
     * @param time the time, up to the end
     * @return I(t) = U(t)/(R(T(t)) + Rs)
     * @throws IllegalArgumentException if the time is after the end
     */
    public Current currentAt(TimeSpan time) {
        return Current.amperes(HeatBalance.of(lamp, conditions)
                .currentA(temperatureK(time.inSeconds()), supply.atV(time.inSeconds())));
    }

    /**
     * Gives the light at a time over the light at the design voltage, both behind this lens.
     *
     * @param timeS the time in seconds, up to the end
     * @return L(T(t))/L(Td); above 1 on over-voltage
     * @throws IllegalArgumentException if the time is after the end
     */
    public double relativeToRated(double timeS) {
        return Math.exp(photometry.logLuminance(temperatureK(timeS)) - ratedLog);
    }

    /**
     * Gives the first time at which the light reaches a level.
     *
     * @param ratio the level over the light at the design voltage, above 0
     * @return the time in seconds, or nothing if it is not reached by the end
     * @throws IllegalArgumentException if the level is not in (0, 100]
     */
    public OptionalDouble timeToRatedLevelS(double ratio) {
        double log = ratedLog + Math.log(Check.above("level of the rated light", ratio, 0, 100, ""));
        if (photometry.logLuminance(dense.value(0, 0)) >= log) {
            return OptionalDouble.of(0);
        }
        double[] grid = dense.gridS();
        for (int i = 1; i < grid.length; i++) {
            if (photometry.logLuminance(dense.value(grid[i], 0)) >= log) {
                return OptionalDouble.of(new BrentSolver(1e-15, 1e-13)
                        .solve(200, t -> photometry.logLuminance(dense.value(t, 0)) - log, grid[i - 1], grid[i]));
            }
        }
        return OptionalDouble.empty();
    }

    /**
     * Gives the electrical energy the filament has taken.
     *
     * @param time the time, [0, end]
     * @return ∫ I² R dt in joules
     * @throws IllegalArgumentException if the time is out of range
     */
    public double electricalEnergyJ(TimeSpan time) {
        return dense.value(checked(time.inSeconds()), 1);
    }

    /**
     * Gives the energy the filament has lost to radiation, gas and supports.
     *
     * @param time the time, [0, end]
     * @return the energy in joules
     * @throws IllegalArgumentException if the time is out of range
     */
    public double lostEnergyJ(TimeSpan time) {
        return dense.value(checked(time.inSeconds()), 2);
    }

    /**
     * Samples the light as an onset curve relative to its value at the end, for a detector.
     *
     * @param samples how many equal steps to the end, [10, 100000]
     * @return the onset; light that falls again is pooled, with a caveat
     * @throws IllegalArgumentException if the count is out of range or the light overshoots its end by more than a
     *     fifth
     */
    public MeasuredLamp toOnset(int samples) {
        Check.inRange("samples of an onset", samples, 10, 100_000, "");
        double[] timeS = new double[samples + 1];
        double[] ratio = new double[samples + 1];
        double last = relativeToRated(dense.endS());
        for (int i = 0; i <= samples; i++) {
            timeS[i] = i == samples ? dense.endS() : dense.endS() * i / samples;
            ratio[i] = relativeToRated(timeS[i]) / last;
        }
        return MeasuredLamp.of(lamp.label() + " on " + supply, timeS, ratio);
    }

    @Override
    public Evidence evidence() {
        return FilamentOnset.basis(
                        lamp,
                        conditions,
                        "heat balance integrated under " + supply + " through " + conditions.seriesResistance()
                                + ", filament at " + conditions.initialTemperature() + ", surroundings at "
                                + conditions.ambientTemperature())
                .withCaveats(reservations());
    }

    private List<Caveat> reservations() {
        List<Caveat> caveats = new ArrayList<>(lamp.caveats());
        double hottestK = 0;
        for (double timeS : dense.gridS()) {
            hottestK = Math.max(hottestK, dense.value(timeS, 0));
        }
        Tungsten.validity().check(hottestK).ifPresent(caveats::add);
        caveats.addAll(Overdrive.caveats(lamp, HeatBalance.of(lamp, conditions), hottestK));
        Tungsten.validity().check(conditions.initialTemperature().inKelvin()).ifPresent(caveats::add);
        return caveats;
    }

    @Override
    public String toString() {
        return lamp.label() + " on " + supply;
    }
}
