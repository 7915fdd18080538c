package io.github.stoplag.circuit;

import io.github.stoplag.circuit.OutageVerdict.Outcome;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Standing;
import java.util.Objects;

/**
 * A resistor wired in parallel with an LED lamp, so that the circuit draws as much as a monitor or flasher expects.
 *
 * <p>Dissipation P = U²/R; worst at the highest supply and the lowest resistance within tolerance, U²/(R (1 − p)).
 * Temperatures in the steady state: T = T_ambient + R_th P.
 *
 * <p>Possible ranges: resistance (0, 1e6] Ω, tolerance [0, 0.5].
 */
public final class LoadResistor {
    /** Above this a wire of the lowest usual insulation class suffers: class A of ISO 6722, 85 °C, from memory. */
    private static final double INSULATION_CLASS_A_C = 85;

    private final Resistance nominal;
    private final double toleranceRatio;
    private final ResistorRating rating;

    private LoadResistor(Resistance nominal, double toleranceRatio, ResistorRating rating) {
        this.nominal = nominal;
        this.toleranceRatio = toleranceRatio;
        this.rating = rating;
    }

    /**
     * Makes a load resistor.
     *
     * @param nominal R, in (0, 1e6] Ω
     * @param toleranceRatio its tolerance p as a share of R, in [0, 0.5]
     * @param rating its power rating as mounted
     * @return the resistor
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public static LoadResistor of(Resistance nominal, double toleranceRatio, ResistorRating rating) {
        Objects.requireNonNull(nominal, "nominal");
        Objects.requireNonNull(rating, "rating");
        Ranges.LOAD_RESISTANCE.check(nominal.inOhms());
        Ranges.TOLERANCE.check(toleranceRatio);
        return new LoadResistor(nominal, toleranceRatio, rating);
    }

    /**
     * Gives the current it draws at its highest value within tolerance: what a monitor can count on.
     *
     * @return the least draw
     */
    public CurrentDraw leastDraw() {
        return CurrentDraw.resistive(Resistance.ohms(nominal.inOhms() * (1 + toleranceRatio)));
    }

    /**
     * Gives the current it draws at its lowest value within tolerance: what fuse, wire and heat must bear.
     *
     * @return the greatest draw
     */
    public CurrentDraw greatestDraw() {
        return CurrentDraw.resistive(Resistance.ohms(nominal.inOhms() * (1 - toleranceRatio)));
    }

    /**
     * Gives the dissipation of the nominal value.
     *
     * @param supply the voltage across it
     * @return U²/R
     */
    public Power power(Voltage supply) {
        Objects.requireNonNull(supply, "supply");
        return CurrentDraw.resistive(nominal).power(supply);
    }

    /**
     * Checks the heat when it is on without pause, as under a held brake.
     *
     * @param supply the voltage across it; take the highest to be met
     * @param ambient the temperature around it
     * @return the check
     */
    public HeatCheck heat(Voltage supply, Temperature ambient) {
        Objects.requireNonNull(ambient, "ambient");
        Objects.requireNonNull(supply, "supply");
        return heat(supply, ambient, Duty.CONTINUOUS, TimeSpan.seconds(1));
    }

