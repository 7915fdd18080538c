package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousFlux;
import io.github.stoplag.quantity.Mass;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caveat;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
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
 * diameter, length and mass, hot. Resistance follows R(T) = Rd ρ(T)/ρ(Td); the 1 to 2 % by which the wire's own
 * expansion changes resistance and area is left out.
 *
 * <p>Td [2000, 3200] K is what is set; else that at which the bulb gives its rated flux; else that at which evaporation
 * ends the filament after its life, 1000 h [10, 100000] unless given, with a caveat: volts, watts and life tell the
 * light within 25 % from 3 W (above 16 V from 10 W) up to 3000 h, for single filaments without halogen. Smaller,
 * longer-lived and tail filaments run cooler than that and give down to half of the light; halogen bulbs run hotter and
 * give up to 1.4 times.
 *
 * <p>Other defaults and ranges: gas fill; g [0, 0.5] is 0.18 in gas, 0.3 below 15 W, and what the two leads take in
 * vacuum, 0.66 V of the supply; f 0.72 [0.5, 1], 1 for a straight wire. They are assumed values for a single-coil
 * signal bulb, not fitted lamp by lamp. In gas, filament ends and supports count as gas loss. Glass and cap keep back a
 * share of the light, default 0.05 [0, 0.3] (IES Lighting Handbook 1984, 4.5 to 7 % of the input in bulb and base, from
 * memory), and in vacuum the dark ends of the filament as much as 0.39 V of the supply gives.
 *
 * <p>Sources: radiation plus a loss linear in T − T0 describes commercial lamps, Carlà, Am. J. Phys. 81 (2013) 512
 * (seen, abstract and introduction); the coil factor as a concept, Agrawal, Lat. Am. J. Phys. Educ. 5 (2011) (seen,
 * abstract).
 */
public final class FilamentLamp {
    private final Builder given;
    private final Voltage ratedVoltage;
    private final Power ratedPower;
    private final Optional<LuminousFlux> givenFlux;
    private final FilamentWire wire;
    private final BulbFill fill;
    private final boolean lifeTells;
    private final Optional<FilamentLamp> otherwiseFilled;
    private final Optional<Caveat> temperatureCaveat;

    private FilamentLamp(Builder b, double filamentK, Optional<Caveat> temperatureCaveat) {
        given = b.copy();
        ratedVoltage = b.ratedVoltage;
        ratedPower = b.ratedPower;
        givenFlux = Optional.ofNullable(b.ratedFlux);
        fill = b.fill();
        wire = b.wireAt(filamentK);
        otherwiseFilled = b.fillAssumed ? Optional.of(b.otherwiseFilled().build()) : Optional.empty();
        this.temperatureCaveat = temperatureCaveat;
        lifeTells = temperatureCaveat.isPresent() && b.lifeTells();
    }

    /**
     * Starts a lamp from what it really draws at its design (test) voltage, which is not always the wattage printed on
     * it.
     *
     * @param ratedVoltage the design voltage, [0.5, 300] V
     * @param ratedPower the power drawn at it, [0.1, 1000] W
     * @return a builder with the defaults of a gas-filled signal bulb
     * @throws IllegalArgumentException if voltage or power is out of range
     */
    public static Builder builder(Voltage ratedVoltage, Power ratedPower) {
        Objects.requireNonNull(ratedPower, "ratedPower");
        Objects.requireNonNull(ratedVoltage, "ratedVoltage");
        return new Builder(ratedVoltage, ratedPower);
    }

    /**
     * Switches the lamp on.
     *
     * @param conditions supply, wiring, temperatures and lens
     * @return the onset of its light, temperature and current
     * @throws IllegalArgumentException if the supply would drive the filament beyond 3600 K (see {@link #outcome}), or
     *     if the filament starts hotter than it will settle
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
        Objects.requireNonNull(levelRatios, "levelRatios");
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

    /**
     * Makes the same bulb, from the same rating, with another coil factor.
     *
     * @param ratio the coil factor f, [0.5, 1]
     * @return the changed lamp; a temperature that came from the life is worked out anew
     * @throws IllegalArgumentException if it is out of range
     */
    public FilamentLamp withCoilFactor(double ratio) {
        return given.copy().coilFactor(ratio).build();
    }

