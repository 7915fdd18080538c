package io.github.stoplag.lamp;

import io.github.stoplag.quantity.LuminousFlux;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Source;
import java.util.Optional;

/**
 * One filament of a catalogued signal bulb.
 *
 * @param nominal the watts printed on the bulb; for American trade numbers the power drawn
 * @param testVoltage the voltage at which power and flux hold
 * @param power what it draws there: the objective or the highest value, as {@code powerRule} says
 * @param powerRule how the power is meant, for example {@code ±6 %} or {@code max}
 * @param flux the flux of the bulb as sold, coloured or not
 * @param fluxTolerancePercent the tolerance on it in percent, if published
 * @param clearFlux the flux of the same filament in clear glass, which sets the filament's temperature
 * @param lifeHours the life at the test voltage in hours, if published
 * @param source where the row stands
 */
public record BulbFilament(
        Power nominal,
        Voltage testVoltage,
        Power power,
        String powerRule,
        LuminousFlux flux,
        Optional<Double> fluxTolerancePercent,
        LuminousFlux clearFlux,
        Optional<Double> lifeHours,
        Source source) {
    private static final double SMALL_W = 15;
    /** Thin wires lose a greater share to gas than thick ones: assumed between 0.2 and 0.4. */
    private static final double SMALL_GAS_LOSS = 0.3;

    /**
     * Builds the filament's model from the rating: power at the test voltage, temperature from the clear flux.
     *
     * @param fill what is in the bulb: in vacuum nothing is lost to gas; in gas a filament below 15 W is taken to lose 0.3 of
     *     its power (assumed), a stronger one the usual share of {@link FilamentLamp}
     * @return a builder to which more may be set
     */
    public FilamentLamp.Builder lamp(BulbFill fill) {
        FilamentLamp.Builder builder = FilamentLamp.builder(testVoltage, power).ratedFlux(clearFlux);
        if (fill == BulbFill.VACUUM) {
            return builder.gasLossShare(0);
        }
        return power.inWatts() < SMALL_W ? builder.gasLossShare(SMALL_GAS_LOSS) : builder;
    }
}
