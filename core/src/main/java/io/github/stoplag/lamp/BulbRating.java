package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Standing;
import java.util.Objects;
import java.util.Optional;

/**
 * A signal bulb as a regulation or the trade rates it.
 *
 * @param category its name, for example {@code P21/5W}
 * @param system the nominal voltage of the vehicle: 6, 12 or 24 V
 * @param colour the colour of its light
 * @param fill what it is filled with
 * @param fillStanding how firmly the fill is known
 * @param powerStanding how firmly the power drawn is known
 * @param major the stronger or only filament
 * @param minor the weaker filament of a combined bulb
 */
public record BulbRating(
        String category,
        Voltage system,
        String colour,
        BulbFill fill,
        Standing fillStanding,
        Standing powerStanding,
        BulbFilament major,
        Optional<BulbFilament> minor) {

    /**
     * Refuses nulls.
     *
     * @param category its name, for example {@code P21/5W}
     * @param system the nominal voltage of the vehicle: 6, 12 or 24 V
     * @param colour the colour of its light
     * @param fill what it is filled with
     * @param fillStanding how firmly the fill is known
     * @param powerStanding how firmly the power drawn is known
     * @param major the stronger or only filament
     * @param minor the weaker filament of a combined bulb
     * @throws NullPointerException if one that is required is null
     */
    public BulbRating {
        Objects.requireNonNull(category, "category");
        Objects.requireNonNull(colour, "colour");
        Objects.requireNonNull(fill, "fill");
        Objects.requireNonNull(fillStanding, "fillStanding");
        Objects.requireNonNull(major, "major");
        Objects.requireNonNull(minor, "minor");
        Objects.requireNonNull(powerStanding, "powerStanding");
        Objects.requireNonNull(system, "system");
    }

    /** {@return a builder for the stronger or only filament, from its rating} */
    public FilamentLamp.Builder majorLamp() {
        return major.lamp(fill, fillStanding);
    }

    /**
     * Gives a builder for the weaker filament.
     *
     * @return the builder, from its rating
     * @throws IllegalArgumentException if the bulb has one filament only
     */
    public FilamentLamp.Builder minorLamp() {
        return minor.orElseThrow(() -> new IllegalArgumentException(this + " has one filament only"))
                .lamp(fill, fillStanding);
    }

    /**
     * Builds both filaments of a combined bulb.
     *
     * @return the bulb
     * @throws IllegalArgumentException if it has one filament only
     */
    public CombinedBulb combined() {
        return CombinedBulb.of(majorLamp().build(), minorLamp().build());
    }

    @Override
    public String toString() {
        return category + " " + system;
    }
}
