package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousFlux;
import io.github.stoplag.quantity.Mass;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import java.util.Optional;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.jspecify.annotations.Nullable;

/**
 * A filament bulb known by its rating alone: the volts and watts at its design point fix the wire.
 *
 * <p>At the rated voltage U the filament sits at its filament temperature Td and loses what it draws:
 *
 * <pre>
 * P = U²/Rd = A ε(Td) σ (Td⁴ − T0⁴) + G (Td − T0),    G (Td − T0) = g P
 * Rd = 4 ρ(Td) l/(π d²),    A = f π d l
 * ⇒ d³ = 4 ρ(Td) A/(π² f Rd),    l = A/(f π d),    m = density(Td) π d² l/4
 * </pre>
 *
 * <p>Symbols: P rated power in W; A effective radiating area in m²; ε, ρ of {@link Tungsten}; σ = 5.670374419e-8
 * W/(m²·K⁴); T0 = 300 K; g gas-loss share; G in W/K; f coil factor, effective over wire surface; d, l, m the wire's
 * diameter, length and mass, hot. Resistance follows R(T) = Rd ρ(T)/ρ(Td); the 1 to 2 % by which the wire's own expansion
 * changes resistance and area is left out.
 *
 * <p>Defaults and ranges: Td 2800 K [2000, 3200], or the temperature at which the bulb gives its rated flux if that is
 * set; g 0.18 [0, 0.5], 0 for a vacuum bulb; f 0.72 [0.5, 1], 1 for a straight wire. They are assumed values for a
 * gas-filled single-coil signal bulb, not fitted lamp by lamp. Filament ends and supports count as gas loss. Glass and cap
 * keep back a share of the light, default 0.05 [0, 0.3] (IES Lighting Handbook 1984, 4.5 to 7 % of the input in bulb and
 * base, from memory); it counts where a rated flux sets the temperature.
 *
 * <p>Sources: radiation plus a loss linear in T − T0 describes commercial lamps, Carlà, Am. J. Phys. 81 (2013) 512 (seen,
 * abstract and introduction); the coil factor as a concept, Agrawal, Lat. Am. J. Phys. Educ. 5 (2011) (seen, abstract).
 */
public final class FilamentLamp {
    private final Voltage ratedVoltage;
    private final Power ratedPower;
    private final Optional<LuminousFlux> givenFlux;
    private final FilamentWire wire;

    private FilamentLamp(Builder b, double filamentK) {
        ratedVoltage = b.ratedVoltage;
        ratedPower = b.ratedPower;
        givenFlux = Optional.ofNullable(b.ratedFlux);
        wire = new FilamentWire(
                ratedVoltage.inVolts(),
                ratedPower.inWatts(),
                filamentK,
                b.gasLossShare,
                b.coilFactor,
                b.lightLossShare);
    }

    /**
     * Starts a lamp from what it really draws at its design (test) voltage, which is not always the wattage printed on it.
     *
     * @param ratedVoltage the design voltage, [0.5, 300] V
     * @param ratedPower the power drawn at it, [0.1, 1000] W
     * @return a builder with the defaults of a gas-filled signal bulb
     * @throws IllegalArgumentException if voltage or power is out of range
     */
    public static Builder builder(Voltage ratedVoltage, Power ratedPower) {
        return new Builder(ratedVoltage, ratedPower);
    }

    /**
     * Switches the lamp on.
     *
     * @param conditions supply, wiring, temperatures and lens
     * @return the onset of its light, temperature and current
     * @throws IllegalArgumentException if the supply would drive the filament beyond 3600 K (see {@link #outcome}), or if
     *     the filament starts hotter than it will settle
     */
    public FilamentOnset switchOn(SupplyConditions conditions) {
        return new FilamentOnset(this, conditions);
    }

    /**
     * Switches the lamp on and says what comes of it, also where no light does.
     *
     * @param conditions supply, wiring, temperatures and lens
     * @return lights, too dim to light, or burns out
     * @throws IllegalArgumentException if the filament starts hotter than it will settle
     */
    public SwitchOnOutcome outcome(SupplyConditions conditions) {
        return SwitchOnOutcome.of(this, conditions);
    }

