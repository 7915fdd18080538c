package io.github.stoplag.lamp;

import io.github.stoplag.source.Evident;

/**
 * A lamp that can be switched at any moment, also half lit: its light depends on one inner state that the switching
 * leaves where it is, a filament's temperature or a driver's output.
 */
public interface SwitchedLamp extends Evident {
    /**
     * Makes a filament lamp that a pattern can switch.
     *
     * @param lamp the lamp
     * @param conditions supply while switched on, wiring, temperatures and lens; it starts at their initial temperature
     * @return the lamp with its supply
     * @throws IllegalArgumentException if the supply would drive the filament beyond 3600 K
     */
    static SwitchedLamp filament(FilamentLamp lamp, SupplyConditions conditions) {
        return new SwitchedFilament(lamp, conditions);
    }

    /**
     * Names the lamp in reports.
     *
     * @return a short name
     */
    String label();

    /**
     * Gives the state after a long time off.
     *
     * @return the state, in the lamp's own measure
     */
    double restState();

    /**
     * Switches the lamp.
     *
     * @param on whether the circuit closes or opens
     * @param state the state at that moment
     * @return what follows until it is switched again
     */
    Phase switched(boolean on, double state);

    /** The light between two switchings; between its turns it only rises or only falls. */
    interface Phase {
        /**
         * Gives the light over the steady light while switched on.
         *
         * @param sinceS the time since the switching in seconds
         * @return I/I(∞)
         * @throws IllegalArgumentException if the time is NaN
         */
        double relativeIntensity(double sinceS);

        /**
         * Gives the state.
         *
         * @param sinceS the time since the switching in seconds
         * @return the state, in the lamp's own measure
         * @throws IllegalArgumentException if the time is NaN
         */
        double state(double sinceS);

        /**
         * Gives the times at which the light turns or bends.
         *
         * @return the times since the switching in seconds, empty if there are none
         */
        default double[] turnsS() {
            return new double[0];
        }
    }
}
