package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;

/**
 * An isolating diode: its forward characteristic and its ratings.
 *
 * <p>Conducting: dissipation P = U_F I, junction T_j = T_ambient + R_th P. Blocking: it holds a reverse voltage up to
 * its rating and lets a leakage current through.
 */
public final class Diode {
    private final ForwardCharacteristic characteristic;
    private final Current highestForward;
    private final Voltage highestReverse;
    private final Current leakage;
    private final double junctionToAmbientKPerW;
    private final Temperature highestJunction;

    private Diode(Builder b) {
        this.characteristic = b.characteristic;
        this.highestForward = b.highestForward;
        this.highestReverse = b.highestReverse;
        this.leakage = b.leakage;
        this.junctionToAmbientKPerW = b.junctionToAmbientKPerW;
        this.highestJunction = b.highestJunction;
    }

    /**
     * Starts a diode with unset ratings of zero; all three groups must be given.
     *
     * @param characteristic its forward voltage against current
     * @return the builder
     */
    public static Builder builder(ForwardCharacteristic characteristic) {
        Objects.requireNonNull(characteristic, "characteristic");
        return new Builder(characteristic);
    }

    /** Gathers a diode's ratings. */
    public static final class Builder {
        private final ForwardCharacteristic characteristic;
        private Current highestForward = Current.amperes(0);
        private Voltage highestReverse = Voltage.volts(0);
        private Current leakage = Current.amperes(0);
        private double junctionToAmbientKPerW;
        private Temperature highestJunction = Temperature.celsius(0);

        private Builder(ForwardCharacteristic characteristic) {
            this.characteristic = characteristic;
        }

        /**
         * Sets the forward rating.
         *
         * @param highest the rated average forward current, above 0 A
         * @return this builder
         */
        public Builder forward(Current highest) {
            Objects.requireNonNull(highest, "highest");
            this.highestForward = highest;
            return this;
        }

        /**
         * Sets the reverse rating.
         *
         * @param highest the rated reverse voltage, above 0 V
         * @param leakageAtIt the leakage current to reckon with at the hottest junction, not negative: it is not moved
         *     to another temperature, though it about doubles every 10 K (common practice, no source)
         * @return this builder
         */
        public Builder reverse(Voltage highest, Current leakageAtIt) {
            Objects.requireNonNull(highest, "highest");
            Objects.requireNonNull(leakageAtIt, "leakageAtIt");
            this.highestReverse = highest;
            this.leakage = leakageAtIt;
            return this;
        }

        /**
         * Sets the thermal rating.
         *
         * @param junctionToAmbientKPerW thermal resistance as mounted in K/W, in (0, 1000]
         * @param highest the highest junction temperature, above 25 °C
         * @return this builder
         */
        public Builder thermal(double junctionToAmbientKPerW, Temperature highest) {
            Objects.requireNonNull(highest, "highest");
            this.junctionToAmbientKPerW = junctionToAmbientKPerW;
            this.highestJunction = highest;
            return this;
        }

        /**
         * Makes the diode.
         *
         * @return the diode
         * @throws IllegalArgumentException if a rating is missing or outside its range
         */
        public Diode build() {
            Check.above("rated forward current", highestForward.inAmperes(), 0, 1000, "A");
            Ranges.LIVE_SUPPLY.check("rated reverse voltage", highestReverse.inVolts());
            Check.inRange("leakage current", leakage.inAmperes(), 0, 1, "A");
            Ranges.THERMAL_RESISTANCE.check("thermal resistance junction to ambient", junctionToAmbientKPerW);
            Check.above("highest junction temperature", highestJunction.inCelsius(), 25, 400, "°C");
            return new Diode(this);
        }
    }

    /**
     * The diode while it conducts.
     *
     * @param current I
     * @param drop U_F
     * @param power U_F I
     * @param junction the estimated junction temperature
     * @param withinCurrent whether the current is within the rating
     * @param withinTemperature whether the junction is within its limit
     * @param evidence what it rests on
     */
    public record Conduction(
            Current current,
            Voltage drop,
            Power power,
            Temperature junction,
            boolean withinCurrent,
            boolean withinTemperature,
            Evidence evidence)
            implements Evident {

        /**
         * Refuses nulls.
         *
         * @param current I
         * @param drop U_F
         * @param power U_F I
         * @param junction the estimated junction temperature
         * @param withinCurrent whether the current is within the rating
         * @param withinTemperature whether the junction is within its limit
         * @param evidence what it rests on
         * @throws NullPointerException if one that is required is null
         */
        public Conduction {
            Objects.requireNonNull(current, "current");
            Objects.requireNonNull(drop, "drop");
            Objects.requireNonNull(evidence, "evidence");
            Objects.requireNonNull(junction, "junction");
            Objects.requireNonNull(power, "power");
        }
    }

