package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;

/**
 * A wire laid from supply to lamp, its return and its contacts, at a temperature.
 *
 * <p>R = k R_wire(L, T) + R_contacts, k = 2 with a return wire and 1 with a return through the body, whose resistance
 * is then part of the contacts. Drop ΔU = I R, heat P = I² R.
 */
public final class WireRun {
    /** The way back of the current. */
    public enum Return {
        /** A second wire of the same kind and length. */
        OWN_WIRE(2),
        /** The vehicle's body. */
        BODY(1);

        private final int wires;

        Return(int wires) {
            this.wires = wires;
        }
    }

    private final Wire wire;
    private final Distance oneWay;
    private final Return back;
    private final Temperature temperature;
    private final Resistance contacts;

    private WireRun(Wire wire, Distance oneWay, Return back, Temperature temperature, Resistance contacts) {
        this.wire = wire;
        this.oneWay = oneWay;
        this.back = back;
        this.temperature = temperature;
        this.contacts = contacts;
    }

    /**
     * Lays a wire at 20 °C with perfect contacts.
     *
     * @param wire the wire
     * @param oneWay the length from supply to lamp, in [0, 1000] m
     * @param back the way back
     * @return the run
     * @throws IllegalArgumentException if the length is outside its range
     */
    public static WireRun of(Wire wire, Distance oneWay, Return back) {
        Objects.requireNonNull(oneWay, "oneWay");
        Objects.requireNonNull(back, "back");
        Objects.requireNonNull(wire, "wire");
        Check.inRange("wire length", oneWay.inMetres(), 0, 500, "m");
        return new WireRun(wire, oneWay, back, Temperature.celsius(20), Resistance.ohms(0));
    }

    /**
     * Sets the conductor's temperature.
     *
     * @param conductor the temperature
     * @return the changed run
     */
    public WireRun at(Temperature conductor) {
        Objects.requireNonNull(conductor, "conductor");
        return new WireRun(wire, oneWay, back, conductor, contacts);
    }

    /**
     * Adds switch, connectors and body as one resistance.
     *
     * @param inSeries their resistance together
     * @return the changed run
     */
    public WireRun withContacts(Resistance inSeries) {
        Objects.requireNonNull(inSeries, "inSeries");
        return new WireRun(wire, oneWay, back, temperature, inSeries);
    }

    /**
     * Gives the whole resistance.
     *
     * @return R
     * @throws IllegalArgumentException if the temperature is outside the wire's range
     */
    public Resistance resistance() {
        double ohms = back.wires * wire.resistance(oneWay, temperature).inOhms();
        return Resistance.ohms(ohms + contacts.inOhms());
    }

    /**
     * The drop of a run at a current.
     *
     * @param resistance R
     * @param drop ΔU = I R
     * @param heat P = I² R, in wires and contacts together
     * @param shareOfSupplyRatio ΔU over the supply voltage
     * @param allowable the drop the caller allows
     * @param withinAllowable whether the drop is not above it
     * @param evidence what it rests on
     */
    public record Drop(
            Resistance resistance,
            Voltage drop,
            Power heat,
            double shareOfSupplyRatio,
            Voltage allowable,
            boolean withinAllowable,
            Evidence evidence)
            implements Evident {

        /**
         * Refuses nulls.
         *
         * @param resistance R
         * @param drop ΔU = I R
         * @param heat P = I² R, in wires and contacts together
         * @param shareOfSupplyRatio ΔU over the supply voltage
         * @param allowable the drop the caller allows
         * @param withinAllowable whether the drop is not above it
         * @param evidence what it rests on
         * @throws NullPointerException if one that is required is null
         */
        public Drop {
            Objects.requireNonNull(allowable, "allowable");
            Objects.requireNonNull(drop, "drop");
            Objects.requireNonNull(evidence, "evidence");
            Objects.requireNonNull(heat, "heat");
            Objects.requireNonNull(resistance, "resistance");
        }
    }

    /**
     * Checks the drop at a current against the caller's limit.
     *
     * @param current I, not negative
     * @param supply the supply voltage, above 0 V
     * @param allowable the greatest drop allowed, not negative; there is no general legal figure
     * @return the drop
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public Drop drop(Current current, Voltage supply, Voltage allowable) {
        Objects.requireNonNull(allowable, "allowable");
        Objects.requireNonNull(supply, "supply");
        double amperes = Ranges.FORWARD_CURRENT.check(current.inAmperes());
        double supplyV = Ranges.LIVE_SUPPLY.check("supply", supply.inVolts());
        double limitV = Check.inRange("allowable drop", allowable.inVolts(), 0, supplyV, "V");
        Resistance r = resistance();
        double dropV = amperes * r.inOhms();
        Evidence evidence = Evidence.of("wire run: " + wire.label() + ", " + oneWay + " one way, return by "
                        + (back == Return.BODY ? "the body" : "its own wire") + ", contacts " + contacts)
                .with(wire.evidence(temperature))
                .withCaveatIf(
                        back == Return.BODY && contacts.inOhms() == 0,
                        "the return through the body is taken as free of resistance; a corroded earth point is not")
                .withCaveatIf(
                        dropV > supplyV,
                        "the drop exceeds the supply: this current cannot flow, solve the operating point with"
                                + " LampFeed")
                .withCaveat(
                        "the wire's own heating is not followed: the current it may carry depends on bundle, insulation"
                                + " and fuse and stands in the wire maker's tables")
                .withCautions(Caution.FUSES, Caution.INSULATION, Caution.LICENSED_PRACTICE);
        return new Drop(
                r,
                Voltage.volts(dropV),
                Power.watts(amperes * dropV),
                dropV / supplyV,
                allowable,
                dropV <= limitV,
                evidence);
    }
}
