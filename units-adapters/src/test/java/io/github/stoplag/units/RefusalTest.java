package io.github.stoplag.units;

import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.LuminousIntensity;
import org.junit.jupiter.api.Test;
import systems.uom.common.USCustomary;
import tech.units.indriya.unit.Units;

/** What must not be taken for one of our quantities, and the line that says so. */
class RefusalTest {
    @Test
    void aQuantityOfAnotherDimensionIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Quantities.speed(disguised(60, Units.KILOGRAM)))
                .withMessage("speed must be in a unit that converts to m/s, got 60 kg");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Quantities.speed(disguised(new BigDecimal("1e400"), Units.METRE_PER_SECOND)))
                .withMessage("speed must be finite, got Infinity m/s");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Quantities.speed(disguised(600, USCustomary.MILE_PER_HOUR)))
                .withMessage("speed must be in [0, 150] m/s, got 268.224 m/s");
    }

    @Test
    void anglesAreNoRatiosAndLumensNoCandelas() {
        Quantity<Dimensionless> degrees = disguised(5, USCustomary.DEGREE_ANGLE);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Quantities.grade(degrees))
                .withMessage("grade must be in a unit that converts to one, got 5 deg");
        Quantity<LuminousIntensity> lumens = disguised(5, Units.LUMEN);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Quantities.luminousIntensity(lumens))
                .withMessage("luminous intensity must be in a unit that converts to cd, got 5 lm");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Quantities.luminance(disguised(5, Units.LUX)))
                .withMessage("luminance must be in a unit that converts to cd/m², got 5 lx");
    }

    @Test
    void aTemperatureDifferenceIsNoTemperature() {
        var difference = tech.units.indriya.quantity.Quantities.getQuantity(20, Units.CELSIUS, Quantity.Scale.RELATIVE);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Quantities.temperature(difference))
                .withMessage("temperature must be absolute, got 20 ℃ on the relative scale");
    }

    @Test
    void unitsThatDoNotFitAreNamed() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> QuantityUnits.unit(
                        io.github.stoplag.quantity.Units.SPEED, "feet", javax.measure.quantity.Speed.class))
                .withMessage("speed: \"feet\" is a unit of distance; use one of m/s, km/h, mph, ft/s, kn");
        assertThatIllegalArgumentException()
                .isThrownBy(() ->
                        QuantityUnits.unit(io.github.stoplag.quantity.Units.GRADE, "degrees", Dimensionless.class))
                .withMessage("grade in deg has no fixed ratio to the SI unit; convert it with the value type first");
        assertThatExceptionOfType(ClassCastException.class)
                .isThrownBy(() ->
                        QuantityUnits.unit(io.github.stoplag.quantity.Units.SPEED, "mph", LuminousIntensity.class));
    }

    /** A quantity whose type parameter lies, as raw types and unchecked casts let it. */
    @SuppressWarnings({"unchecked", "TypeParameterUnusedInFormals"})
    private static <Q extends Quantity<Q>> Quantity<Q> disguised(Number value, Unit<?> unit) {
        return tech.units.indriya.quantity.Quantities.getQuantity(value, (Unit<Q>) unit);
    }
}
