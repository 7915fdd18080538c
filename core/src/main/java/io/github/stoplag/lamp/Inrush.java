package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Objects;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * The current surge of a filament lamp at switch-on, which fuse, switch and driver have to bear.
 *
 * <p>I(t) = U/(R(T(t)) + Rs); the filament's energy E(t) = ∫ I² R dt, the source's U ∫ I dt is larger by what the
 * wiring takes. All from the heat balance of {@link FilamentOnset}, to about 1e-8 relative.
 */
public final class Inrush {
    private final FilamentOnset onset;
    private final FilamentTransient heating;

    Inrush(FilamentOnset onset, FilamentTransient heating) {
        this.onset = onset;
        this.heating = heating;
    }

    /** {@return the current at the instant of switch-on} */
    public Current current() {
        return onset.inrushCurrent();
    }

    /** {@return that current over the steady one} */
    public double ratio() {
        return onset.inrushRatio();
    }

    /**
     * Gives the time until the current has fallen to a multiple of the steady current.
     *
     * @param multiple the multiple k of the steady current, above 1
     * @return the time since switch-on, 0 if the current starts below
     * @throws IllegalArgumentException if the multiple is not in (1, 1000]
     */
    public TimeSpan timeToMultiple(double multiple) {
        Check.above("multiple of the steady current", multiple, 1, 1000, "");
        if (multiple >= ratio()) {
            return TimeSpan.seconds(0);
        }
        double wantedA = multiple * onset.steadyCurrent().inAmperes();
        double kelvin = new BrentSolver(1e-14, 1e-11)
                .solve(100, k -> heating.currentA(k) - wantedA, heating.initialK(), heating.steadyK());
        return TimeSpan.seconds(heating.timeS(kelvin));
    }

    /**
     * Gives the electrical energy the filament has taken.
     *
     * @param until the time since switch-on, not negative
     * @return E in joules
     * @throws IllegalArgumentException if the time is negative
     */
    public double energyJ(TimeSpan until) {
        Objects.requireNonNull(until, "until");
        return heating.energyJ(Ranges.ELAPSED.check("time after switch-on", until.inSeconds()));
    }

    /**
     * Gives the energy the filament has taken beyond what it would have taken at its steady power: the cost of warming
     * up.
     *
     * @param until the time since switch-on, not negative
     * @return E − P(∞) t in joules
     * @throws IllegalArgumentException if the time is negative
     */
    public double excessEnergyJ(TimeSpan until) {
        Objects.requireNonNull(until, "until");
        return energyJ(until) - onset.steadyPower().inWatts() * until.inSeconds();
    }
}