    /**
     * Makes the same bulb, from the same rating, with another share of its power lost to gas and supports.
     *
     * @param ratio the share g, [0, 0.5]
     * @return the changed lamp; a temperature that came from the life is worked out anew
     * @throws IllegalArgumentException if it is out of range
     */
    public FilamentLamp withGasLossShare(double ratio) {
        return given.copy().keepingFill(fill).gasLossShare(ratio).build();
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
        Objects.requireNonNull(ambient, "ambient");
        return Power.watts(wire.lossW(temperature.inKelvin(), ambient.inKelvin()));
    }

    /**
     * What may be otherwise than a rating tells, each as a factor on what is taken: 1 leaves it.
     *
     * @param powerRatio on the power drawn at the design voltage
     * @param lightRatio on the flux, which decides the filament's temperature
     * @param coilFactorRatio on the coil factor
     * @param gasLossRatio on the gas-loss share
     */
    public record Variation(double powerRatio, double lightRatio, double coilFactorRatio, double gasLossRatio) {}

    /**
     * Builds the same bulb as it may also be.
     *
     * @param by what is otherwise
     * @param tables the tables of tungsten
     * @return a lamp whose temperature gives the light of this one times the ratio
     * @throws IllegalArgumentException if the factors lead out of a range of {@link Builder}
     */
    public FilamentLamp varied(Variation by, TungstenTables tables) {
        Objects.requireNonNull(by, "by");
        Objects.requireNonNull(tables, "tables");
        Power power = Power.watts(ratedPower.inWatts() * by.powerRatio());
        return new Builder(ratedVoltage, power)
                .fill(fill)
                .ratedFlux(LuminousFlux.lumens(predictedFlux().inLumens() * by.lightRatio()))
                .coilFactor(wire.coilFactor() * by.coilFactorRatio())
                .gasLossShare(wire.gasLossShare() * by.gasLossRatio())
                .lightLossShare(wire.lightLossShare())
                .tungsten(tables)
                .build();
    }

    /** {@return whether its light is as published, not what volts, watts and life tell} */
    public boolean fluxRated() {
        return givenFlux.isPresent();
    }

    /** {@return the tables of tungsten it is computed with} */
    public TungstenTables tungsten() {
        return wire.tungsten();
    }

    /** {@return what the bulb is filled with} */
    public BulbFill fill() {
        return fill;
    }

    /**
     * {@return whether the filament's temperature came from volts, watts and life where they tell the light within 25
     * %: from 3 W, above 16 V from 10 W, up to 3000 h, no halogen}
     */
    public boolean ratingTellsLight() {
        return lifeTells;
    }

    /** What holds of the lamp however it is switched: how its temperature was found, what its fill leaves out. */
    List<Caveat> caveats() {
        List<Caveat> caveats = new ArrayList<>();
        temperatureCaveat.ifPresent(caveats::add);
        if (fill == BulbFill.HALOGEN) {
            caveats.add(new Caveat(
                    "halogen cycle not modelled: only the pressure of its gas counts (8 bar, assumed); dimmed"
                            + " for long, the bulb blackens"));
        }
        return caveats;
    }

    boolean temperatureFromLife() {
        return temperatureCaveat.isPresent();
    }

