package io.github.stoplag.sight;

import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Takes a lamp as seen the moment its light passes a threshold, with no time spent on gathering light.
 *
 * <p>I∞ (r(t) − r(0−)) = Ith, Ith by {@link Threshold}: an illuminance threshold through
 * Allard's law, a contrast against the light before, or both.
 *
 * <p>Symbols: I∞ in cd and r of {@link LampSignal}. It gives the earliest possible moment: light shorter than about 0.1
 * s is summed by the eye (Bloch's law, seen), so a real observer is later. A lamp that never adds more than the
 * threshold is never seen; one that flashes is seen when it first does.
 */
public final class InstantEye implements Detector {
    private final Threshold threshold;

    private InstantEye(Threshold threshold) {
        this.threshold = threshold;
    }

    /**
     * Makes the criterion.
     *
     * @param threshold the light that must be passed
     * @return the detector
     */
    public static InstantEye of(Threshold threshold) {
        Objects.requireNonNull(threshold, "threshold");
        return new InstantEye(threshold);
    }

    @Override
    public String criterion() {
        return "threshold without summation over time, " + threshold;
    }

    @Override
    public Detection detect(LampSignal signal) {
        double requiredCd = threshold.requiredCd(signal);
        Evidence evidence = threshold.evidence(signal);
        Course course = new Course(signal);
        OptionalDouble atS = course.passesS(requiredCd);
        return atS.isPresent()
                ? new Detection.Seen(TimeSpan.seconds(atS.getAsDouble()), criterion(), evidence)
                : threshold.tooDim(criterion(), signal, course, evidence);
    }

    @Override
    public String toString() {
        return criterion();
    }
}
