package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * The light of a lamp whose circuit closes and opens several times: one that flashes before it stays lit, an emergency
 * stop signal, a dimmed lamp pulse by pulse.
 *
 * <p>Each switching starts from the state the lamp has reached, as in {@link FlashingLamp}; here the pattern ends, and
 * every turn of the light is a breakpoint, so that a detector follows the course exactly. The light is relative to that
 * of the lamp left on. What a camera sees of a dimmed lamp tells {@link PulseWidthDimming}; an eye that sums light sees
 * the mean.
 *
 * <pre>{@code
 * SwitchedLamp led = LedLamp.of(TimeSpan.seconds(0), TimeSpan.seconds(0));
 * OnsetCurve emergency = SwitchedOnset.flashing(led, SwitchingPattern.flashing(4, 0.5), TimeSpan.seconds(2));
 * emergency.relativeIntensity(0.1); // 1.0
 * emergency.relativeIntensity(0.2); // 0.0
 * emergency.relativeIntensity(5); // 1.0
 * }</pre>
 */
public final class SwitchedOnset implements OnsetCurve {
    private static final double SETTLED = 1e-3;
    private static final double LATEST_S = 1e6;

    private final SwitchedLamp lamp;
    private final String how;
    private final double[] edgesS;
    private final List<SwitchedLamp.Phase> phases;
    private final double beforeRatio;

    private SwitchedOnset(SwitchedLamp lamp, double[] edgesS, String how) {
        this.lamp = lamp;
        this.how = how;
        this.edgesS = edgesS;
        phases = new ArrayList<>();
        double state = lamp.restState();
        beforeRatio = lamp.switched(false, state).relativeIntensity(0);
        for (int i = 0; i < edgesS.length; i++) {
            SwitchedLamp.Phase phase = lamp.switched(i % 2 == 0, state);
            phases.add(phase);
            state = i + 1 < edgesS.length ? phase.state(edgesS[i + 1] - edgesS[i]) : state;
        }
    }

    /**
     * Switches a lamp at given times.
     *
     * @param lamp the lamp, at rest before
     * @param edges the times at which its circuit closes, opens, closes ..., rising, the first not negative; the last
     *     lasts
     * @return its light
     * @throws IllegalArgumentException if there is no time, or they do not rise within [0, 1000] s
     */
    public static SwitchedOnset of(SwitchedLamp lamp, TimeSpan... edges) {
        Objects.requireNonNull(edges, "edges");
        if (edges.length == 0) {
            throw new IllegalArgumentException("a switched lamp must be switched at least once, got no time");
        }
        double[] edgesS = new double[edges.length];
        for (int i = 0; i < edges.length; i++) {
            edgesS[i] = Check.inRange("switching " + i, edges[i].inSeconds(), 0, 1000, "s");
            if (i > 0 && !(edgesS[i] > edgesS[i - 1])) {
                throw new IllegalArgumentException("switching " + i + " must be after switching " + (i - 1) + " at "
                        + edges[i - 1] + ", got " + edges[i]);
            }
        }
        return new SwitchedOnset(
                lamp,
                edgesS,
                "switched at "
                        + String.join(
                                ", ",
                                Arrays.stream(edges).map(TimeSpan::toString).toList()));
    }

    /**
     * Flashes a lamp for a time, after which it stays lit.
     *
     * @param lamp the lamp, at rest before
     * @param pattern how it flashes
     * @param until when it stays lit, (0, 1000] s; a pattern may hold 10,000 switchings until then
     * @return its light
     * @throws IllegalArgumentException if the time is out of range or holds too many switchings
     */
    public static SwitchedOnset flashing(SwitchedLamp lamp, SwitchingPattern pattern, TimeSpan until) {
        Objects.requireNonNull(until, "until");
        double untilS = Check.above("time of flashing", until.inSeconds(), 0, 1000, "s");
        double[] knotsS = DoubleStream.concat(DoubleStream.of(0), Arrays.stream(pattern.edgesUntilS(untilS)))
                .toArray();
        List<Double> edges = new ArrayList<>();
        for (int i = 0; i < knotsS.length; i++) {
            boolean on = i + 1 == knotsS.length || pattern.isOn((knotsS[i] + knotsS[i + 1]) / 2);
            if (on != (edges.size() % 2 == 1)) {
                edges.add(knotsS[i]);
            }
        }
        return new SwitchedOnset(
                lamp,
                edges.stream().mapToDouble(s -> s).toArray(),
                "flashing, " + pattern + ", until " + until + ", then lit");
    }

    @Override
    public String label() {
        return lamp.label() + " " + how;
    }

    @Override
    public double relativeIntensity(double timeS) {
        OnsetCurve.checkTimeS("time since switch-on", timeS);
        int found = Arrays.binarySearch(edgesS, timeS);
        int phase = found >= 0 ? found : -found - 2;
        return phase < 0 ? beforeRatio : phases.get(phase).relativeIntensity(timeS - edgesS[phase]);
    }

    @Override
    public double settledS() {
        // the light may go up and down before the last switching is near its end, but hardly after
        SwitchedLamp.Phase last = phases.get(phases.size() - 1);
        double endRatio = last.relativeIntensity(Double.POSITIVE_INFINITY);
        double loS = Arrays.stream(last.turnsS()).max().orElse(0);
        double hiS = Math.max(2 * loS, 1e-3);
        while (hiS < LATEST_S && Math.abs(last.relativeIntensity(hiS) - endRatio) > SETTLED) {
            loS = hiS;
            hiS *= 2;
        }
        for (int i = 0; i < 60; i++) {
            double midS = (loS + hiS) / 2;
            if (Math.abs(last.relativeIntensity(midS) - endRatio) > SETTLED) {
                loS = midS;
            } else {
                hiS = midS;
            }
        }
        return edgesS[edgesS.length - 1] + hiS;
    }

    @Override
    public double[] breakpointsS() {
        return IntStream.range(0, edgesS.length)
                .boxed()
                .flatMapToDouble(i -> {
                    double endS = i + 1 < edgesS.length ? edgesS[i + 1] : Double.POSITIVE_INFINITY;
                    return DoubleStream.concat(
                            DoubleStream.of(edgesS[i]),
                            Arrays.stream(phases.get(i).turnsS())
                                    .map(s -> edgesS[i] + s)
                                    .filter(s -> s < endS));
                })
                .sorted()
                .distinct()
                .toArray();
    }

    @Override
    public Evidence evidence() {
        return lamp.evidence()
                .with(Evidence.of(how))
                .withCaveatIf(
                        edgesS.length % 2 == 0,
                        "the lamp ends dark " + Numbers.text(edgesS[edgesS.length - 1]) + " s after switch-on");
    }

    @Override
    public String toString() {
        return label();
    }
}
