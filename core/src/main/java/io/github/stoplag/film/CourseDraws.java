package io.github.stoplag.film;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;

/** Courses of light that a film leaves possible, each as likely as another, in the film's own clock. */
final class CourseDraws {
    /** One possible course, with the exposure over the frame interval it goes with, NaN where that is known. */
    record Draw(
            RiseShape shape,
            double middleS,
            double riseS,
            double darkRatio,
            double switchedRatio,
            double exposureRatio) {
        double timeS(double risenLevel) {
            return middleS + riseS * shape.timeTo(risenLevel);
        }

        double risenLevel(double timeS) {
            return shape.level((timeS - middleS) / riseS);
        }

        double startS() {
            return middleS + riseS * shape.start();
        }
    }

    /** How many courses are kept. */
    static final int KEPT = 1500;

    private static final int SWARM = 400;

    /** A change within a frame or two leaves curved ridges of courses; it costs little. */
    private static final int SUDDEN_SWARM = 1200;

    private static final int SUDDEN_FRAMES = 3;
    /** A first look that tells families which the film rules out. */
    private static final int PILOT = 64;

    private static final int PILOT_BINS_ACROSS = 4;
    private static final double RULED_OUT = 9;
    private static final long SEED = 6_700_417;
    /** Per cent of the swarm for each of several ways to read a film: together they are many. */
    private static final int SWARM_OF_MANY = 40;

    private final List<Draw> draws;
    private final double[] familyShare;
    private final int curves;

    private CourseDraws(List<Draw> draws, double[] familyShare, int curves) {
        this.draws = draws;
        this.familyShare = familyShare;
        this.curves = curves;
    }

    /** Draws courses; where the transfer curve or the scale is unknown, as many by each way of reading it. */
    static CourseDraws of(Switching switching, Camera camera) {
        List<Camera.Reading> readings = camera.readings(darkest(switching.series()));
        int swarm = switching.high() - switching.low() <= SUDDEN_FRAMES ? SUDDEN_SWARM : SWARM;
        List<Draw> all = new ArrayList<>();
        double[] share = new double[ShapeFamily.COUNT];
        int each = KEPT / readings.size();
        for (int from = 0, to; from < readings.size(); from = to) {
            Camera.Reading reading = readings.get(from);
            for (to = from + 1; to < readings.size() && readings.get(to).equals(reading); ) {
                to++;
            }
            CourseDraws one = of(
                    switching,
                    camera.with(reading),
                    readings.size() == 1 ? swarm : swarm * SWARM_OF_MANY / 100,
                    SEED,
                    each * (to - from));
            all.addAll(one.draws);
            for (int m = 0; m < share.length; m++) {
                share[m] += one.familyShare[m] * (to - from) / readings.size();
            }
        }
        return new CourseDraws(List.copyOf(all), share, readings.size());
    }

    /** A grey value of the dark that noise hardly lowers. */
    private static double darkest(GreySeries series) {
        double[] greys = new double[series.size()];
        for (int i = 0; i < greys.length; i++) {
            greys[i] = series.grey(i);
        }
        Arrays.sort(greys);
        return greys[greys.length / 20];
    }

    List<Draw> draws() {
        return draws;
    }

    /** The share of each family of {@link ShapeFamily#all}. */
    double[] familyShare() {
        return familyShare;
    }

    /** The times at which the risen part of the change passes a level, draw by draw. */
    double[] times(double risenLevel) {
        return draws.stream().mapToDouble(draw -> draw.timeS(risenLevel)).toArray();
    }

    double[] starts() {
        return draws.stream().mapToDouble(Draw::startS).toArray();
    }

    /** The standard deviation of the means by transfer curve. */
    double betweenCurvesU(double[] times) {
        double[] means = new double[curves];
        int each = times.length / curves;
        for (int c = 0; c < curves; c++) {
            means[c] = Arrays.stream(times, c * each, (c + 1) * each)
                    .filter(t -> !Double.isNaN(t))
                    .average()
                    .orElse(0);
        }
        double mean = Arrays.stream(means).average().orElseThrow();
        return Math.sqrt(Arrays.stream(means).map(m -> (m - mean) * (m - mean)).sum() / curves);
    }

