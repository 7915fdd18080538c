package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A filament lamp's light and temperature after it is switched off, or down to a lower voltage that keeps it warm.
 *
 * <p>C(T) dT/dt = I² R(T) − A ε(T) σ (T⁴ − T0⁴) − G (T − T0), with I = 0 when switched off; relative light = L(T)/L(Ti)
 * with Ti the temperature at switch-off. Symbols, sources and limits as in {@link FilamentOnset}.
 *
 * <p>The light falls about as fast as it rose, since it stands so high a power of the temperature; the filament itself
 * stays warm for seconds, so a lamp that flashes never starts cold again.
 */
public final class FilamentDecay implements Evident {
    private final FilamentLamp lamp;
    private final SupplyConditions conditions;
    private final FilamentTransient cooling;
    private final Photometry photometry;
    private final double startLog;

    private FilamentDecay(FilamentLamp lamp, SupplyConditions conditions, FilamentTransient cooling) {
        this.lamp = lamp;
        this.conditions = conditions;
        this.cooling = cooling;
        photometry = Photometry.tungsten(conditions.lens());
        startLog = photometry.logLuminance(cooling.initialK());
    }

    /**
     * Lets a filament cool from a temperature.
     *
     * @param lamp the lamp
     * @param conditions the supply left on it (0 V for off), wiring, surroundings and lens; their initial temperature
     *     is where the decay starts
     * @return the decay
     * @throws IllegalArgumentException if the supply left on it would heat the filament further
     */
    public static FilamentDecay of(FilamentLamp lamp, SupplyConditions conditions) {
        return of(lamp, conditions, conditions.initialTemperature().inKelvin());
    }

    static FilamentDecay of(FilamentLamp lamp, SupplyConditions conditions, double fromK) {
        FilamentPath path = FilamentPath.of(
                lamp.label(),
                HeatBalance.of(lamp, conditions),
                conditions.supply().inVolts(),
                fromK);
        if (path.steadyK() > fromK && !path.isSettled()) {
            throw new IllegalArgumentException("a decay must start above the " + Temperature.kelvin(path.steadyK())
                    + " at which " + conditions.supply() + " holds the filament, got " + Temperature.kelvin(fromK));
        }
        return new FilamentDecay(lamp, conditions, new FilamentTransient(path));
    }

    /** {@return the lamp} */
    public FilamentLamp lamp() {
        return lamp;
    }

    /** {@return the filament's temperature at switch-off} */
    public Temperature startTemperature() {
        return Temperature.kelvin(cooling.initialK());
    }

    /**
     * Gives the filament's temperature at a time.
     *
     * @param time the time since switch-off; before 0 the filament is as it was
     * @return T(t)
     */
    public Temperature temperatureAt(TimeSpan time) {
        return Temperature.kelvin(cooling.temperatureK(time.inSeconds()));
    }

    /** {@return the light at switch-off over that at the design voltage, both behind this lens} */
    public double startRelativeToRated() {
        return Math.exp(
                startLog - photometry.logLuminance(lamp.filamentTemperature().inKelvin()));
    }

    /**
     * Gives the light at a time over the light at switch-off.
     *
     * @param timeS the time since switch-off in seconds; before 0 it is 1
     * @return I(t)/I(0), in (0, 1]
     * @throws IllegalArgumentException if the time is NaN
     */
    public double relativeIntensity(double timeS) {
        OnsetCurve.checkTimeS("time since switch-off", timeS);
        return Math.min(1, Math.exp(photometry.logLuminance(cooling.temperatureK(timeS)) - startLog));
    }

    /**
     * Gives the time at which the light has fallen to a level.
     *
     * @param levelRatio the level relative to the light at switch-off, in (0, 1)
     * @return the time since switch-off in seconds, or nothing if the supply left on holds the light above it
     * @throws IllegalArgumentException if the level is outside (0, 1)
     */
    public OptionalDouble timeToLevelS(double levelRatio) {
        double log = startLog + Math.log(OnsetCurve.checkLevel(levelRatio));
        if (log <= photometry.logLuminance(cooling.steadyK())) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(cooling.timeS(photometry.temperatureK(log, cooling.steadyK(), cooling.initialK())));
    }

    /**
     * Gives the time at which the light has fallen to a level.
     *
     * @param levelRatio the level relative to the light at switch-off, in (0, 1)
     * @return the time since switch-off, or nothing if the supply left on holds the light above it
     * @throws IllegalArgumentException if the level is outside (0, 1)
     */
    public Optional<TimeSpan> timeToLevel(double levelRatio) {
        OptionalDouble timeS = timeToLevelS(levelRatio);
        return timeS.isPresent() ? Optional.of(TimeSpan.seconds(timeS.getAsDouble())) : Optional.empty();
    }

    /**
     * Switches the lamp on again before it is cold.
     *
     * @param after how long it was off, not negative
     * @param on the conditions to switch on with; their initial temperature is replaced by the one the filament has
     *     then
     * @return the onset of a warm start
     * @throws IllegalArgumentException as {@link FilamentLamp#switchOn}
     */
    public FilamentOnset switchOnAfter(TimeSpan after, SupplyConditions on) {
        Objects.requireNonNull(after, "after");
        return lamp.switchOn(on.withInitialTemperature(temperatureAt(after)));
    }

    @Override
    public Evidence evidence() {
        List<Caveat> caveats = new ArrayList<>(lamp.caveats());
        Tungsten.validity().check(cooling.initialK()).ifPresent(caveats::add);
        Tungsten.validity().check(cooling.steadyK()).ifPresent(caveats::add);
        return FilamentOnset.basis(
                        lamp,
                        conditions,
                        "left on " + conditions.supply() + " at " + startTemperature()
                                + " and cooling, surroundings at " + conditions.ambientTemperature())
                .withCaveats(caveats);
    }

    @Override
    public String toString() {
        return lamp.label() + " cooling from " + startTemperature();
    }
}