    /**
     * Switches the lamp off after it has been lit for long.
     *
     * @param conditions the conditions under which it was lit
     * @return the decay of its light, temperature and current
     * @throws IllegalArgumentException if the supply would have driven the filament beyond 3600 K
     */
    public FilamentDecay switchOff(SupplyConditions conditions) {
        FilamentPath lit = FilamentTransient.of(this, conditions).path();
        return FilamentDecay.of(this, conditions.withSupply(Voltage.volts(0)), lit.steadyK());
    }

    /**
     * Gives the times to several levels of the final light at once: the fast path, without a curve.
     *
     * @param conditions supply, wiring, temperatures and lens
     * @param levelRatios the levels relative to the final light, each in (0, 1), in rising order
     * @return the times since switch-on in seconds, equal to those of {@link #switchOn} to about 1e-9
     * @throws IllegalArgumentException as {@link #switchOn}, or if a level is out of range or order
     */
    public double[] timesToLevelsS(SupplyConditions conditions, double... levelRatios) {
        return FilamentOnset.timesToLevelsS(this, conditions, levelRatios);
    }

    /**
     * Gives the current once the filament is hot, without a curve.
     *
     * @param conditions supply, wiring and surroundings
     * @return I(∞), that of {@link FilamentOnset#steadyCurrent}; 0 A at 0 V
     * @throws IllegalArgumentException if the supply would drive the filament beyond 3600 K
     */
    public Current settledCurrent(SupplyConditions conditions) {
        FilamentPath path = FilamentPath.of(
                label(),
                HeatBalance.of(this, conditions),
                conditions.supply().inVolts(),
                conditions.initialTemperature().inKelvin());
        return Current.amperes(path.balance().currentA(path.steadyK(), path.supplyV()));
    }

    /** {@return the lamp's name by its rating, for example {@code filament 13.5 V 26 W}} */
    public String label() {
        return "filament " + ratedVoltage + " " + ratedPower;
    }

    /** {@return the design voltage U} */
    public Voltage ratedVoltage() {
        return ratedVoltage;
    }

    /** {@return the power P drawn at the design voltage} */
    public Power ratedPower() {
        return ratedPower;
    }

    /** {@return the luminous flux of the bare bulb at the design voltage: as set, else as predicted} */
    public LuminousFlux ratedFlux() {
        return givenFlux.orElseGet(this::predictedFlux);
    }

    /**
     * Predicts the luminous flux of the bare bulb at the design voltage: Φ = (1 − a) π L(Td) A, for a surface of equal
     * luminance in all directions, a the share kept back by glass and cap.
     *
     * @return the flux
     */
    public LuminousFlux predictedFlux() {
        return LuminousFlux.lumens(wire.predictedLm());
    }

    /** {@return the filament's temperature Td at the design voltage} */
    public Temperature filamentTemperature() {
        return Temperature.kelvin(wire.filamentK());
    }

    /** {@return the filament's resistance at the design voltage, Rd = U²/P} */
    public Resistance ratedResistance() {
        return Resistance.ohms(wire.ratedOhm());
    }

    /**
     * {@return the filament's resistance at a temperature, R(T) = Rd ρ(T)/ρ(Td)}
     *
     * @param temperature the filament's temperature, [200, 3695] K; 300 K gives the cold resistance
     * @throws IllegalArgumentException if the temperature is out of range
     */
    public Resistance resistanceAt(Temperature temperature) {
        return Resistance.ohms(wire.resistanceOhm(temperature.inKelvin()));
    }

    /** {@return the resistance of the filament at 300 K} */
    public Resistance coldResistance() {
        return Resistance.ohms(wire.resistanceOhm(FilamentWire.DESIGN_AMBIENT_K));
    }

    /** {@return the length l of the wire, uncoiled, as it follows from the rating} */
    public Distance wireLength() {
        return Distance.metres(wire.lengthM());
    }

    /** {@return the diameter d of the wire, as it follows from the rating} */
    public Distance wireDiameter() {
        return Distance.metres(wire.diameterM());
    }

    /** {@return the mass m of the wire, as it follows from the rating} */
    public Mass wireMass() {
        return Mass.kg(wire.massKg());
    }

