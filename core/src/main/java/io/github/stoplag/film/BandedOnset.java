package io.github.stoplag.film;

import io.github.stoplag.film.FilmedChange.BandPoint;
import io.github.stoplag.lamp.MeasuredLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * A filmed onset read back from its curve and band, as {@link FilmedChange#band} gives them: the curve of median times,
 * and the two that pass every level at the early and at the late end of its interval.
 *
 * <p>What rests on the whole curve, such as a moment of detection, lies between what it is for {@link #early} and for
 * {@link #late}. That interval is too wide rather than too narrow: all levels are taken to err together.
 *
 * <p>Below the lowest level the light rises from 0 over as long as from the lowest level to the next, above the highest
 * it reaches 1 after twice as long as from the last level but one.
 *
 * <p>Immutable.
 */
public final class BandedOnset implements OnsetCurve {
    private final String label;
    private final List<BandPoint> band;
    private final Evidence evidence;
    private final MeasuredLamp median;

    private BandedOnset(String label, List<BandPoint> band, Evidence evidence) {
        this.label = label;
        this.band = band;
        this.evidence = evidence;
        this.median = curve(BandPoint::timeS);
    }

    /**
     * Makes an onset of a curve with its band.
     *
     * @param label the lamp's name
     * @param band levels strictly increasing in (0, 1), at least 3, times of each in [-100, 100] s and none of the
     *     three falling from a level to the next
     * @param evidence what it rests on, with every reservation
     * @return the onset
     * @throws IllegalArgumentException if the levels or times are out of range or order
     */
    public static BandedOnset of(String label, List<BandPoint> band, Evidence evidence) {
        Objects.requireNonNull(band, "band");
        Objects.requireNonNull(evidence, "evidence");
        Objects.requireNonNull(label, "label");
        Check.inRange("levels of a banded onset", band.size(), 3, 10_000, "");
        for (int i = 0; i < band.size(); i++) {
            BandPoint point = band.get(i);
            BandPoint before = band.get(Math.max(0, i - 1));
            Check.above("level of a banded onset", point.levelRatio(), i == 0 ? 0 : before.levelRatio(), 0.9999, "");
            Check.inRange("time of a level", point.timeS(), i == 0 ? -100 : before.timeS(), 100, "s");
            Check.inRange("early end of a level", point.loS(), i == 0 ? -100 : before.loS(), point.timeS(), "s");
            Check.inRange("late end of a level", point.hiS(), i == 0 ? point.timeS() : before.hiS(), 100, "s");
            Check.inRange("late end of a level", point.hiS(), point.timeS(), 100, "s");
        }
        return new BandedOnset(label, List.copyOf(band), evidence);
    }

    /**
     * Moves all times, as from the first light of a reference to the closing of its circuit.
     *
     * @param delay what is added to every time, [-10, 10] s
     * @return the same onset later
     * @throws IllegalArgumentException if the delay is out of range
     */
    public BandedOnset delayed(TimeSpan delay) {
        double byS = Check.inRange("delay of an onset", delay.inSeconds(), -10, 10, "s");
        return new BandedOnset(
                label,
                band.stream()
                        .map(p -> new BandPoint(p.levelRatio(), p.timeS() + byS, p.loS() + byS, p.hiS() + byS))
                        .toList(),
                evidence);
    }

    /** {@return the time in seconds at which the light of the median curve begins} */
    public double beginS() {
        return band.get(0).timeS() - (band.get(1).timeS() - band.get(0).timeS());
    }

    /** {@return the onset that passes every level at the early end of its interval; none before time zero} */
    public OnsetCurve early() {
        return new FilmedOnset(curve(point -> Math.max(0, point.loS())), evidence);
    }

    /** {@return the onset that passes every level at the late end of its interval} */
    public OnsetCurve late() {
        return new FilmedOnset(curve(BandPoint::hiS), evidence);
    }

    private MeasuredLamp curve(ToDoubleFunction<BandPoint> of) {
        int n = band.size();
        double[] timeS = new double[n + 2];
        double[] level = new double[n + 2];
        timeS[0] = 2 * of.applyAsDouble(band.get(0)) - of.applyAsDouble(band.get(1));
        for (int k = 0; k < n; k++) {
            timeS[k + 1] = Math.max(of.applyAsDouble(band.get(k)), Math.nextUp(timeS[k]));
            level[k + 1] = band.get(k).levelRatio();
        }
        timeS[n + 1] = Math.max(3 * timeS[n] - 2 * timeS[n - 1], Math.nextUp(timeS[n]));
        level[n + 1] = 1;
        return MeasuredLamp.of(label, timeS, level);
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public double relativeIntensity(double timeS) {
        return median.relativeIntensity(timeS);
    }

    @Override
    public OptionalDouble timeToLevelS(double levelRatio) {
        return median.timeToLevelS(levelRatio);
    }

    @Override
    public double settledS() {
        return median.settledS();
    }

    @Override
    public double[] breakpointsS() {
        return median.breakpointsS();
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public String toString() {
        return label;
    }
}