    /** The same rating with the other fill, if this one was assumed. */
    Optional<FilamentLamp> otherwiseFilled() {
        return otherwiseFilled;
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
        private static final double SMALL_W = 15;
        private static final double GAS_LOSS = 0.18;
        /** Thin wires lose a greater share to gas than thick ones: assumed between 0.2 and 0.4. */
        private static final double SMALL_GAS_LOSS = 0.3;
        /**
         * Heat led off by two leads at 350 K over the current, 2 √(2 ρ ∫ k (ρ(T)/ρ − w(T)/w) dT) near 2450 K: derived.
         */
        private static final double LEADS_V = 0.66;
        /** Light missing at the cool ends beyond that, from the same course of temperature: derived. */
        private static final double DARK_ENDS_V = 0.39;

        private static final double LIGHT_LOSS = 0.05;
        private static final double MOST_LIGHT_LOSS = 0.3;

        private final Voltage ratedVoltage;
        private final Power ratedPower;
        private @Nullable LuminousFlux ratedFlux;
        private @Nullable Temperature filamentTemperature;
        private @Nullable BulbFill fill;
        private boolean fillAssumed;
        private OptionalDouble lifeH = OptionalDouble.empty();
        private OptionalDouble gasLossShare = OptionalDouble.empty();
        private OptionalDouble lightLossShare = OptionalDouble.empty();
        private double coilFactor = 0.72;
        private TungstenTables tungsten = TungstenTables.FITS;

        private Builder(Voltage ratedVoltage, Power ratedPower) {
            Ranges.RATED_VOLTAGE.check(ratedVoltage.inVolts());
            Ranges.LAMP_POWER.check(ratedPower.inWatts());
            this.ratedVoltage = ratedVoltage;
            this.ratedPower = ratedPower;
        }

        private Builder copy() {
            Builder same = new Builder(ratedVoltage, ratedPower);
            same.ratedFlux = ratedFlux;
            same.filamentTemperature = filamentTemperature;
            same.fill = fill;
            same.fillAssumed = fillAssumed;
            same.lifeH = lifeH;
            same.gasLossShare = gasLossShare;
            same.lightLossShare = lightLossShare;
            same.coilFactor = coilFactor;
            same.tungsten = tungsten;
            return same;
        }

        /** A gas-loss share of 0 must not turn a gas-filled bulb into an evacuated one. */
        private Builder keepingFill(BulbFill bulbFill) {
            fill = bulbFill;
            return this;
        }

        /** What the other fill would make of the same rating, with its own losses. */
        private Builder otherwiseFilled() {
            Builder other = copy().fill(fill() == BulbFill.VACUUM ? BulbFill.GAS : BulbFill.VACUUM);
            other.gasLossShare = OptionalDouble.empty();
            other.lightLossShare = OptionalDouble.empty();
            return other;
        }

        /**
         * Sets what the bulb is filled with: it decides the defaults of gas loss and light loss and, where the
         * temperature comes from the life, how fast tungsten evaporates.
         *
         * @param bulbFill the fill
         * @return this builder
         */
        public Builder fill(BulbFill bulbFill) {
            Objects.requireNonNull(bulbFill, "bulbFill");
            fill = bulbFill;
            fillAssumed = false;
            return this;
        }

        /**
         * Sets a fill that nobody published, so that results say what the other one would change.
         *
         * @param bulbFill the fill assumed
         * @return this builder
         */
        public Builder assumedFill(BulbFill bulbFill) {
            Objects.requireNonNull(bulbFill, "bulbFill");
            fill = bulbFill;
            fillAssumed = true;
            return this;
        }

        /**
         * {@return this builder after it has set the bulb's life at the design voltage, which sets the temperature
         * where neither temperature nor flux do}
         *
         * @param hours the life, [10, 100000] h
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder lifeHours(double hours) {
            lifeH = OptionalDouble.of(Check.inRange("life of the filament", hours, 10, 100_000, "h"));
            return this;
        }

        /**
         * Sets the flux of the bare, uncoloured bulb at the design voltage; without {@link #filamentTemperature} it
         * also sets the temperature.
         *
         * @param flux the luminous flux
         * @return this builder
         */
        public Builder ratedFlux(LuminousFlux flux) {
            Objects.requireNonNull(flux, "flux");
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
            gasLossShare = OptionalDouble.of(Ranges.GAS_LOSS.check(ratio));
            return this;
        }

        /**
         * {@return this builder after it has set the effective radiating area over the wire's surface}
         *
         * @param ratio the coil factor f, [0.5, 1]
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder coilFactor(double ratio) {
            coilFactor = Ranges.COIL_FACTOR.check(ratio);
            return this;
        }

        /**
         * Sets the tables of tungsten to compute with.
         *
         * @param tables the tables, {@link TungstenTables#FITS} unless set
         * @return this builder
         */
        public Builder tungsten(TungstenTables tables) {
            Objects.requireNonNull(tables, "tables");
            tungsten = tables;
            return this;
        }

        /**
         * {@return this builder after it has set the share of the filament's light that glass, cap and supports keep
         * back}
         *
         * @param ratio the share a, [0, 0.3]
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder lightLossShare(double ratio) {
            lightLossShare = OptionalDouble.of(Check.inRange("light-loss share", ratio, 0, MOST_LIGHT_LOSS, ""));
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
                return new FilamentLamp(this, filamentTemperature.inKelvin(), Optional.empty());
            }
            if (ratedFlux != null) {
                return new FilamentLamp(this, temperatureOfFluxK(ratedFlux), Optional.empty());
            }
            double hours = lifeH.orElse(FilamentEvaporation.USUAL_LIFE_H);
            double filamentK = FilamentEvaporation.temperatureK(this::wireAt, fill(), hours);
            return new FilamentLamp(this, filamentK, Optional.of(temperatureCaveat(filamentK, hours)));
        }

        private boolean lifeTells() {
            return FilamentEvaporation.holds(
                    ratedVoltage.inVolts(),
                    ratedPower.inWatts(),
                    lifeH.orElse(FilamentEvaporation.USUAL_LIFE_H),
                    fill());
        }

        private Caveat temperatureCaveat(double filamentK, double hours) {
            return new Caveat("filament temperature " + Numbers.text(filamentK, 4)
                    + " K from volts, watts and a life of "
                    + Numbers.text(hours) + " h" + (lifeH.isPresent() ? "" : " (assumed)") + " by evaporation in "
                    + fill()
                    + ": the light is true within 25 % for most bulbs "
                    + (lifeTells() ? "like it" : FilamentEvaporation.RANGE + ", not for one outside: half to twice")
                    + "; a rated flux is better");
        }

        private double temperatureOfFluxK(LuminousFlux flux) {
            double fluxLm = Check.inRange(
                    "rated flux of a " + ratedPower + " filament between 2000 K and 3200 K",
                    flux.inLumens(),
                    predictedLm(LOWEST_FILAMENT_K),
                    predictedLm(HIGHEST_FILAMENT_K),
                    "lm");
            return new BrentSolver(1e-12, 1e-9)
                    .solve(100, k -> predictedLm(k) - fluxLm, LOWEST_FILAMENT_K, HIGHEST_FILAMENT_K);
        }

        private double predictedLm(double filamentK) {
            return wireAt(filamentK).predictedLm();
        }

        private BulbFill fill() {
            if (fill != null) {
                return fill;
            }
            return gasLossShare.isPresent() && gasLossShare.getAsDouble() == 0 ? BulbFill.VACUUM : BulbFill.GAS;
        }

        private FilamentWire wireAt(double filamentK) {
            double volt = ratedVoltage.inVolts();
            boolean evacuated = fill() == BulbFill.VACUUM;
            double usualGasLoss = evacuated
                    ? Math.min(Ranges.GAS_LOSS.hi(), LEADS_V / volt)
                    : ratedPower.inWatts() < SMALL_W ? SMALL_GAS_LOSS : GAS_LOSS;
            double usualLightLoss = evacuated ? Math.min(MOST_LIGHT_LOSS, LIGHT_LOSS + DARK_ENDS_V / volt) : LIGHT_LOSS;
            return new FilamentWire(
                    tungsten,
                    volt,
                    ratedPower.inWatts(),
                    filamentK,
                    gasLossShare.orElse(usualGasLoss),
                    coilFactor,
                    lightLossShare.orElse(usualLightLoss));
        }
    }
}
