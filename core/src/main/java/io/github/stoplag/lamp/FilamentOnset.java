package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.LuminousFlux;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Evidence;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A filament lamp's light, temperature and current after it is switched on.
 *
 * <p>C(T) dT/dt = I² R(T) − A ε(T) σ (T⁴ − T0⁴) − G (T − T0), I = U/(R(T) + Rs); relative light = L(T)/L(Ts) with the
 * luminance L of {@link Photometry}.
 *
 * <p>Symbols: T filament temperature, Ts its steady value, in K; C heat capacity in J/K; U supply in V; Rs series
 * resistance in Ω; A, G, R of {@link FilamentLamp}. The whole filament is taken at one temperature and the supply as a
 * step. Validated for temperatures of [300, 3400] K; outside, a caveat. Times come from a quadrature exact to about
 * 1e-10 relative; how true they are depends on the lamp: coil factor and filament temperature move them by tens of
 * percent.
 */
public final class FilamentOnset implements OnsetCurve {
    /** The Draper point in kelvin, from memory: below it a surface does not visibly glow. */
    static final double VISIBLE_GLOW_K = 798;

    private static final double LATE_LEVEL = 0.9;

    private final FilamentLamp lamp;
    private final SupplyConditions conditions;
    private final FilamentTransient heating;
    private final Photometry photometry;
    private final double steadyLog;
    private final double initialRatio;

    FilamentOnset(FilamentLamp lamp, SupplyConditions conditions) {
        this.lamp = lamp;
        this.conditions = conditions;
        heating = FilamentTransient.of(lamp, conditions);
        requireHeating(heating.path(), conditions);
        photometry = Photometry.tungsten(conditions.lens());
        steadyLog = photometry.logLuminance(heating.steadyK());
        initialRatio = ratioAt(heating.initialK());
    }

    static double[] timesToLevelsS(FilamentLamp lamp, SupplyConditions conditions, double... levelRatios) {
        FilamentPath path = FilamentPath.of(
                lamp.label(),
                HeatBalance.of(lamp, conditions),
                conditions.supply().inVolts(),
                conditions.initialTemperature().inKelvin());
        requireHeating(path, conditions);
        Photometry photometry = Photometry.tungsten(conditions.lens());
        double steadyLog = photometry.logLuminance(path.steadyK());
        double initialLog = photometry.logLuminance(path.initialK());
        double[] timesS = new double[levelRatios.length];
        double u = 0;
        double timeS = 0;
        for (int i = 0; i < timesS.length; i++) {
            double log = steadyLog + Math.log(OnsetCurve.checkLevel(levelRatios[i]));
            if (i > 0 && !(levelRatios[i] >= levelRatios[i - 1])) {
                throw new IllegalArgumentException("levels must rise, got " + Numbers.text(levelRatios[i]) + " after "
                        + Numbers.text(levelRatios[i - 1]));
            }
            if (log > initialLog && !path.isSettled()) {
                double toU = path.uOf(photometry.temperatureK(log, path.initialK(), path.steadyK()));
                timeS += path.secondsBetweenU(u, toU);
                u = toU;
            }
            timesS[i] = timeS;
        }
        return timesS;
    }

    private static void requireHeating(FilamentPath path, SupplyConditions conditions) {
        if (path.steadyK() < path.initialK() && !path.isSettled()) {
            throw new IllegalArgumentException("initial filament temperature must not be above the "
                    + Numbers.text(path.steadyK()) + " K at which " + conditions.supply()
                    + " holds the filament (a decay starts there), got " + conditions.initialTemperature());
        }
    }

    /**
     * Gives the filament's temperature at a time.
     *
     * @param time the time since switch-on; before 0 the filament is as it was
     * @return T(t)
     */
    public Temperature temperatureAt(TimeSpan time) {
        return Temperature.kelvin(heating.temperatureK(time.inSeconds()));
    }

    /**
     * Gives the lamp's current at a time.
     *
     * @param time the time since switch-on; before 0 no current flows
     * @return I(t) = U/(R(T(t)) + Rs)
     */
    public Current currentAt(TimeSpan time) {
        return Current.amperes(time.inSeconds() < 0 ? 0 : heating.currentA(heating.temperatureK(time.inSeconds())));
    }

    /** {@return the current I(0) at the instant of switch-on, the largest} */
    public Current inrushCurrent() {
        return Current.amperes(heating.currentA(heating.initialK()));
    }

