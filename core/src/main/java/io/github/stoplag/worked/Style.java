package io.github.stoplag.worked;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Ranges;
import java.util.Objects;

/**
 * How a solution is written: its system of units, the digits carried from step to step, the digits of the answer.
 *
 * <p>Every step calculates with the rounded number that the step before prints, as a reader with a pocket calculator
 * does; that is why the carried digits exceed those of the answer.
 *
 * @param units the system of units
 * @param carriedDigits significant digits of every intermediate result, in [2, 12]
 * @param answerDigits significant digits of the answer, in [1, carriedDigits]
 * @param gravity the acceleration of free fall, in [1, 30] m/s²
 */
public record Style(UnitSystem units, int carriedDigits, int answerDigits, Given gravity) {
    /**
     * Checks the ranges.
     *
     * @param units the system of units
     * @param carriedDigits significant digits of every intermediate result, in [2, 12]
     * @param answerDigits significant digits of the answer, in [1, carriedDigits]
     * @param gravity the acceleration of free fall, in [1, 30] m/s²
     * @throws IllegalArgumentException if one is out of range
     */
    public Style {
        Objects.requireNonNull(gravity, "gravity");
        Objects.requireNonNull(units, "units");
        Check.inRange("carried digits", carriedDigits, 2, 12, "");
        Check.inRange("answer digits", answerDigits, 1, carriedDigits, "");
        Ranges.GRAVITY.check(gravity.in(Unit.MPS2));
    }

    /**
     * Metres and seconds, six digits carried, three in the answer, standard gravity.
     *
     * @return the style
     */
    public static Style metric() {
        return in(UnitSystem.METRIC);
    }

    /**
     * Feet and seconds, six digits carried, three in the answer, standard gravity.
     *
     * @return the style
     */
    public static Style usCustomary() {
        return in(UnitSystem.US_CUSTOMARY);
    }

    /**
     * A system of units with six digits carried, three in the answer, standard gravity.
     *
     * @param units the system of units
     * @return the style
     */
    public static Style in(UnitSystem units) {
        Objects.requireNonNull(units, "units");
        return new Style(
                units,
                6,
                3,
                Given.of(Deceleration.STANDARD_GRAVITY_MPS2, Unit.MPS2, "standard gravity, 3rd CGPM 1901"));
    }

    /**
     * The same with other digits.
     *
     * @param carried significant digits of every intermediate result, in [2, 12]
     * @param answer significant digits of the answer, in [1, carried]
     * @return the style
     * @throws IllegalArgumentException if one is out of range
     */
    public Style withDigits(int carried, int answer) {
        return new Style(units, carried, answer, gravity);
    }

    /**
     * The same with another acceleration of free fall, such as a textbook's 9.8 m/s².
     *
     * @param newGravity the acceleration, in [1, 30] m/s²
     * @return the style
     * @throws IllegalArgumentException if it is out of range
     */
    public Style withGravity(Given newGravity) {
        Objects.requireNonNull(newGravity, "newGravity");
        return new Style(units, carriedDigits, answerDigits, newGravity);
    }
}