    /**
     * Checks the heat under a repeated duty, once the cycle has settled, for a body with one thermal time constant.
     *
     * @param supply the voltage across it while on
     * @param ambient the temperature around it
     * @param duty its times on and off
     * @param thermalTimeConstant its thermal time constant as mounted, above 0; a short one is on the safe side
     * @return the check
     * @throws IllegalArgumentException if the supply is negative or the time constant not above 0
     */
    public HeatCheck heat(Voltage supply, Temperature ambient, Duty duty, TimeSpan thermalTimeConstant) {
        Objects.requireNonNull(ambient, "ambient");
        Objects.requireNonNull(supply, "supply");
        Objects.requireNonNull(thermalTimeConstant, "thermalTimeConstant");
        Power whileOn = greatestDraw().power(supply);
        Power governing = Power.watts(whileOn.inWatts() * duty.peakShare(thermalTimeConstant));
        Power allowed = rating.allowed(ambient);
        Temperature surface = rise(ambient, governing, rating.surfaceToAmbientKPerW());
        Temperature element = rise(ambient, governing, rating.elementToAmbientKPerW());
        boolean continuous = duty.off().inSeconds() == 0;
        Evidence evidence = Evidence.of(
                        "load resistor " + nominal + " ± " + toleranceRatio * 100
                                + " %: P = U²/R, T = T_ambient + R_th P",
                        "rating " + rating)
                .withCaveatIf(
                        !continuous,
                        "the duty is assumed to go on as stated; a held brake or a stuck flasher makes the load"
                                + " continuous")
                .withCaveatIf(
                        !continuous,
                        "one thermal time constant is a rough picture of a resistor on its sink; the element swings"
                                + " more than its body")
                .withCaveatIf(
                        surface.inCelsius() > INSULATION_CLASS_A_C,
                        "the surface exceeds 85 °C, the lowest usual temperature class of vehicle wire (ISO 6722 class"
                                + " A, "
                                + Standing.FROM_MEMORY + ")")
                .withCaveat("thermal resistances are a maker's figures for a clean, flat, still-air mounting; they are"
                        + " worse on painted, thin or plastic parts")
                .withCautions(
                        Caution.hotSurface("load resistor", surface),
                        Caution.LAMP_LAW,
                        Caution.FUSES,
                        Caution.INSULATION,
                        Caution.LICENSED_PRACTICE);
        return new HeatCheck(
                whileOn,
                Power.watts(whileOn.inWatts() * duty.ratio()),
                governing,
                allowed,
                surface,
                element,
                governing.inWatts() <= allowed.inWatts(),
                evidence);
    }

    private static Temperature rise(Temperature ambient, Power power, double kelvinPerWatt) {
        return Temperature.kelvin(ambient.inKelvin() + kelvinPerWatt * power.inWatts());
    }

    /**
     * What a monitor reports with this resistor fitted.
     *
     * @param lampAlive its verdict with the lamp working, the resistor drawing its least
     * @param lampDead its verdict with the lamp open, the resistor drawing its most
     * @param stillWatchesLamp whether a dead lamp is surely reported and a working one surely not
     * @param evidence what it rests on
     */
    public record Watch(OutageVerdict lampAlive, OutageVerdict lampDead, boolean stillWatchesLamp, Evidence evidence)
            implements Evident {

        /**
         * Refuses nulls.
         *
         * @param lampAlive its verdict with the lamp working, the resistor drawing its least
         * @param lampDead its verdict with the lamp open, the resistor drawing its most
         * @param stillWatchesLamp whether a dead lamp is surely reported and a working one surely not
         * @param evidence what it rests on
         * @throws NullPointerException if one that is required is null
         */
        public Watch {
            Objects.requireNonNull(evidence, "evidence");
            Objects.requireNonNull(lampAlive, "lampAlive");
            Objects.requireNonNull(lampDead, "lampDead");
        }
    }

    /**
     * Says what a monitor reports with this resistor fitted, with the lamp working and with the lamp dead.
     *
     * @param monitor the outage monitor
     * @param lamp the LED lamp
     * @return both verdicts, and a caveat if a dead lamp would go unreported
     */
    public Watch watch(OutageMonitor monitor, CurrentDraw lamp) {
        Objects.requireNonNull(lamp, "lamp");
        OutageVerdict alive = monitor.judge(lamp.plus(leastDraw()));
        OutageVerdict dead = monitor.judge(greatestDraw());
        boolean reported = dead.outcome() == Outcome.REPORTS_FAILED;
        Evidence evidence = alive.evidence()
                .with(dead.evidence())
                .withCaveatIf(
                        !reported,
                        "with this resistor the monitor may not report a dead LED: the driver loses the outage"
                                + " warning");
        return new Watch(alive, dead, reported && alive.outcome() == Outcome.REPORTS_HEALTHY, evidence);
    }

    /**
     * Gives the nominal resistance.
     *
     * @return R
     */
    public Resistance nominal() {
        return nominal;
    }
}