    /** {@return the current I(∞) once the filament is hot} */
    public Current steadyCurrent() {
        return Current.amperes(heating.currentA(heating.steadyK()));
    }

    /** {@return the inrush current over the steady current, I(0)/I(∞)} */
    public double inrushRatio() {
        double seriesOhm = heating.path().balance().seriesOhm();
        return (lamp.wire().resistanceOhm(heating.steadyK()) + seriesOhm)
                / (lamp.wire().resistanceOhm(heating.initialK()) + seriesOhm);
    }

    /** {@return the current surge at switch-on: its ratio, its energy and how fast it is over} */
    public Inrush inrush() {
        return new Inrush(this, heating);
    }

    /**
     * Switches the lamp off again, hot or still warming up.
     *
     * @param after how long it was on, not negative
     * @return the decay from the temperature reached by then
     * @throws IllegalArgumentException if the time is negative
     */
    public FilamentDecay switchOffAfter(TimeSpan after) {
        Objects.requireNonNull(after, "after");
        Ranges.ELAPSED.check("time on", after.inSeconds());
        return FilamentDecay.of(lamp, conditions.withSupply(Voltage.volts(0)), heating.temperatureK(after.inSeconds()));
    }

    /**
     * Gives the power the filament itself takes once hot, without what the wiring takes.
     *
     * @return I(∞)² R(Ts)
     */
    public Power steadyPower() {
        double ampere = heating.currentA(heating.steadyK());
        return Power.watts(ampere * ampere * lamp.wire().resistanceOhm(heating.steadyK()));
    }

    /** {@return the filament's temperature Ts once hot} */
    public Temperature steadyTemperature() {
        return Temperature.kelvin(heating.steadyK());
    }

    /**
     * Gives the final light over the light at the design voltage, both behind this lens.
     *
     * @return L(Ts)/L(Td); a lamp's rated intensity times this is its final intensity
     */
    public double relativeToRated() {
        return Math.exp(
                steadyLog - photometry.logLuminance(lamp.filamentTemperature().inKelvin()));
    }

    /**
     * Gives the final flux of the bare bulb, whatever the lens.
     *
     * @return rated flux × L(Ts)/L(Td) without lens
     */
    public LuminousFlux bulbFlux() {
        Photometry clear = Photometry.tungsten(Lens.CLEAR);
        double logRatio = clear.logLuminance(heating.steadyK())
                - clear.logLuminance(lamp.filamentTemperature().inKelvin());
        return LuminousFlux.lumens(lamp.ratedFlux().inLumens() * Math.exp(logRatio));
    }

    /**
     * Gives the final flux behind the lens: rated flux × Lτ(Ts)/L(Td), Lτ the luminance weighted with the lens's
     * transmission at every wavelength. A red lens passes more of a cool filament's light than of a hot one's.
     *
     * @return the flux, equal to {@link #bulbFlux} behind a clear lens
     */
    public LuminousFlux fluxBehindLens() {
        double logRatio = steadyLog
                - Photometry.tungsten(Lens.CLEAR)
                        .logLuminance(lamp.filamentTemperature().inKelvin());
        return LuminousFlux.lumens(lamp.ratedFlux().inLumens() * Math.exp(logRatio));
    }

    /** {@return the conditions of the switch-on: supply, wiring, temperatures and lens} */
    public SupplyConditions conditions() {
        return conditions;
    }

    /** {@return the lamp that was switched on} */
    public FilamentLamp lamp() {
        return lamp;
    }

    @Override
    public String label() {
        return lamp.label() + " at " + conditions.supply();
    }

    @Override
    public double relativeIntensity(double timeS) {
        OnsetCurve.checkTimeS("time since switch-on", timeS);
        return ratioAt(heating.temperatureK(timeS));
    }

    private double ratioAt(double temperatureK) {
        // the light's polynomial repeats itself to 1e-12; only that rounding can exceed 1
        return Math.min(1, Math.exp(photometry.logLuminance(temperatureK) - steadyLog));
    }

    @Override
    public OptionalDouble timeToLevelS(double levelRatio) {
        OnsetCurve.checkLevel(levelRatio);
        if (levelRatio <= initialRatio) {
            return OptionalDouble.of(0);
        }
        double temperatureK =
                photometry.temperatureK(steadyLog + Math.log(levelRatio), heating.initialK(), heating.steadyK());
        return OptionalDouble.of(heating.timeS(temperatureK));
    }

