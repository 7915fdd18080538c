package io.github.stoplag.film;

import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.source.Evidence;
import java.util.Arrays;
import java.util.OptionalDouble;

/** One possible course of a lamp that comes on, as an onset from its own start. */
final class DrawnOnset implements OnsetCurve {
    private static final double SETTLED = 0.999;

    private final String label;
    private final RiseShape shape;
    private final double riseS;

    DrawnOnset(String label, CourseDraws.Draw draw) {
        this.label = label;
        shape = draw.shape();
        riseS = draw.riseS();
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public double relativeIntensity(double timeS) {
        OnsetCurve.checkTimeS("time since switch-on", timeS);
        return timeS == Double.POSITIVE_INFINITY ? 1 : shape.level(shape.start() + timeS / riseS);
    }

    @Override
    public OptionalDouble timeToLevelS(double levelRatio) {
        return OptionalDouble.of(riseS * (shape.timeTo(OnsetCurve.checkLevel(levelRatio)) - shape.start()));
    }

    @Override
    public double settledS() {
        return riseS * (shape.timeTo(SETTLED) - shape.start());
    }

    @Override
    public double[] breakpointsS() {
        return Arrays.stream(shape.bends())
                .map(t -> riseS * (t - shape.start()))
                .toArray();
    }

    @Override
    public Evidence evidence() {
        return Evidence.none();
    }
}
