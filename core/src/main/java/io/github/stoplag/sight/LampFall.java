package io.github.stoplag.sight;

import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.source.Evidence;
import java.util.Objects;

/**
 * A stop lamp that goes dark, alone or over a lit tail lamp.
 *
 * <p>Seen is the light that is gone, c(t) = I d(t), against all the light there was, I + It: the criteria for a lamp
 * that comes on are taken for the loss of its light. By contrast alone a quarter of I + It must be gone; a stop lamp
 * less than a third as bright as the tail lamp under it is never seen to go out.
 *
 * <p>Symbols: I intensity of the stop lamp and It of the tail lamp in cd; d share of the stop lamp's light that is gone
 * ({@link io.github.stoplag.lamp.Darkening}). That eyes take a loss as they take a gain of light is assumed: no figure
 * for stop lamps was found.
 *
 * <pre>{@code
 * OnsetCurve dark = Darkening.of(LaboratoryLamps.bulb().switchOff(LaboratoryLamps.conditions()));
 * LampFall fall = new LampFall(dark, LuminousIntensity.candela(60), LuminousIntensity.candela(6));
 * Detector eye = IntegratingEye.of(TimeSpan.seconds(0.1), Threshold.contrast(0.25));
 * Math.round(fall.seen(eye).orElseThrow().inMillis()); // 73
 * }</pre>
 *
 * @param darkening the share of the stop lamp's light that is gone, against the time since switch-off
 * @param stop the intensity I of the stop lamp while lit
 * @param tail the intensity It of what burns on, 0 cd by day
 */
public record LampFall(OnsetCurve darkening, LuminousIntensity stop, LuminousIntensity tail) {

    /**
     * Refuses nulls.
     *
     * @param darkening the share of the stop lamp's light that is gone, against the time since switch-off
     * @param stop the intensity I of the stop lamp while lit
     * @param tail the intensity It of what burns on, 0 cd by day
     * @throws NullPointerException if one that is required is null
     */
    public LampFall {
        Objects.requireNonNull(darkening, "darkening");
        Objects.requireNonNull(stop, "stop");
        Objects.requireNonNull(tail, "tail");
    }

    /**
     * Finds when the lamp is seen to be dark.
     *
     * @param detector the criterion
     * @return the moment since switch-off, or that it never is
     * @throws IllegalArgumentException as {@link Detector#detect}
     */
    public Detection seen(Detector detector) {
        LuminousIntensity before = LuminousIntensity.candela(stop.inCandela() + tail.inCandela());
        Detection detection = detector.detect(new LampSignal(darkening, stop, before));
        Evidence evidence = Evidence.of("going dark: " + stop + " lost of " + before + " before")
                .with(detection.evidence())
                .withCaveat("that a loss of light is seen as a gain of it would be is assumed");
        return detection instanceof Detection.Seen seen
                ? new Detection.Seen(seen.at(), "loss of light, " + seen.criterion(), evidence)
                : new Detection.NeverSeen(
                        "loss of light, " + detection.criterion(),
                        ((Detection.NeverSeen) detection).reason(),
                        evidence);
    }
}