    @Override
    public double settledS() {
        return timeToLevelS(0.999).orElseThrow();
    }

    @Override
    public Optional<String> staysDark() {
        return heating.steadyK() < VISIBLE_GLOW_K
                ? Optional.of("steady filament temperature " + Numbers.text(heating.steadyK(), 4)
                        + " K, solids begin to glow near " + Numbers.text(VISIBLE_GLOW_K)
                        + " K (Draper point, from memory)")
                : Optional.empty();
    }

    @Override
    public Evidence evidence() {
        return basis(
                        lamp,
                        conditions,
                        "switched on to a step of " + conditions.supply() + " through " + conditions.seriesResistance()
                                + ", filament at " + conditions.initialTemperature() + ", surroundings at "
                                + conditions.ambientTemperature() + "; steady filament temperature "
                                + Numbers.text(heating.steadyK(), 4) + " K")
                .withCaveats(reservations());
    }

    static Evidence basis(FilamentLamp lamp, SupplyConditions conditions, String course) {
        FilamentWire wire = lamp.wire();
        List<String> lines = new ArrayList<>();
        lines.add("filament from its rating: " + lamp.ratedPower() + " at " + lamp.ratedVoltage());
        lines.add(
                "filament temperature " + Numbers.text(wire.filamentK(), 4) + " K, " + lamp.fill() + ", gas-loss share "
                        + Numbers.text(wire.gasLossShare(), 3) + ", coil factor " + Numbers.text(wire.coilFactor())
                        + ", light-loss share " + Numbers.text(wire.lightLossShare(), 3) + " (assumed unless given)");
        if (lamp.temperatureFromLife()) {
            lines.add(FilamentEvaporation.basis());
        }
        lines.add("heat loss: radiation and a loss linear in temperature difference, Carlà, Am. J. Phys. 81 (2013) 512"
                + " (seen)");
        lines.addAll(lamp.tungsten().basis());
        lines.add("light: Planck, tungsten spectral emissivity of Pon & Hessler 1984 (seen), CIE 1924 V(λ) (seen), "
                + conditions.lens() + (conditions.lens() == Lens.RED ? " (assumed transmission)" : ""));
        lines.add(course);
        return Evidence.of(lines.toArray(String[]::new));
    }

    private List<Caveat> reservations() {
        List<Caveat> caveats = new ArrayList<>();
        fluxCaveat().ifPresent(caveats::add);
        caveats.addAll(lamp.caveats());
        fillCaveat().ifPresent(caveats::add);
        Tungsten.validity().check(heating.steadyK()).ifPresent(caveats::add);
        Tungsten.validity().check(heating.initialK()).ifPresent(caveats::add);
        caveats.addAll(Overdrive.caveats(lamp, heating.path().balance(), heating.steadyK()));
        staysDark().ifPresent(why -> caveats.add(new Caveat("supply too low to light the lamp visibly: " + why)));
        return caveats;
    }

    private Optional<Caveat> fillCaveat() {
        return lamp.otherwiseFilled().map(other -> {
            String said = "fill of the bulb assumed (" + lamp.fill() + ")";
            if (!(SwitchOnOutcome.of(other, conditions) instanceof SwitchOnOutcome.Lights lights)) {
                return new Caveat(said + ": with " + other.fill() + " it would not light as it does");
            }
            return new Caveat(said + ": with " + other.fill() + " 90 % of its light would come after "
                    + Numbers.text(
                            1000 * lights.onset().timeToLevelS(LATE_LEVEL).orElseThrow(), 3) + " ms instead of "
                    + Numbers.text(1000 * timeToLevelS(LATE_LEVEL).orElseThrow(), 3) + " ms");
        });
    }

    private Optional<Caveat> fluxCaveat() {
        FilamentWire wire = lamp.wire();
        double predictedLm = wire.predictedLm();
        return lamp.givenFlux()
                .filter(flux -> Math.abs(flux.inLumens() / predictedLm - 1) > 0.25)
                .map(flux -> new Caveat("rated flux " + flux + " is more than 25 % off the "
                        + Numbers.text(predictedLm, 3) + " lm that a filament at "
                        + Numbers.text(wire.filamentK(), 4) + " K drawing " + lamp.ratedPower() + " gives"));
    }

    @Override
    public String toString() {
        return label();
    }
}
