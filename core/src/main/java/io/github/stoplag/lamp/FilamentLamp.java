package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
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
 * <p>Defaults and ranges: Td 2800 K [2200, 3200], or the temperature at which the bulb gives its rated flux if that is
 * set; g 0.18 [0, 0.5], 0 for a vacuum bulb; f 0.72 [0.5, 1], 1 for a straight wire. They are assumed values for a
 * gas-filled single-coil signal bulb, not fitted lamp by lamp. Filament ends and supports count as gas loss.
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
        wire = new FilamentWire(ratedVoltage.inVolts(), ratedPower.inWatts(), filamentK, b.gasLossShare, b.coilFactor);
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
     * @throws IllegalArgumentException if the supply would drive the filament beyond 3600 K, if it warms it by less than
     *     0.01 K, or if the filament starts hotter than it will settle
     */
    public FilamentOnset switchOn(SupplyConditions conditions) {
        return new FilamentOnset(this, conditions);
    }

    /**
     * Names the lamp by its rating.
     *
     * @return for example {@code filament 13.5 V 26 W}
     */
    public String label() {
        return "filament " + ratedVoltage + " " + ratedPower;
    }

    /**
     * Gives the design voltage.
     *
     * @return U
     */
    public Voltage ratedVoltage() {
        return ratedVoltage;
    }

    /**
     * Gives the power drawn at the design voltage.
     *
     * @return P
     */
    public Power ratedPower() {
        return ratedPower;
    }

    /**
     * Gives the luminous flux of the bare bulb at the design voltage: as set, else as predicted.
     *
     * @return the flux
     */
    public LuminousFlux ratedFlux() {
        return givenFlux.orElseGet(this::predictedFlux);
    }

    /**
     * Predicts the luminous flux of the bare bulb at the design voltage: Φ = π L(Td) A, for a surface of equal luminance in
     * all directions, nothing absorbed by glass or supports.
     *
     * @return the flux
     */
    public LuminousFlux predictedFlux() {
        return LuminousFlux.lumens(wire.predictedLm());
    }

    /**
     * Gives the filament's temperature at the design voltage.
     *
     * @return Td
     */
    public Temperature filamentTemperature() {
        return Temperature.kelvin(wire.filamentK());
    }

    /**
     * Gives the filament's resistance at the design voltage.
     *
     * @return Rd = U²/P
     */
    public Resistance ratedResistance() {
        return Resistance.ohms(wire.ratedOhm());
    }

    /**
     * Gives the filament's resistance at a temperature.
     *
     * @param temperature the filament's temperature, [200, 3695] K; 300 K gives the cold resistance
     * @return R(T) = Rd ρ(T)/ρ(Td)
     * @throws IllegalArgumentException if the temperature is out of range
     */
    public Resistance resistanceAt(Temperature temperature) {
        return Resistance.ohms(wire.resistanceOhm(temperature.inKelvin()));
    }

    /**
     * Gives the resistance of the filament at 300 K.
     *
     * @return the cold resistance
     */
    public Resistance coldResistance() {
        return Resistance.ohms(wire.resistanceOhm(FilamentWire.DESIGN_AMBIENT_K));
    }

    /**
     * Gives the length of the wire, uncoiled, as it follows from the rating.
     *
     * @return l
     */
    public Distance wireLength() {
        return Distance.metres(wire.lengthM());
    }

    /**
     * Gives the diameter of the wire, as it follows from the rating.
     *
     * @return d
     */
    public Distance wireDiameter() {
        return Distance.metres(wire.diameterM());
    }

    /**
     * Gives the mass of the wire, as it follows from the rating.
     *
     * @return m
     */
    public Mass wireMass() {
        return Mass.kg(wire.massKg());
    }

    /**
     * Gives the power the filament loses at a temperature.
     *
     * @param temperature the filament's temperature T, [200, 3695] K
     * @param ambient the surroundings T0
     * @return A ε(T) σ (T⁴ − T0⁴) + G (T − T0)
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
        private static final double LOWEST_FILAMENT_K = 2200;
        private static final double HIGHEST_FILAMENT_K = 3200;
        private static final double USUAL_FILAMENT_K = 2800;

        private final Voltage ratedVoltage;
        private final Power ratedPower;
        private @Nullable LuminousFlux ratedFlux;
        private @Nullable Temperature filamentTemperature;
        private double gasLossShare = 0.18;
        private double coilFactor = 0.72;

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
         * Sets the filament's temperature at the design voltage.
         *
         * @param temperature the temperature, [2200, 3200] K
         * @return this builder
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder filamentTemperature(Temperature temperature) {
            Check.inRange("filament temperature", temperature.inKelvin(), LOWEST_FILAMENT_K, HIGHEST_FILAMENT_K, "K");
            filamentTemperature = temperature;
            return this;
        }

        /**
         * Sets the share of the rated power lost to gas and supports.
         *
         * @param ratio the share g, [0, 0.5]
         * @return this builder
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder gasLossShare(double ratio) {
            gasLossShare = Check.inRange("gas-loss share", ratio, 0, 0.5, "");
            return this;
        }

        /**
         * Sets the effective radiating area over the wire's surface.
         *
         * @param ratio the coil factor f, [0.5, 1]
         * @return this builder
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder coilFactor(double ratio) {
            coilFactor = Check.inRange("coil factor", ratio, 0.5, 1, "");
            return this;
        }

        /**
         * Works the wire out.
         *
         * @return the lamp
         * @throws IllegalArgumentException if the rated flux asks for a filament outside [2200, 3200] K
         */
        public FilamentLamp build() {
            if (filamentTemperature != null) {
                return new FilamentLamp(this, filamentTemperature.inKelvin());
            }
            if (ratedFlux == null) {
                return new FilamentLamp(this, USUAL_FILAMENT_K);
            }
            double fluxLm = Check.inRange(
                    "rated flux of a " + ratedPower + " filament between 2200 K and 3200 K",
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
