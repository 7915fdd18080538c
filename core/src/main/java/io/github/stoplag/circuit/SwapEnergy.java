package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;

/**
 * The energy a lamp swap saves or wastes, against the filament lamp.
 *
 * <p>Watts on for an hour are watt-hours: saved per hour of braking = P_filament − P_LED − P_resistor. Negative if the
 * LED and its load resistor draw more.
 *
 * @param filament the filament lamp's power
 * @param led the LED lamp's power
 * @param resistor the load resistor's power, all of it wasted; 0 W without one
 * @param brakingHoursPerYear hours a year with the stop lamp on, in [0, 8784]
 * @param evidence what it rests on
 */
public record SwapEnergy(Power filament, Power led, Power resistor, double brakingHoursPerYear, Evidence evidence)
        implements Evident {
    private static final double HOURS_IN_A_LEAP_YEAR = 8784;

    /**
     * Checks the hours.
     *
     * @param filament the filament lamp's power
     * @param led the LED lamp's power
     * @param resistor the load resistor's power, all of it wasted; 0 W without one
     * @param brakingHoursPerYear hours a year with the stop lamp on, in [0, 8784]
     * @param evidence what it rests on
     * @throws IllegalArgumentException if the hours are outside [0, 8784]
     */
    public SwapEnergy {
        Objects.requireNonNull(evidence, "evidence");
        Objects.requireNonNull(filament, "filament");
        Objects.requireNonNull(led, "led");
        Objects.requireNonNull(resistor, "resistor");
        Check.inRange("braking hours per year", brakingHoursPerYear, 0, HOURS_IN_A_LEAP_YEAR, "h");
    }

    /**
     * Compares two lamps and a resistor at one supply voltage.
     *
     * @param filament the filament lamp
     * @param led the LED lamp
     * @param resistor the load resistor, {@link CurrentDraw#open()} for none
     * @param supply the voltage across all three
     * @param brakingHoursPerYear hours a year with the stop lamp on, in [0, 8784]
     * @return the energies
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public static SwapEnergy of(
            CurrentDraw filament, CurrentDraw led, CurrentDraw resistor, Voltage supply, double brakingHoursPerYear) {
        Objects.requireNonNull(filament, "filament");
        Objects.requireNonNull(led, "led");
        Objects.requireNonNull(resistor, "resistor");
        Objects.requireNonNull(supply, "supply");
        Evidence evidence = Evidence.of("energy: power times time on, at a steady supply of " + supply
                        + "; the generator's and engine's losses are not counted")
                .with(filament.evidence())
                .with(led.evidence())
                .with(resistor.evidence())
                .withCautions(Caution.LAMP_LAW, Caution.LICENSED_PRACTICE);
        return new SwapEnergy(
                filament.power(supply), led.power(supply), resistor.power(supply), brakingHoursPerYear, evidence);
    }

    /**
     * Gives the energy saved in an hour of braking.
     *
     * @return the energy in Wh, negative if more is drawn than before
     */
    public double savedPerBrakingHourWh() {
        return filament.inWatts() - led.inWatts() - resistor.inWatts();
    }

    /**
     * Gives the energy saved in a year.
     *
     * @return the energy in Wh, negative if more is drawn than before
     */
    public double savedPerYearWh() {
        return savedPerBrakingHourWh() * brakingHoursPerYear;
    }

    /**
     * Gives the energy the resistor turns into heat in a year.
     *
     * @return the energy in Wh
     */
    public double wastedPerYearWh() {
        return resistor.inWatts() * brakingHoursPerYear;
    }
}
