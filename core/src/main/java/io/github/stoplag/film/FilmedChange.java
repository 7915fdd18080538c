package io.github.stoplag.film;

import io.github.stoplag.lamp.MeasuredLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.Detector;
import io.github.stoplag.sight.LampSignal;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.sweep.Interval;
import io.github.stoplag.sweep.Measurand.Contribution;
import io.github.stoplag.sweep.Measurand.Estimate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A lamp coming on or going out in a film: {@value CourseDraws#KEPT} courses of its light that the film leaves
 * possible, each as likely as another, and what follows from them.
 *
 * <p>Levels are shares of the light that is switched, I∞ of {@link LampSignal}: stray light and a lit tail lamp are not
 * part of it. A lamp going out passes level 0.9 before 0.1.
 *
 * <p>Time zero is the beginning of the film's frame 0 until {@link #since} or {@link #sinceTime} sets another.
 *
 * <p>Immutable.
 */
public final class FilmedChange implements Evident {
    /** The level taken as first light, and from the other end as the light's first loss. */
    public static final double FIRST_LIGHT = 0.01;

    private static final double COVERAGE = 0.95;
    private static final int EVERY = 3;
    private static final double[] BAND_LEVELS = {
        0.001, 0.003, 0.01, 0.02, 0.03, 0.05, 0.07, 0.1, 0.13, 0.16, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6,
        0.65, 0.7, 0.75, 0.8, 0.84, 0.87, 0.9, 0.93, 0.95, 0.97, 0.98, 0.99, 0.995, 0.998
    };

    /**
     * One level of the curve with its band.
     *
     * @param levelRatio the share of the switched light
     * @param timeS the median time in seconds
     * @param loS the lower end of the 95 % interval of the time in seconds
     * @param hiS the upper end
     */
    public record BandPoint(double levelRatio, double timeS, double loS, double hiS) {}

    private final Switching switching;
    private final Camera camera;
    private final CourseDraws draws;
    private final TimeZero zero;
    private final Evidence evidence;

    private FilmedChange(Switching switching, Camera camera, CourseDraws draws, TimeZero zero, Evidence evidence) {
        this.switching = switching;
        this.camera = camera;
        this.draws = draws;
        this.zero = zero;
        this.evidence = evidence;
    }

    static FilmedChange of(Switching switching, Camera camera) {
        CourseDraws draws = CourseDraws.of(switching, camera);
        return new FilmedChange(
                switching,
                camera,
                draws,
                TimeZero.film(switching, camera, draws),
                FilmCaveats.of(switching, camera, draws));
    }

    /** {@return the lamp's name} */
    public String label() {
        return switching.series().label();
    }

    /** {@return whether it comes on, not goes out} */
    public boolean rising() {
        return switching.rising();
    }

    /** {@return the frames of the change} */
    public Switching switching() {
        return switching;
    }

    /**
     * Counts time from the first light of another lamp in the same film, or for one going out from its first loss of
     * light: level {@value #FIRST_LIGHT}. Exposure, row time and transfer curve, where unknown, are the same for both.
     *
     * @param reference the reference light's change
     * @return this change with the other time zero
     * @throws IllegalArgumentException if one comes on and the other goes out, or they are not of one camera
     */
    public FilmedChange since(FilmedChange reference) {
        if (reference.rising() != rising()) {
            throw new IllegalArgumentException("reference light must " + (rising() ? "come on" : "go out") + " as "
                    + label() + " does, got " + reference.label() + ", which "
                    + (reference.rising() ? "comes on" : "goes out"));
        }
        if (reference.camera != camera) {
            throw new IllegalArgumentException("reference light " + reference.label() + " and " + label()
                    + " must be filmed by one camera, got two");
        }
        return new FilmedChange(
                switching,
                camera,
                draws,
                TimeZero.of(switching, camera, reference.switching, reference.draws.times(FIRST_LIGHT)),
                evidence.with(reference.evidence)
                        .with(Evidence.of("time zero: "
                                + (rising() ? "first light" : "first loss of light") + ", 1 % of the change, of "
                                + reference.label())));
    }

    /**
     * Counts time from a moment of the film's clock, such as a closing switch that another instrument stamped.
     *
     * @param time the moment, since the beginning of frame 0
     * @param standardUncertainty its standard uncertainty, taken as normal, [0, 10] s
     * @return this change with the other time zero
     * @throws IllegalArgumentException if the uncertainty is out of range
     */
    public FilmedChange sinceTime(TimeSpan time, TimeSpan standardUncertainty) {
        Check.inRange("standard uncertainty of time zero", standardUncertainty.inSeconds(), 0, 10, "s");
        return new FilmedChange(
                switching,
                camera,
                draws,
                TimeZero.given(switching, camera, draws, time.inSeconds(), standardUncertainty.inSeconds()),
                evidence.with(Evidence.of("time zero: " + time + " of the film's clock, standard uncertainty "
                        + standardUncertainty + ", given by the caller")));
    }

    /**
     * Gives when the light passes a share of the switched light.
     *
     * @param levelRatio the level, [0.001, 0.999]
     * @return the moment
     * @throws IllegalArgumentException if the level is out of range
     */
    public FilmedMoment level(double levelRatio) {
        Check.inRange("level of the switched light", levelRatio, 0.001, 0.999, "");
        return moment("level " + Numbers.text(100 * levelRatio) + " %", zero, own(levelRatio), 1, evidence)
                .orElseThrow();
    }

    /** {@return when the first light is there, or of a lamp going out the first loss: 1 % of the change} */
    public FilmedMoment firstLight() {
        double level = rising() ? FIRST_LIGHT : 1 - FIRST_LIGHT;
        return moment(rising() ? "first light" : "first loss of light", zero, own(level), 1, evidence)
                .orElseThrow();
    }

    /**
     * Gives the differences of the times of a level in two changes, draw by draw; both must count from the same time
     * zero or from the film's own.
     *
     * @param other the change whose time is taken off, of the same film
     * @param levelRatio the level, [0.001, 0.999]
     * @return this change's time less the other's
     * @throws IllegalArgumentException if the level is out of range or the two are not of one camera and direction
     */
    public FilmedMoment levelAfter(FilmedChange other, double levelRatio) {
        Check.inRange("level of the switched light", levelRatio, 0.001, 0.999, "");
        FilmedChange both = since(other);
        TimeZero from = TimeZero.of(switching, camera, other.switching, other.own(levelRatio));
        return moment(
                        "level " + Numbers.text(100 * levelRatio) + " % after " + other.label(),
                        from,
                        own(levelRatio),
                        1,
                        both.evidence)
                .orElseThrow();
    }

    /**
     * Gives when a criterion detects the lamp.
     *
     * @param detector the criterion
     * @param finalIntensity the intensity of the switched light once fully lit
     * @param steadyIntensity the intensity of a lit tail lamp beside it, 0 cd for none
     * @return the moment; nothing if in fewer than half of the possible courses the lamp is ever seen
     * @throws IllegalStateException if the lamp goes out
     */
    public Optional<FilmedMoment> seen(
            Detector detector, LuminousIntensity finalIntensity, LuminousIntensity steadyIntensity) {
        requireRising("a moment of detection");
        double[] times = new double[CourseDraws.KEPT];
        Arrays.fill(times, Double.NaN);
        int asked = 0;
        int seen = 0;
        Evidence found = Evidence.none();
        for (int i = 0; i < times.length; i += EVERY) {
            CourseDraws.Draw draw = draws.draws().get(i);
            Detection detection =
                    detector.detect(new LampSignal(new DrawnOnset(label(), draw), finalIntensity, steadyIntensity));
            found = i == 0 ? detection.evidence() : found;
            asked++;
            if (detection instanceof Detection.Seen at) {
                times[i] = draw.startS() + at.at().inSeconds();
                seen++;
            }
        }
        double share = (double) seen / asked;
        return moment(
                "seen by " + detector.criterion(),
                zero,
                times,
                share,
                evidence.with(found)
                        .withCaveatIf(
                                share < 1,
                                label() + " is not detected by " + detector.criterion() + " in "
                                        + Numbers.text(100 * (1 - share), 2)
                                        + " % of the courses that the film leaves possible; the estimate is of the"
                                        + " others"));
    }

    /**
     * Gives the curve of median times as an onset for {@code sight} and {@code following}, from the time zero.
     *
     * @return the onset
     * @throws IllegalStateException if the lamp goes out
     */
    public OnsetCurve onset() {
        requireRising("an onset");
        List<BandPoint> band = band();
        double[] timeS = new double[band.size() + 2];
        double[] level = new double[timeS.length];
        timeS[0] = median(sinceZero(draws.starts(), zero));
        for (int k = 0; k < band.size(); k++) {
            timeS[k + 1] = Math.max(band.get(k).timeS(), Math.nextUp(timeS[k]));
            level[k + 1] = band.get(k).levelRatio();
        }
        int last = timeS.length - 1;
        timeS[last] = Math.max(median(levels(0.9995)), Math.nextUp(timeS[last - 1]));
        level[last] = 1;
        return new FilmedOnset(MeasuredLamp.of(label() + ", filmed", timeS, level), evidence);
    }

    /** {@return the curve with its 95 % band, in order of time} */
    public List<BandPoint> band() {
        List<BandPoint> band = new ArrayList<>();
        for (double risen : BAND_LEVELS) {
            double level = risen(risen);
            double[] sorted = levels(level);
            Arrays.sort(sorted);
            band.add(new BandPoint(
                    level,
                    quantile(sorted, 0.5),
                    quantile(sorted, (1 - COVERAGE) / 2),
                    quantile(sorted, (1 + COVERAGE) / 2)));
        }
        return List.copyOf(band);
    }

    private void requireRising(String what) {
        if (!rising()) {
            throw new IllegalStateException(
                    "only a lamp that comes on has " + what + ", got " + label() + " going out");
        }
    }

    private double risen(double levelRatio) {
        return rising() ? levelRatio : 1 - levelRatio;
    }

    private double[] own(double levelRatio) {
        return draws.times(risen(levelRatio));
    }

    /** The times of a level since the time zero, draw by draw. */
    double[] levels(double levelRatio) {
        return sinceZero(own(levelRatio), zero);
    }

    private static double[] sinceZero(double[] timesS, TimeZero zero) {
        double[] times = new double[timesS.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = timesS[i] - zero.atS(i);
        }
        return times;
    }

    /** The moment at which courses reach something, from the times by the film's clock, NaN where one does not. */
    private Optional<FilmedMoment> moment(
            String name, TimeZero from, double[] ownS, double reachedShare, Evidence rests) {
        if (reachedShare < 0.5) {
            return Optional.empty();
        }
        double[] sorted = Arrays.stream(sinceZero(ownS, from))
                .filter(t -> !Double.isNaN(t))
                .sorted()
                .toArray();
        Interval coverage =
                new Interval(quantile(sorted, (1 - COVERAGE) / 2), quantile(sorted, (1 + COVERAGE) / 2), COVERAGE);
        Estimate estimate =
                new Estimate(Arrays.stream(sorted).average().orElseThrow(), TimeZero.deviation(sorted), coverage);
        return Optional.of(new FilmedMoment(name, estimate, reachedShare, budget(from, ownS), rests));
    }

    private List<Contribution> budget(TimeZero from, double[] ownS) {
        double betweenU = draws.betweenCurvesU(sinceZero(ownS, from));
        double ownU = TimeZero.deviation(
                Arrays.stream(ownS).filter(t -> !Double.isNaN(t)).toArray());
        double curveU = Math.min(betweenU, ownU);
        double restU = Math.sqrt(ownU * ownU - curveU * curveU);
        return List.of(
                new Contribution("noise_frame_interval_and_levels_s", restU, restU),
                new Contribution("transfer_curve_s", curveU, curveU),
                new Contribution("time_zero_s", from.zeroU(), -from.zeroU()),
                new Contribution("exposure_s", from.exposureU(), from.exposureU()),
                new Contribution("row_time_s", from.rowU(), from.rowU()));
    }

    static double quantile(double[] sorted, double p) {
        double at = Math.max(0, Math.min(sorted.length - 1.0, p * sorted.length - 0.5));
        int below = (int) at;
        int above = Math.min(sorted.length - 1, below + 1);
        return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return quantile(sorted, 0.5);
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public String toString() {
        return label() + (rising() ? " comes on" : " goes out");
    }
}
