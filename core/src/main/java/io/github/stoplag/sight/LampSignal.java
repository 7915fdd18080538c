package io.github.stoplag.sight;

import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.LuminousIntensity;

/**
 * What the driver behind can see: a lamp's onset and how bright it ends up.
 *
 * @param onset the rise of the light
 * @param finalIntensity the luminous intensity towards the observer once the lamp is fully lit
 */
public record LampSignal(OnsetCurve onset, LuminousIntensity finalIntensity) {}
