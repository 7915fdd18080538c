package io.github.stoplag.source;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Temperature;
import java.util.Objects;

/**
 * A warning that goes with a result because acting on it can hurt people, break the law or burn a vehicle.
 *
 * <p>A {@link Caveat} says how far a number may be trusted; a caution says what to mind even if the number is right.
 *
 * @param topic what it is about in a word or two, for example {@code heat}
 * @param text the warning in one or two sentences
 */
public record Caution(String topic, String text) {
    /** A lamp is approved with its light source. */
    public static final Caution LAMP_LAW = new Caution(
            "lamp law",
            "A lamp is type-approved together with its light source. An LED in a lamp approved for a filament bulb can"
                    + " void the approval and be unlawful on the road: check the law and the marking on the lamp.");

    /** A fuse protects the wire. */
    public static final Caution FUSES = new Caution(
            "fuses",
            "The fuse protects the wire. Never fit a larger one to make a circuit work, and fuse any added feed close"
                    + " to its source.");

    /** Joints and wires need protection. */
    public static final Caution INSULATION = new Caution(
            "insulation",
            "Insulate every added joint and guard wires against heat, chafing and water. Disconnect the battery before"
                    + " working on the circuit.");

    /** A calculation approves nothing. */
    public static final Caution LICENSED_PRACTICE = new Caution(
            "licensed practice",
            "This is a calculation, not a proof of safety. Local codes go first, and work on a vehicle's lighting"
                    + " belongs in the hands of someone licensed to do it, who measures the result.");

    /** A motion on paper keeps nobody apart. */
    public static final Caution NO_PROOF = new Caution(
            "no proof of safety",
            "This is the motion of idealised vehicles, not a proof that real ones stay apart: drivers, brakes and"
                    + " roads scatter, and the gap the law asks for goes first.");

    /**
     * Checks that there is something to say.
     *
     * @param topic what it is about in a word or two, for example {@code heat}
     * @param text the warning in one or two sentences
     * @throws IllegalArgumentException if topic or text is blank
     */
    public Caution {
        Objects.requireNonNull(text, "text");
        Objects.requireNonNull(topic, "topic");
        if (topic.isBlank() || text.isBlank()) {
            throw new IllegalArgumentException(
                    "a caution must have a topic and a text, got \"" + topic + "\" and \"" + text + "\"");
        }
    }

    /**
     * Warns of a hot part.
     *
     * @param part what gets hot, for example {@code load resistor}
     * @param surface its estimated surface temperature
     * @return the caution, naming the temperature
     */
    public static Caution hotSurface(String part, Temperature surface) {
        Objects.requireNonNull(surface, "surface");
        Objects.requireNonNull(part, "part");
        return new Caution(
                "heat",
                "The surface of the " + part + " is estimated at "
                        + Numbers.text(surface.inCelsius(), surface.inCelsius() < 1000 ? 3 : 4)
                        + " °C. It can burn skin, melt plastic and start a fire: mount it on bare metal, away from"
                        + " wires, trim, fuel and hands, and measure it.");
    }

    @Override
    public String toString() {
        return topic + ": " + text;
    }
}