    /**
     * Gives the state at a forward current held long enough to settle.
     *
     * @param current I, not negative
     * @param ambient the temperature around the diode
     * @return the state
     * @throws IllegalArgumentException if the current is negative
     */
    public Conduction conduct(Current current, Temperature ambient) {
        double amperes = current.inAmperes();
        double drop = characteristic.voltageV(amperes);
        double watts = drop * amperes;
        Temperature junction = Temperature.kelvin(ambient.inKelvin() + junctionToAmbientKPerW * watts);
        boolean cool = junction.inKelvin() <= highestJunction.inKelvin();
        Evidence evidence = characteristic
                .evidence(amperes)
                .with(Evidence.of("diode heat: P = U_F I, T_j = T_ambient + R_th P, R_th = " + junctionToAmbientKPerW
                        + " K/W as mounted, limit " + ResistorRating.celsius(highestJunction)))
                .withCautions(Caution.INSULATION, Caution.LICENSED_PRACTICE);
        if (junction.inCelsius() > 60) {
            evidence = evidence.withCautions(Caution.hotSurface("diode, taken as hot as its junction,", junction));
        }
        return new Conduction(
                current,
                Voltage.volts(drop),
                Power.watts(watts),
                junction,
                amperes <= highestForward.inAmperes(),
                cool,
                evidence);
    }

    /**
     * The diode while it blocks.
     *
     * @param reverse the reverse voltage
     * @param rated the rated reverse voltage
     * @param leakage the leakage current to reckon with
     * @param blocks whether the voltage is within the rating
     * @param evidence what it rests on
     */
    public record Blocking(Voltage reverse, Voltage rated, Current leakage, boolean blocks, Evidence evidence)
            implements Evident {

        /**
         * Refuses nulls.
         *
         * @param reverse the reverse voltage
         * @param rated the rated reverse voltage
         * @param leakage the leakage current to reckon with
         * @param blocks whether the voltage is within the rating
         * @param evidence what it rests on
         * @throws NullPointerException if one that is required is null
         */
        public Blocking {
            Objects.requireNonNull(evidence, "evidence");
            Objects.requireNonNull(leakage, "leakage");
            Objects.requireNonNull(rated, "rated");
            Objects.requireNonNull(reverse, "reverse");
        }
    }

    /**
     * Gives the state while the circuit behind the diode is on and the one before it is off.
     *
     * @param behind the voltage behind the diode, on the lamp's side, not negative
     * @param before the voltage before it, on the feeding side: 0 V if other lamps pull it to earth; not above the
     *     other
     * @return the state
     * @throws IllegalArgumentException if a voltage is negative or the diode would conduct
     */
    public Blocking block(Voltage behind, Voltage before) {
        double behindV = Ranges.SUPPLY.check("voltage behind the diode", behind.inVolts());
        double beforeV = Check.inRange("voltage before the blocking diode", before.inVolts(), 0, behindV, "V");
        double reverseV = behindV - beforeV;
        Evidence evidence = Evidence.of("diode blocking: reverse voltage against the rated " + highestReverse)
                .withCaveat("spikes and load dump on a vehicle's supply reach several times the supply voltage (common"
                        + " practice); the rating must cover them too")
                .withCaveatIf(
                        leakage.inAmperes() > 0,
                        "a leakage of up to " + leakage
                                + " flows back; it can make an LED lamp on the feeding side glow")
                .withCaveatIf(
                        leakage.inAmperes() > 0,
                        "the leakage is the one given, whatever the temperature; in a hotter diode it about doubles"
                                + " every 10 K (common practice, no source): give the data sheet's value at the hottest"
                                + " junction")
                .withCautions(Caution.INSULATION, Caution.LICENSED_PRACTICE);
        return new Blocking(
                Voltage.volts(reverseV), highestReverse, leakage, reverseV <= highestReverse.inVolts(), evidence);
    }

    /**
     * Gives the forward characteristic.
     *
     * @return it
     */
    public ForwardCharacteristic characteristic() {
        return characteristic;
    }
}