    /**
     * {@return the power the filament loses at a temperature, A ε(T) σ (T⁴ − T0⁴) + G (T − T0)}
     *
     * @param temperature the filament's temperature T, [200, 3695] K
     * @param ambient the surroundings T0
     * @throws IllegalArgumentException if the filament's temperature is out of range or below the surroundings
     */
    public Power lossAt(Temperature temperature, Temperature ambient) {
        return Power.watts(wire.lossW(temperature.inKelvin(), ambient.inKelvin()));
    }

    Optional<LuminousFlux> givenFlux() {
        return givenFlux;
    }

    FilamentWire wire() {
        return wire;
    }

    @Override
    public String toString() {
        return label();
    }

    /** Collects a lamp's rating and what is known of its filament. */
    public static final class Builder {
        private static final double LOWEST_FILAMENT_K = 2000;
        private static final double HIGHEST_FILAMENT_K = 3200;
        private static final double USUAL_FILAMENT_K = 2800;

        private final Voltage ratedVoltage;
        private final Power ratedPower;
        private @Nullable LuminousFlux ratedFlux;
        private @Nullable Temperature filamentTemperature;
        private double gasLossShare = 0.18;
        private double coilFactor = 0.72;
        private double lightLossShare = 0.05;

        private Builder(Voltage ratedVoltage, Power ratedPower) {
            Check.inRange("rated voltage", ratedVoltage.inVolts(), 0.5, 300, "V");
            Check.inRange("rated power", ratedPower.inWatts(), 0.1, 1000, "W");
            this.ratedVoltage = ratedVoltage;
            this.ratedPower = ratedPower;
        }

        /**
         * Sets the flux of the bare, uncoloured bulb at the design voltage; without {@link #filamentTemperature} it also
         * sets the temperature.
         *
         * @param flux the luminous flux
         * @return this builder
         */
        public Builder ratedFlux(LuminousFlux flux) {
            ratedFlux = flux;
            return this;
        }

        /**
         * {@return this builder after it has set the filament's temperature at the design voltage}
         *
         * @param temperature the temperature, [2000, 3200] K
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder filamentTemperature(Temperature temperature) {
            Check.inRange("filament temperature", temperature.inKelvin(), LOWEST_FILAMENT_K, HIGHEST_FILAMENT_K, "K");
            filamentTemperature = temperature;
            return this;
        }

        /**
         * {@return this builder after it has set the share of the rated power lost to gas and supports}
         *
         * @param ratio the share g, [0, 0.5]
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder gasLossShare(double ratio) {
            gasLossShare = Check.inRange("gas-loss share", ratio, 0, 0.5, "");
            return this;
        }

        /**
         * {@return this builder after it has set the effective radiating area over the wire's surface}
         *
         * @param ratio the coil factor f, [0.5, 1]
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder coilFactor(double ratio) {
            coilFactor = Check.inRange("coil factor", ratio, 0.5, 1, "");
            return this;
        }

        /**
         * {@return this builder after it has set the share of the filament's light that glass, cap and supports keep back}
         *
         * @param ratio the share a, [0, 0.3]
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder lightLossShare(double ratio) {
            lightLossShare = Check.inRange("light-loss share", ratio, 0, 0.3, "");
            return this;
        }

        /**
         * Works the wire out.
         *
         * @return the lamp
         * @throws IllegalArgumentException if the rated flux asks for a filament outside [2000, 3200] K
         */
        public FilamentLamp build() {
            if (filamentTemperature != null) {
                return new FilamentLamp(this, filamentTemperature.inKelvin());
            }
            if (ratedFlux == null) {
                return new FilamentLamp(this, USUAL_FILAMENT_K);
            }
            double fluxLm = Check.inRange(
                    "rated flux of a " + ratedPower + " filament between 2000 K and 3200 K",
                    ratedFlux.inLumens(),
                    predictedLm(LOWEST_FILAMENT_K),
                    predictedLm(HIGHEST_FILAMENT_K),
                    "lm");
            return new FilamentLamp(
                    this,
                    new BrentSolver(1e-12, 1e-9)
                            .solve(100, k -> predictedLm(k) - fluxLm, LOWEST_FILAMENT_K, HIGHEST_FILAMENT_K));
        }

        private double predictedLm(double filamentK) {
            return new FilamentLamp(this, filamentK).wire.predictedLm();
        }
    }
}
