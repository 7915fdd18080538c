package io.github.stoplag.film;

import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.source.Evidence;
import java.util.OptionalDouble;

/** A filmed curve with everything the film has to say about it. */
record FilmedOnset(OnsetCurve curve, Evidence film) implements OnsetCurve {
    @Override
    public String label() {
        return curve.label();
    }

    @Override
    public double relativeIntensity(double timeS) {
        return curve.relativeIntensity(timeS);
    }

    @Override
    public OptionalDouble timeToLevelS(double levelRatio) {
        return curve.timeToLevelS(levelRatio);
    }

    @Override
    public double settledS() {
        return curve.settledS();
    }

    @Override
    public double[] breakpointsS() {
        return curve.breakpointsS();
    }

    @Override
    public Evidence evidence() {
        return film.with(curve.evidence());
    }
}
