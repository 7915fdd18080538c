package io.github.stoplag.examples.lamps;

import io.github.stoplag.lamp.OnsetCurve;
import java.util.Optional;

/**
 * What a film tells of a lamp.
 *
 * @param onset how it comes on
 * @param darkening how its light goes after switch-off, as the share that is gone, if the film shows it
 */
public record FilmedCurves(OnsetCurve onset, Optional<OnsetCurve> darkening) {}
