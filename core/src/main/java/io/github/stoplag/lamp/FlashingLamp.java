package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * A lamp driven by a switching pattern, from its state at rest until its light repeats itself cycle by cycle.
 *
 * <p>Each switching starts from the state the lamp has reached. The light is periodic once the state at the start of a
 * cycle repeats to 1e-9; from then on the last cycle stands for all. Depth of modulation m = (Imax − Imin)/(Imax +
 * Imin) of that cycle.
 *
 * <p>Symbols: I light over the steady light of the lamp left on; a filament behind a lens behaves a little deeper than
 * bare.
 */
public final class FlashingLamp implements Evident {
    private static final double REPEATS = 1e-9;
    private static final int MOST_CYCLES = 10_000;
    private static final double LATEST_S = 1e9;
    private static final int HALVINGS = 24;
    private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(8);

    private final SwitchedLamp lamp;
    private final SwitchingPattern pattern;
    private final List<Step> steps;
    private final double settledFromS;
    private final int cycles;

    /** A stretch of one phase; a phase that goes on over the end of a cycle began before the stretch. */
    private record Step(double fromS, double toS, boolean on, SwitchedLamp.Phase phase, double phaseFromS) {
        double ratio(double timeS) {
            return phase.relativeIntensity(timeS - phaseFromS);
        }

        double integralS(double loS, double hiS) {
            double lo = Math.max(fromS, loS) - phaseFromS;
            double hi = Math.min(toS, hiS) - phaseFromS;
            double sum = 0;
            if (lo < hi) {
                double[] ends = DoubleStream.concat(Arrays.stream(phase.turnsS()), DoubleStream.of(lo, hi))
                        .filter(t -> t >= lo && t <= hi)
                        .sorted()
                        .toArray();
                for (int i = 1; i < ends.length; i++) {
                    sum += panelsS(ends[i - 1], ends[i]);
                }
            }
            return sum;
        }

        /** Halves the panels towards the start, where the light may change in microseconds. */
        private double panelsS(double lo, double hi) {
            double sum = 0;
            double right = hi;
            for (int i = 0; i <= HALVINGS; i++) {
                double left = i < HALVINGS ? lo + (right - lo) / 2 : lo;
                double half = (right - left) / 2;
                double mid = (right + left) / 2;
                sum += half * RULE.integrate(x -> phase.relativeIntensity(mid + half * x));
                right = left;
            }
            return sum;
        }

        DoubleStream extremes() {
            double first = fromS - phaseFromS;
            double last = toS - phaseFromS;
            DoubleStream turns = Arrays.stream(phase.turnsS()).filter(t -> t >= first && t <= last);
            return DoubleStream.concat(turns, DoubleStream.of(first, last)).map(phase::relativeIntensity);
        }
    }

    private FlashingLamp(SwitchedLamp lamp, SwitchingPattern pattern) {
        this.lamp = lamp;
        this.pattern = pattern;
        steps = new ArrayList<>();
        double state = lamp.restState();
        double startS;
        double before;
        int cycle = 0;
        // a lamp on over the end of a cycle starts its second cycle otherwise than its first
        int least = pattern.isOnOverItsEnd() ? 2 : 1;
        do {
            before = state;
            startS = cycle * pattern.periodS();
            state = runCycle(startS, state);
            cycle++;
        } while (cycle < MOST_CYCLES
                && (cycle < least || Math.abs(state - before) > REPEATS * (Math.abs(before) + Math.abs(state))));
        settledFromS = startS;
        cycles = cycle;
    }

    /**
     * Drives a lamp by a pattern.
     *
     * @param lamp the lamp, for example {@link SwitchedLamp#filament} or an {@link LedLamp}
     * @param pattern the pattern
     * @return its light
     */
    public static FlashingLamp of(SwitchedLamp lamp, SwitchingPattern pattern) {
        return new FlashingLamp(lamp, pattern);
    }

    private double runCycle(double startS, double initial) {
        double state = initial;
        double[] edges = pattern.edgesS();
        double fromS = 0;
        boolean on = false;
        for (int i = 0; i <= edges.length; i++) {
            double toS = i < edges.length ? edges[i] : pattern.periodS();
            if (toS > fromS) {
                Step step = step(startS + fromS, startS + toS, on, state);
                steps.add(step);
                state = step.phase.state(step.toS - step.phaseFromS);
                fromS = toS;
            }
            on = !on;
        }
        return state;
    }

