package io.github.stoplag.lamp;

import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;

/**
 * The one set of inputs with which published laboratory figures of stop lamps are predicted, none tuned to its own
 * check.
 *
 * <p>Bulb: 1157, the usual American stop and tail bulb, from its rating (the laboratory was American). Supply: its
 * design voltage of 12.8 V, stiff, at 300 K, behind a red lens. LED: a step. Fast filament: the same bulb kept at 1 V,
 * below visible glow, and boosted to twice its voltage until 95 % of its light (assumed: how the published fast lamp
 * was made is not known here). Eye: time constant 0.1 s, published as the form-factor constant for day (a photometer
 * maker's page, seen) and as the limit of Bloch's law (seen), for a test that simulated day; threshold 3.0 cd, from the
 * published 84 ms between 42 cd and 5 cd. The published figures stand in {@code published_lamp_figures.csv}.
 */
public final class LaboratoryLamps {
    /** The eye's time constant by day. */
    public static final TimeSpan EYE_TIME_CONSTANT = TimeSpan.seconds(0.1);

    /** The eye's threshold, from 84 ms = τ (ln(5/(5 − E)) − ln(42/(42 − E))). */
    public static final LuminousIntensity EYE_THRESHOLD = LuminousIntensity.candela(3.0);

    private static final Voltage STANDBY = Voltage.volts(1);
    private static final Voltage BOOST = Voltage.volts(25.6);
    private static final double BOOST_UNTIL = 0.95;

    private LaboratoryLamps() {}

    /** {@return the standard bulb's stop filament} */
    public static FilamentLamp bulb() {
        return BulbCatalogue.published("1157").majorLamp().build();
    }

    /** {@return 12.8 V, no series resistance, 300 K, red lens} */
    public static SupplyConditions conditions() {
        return SupplyConditions.of(Voltage.volts(12.8)).withLens(Lens.RED);
    }

    /** {@return the standard filament lamp switched on} */
    public static FilamentOnset standard() {
        return bulb().switchOn(conditions());
    }

    /** {@return the fast filament lamp switched on} */
    public static FastFilament fast() {
        return FastFilament.of(bulb(), conditions(), STANDBY, BOOST, BOOST_UNTIL);
    }

    /** {@return the LED lamp switched on: a step} */
    public static LedLamp led() {
        return LedLamp.of(TimeSpan.seconds(0), TimeSpan.seconds(0));
    }
}