    static CourseDraws of(Switching switching, Camera camera, int swarm, long seed, int kept) {
        FilmedLight film = new FilmedLight(switching, camera, FilmedLight.BINS_ACROSS);
        FilmedLight coarse = new FilmedLight(switching, camera, PILOT_BINS_ACROSS);
        List<ShapeFamily> families = ShapeFamily.all(film.rising);
        CourseTarget[] targets = new CourseTarget[families.size()];
        double[] pilot = new double[targets.length];
        for (int m = 0; m < targets.length; m++) {
            targets[m] = new CourseTarget(film, camera, families.get(m));
            CourseTarget first = new CourseTarget(coarse, camera, families.get(m));
            pilot[m] = TemperedSampler.run(first, PILOT, seed + 31 + m).logEvidence();
        }
        double best = Arrays.stream(pilot).max().orElseThrow();
        TemperedSampler[] samplers = new TemperedSampler[targets.length];
        double[] log = new double[targets.length];
        for (int m = 0; m < targets.length; m++) {
            log[m] = Double.NEGATIVE_INFINITY;
            if (pilot[m] > best - RULED_OUT) {
                samplers[m] = TemperedSampler.run(targets[m], film.brightBound ? 3 * swarm : swarm, seed + m);
                log[m] = Math.log(families.get(m).weight()) + samplers[m].logEvidence();
            }
        }
        if (!(Arrays.stream(log).max().orElseThrow() > Double.NEGATIVE_INFINITY)) {
            throw new IllegalArgumentException("light of " + switching.series().label() + " from frame "
                    + switching.series().frame(switching.from()) + " on must rise or fall once, got a course that"
                    + " no lamp has");
        }
        double[] share = shares(log);
        SplittableRandom random = new SplittableRandom(seed + 101);
        List<Draw> draws = new ArrayList<>();
        double due = random.nextDouble();
        for (int m = 0; m < log.length; m++) {
            due += share[m] * kept;
            int count = Math.min((int) due, kept - draws.size());
            due -= count;
            if (count > 0) {
                take(targets[m], samplers[m].draws(), count, random, draws);
            }
        }
        while (draws.size() < kept) {
            draws.add(draws.get(random.nextInt(draws.size())));
        }
        // lamps are compared draw by draw: their orders must not go together
        Collections.shuffle(draws, new Random(seed ^ film.fingerprint()));
        return new CourseDraws(List.copyOf(draws), share, 1);
    }

    private static double[] shares(double[] log) {
        double top = Arrays.stream(log).max().orElseThrow();
        double[] share = Arrays.stream(log).map(l -> Math.exp(l - top)).toArray();
        double total = Arrays.stream(share).sum();
        return Arrays.stream(share).map(s -> s / total).toArray();
    }

    private static void take(
            CourseTarget target, List<double[]> points, int count, SplittableRandom random, List<Draw> draws) {
        for (int i = 0; i < count; i++) {
            double[] point = points.get((int) ((i + 0.5) * points.size() / count));
            double[] levels = target.levels(point);
            double z = random.nextGaussian();
            double dark = levels[0] + Math.sqrt(Math.max(0, levels[2])) * z;
            double slope = levels[2] > 0 ? levels[3] / levels[2] : 0;
            double rest = Math.sqrt(Math.max(0, levels[4] - slope * levels[3]));
            double switched = levels[1] + slope * (dark - levels[0]) + rest * random.nextGaussian();
            RiseShape shape = target.shape(point);
            draws.add(new Draw(
                    shape,
                    target.middleS(point, shape),
                    CourseTarget.riseS(point),
                    dark,
                    switched,
                    target.exposureRatio(point)));
        }
    }
}