    private Step step(double fromS, double toS, boolean on, double state) {
        if (!steps.isEmpty()) {
            Step last = steps.get(steps.size() - 1);
            if (last.on == on) {
                return new Step(fromS, toS, on, last.phase, last.phaseFromS);
            }
        }
        return new Step(fromS, toS, on, lamp.switched(on, state), fromS);
    }

    /**
     * Gives the light over the steady light of the lamp left on.
     *
     * @param timeS the time since the pattern began in seconds, up to 1e9 s; before 0 the lamp is at rest
     * @return I(t)/I(∞)
     * @throws IllegalArgumentException if the time is NaN or above 1e9 s, where the place in the cycle is lost to
     *     rounding
     */
    public double relativeIntensity(double timeS) {
        double at = OnsetCurve.checkTimeS("time since the pattern began", timeS);
        if (at > LATEST_S) {
            throw new IllegalArgumentException(
                    "time since the pattern began must not be above 1e9 s, got " + Numbers.text(at) + " s");
        }
        double period = pattern.periodS();
        if (at >= settledFromS + period) {
            at = settledFromS + (at - settledFromS) - period * Math.floor((at - settledFromS) / period);
        }
        if (!(at > 0)) {
            return steps.get(0).phase.relativeIntensity(0);
        }
        int lo = 0;
        int hi = steps.size() - 1;
        while (lo < hi) {
            int mid = (lo + hi + 1) / 2;
            if (steps.get(mid).fromS <= at) {
                lo = mid;
            } else {
                hi = mid - 1;
            }
        }
        return steps.get(lo).ratio(at);
    }

    /**
     * Gives the integral of the light between two times of the first two settled cycles, exact at every jump and turn.
     */
    double integralS(double fromS, double toS) {
        double period = pattern.periodS();
        double shiftS = cycles * period - settledFromS;
        double sum = 0;
        for (Step step : steps) {
            if (step.fromS >= settledFromS) {
                sum += step.integralS(fromS, toS)
                        + step.integralS(fromS - shiftS, toS - shiftS)
                        + step.integralS(fromS - 2 * shiftS, toS - 2 * shiftS);
            }
        }
        return sum;
    }

    /** {@return how many cycles it took until the light repeated itself} */
    public int cyclesToRepeat() {
        return cycles;
    }

    /** {@return the greatest light of the first cycle, over the steady light} */
    public double firstPeakRatio() {
        return steps.stream()
                .filter(step -> step.fromS < pattern.periodS() * (1 - REPEATS))
                .flatMapToDouble(Step::extremes)
                .max()
                .orElseThrow();
    }

    /** {@return the greatest light once periodic, over the steady light} */
    public double peakRatio() {
        return settled().max().orElseThrow();
    }

    /** {@return the least light once periodic, over the steady light} */
    public double troughRatio() {
        return settled().min().orElseThrow();
    }

    /** {@return the mean light over one period once periodic, over the steady light} */
    public double meanRatio() {
        return integralS(settledFromS, settledFromS + pattern.periodS()) / pattern.periodS();
    }

    /** {@return (Imax − Imin)/(Imax + Imin) once periodic, in [0, 1]; 0 if the lamp stays dark} */
    public double modulationDepth() {
        double max = peakRatio();
        double min = troughRatio();
        return max + min > 0 ? (max - min) / (max + min) : 0;
    }

    private DoubleStream settled() {
        return steps.stream().filter(step -> step.fromS >= settledFromS).flatMapToDouble(Step::extremes);
    }

    /** {@return the pattern} */
    public SwitchingPattern pattern() {
        return pattern;
    }

    @Override
    public Evidence evidence() {
        return lamp.evidence()
                .with(Evidence.of("switched with " + pattern + "; light repeats from cycle " + cycles + " on"))
                .withCaveatIf(
                        cycles == MOST_CYCLES,
                        "the light had not repeated itself to 1e-9 after " + MOST_CYCLES + " cycles");
    }

    @Override
    public String toString() {
        return lamp.label() + " flashing, " + pattern + ", peak " + Numbers.text(peakRatio(), 3) + ", modulation "
                + Numbers.text(modulationDepth(), 3);
    }
}
