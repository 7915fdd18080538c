package io.github.stoplag.units;

import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Illuminance;
import io.github.stoplag.quantity.Luminance;
import io.github.stoplag.quantity.LuminousFlux;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Mass;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;

/**
 * Values to and from text with units, the same in every locale: {@code 60 mph}, {@code 8 ft 10 in}, {@code -3 %}.
 *
 * <p>The units of each kind and the rules of reading and writing are those of {@link UnitTable}, which also writes the
 * kinds that have no short form here.
 */
public final class QuantityText {
    private QuantityText() {}

    /**
     * {@return the speed that a text such as {@code 60 mph} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#SPEED}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static Speed parseSpeed(String text) {
        return UnitTable.SPEED.parse(text);
    }

    /**
     * {@return the distance that a text such as {@code 12.5 m} or {@code 8 ft 10 in} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#DISTANCE}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static Distance parseDistance(String text) {
        return UnitTable.DISTANCE.parse(text);
    }

    /**
     * {@return the time that a text such as {@code 0.2 s} or {@code 200 ms} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#TIME_SPAN}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static TimeSpan parseTimeSpan(String text) {
        return UnitTable.TIME_SPAN.parse(text);
    }

    /**
     * {@return the deceleration that a text such as {@code 0.7 g} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#DECELERATION}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static Deceleration parseDeceleration(String text) {
        return UnitTable.DECELERATION.parse(text);
    }

    /**
     * {@return the friction coefficient that a text such as {@code 0.7} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#FRICTION_COEFFICIENT}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static FrictionCoefficient parseFrictionCoefficient(String text) {
        return UnitTable.FRICTION_COEFFICIENT.parse(text);
    }

    /**
     * {@return the grade that a text such as {@code -3 %} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#GRADE}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static Grade parseGrade(String text) {
        return UnitTable.GRADE.parse(text);
    }

    /**
     * {@return the mass that a text such as {@code 2.4 t} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#MASS}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static Mass parseMass(String text) {
        return UnitTable.MASS.parse(text);
    }

    /**
     * {@return the voltage that a text such as {@code 13.5 V} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#VOLTAGE}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static Voltage parseVoltage(String text) {
        return UnitTable.VOLTAGE.parse(text);
    }

    /**
     * {@return the current that a text such as {@code 350 mA} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#CURRENT}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static Current parseCurrent(String text) {
        return UnitTable.CURRENT.parse(text);
    }

    /**
     * {@return the resistance that a text such as {@code 0.05 ohm} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#RESISTANCE}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static Resistance parseResistance(String text) {
        return UnitTable.RESISTANCE.parse(text);
    }

    /**
     * {@return the power that a text such as {@code 21 W} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#POWER}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static Power parsePower(String text) {
        return UnitTable.POWER.parse(text);
    }

    /**
     * {@return the temperature that a text such as {@code 20 °C} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#TEMPERATURE}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static Temperature parseTemperature(String text) {
        return UnitTable.TEMPERATURE.parse(text);
    }

    /**
     * {@return the luminous intensity that a text such as {@code 60 cd} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#LUMINOUS_INTENSITY}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static LuminousIntensity parseLuminousIntensity(String text) {
        return UnitTable.LUMINOUS_INTENSITY.parse(text);
    }

    /**
     * {@return the luminous flux that a text such as {@code 460 lm} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#LUMINOUS_FLUX}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static LuminousFlux parseLuminousFlux(String text) {
        return UnitTable.LUMINOUS_FLUX.parse(text);
    }

    /**
     * {@return the illuminance that a text such as {@code 10 lx} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#ILLUMINANCE}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static Illuminance parseIlluminance(String text) {
        return UnitTable.ILLUMINANCE.parse(text);
    }

    /**
     * {@return the luminance that a text such as {@code 2 cd/m²} gives}
     *
     * @param text the text, in a unit of {@link UnitTable#LUMINANCE}
     * @throws IllegalArgumentException if the text is malformed, its unit does not fit, or the value is out of range
     */
    public static Luminance parseLuminance(String text) {
        return UnitTable.LUMINANCE.parse(text);
    }

    /**
     * {@return the speed as text such as {@code 96.6 km/h}, rounded half up}
     *
     * @param speed the speed
     * @param unit a unit of {@link UnitTable#SPEED}
     * @param decimals how many decimals to print, 0 to 15
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public static String format(Speed speed, String unit, int decimals) {
        return UnitTable.SPEED.format(speed, unit, decimals);
    }

    /**
     * {@return the distance as text such as {@code 41.2 m}, rounded half up}
     *
     * @param distance the distance
     * @param unit a unit of {@link UnitTable#DISTANCE}
     * @param decimals how many decimals to print, 0 to 15
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public static String format(Distance distance, String unit, int decimals) {
        return UnitTable.DISTANCE.format(distance, unit, decimals);
    }

    /**
     * {@return the time as text such as {@code 0.21 s}, rounded half up}
     *
     * @param timeSpan the time
     * @param unit a unit of {@link UnitTable#TIME_SPAN}
     * @param decimals how many decimals to print, 0 to 15
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public static String format(TimeSpan timeSpan, String unit, int decimals) {
        return UnitTable.TIME_SPAN.format(timeSpan, unit, decimals);
    }

    /**
     * {@return the distance in feet and inches as drivers say it, such as {@code 8 ft 10 in}, to the nearest inch}
     *
     * <p>Half an inch rounds away from zero; twelve inches carry into the feet; a negative distance has one minus sign in
     * front. {@link #parseDistance} reads it back to within half an inch.
     *
     * @param distance the distance
     */
    public static String feetAndInches(Distance distance) {
        long inches = Math.round(Math.abs(distance.inInches()));
        String sign = distance.inMetres() < 0 && inches > 0 ? "-" : "";
        return sign + inches / 12 + " ft " + inches % 12 + " in";
    }
}
