package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * How an LED loses light as it warms.
 *
 * <p>Φ(Tj)/Φ(T0) = e^(−k (Tj − T0)); while it warms itself up by ΔT with time constant θ, Tj(t) = T0 + ΔT (1 −
 * e^(−t/θ)).
 *
 * <p>Symbols: Tj junction temperature; T0 reference temperature in °C; k slope in 1/K from a published loss at a
 * temperature, k = −ln(1 − loss)/(T − T0). Rows and their standing in {@code led_temperature.csv}. Possible Tj: [-60,
 * 200] °C.
 *
 * <pre>{@code
 * LedHeating led = LedHeating.published("native red");
 * led.lightRatio(Temperature.celsius(85)); // 0.3536
 * }</pre>
 *
 * @param kind which LED, for example {@code AlInGaP red-orange}
 * @param slopePerK k in 1/K
 * @param referenceC T0 in °C
 * @param validToC the highest temperature of the published figure in °C
 * @param source where the slope comes from
 */
public record LedHeating(String kind, double slopePerK, double referenceC, double validToC, Source source)
        implements Evident {
    private static final Catalogue<LedHeating> PUBLISHED =
            Catalogue.read("LED kind", LedHeating.class, "led_temperature.csv", LedHeating::read, LedHeating::kind);

    /**
     * Checks the slope.
     *
     * @param kind which LED
     * @param slopePerK k in 1/K
     * @param referenceC T0 in °C
     * @param validToC the highest temperature of the published figure in °C
     * @param source where the slope comes from
     * @throws IllegalArgumentException if the slope is not in [-0.05, 0.05] per K
     */
    public LedHeating {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(source, "source");
        Check.inRange("light-loss slope of an LED", slopePerK, -0.05, 0.05, "1/K");
    }

    /** {@return the published slopes} */
    public static List<LedHeating> published() {
        return PUBLISHED.list();
    }

    /**
     * Finds a published slope.
     *
     * @param kind the kind of LED as the table names it
     * @return the row
     * @throws IllegalArgumentException if there is no such row; the message offers the nearest
     */
    public static LedHeating published(String kind) {
        Objects.requireNonNull(kind, "kind");
        return PUBLISHED.get(kind);
    }

    private static LedHeating read(Table table, Map<String, String> row) {
        double lossRatio = table.number(row, "loss_ratio");
        double fromC = table.number(row, "reference_C");
        double atC = table.number(row, "at_C");
        return new LedHeating(
                table.text(row, "kind"), -Math.log1p(-lossRatio) / (atC - fromC), fromC, atC, table.source(row));
    }

    /**
     * Gives the light at a junction temperature.
     *
     * @param junction Tj, [-60, 200] °C
     * @return the light over that at the reference temperature
     * @throws IllegalArgumentException if the temperature is out of range
     */
    public double lightRatio(Temperature junction) {
        Objects.requireNonNull(junction, "junction");
        double c = Check.inRange("LED junction temperature", junction.inCelsius(), -60, 200, "°C");
        return Math.exp(-slopePerK * (c - referenceC));
    }

    /**
     * Gives the light while the LED warms itself up.
     *
     * @param time the time since switch-on, not negative
     * @param start its temperature at switch-on
     * @param riseK how far it warms itself, [0, 200] K
     * @param timeConstant θ, above 0
     * @return the light over that at switch-on: 1 at first, e^(−k ΔT) in the end
     * @throws IllegalArgumentException if an argument is out of range or the end above 200 °C
     */
    public double whileWarming(TimeSpan time, Temperature start, double riseK, TimeSpan timeConstant) {
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(timeConstant, "timeConstant");
        Ranges.ELAPSED.check("time after switch-on", time.inSeconds());
        Check.inRange("self-heating of the LED", riseK, 0, 200, "K");
        Ranges.LASTING.check("thermal time constant of the LED", timeConstant.inSeconds());
        double warmedK = -riseK * Math.expm1(-time.inSeconds() / timeConstant.inSeconds());
        return lightRatio(Temperature.kelvin(start.inKelvin() + warmedK)) / lightRatio(start);
    }

    @Override
    public Evidence evidence() {
        return Evidence.of(
                "light of " + kind + " LED against temperature, slope " + Numbers.text(slopePerK, 3) + " 1/K", source);
    }

    /**
     * Says what the light at a temperature rests on.
     *
     * @param junction Tj
     * @return the evidence, with a caveat for a temperature outside what was published
     */
    public Evidence evidence(Temperature junction) {
        Objects.requireNonNull(junction, "junction");
        double c = junction.inCelsius();
        return evidence()
                .withCaveatIf(
                        !(c >= referenceC && c <= validToC),
                        "junction temperature " + Numbers.text(c, 4) + " °C is outside the published range ["
                                + Numbers.text(referenceC) + ", " + Numbers.text(validToC) + "] °C of " + source);
    }
}
