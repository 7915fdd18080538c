package io.github.stoplag.sight;

import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Numbers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/**
 * What a signal adds to the light that was there before switch-on, cut into stretches in which it only rises or falls.
 *
 * <p>c(t) = I∞ (r(t) − r(0−)), in cd; negative where a course falls below the light before. The stretches are those
 * between the curve's breakpoints; samples in each tell whether the curve keeps to that.
 */
final class Course {
    /** A fall or rise smaller than this share of the greatest light is rounding. */
    private static final double ROUNDING = 1e-9;

    private static final int SAMPLES = 64;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
    private static final double LATEST_S = 1e9;

    private final OnsetCurve onset;
    private final double finalCd;
    private final double beforeRatio;
    private final double[] knotsS;
    private final boolean rising;
    private final double peakCd;

    /**
     * A time in which the change only rises or only falls and stays on one side of a level; the last has no end.
     *
     * @param above whether it stays at or above the level
     */
    record Span(double fromS, double toS, boolean above) {
        boolean endless() {
            return toS == Double.POSITIVE_INFINITY;
        }
    }

    Course(LampSignal signal) {
        onset = signal.onset();
        finalCd = signal.finalIntensity().inCandela();
        beforeRatio = checked(-Double.MIN_VALUE);
        knotsS = DoubleStream.concat(Arrays.stream(onset.breakpointsS()), DoubleStream.of(0, onset.settledS()))
                .filter(s -> s >= 0)
                .sorted()
                .distinct()
                .toArray();
        double peakRatio = beforeRatio;
        for (int i = 0; i < knotsS.length; i++) {
            peakRatio = Math.max(peakRatio, Math.max(checked(knotsS[i]), endRatio(i)));
        }
        peakCd = finalCd * (peakRatio - beforeRatio);
        boolean up = true;
        double last = beforeRatio;
        for (int i = 0; i < knotsS.length; i++) {
            requireOneWay(i, ROUNDING * peakRatio);
            double start = checked(knotsS[i]);
            up &= start >= last - ROUNDING * peakRatio && endRatio(i) >= start - ROUNDING * peakRatio;
            last = endRatio(i);
        }
        rising = up;
    }

    /** Gives r just before the next knot, or in the end. */
    private double endRatio(int stretch) {
        return checked(stretch + 1 < knotsS.length ? Math.nextDown(knotsS[stretch + 1]) : Double.POSITIVE_INFINITY);
    }

    private double checked(double timeS) {
        double ratio = onset.relativeIntensity(timeS);
        if (!(ratio >= 0 && ratio < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("relative intensity of " + onset.label() + " must be in [0, inf), got "
                    + Numbers.text(ratio) + " at " + Numbers.text(timeS) + " s");
        }
        return ratio;
    }

    /** Samples a stretch unevenly, so that no regular flashing slips through. */
    private void requireOneWay(int stretch, double rounding) {
        double fromS = knotsS[stretch];
        boolean last = stretch + 1 == knotsS.length;
        double lengthS = last ? Math.max(1, onset.settledS()) : Math.nextDown(knotsS[stretch + 1]) - fromS;
        double way = Math.signum(endRatio(stretch) - checked(fromS));
        int samples = Math.max(2, SAMPLES / knotsS.length);
        double before = checked(fromS);
        for (int i = 1; i <= samples; i++) {
            double share = (i - GOLDEN * ((i * GOLDEN) % 1)) / samples;
            double timeS = fromS + lengthS * share;
            double ratio = checked(timeS);
            if (!((ratio - before) * way >= -rounding) || (way == 0 && Math.abs(ratio - before) > rounding)) {
                throw new IllegalArgumentException("light of " + onset.label()
                        + " must only rise or only fall between its breakpoints, got a turn before "
                        + Numbers.text(timeS) + " s, at " + Numbers.text(ratio) + " of the final intensity");
            }
            before = ratio;
        }
    }

    double changeCd(double timeS) {
        return finalCd * (onset.relativeIntensity(timeS) - beforeRatio);
    }

    /** Gives the greatest change, of a rising course the final one. */
    double peakCd() {
        return peakCd;
    }

    boolean rising() {
        return rising;
    }

    void requireRising(String criterion) {
        if (!rising) {
            throw new IllegalArgumentException("light of " + onset.label() + " must never fall for " + criterion
                    + " (an integrating eye and Blondel-Rey-Douglas take any course), got one that falls");
        }
    }

    /** Gives when the change first passes a level, or nothing if it never exceeds it. */
    OptionalDouble passesS(double levelCd) {
        if (!(peakCd > levelCd)) {
            return OptionalDouble.empty();
        }
        return spans(levelCd).stream()
                .filter(Span::above)
                .mapToDouble(Span::fromS)
                .findFirst();
    }

    /** Cuts all the time from switch-on at the knots and where the change passes a level. */
    List<Span> spans(double levelCd) {
        List<Span> spans = new ArrayList<>();
        for (int i = 0; i < knotsS.length; i++) {
            double fromS = knotsS[i];
            double toS = i + 1 < knotsS.length ? knotsS[i + 1] : Double.POSITIVE_INFINITY;
            boolean startsAbove = changeCd(fromS) >= levelCd;
            boolean endsAbove = finalCd * (endRatio(i) - beforeRatio) >= levelCd;
            double crossS = startsAbove == endsAbove ? toS : crossS(fromS, toS, levelCd, endsAbove);
            if (crossS > fromS) {
                spans.add(new Span(fromS, crossS, startsAbove));
            }
            if (crossS < toS) {
                spans.add(new Span(crossS, toS, endsAbove));
            }
        }
        return spans;
    }

    /** Gives the times from switch-on to another at which an integral over the change must be cut, increasing. */
    double[] cutsS(double toS) {
        return DoubleStream.concat(Arrays.stream(knotsS).filter(s -> s < toS), DoubleStream.of(toS))
                .toArray();
    }

    private double crossS(double fromS, double toS, double levelCd, boolean upwards) {
        if (rising) {
            // a curve that is a step within rounding of the level has no time left to lose
            double level = Math.min(beforeRatio + levelCd / finalCd, Math.nextDown(1.0));
            OptionalDouble atS = level > 0 ? onset.timeToLevelS(level) : OptionalDouble.empty();
            if (atS.isPresent() && atS.getAsDouble() >= fromS) {
                return Math.min(atS.getAsDouble(), toS);
            }
        }
        double loS = fromS;
        double hiS = Math.min(toS, fromS + 1);
        while (hiS < toS && changeCd(hiS) >= levelCd != upwards) {
            loS = hiS;
            hiS = hiS > LATEST_S ? toS : Math.min(toS, fromS + 2 * (hiS - fromS));
        }
        for (double midS = (loS + hiS) / 2; midS > loS && midS < hiS; midS = (loS + hiS) / 2) {
            if (changeCd(midS) >= levelCd == upwards) {
                hiS = midS;
            } else {
                loS = midS;
            }
        }
        return hiS;
    }
}
