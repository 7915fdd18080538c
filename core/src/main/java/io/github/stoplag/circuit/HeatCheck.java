package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;

/**
 * How hot a load resistor gets and whether its rating allows it.
 *
 * @param whileOn the power while on, at the resistor's lowest value within tolerance
 * @param average the power averaged over the duty
 * @param governing the steady power that would give the same peak temperature; equals whileOn under continuous load
 * @param allowed the power its rating allows at this ambient temperature
 * @param surface the estimated peak temperature of its surface
 * @param element the estimated peak temperature of its element
 * @param withinRating whether the governing power is allowed
 * @param evidence what it rests on, with the warning of the hot surface
 */
public record HeatCheck(
        Power whileOn,
        Power average,
        Power governing,
        Power allowed,
        Temperature surface,
        Temperature element,
        boolean withinRating,
        Evidence evidence)
        implements Evident {

    /**
     * Refuses nulls.
     *
     * @param whileOn the power while on, at the resistor's lowest value within tolerance
     * @param average the power averaged over the duty
     * @param governing the steady power that would give the same peak temperature; equals whileOn under continuous load
     * @param allowed the power its rating allows at this ambient temperature
     * @param surface the estimated peak temperature of its surface
     * @param element the estimated peak temperature of its element
     * @param withinRating whether the governing power is allowed
     * @param evidence what it rests on, with the warning of the hot surface
     * @throws NullPointerException if one that is required is null
     */
    public HeatCheck {
        Objects.requireNonNull(allowed, "allowed");
        Objects.requireNonNull(average, "average");
        Objects.requireNonNull(element, "element");
        Objects.requireNonNull(evidence, "evidence");
        Objects.requireNonNull(governing, "governing");
        Objects.requireNonNull(surface, "surface");
        Objects.requireNonNull(whileOn, "whileOn");
    }
}
