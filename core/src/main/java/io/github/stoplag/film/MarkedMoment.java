package io.github.stoplag.film;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.sweep.CounterRandom;
import io.github.stoplag.sweep.Interval;
import io.github.stoplag.sweep.Measurand.Contribution;
import io.github.stoplag.sweep.Measurand.Estimate;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * A moment marked by eye in a film, by one judge or several: first light, where a driver would notice, full brightness,
 * dark again.
 *
 * <pre>
 *   one mark      uniform between the exposures' ends of the last frame without and of the first with it:
 *                 value = middle, u = a/√3, a half the time between
 *   judges        value = mean of the marks, u² = a²/3 + u_j²
 *                 n ≥ 4: u_j = s/√n · √((n − 1)/(n − 3)), Student's t with n − 1 degrees of freedom
 *                 n = 2, 3: anywhere between the earliest and the latest mark
 *   two moments   the difference of both, judge by judge where the same judges set both; jitter √2 of a frame's
 * </pre>
 *
 * <p>Symbols: a half-width in s; s the standard deviation of the judges' marks; n how many. The frame interval is
 * common to all judges: more of them do not make it finer. An unknown exposure moves single moments and leaves
 * differences alone. Coverage intervals come from {@value #DRAWS} draws.
 *
 * <p>Sources: JCGM 100:2008, 4.3.7 (a/√3); JCGM 101:2008, 6.4.9 (t-distribution of few readings) (both from memory).
 *
 * <p>Immutable.
 */
public final class MarkedMoment implements Evident {
    private static final int DRAWS = 5_000;
    private static final double COVERAGE = 0.95;
    private static final int ENOUGH_JUDGES = 4;
    private static final CounterRandom RANDOM = CounterRandom.of(479_001_599);

    private final String name;
    private final Camera camera;
    private final IntToDoubleFunction beginS;
    private final List<FrameMark> marks;

    private MarkedMoment(String name, Camera camera, IntToDoubleFunction beginS, List<FrameMark> marks) {
        this.name = name;
        this.camera = camera;
        this.beginS = beginS;
        this.marks = marks;
    }

    /**
     * Takes marks as one moment in a film of steady frame rate.
     *
     * @param name the lamp and the moment, for example {@code filament noticed}
     * @param camera the camera that took the film
     * @param marks one mark for each judge or viewing, 1 to 1000
     * @return the moment
     * @throws IllegalArgumentException if there is no mark, or a judge marks twice under one name
     */
    public static MarkedMoment of(String name, Camera camera, List<FrameMark> marks) {
        Objects.requireNonNull(marks, "marks");
        Objects.requireNonNull(camera, "camera");
        Objects.requireNonNull(name, "name");
        Check.inRange("marks of " + name, marks.size(), 1, 1000, "");
        long judges = marks.stream().map(FrameMark::judge).distinct().count();
        if (judges < marks.size()) {
            throw new IllegalArgumentException(
                    "every mark of " + name + " must have a judge's name of its own, such as \"first viewing\", got "
                            + judges + " names for " + marks.size() + " marks");
        }
        return new MarkedMoment(name, camera, number -> camera.frameTimeS(number, Double.NaN), List.copyOf(marks));
    }

    /**
     * Takes marks as one moment in a film whose frames carry time stamps, or of which some are missing.
     *
     * @param name the lamp and the moment, for example {@code filament noticed}
     * @param camera the camera that took the film
     * @param series any lamp's series of the film: it knows the frames
     * @param marks one mark for each judge or viewing, 1 to 1000
     * @return the moment
     * @throws IllegalArgumentException if there is no mark, a judge marks twice under one name, or the film does not
     *     have a frame
     */
    public static MarkedMoment of(String name, Camera camera, GreySeries series, List<FrameMark> marks) {
        Objects.requireNonNull(camera, "camera");
        Objects.requireNonNull(marks, "marks");
        Objects.requireNonNull(name, "name");
        MarkedMoment steady = of(name, camera, marks);
        for (FrameMark mark : marks) {
            for (int number : new int[] {mark.lastWithout(), mark.firstWith()}) {
                if (series.indexOf(number) < 0) {
                    throw new IllegalArgumentException(name + ": the film has no frame " + number);
                }
            }
        }
        return new MarkedMoment(
                name, camera, number -> camera.frameTimeS(number, series.stampS(series.indexOf(number))), steady.marks);
    }

    /** {@return the lamp and the moment} */
    public String name() {
        return name;
    }

    /** {@return the time since the beginning of frame 0} */
    public FilmedMoment time() {
        return after(name, 0, 0, evidence());
    }

    /**
     * Gives how long after a moment read off the light of the same film this one is. What both owe to an unknown
     * exposure counts twice, which makes the interval too wide rather than too narrow.
     *
     * @param zero a moment since the beginning of frame 0, such as {@link FilmedChange#firstLight} of the reference
     *     lamp; its time is taken as normal
     * @return the difference
     */
    public FilmedMoment since(FilmedMoment zero) {
        Objects.requireNonNull(zero, "zero");
        return after(
                name + " after " + zero.name(),
                zero.valueS(),
                zero.standardUncertaintyS(),
                evidence().with(zero.evidence()));
    }

    private FilmedMoment after(String what, double zeroS, double zeroU, Evidence rests) {
        double intervalS = 1 / camera.takenHz();
        double knownS = camera.exposure().map(TimeSpan::inSeconds).orElse(intervalS / 2);
        double endS = camera.exposurePlace() * (intervalS - knownS) + knownS;
        // an exposure anywhere up to the interval moves its end by this share of it
        double endHalf = camera.exposure().isPresent() ? 0 : (1 - camera.exposurePlace()) * intervalS / 2;
        double[] middle =
                marks.stream().mapToDouble(mark -> middleS(mark) + endS - zeroS).toArray();
        return moment(
                what,
                middle,
                new double[] {halfS(marks), endHalf},
                camera.jitter().inSeconds(),
                zeroU,
                rests);
    }

    /**
     * Gives how long after another moment of the same film this one is.
     *
     * @param zero the other moment, such as the first light of the reference lamp
     * @return the difference
     * @throws IllegalArgumentException if the two are not of one camera
     */
    public FilmedMoment after(MarkedMoment zero) {
        Objects.requireNonNull(zero, "zero");
        if (zero.camera != camera) {
            throw new IllegalArgumentException(
                    name + " and " + zero.name + " must be marked in a film of one camera, got two");
        }
        List<FrameMark> others = marks.stream()
                .flatMap(mark -> zero.marks.stream().filter(z -> z.judge().equals(mark.judge())))
                .toList();
        double[] difference = new double[marks.size()];
        boolean same = others.size() == marks.size() && zero.marks.size() == marks.size();
        double mean = zero.marks.stream().mapToDouble(zero::middleS).average().orElseThrow();
        for (int i = 0; i < difference.length; i++) {
            difference[i] = middleS(marks.get(i)) - (same ? middleS(others.get(i)) : mean);
        }
        double[] zeroSpread = same
                ? new double[1]
                : zero.marks.stream().mapToDouble(zero::middleS).toArray();
        double[] half = {halfS(marks), zero.halfS(zero.marks), judges(zeroSpread) * Math.sqrt(3)};
        return moment(
                name + " after " + zero.name,
                difference,
                half,
                camera.jitter().inSeconds() * Math.sqrt(2),
                0,
                evidence().with(zero.evidence()));
    }

    private double middleS(FrameMark mark) {
        return (beginS.applyAsDouble(mark.lastWithout()) + beginS.applyAsDouble(mark.firstWith())) / 2;
    }

    private double halfS(List<FrameMark> of) {
        return of.stream()
                        .mapToDouble(mark ->
                                beginS.applyAsDouble(mark.firstWith()) - beginS.applyAsDouble(mark.lastWithout()))
                        .average()
                        .orElseThrow()
                / 2;
    }

    /** The standard uncertainty of the judges' mean. */
    private static double judges(double[] marks) {
        int n = marks.length;
        double deviation = TimeZero.deviation(marks);
        if (n >= ENOUGH_JUDGES) {
            return deviation / Math.sqrt(n) * Math.sqrt((n - 1.0) / (n - 3));
        }
        return range(marks) / 2 / Math.sqrt(3);
    }

    private static double range(double[] marks) {
        return Arrays.stream(marks).max().orElseThrow()
                - Arrays.stream(marks).min().orElseThrow();
    }

    private static FilmedMoment moment(
            String name, double[] middleS, double[] halfS, double jitterS, double zeroU, Evidence evidence) {
        int n = middleS.length;
        double value = Arrays.stream(middleS).average().orElseThrow();
        double judgeU = judges(middleS);
        double uniform = Arrays.stream(halfS).map(a -> a * a / 3).sum();
        double u = Math.sqrt(uniform + judgeU * judgeU + jitterS * jitterS + zeroU * zeroU);
        TDistribution t = n >= ENOUGH_JUDGES ? new TDistribution(null, n - 1) : null;
        double scale = t == null ? judgeU * Math.sqrt(3) : judgeU / Math.sqrt((n - 1.0) / (n - 3));
        double[] draws = new double[DRAWS];
        for (int i = 0; i < DRAWS; i++) {
            double time = value;
            for (int k = 0; k < halfS.length; k++) {
                time += halfS[k] * (2 * RANDOM.uniform(k, i) - 1);
            }
            double p = RANDOM.uniform(halfS.length, i);
            time += judgeU == 0 ? 0 : scale * (t == null ? 2 * p - 1 : t.inverseCumulativeProbability(p));
            double radius = Math.sqrt(-2 * Math.log(RANDOM.uniform(halfS.length + 1, i)));
            draws[i] = time
                    + Math.hypot(jitterS, zeroU) * radius * Math.cos(2 * Math.PI * RANDOM.uniform(halfS.length + 2, i));
        }
        Arrays.sort(draws);
        Interval coverage = new Interval(
                FilmedChange.quantile(draws, (1 - COVERAGE) / 2),
                FilmedChange.quantile(draws, (1 + COVERAGE) / 2),
                COVERAGE);
        double frameU = Math.sqrt(uniform);
        return new FilmedMoment(
                name,
                new Estimate(value, u, coverage),
                1,
                List.of(
                        new Contribution("frame_interval_and_exposure_s", frameU, frameU),
                        new Contribution("judges_s", judgeU, judgeU),
                        new Contribution("jitter_s", jitterS, jitterS),
                        new Contribution("time_zero_s", zeroU, -zeroU)),
                evidence);
    }

    @Override
    public Evidence evidence() {
        return camera.evidence()
                .with(Evidence.of(
                        name + ": marked by eye in " + marks.size() + (marks.size() == 1 ? " viewing" : " viewings")))
                .withCaveatIf(
                        marks.size() == 1,
                        name + " was marked once: how far judges differ is not known and not in the interval")
                .withCaveatIf(
                        marks.size() > 1 && marks.size() < ENOUGH_JUDGES,
                        name + " was marked by fewer than " + ENOUGH_JUDGES
                                + " judges: their mean is taken as anywhere between the earliest and the latest mark");
    }

    @Override
    public String toString() {
        return name;
    }
}
