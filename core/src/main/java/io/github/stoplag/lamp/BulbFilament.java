package io.github.stoplag.lamp;

import io.github.stoplag.quantity.LuminousFlux;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One filament of a catalogued signal bulb.
 *
 * @param nominal the watts printed on the bulb; for American trade numbers the power drawn
 * @param testVoltage the voltage at which power and flux hold
 * @param power what it draws there; where a regulation gives the highest value only, that less the tolerance of the
 *     older editions (derived)
 * @param powerRule what the regulation or the trade says of the power, for example {@code ±6 %} or {@code max 26.5 W}
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
    private static final Pattern TOLERANCE = Pattern.compile("±([0-9.]+) %");
    private static final Pattern MOST = Pattern.compile("max ([0-9.]+) W");

    /**
     * Refuses nulls.
     *
     * @param nominal the watts printed on the bulb; for American trade numbers the power drawn
     * @param testVoltage the voltage at which power and flux hold
     * @param power what it draws there; where a regulation gives the highest value only, that less the tolerance of the
     *     older editions (derived)
     * @param powerRule what the regulation or the trade says of the power, for example {@code ±6 %} or {@code max
     *     26.5 W}
     * @param flux the flux of the bulb as sold, coloured or not
     * @param fluxTolerancePercent the tolerance on it in percent, if published
     * @param clearFlux the flux of the same filament in clear glass, which sets the filament's temperature
     * @param lifeHours the life at the test voltage in hours, if published
     * @param source where the row stands
     * @throws NullPointerException if one that is required is null
     */
    public BulbFilament {
        Objects.requireNonNull(clearFlux, "clearFlux");
        Objects.requireNonNull(flux, "flux");
        Objects.requireNonNull(fluxTolerancePercent, "fluxTolerancePercent");
        Objects.requireNonNull(lifeHours, "lifeHours");
        Objects.requireNonNull(nominal, "nominal");
        Objects.requireNonNull(power, "power");
        Objects.requireNonNull(powerRule, "powerRule");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(testVoltage, "testVoltage");
    }

    /**
     * Gives the usual tolerance of the watts drawn where none is published for a bulb: ±6 % from 15 W, ±10 % below, as
     * in older editions of UN Regulation No. 37 (seen for P21/5W, R5W, R10W and T4W; assumed of others).
     *
     * @param drawn the watts drawn
     * @return the tolerance, a plain ratio
     */
    public static double usualToleranceRatio(Power drawn) {
        Objects.requireNonNull(drawn, "drawn");
        return drawn.inWatts() < SMALL_W ? 0.1 : 0.06;
    }

    /**
     * Gives the most that a bulb within its rule draws at the test voltage: what a fuse and a wire must bear.
     *
     * @return the highest value published, or the power drawn plus the tolerance, published or else usual
     */
    public Power mostPower() {
        Matcher most = MOST.matcher(powerRule);
        if (most.matches()) {
            return Power.watts(Double.parseDouble(most.group(1)));
        }
        Matcher tolerance = TOLERANCE.matcher(powerRule);
        double ratio = tolerance.matches() ? Double.parseDouble(tolerance.group(1)) / 100 : usualToleranceRatio(power);
        return Power.watts(power.inWatts() * (1 + ratio));
    }

    /**
     * Builds the filament's model from the rating: the power drawn at the test voltage, temperature from the clear
     * flux.
     *
     * @param fill what is in the bulb
     * @param fillStanding how firmly the fill is known; assumed, results say what the other fill would change
     * @return a builder to which more may be set
     */
    public FilamentLamp.Builder lamp(BulbFill fill, Standing fillStanding) {
        Objects.requireNonNull(fill, "fill");
        Objects.requireNonNull(fillStanding, "fillStanding");
        return unlit(fill, fillStanding).ratedFlux(clearFlux);
    }

    /**
     * Builds the filament's model as if its flux were not published: temperature from volts, watts and life.
     *
     * @param fill what is in the bulb
     * @param fillStanding how firmly the fill is known
     * @return a builder to which more may be set
     */
    public FilamentLamp.Builder unlit(BulbFill fill, Standing fillStanding) {
        Objects.requireNonNull(fill, "fill");
        Objects.requireNonNull(fillStanding, "fillStanding");
        FilamentLamp.Builder builder = FilamentLamp.builder(testVoltage, power);
        lifeHours.ifPresent(builder::lifeHours);
        return fillStanding == Standing.ASSUMED ? builder.assumedFill(fill) : builder.fill(fill);
    }
}
