package io.github.stoplag.sight;

import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Takes a lamp as seen once its light reaches a fixed share of its final intensity, however bright that is.
 *
 * <p>r(t) = r(0−) + p (1 − r(0−)), which is r(t) = p for a lamp that is dark before.
 *
 * <p>Symbols: r the onset curve of {@link LampSignal}, of the switched light alone; p the level, a plain ratio in (0,
 * 1). A lit tail lamp changes nothing. A convention of lamp measurement, such as 10 % or 90 %, not a model of
 * the eye: it cannot tell a bright lamp from a dim one. A lamp of 0 cd, or one whose onset says that it never visibly
 * glows ({@link OnsetCurve#staysDark}), is never seen.
 */
public final class ShareOfFinal implements Detector {
    private static final String NOT_AN_EYE =
            "share of the final light: a convention of lamp measurement, not a model of the eye (common practice, no source)";

    private final double levelRatio;

    private ShareOfFinal(double levelRatio) {
        this.levelRatio = levelRatio;
    }

    /**
     * Makes the criterion.
     *
     * @param levelRatio the level p relative to the final intensity, in (0, 1)
     * @return the detector
     * @throws IllegalArgumentException if the level is outside (0, 1)
     */
    public static ShareOfFinal of(double levelRatio) {
        return new ShareOfFinal(OnsetCurve.checkLevel(levelRatio));
    }

    @Override
    public String criterion() {
        return Numbers.text(100 * levelRatio) + " % of final intensity";
    }

    @Override
    public Detection detect(LampSignal signal) {
        Evidence evidence = signal.evidence().with(Evidence.of(NOT_AN_EYE));
        if (signal.finalIntensity().inCandela() == 0) {
            return new Detection.NeverSeen(criterion(), "the final intensity is 0 cd", evidence);
        }
        Optional<String> dark = signal.onset().staysDark();
        if (dark.isPresent()) {
            return new Detection.NeverSeen(criterion(), "the lamp never visibly glows: " + dark.get(), evidence);
        }
        OptionalDouble atS = atS(signal);
        if (atS.isPresent()) {
            return new Detection.Seen(TimeSpan.seconds(atS.getAsDouble()), criterion(), evidence);
        }
        double endRatio = signal.onset().relativeIntensity(Double.POSITIVE_INFINITY);
        return new Detection.NeverSeen(
                criterion(),
                "the light ends at " + Numbers.text(100 * endRatio, 3) + " % of the final intensity",
                evidence);
    }

    private OptionalDouble atS(LampSignal signal) {
        double glowRatio = signal.glowRatio();
        if (!(glowRatio < 1)) {
            return OptionalDouble.empty();
        }
        Course course = new Course(signal);
        double addedRatio = levelRatio * (1 - glowRatio);
        return course.rising()
                ? signal.onset().timeToLevelS(Math.min(glowRatio + addedRatio, Math.nextDown(1.0)))
                : course.passesS(addedRatio * signal.finalIntensity().inCandela());
    }

    @Override
    public String toString() {
        return criterion();
    }
}
