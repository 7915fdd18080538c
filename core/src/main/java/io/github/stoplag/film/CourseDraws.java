package io.github.stoplag.film;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;

/** Courses of light that a film leaves possible, each as likely as another, in the film's own clock. */
final class CourseDraws {
    /** One possible course. */
    record Draw(RiseShape shape, double middleS, double riseS, double darkRatio, double switchedRatio) {
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

    private static final int SWARM = 500;
    private static final long SEED = 6_700_417;
    private static final List<TransferCurve> UNKNOWN =
            List.of(TransferCurve.SRGB, TransferCurve.BT709, TransferCurve.power(2.2));

    private final List<Draw> draws;
    private final double[] familyShare;
    private final int curves;

    private CourseDraws(List<Draw> draws, double[] familyShare, int curves) {
        this.draws = draws;
        this.familyShare = familyShare;
        this.curves = curves;
    }

    /** Draws courses; where the transfer curve is unknown, a third of them by each it may be. */
    static CourseDraws of(Switching switching, Camera camera) {
        List<TransferCurve> transfers = camera.transferIsKnown() ? List.of(camera.transfer()) : UNKNOWN;
        List<Draw> all = new ArrayList<>();
        double[] share = new double[ShapeFamily.COUNT];
        for (TransferCurve transfer : transfers) {
            Camera known = camera.withTransfer(transfer);
            CourseDraws one = of(new FilmedLight(switching, known), known, SWARM, SEED, KEPT / transfers.size());
            all.addAll(one.draws);
            for (int m = 0; m < share.length; m++) {
                share[m] += one.familyShare[m] / transfers.size();
            }
        }
        return new CourseDraws(List.copyOf(all), share, transfers.size());
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

    static CourseDraws of(FilmedLight film, Camera camera, int swarm, long seed, int kept) {
        List<ShapeFamily> families = ShapeFamily.all(film.rising);
        CourseTarget[] targets = new CourseTarget[families.size()];
        TemperedSampler[] samplers = new TemperedSampler[targets.length];
        double[] log = new double[targets.length];
        double top = Double.NEGATIVE_INFINITY;
        for (int m = 0; m < targets.length; m++) {
            ShapeFamily family = families.get(m);
            targets[m] = new CourseTarget(film, camera, family);
            samplers[m] = TemperedSampler.run(targets[m], swarm, seed + m);
            log[m] = Math.log(family.weight()) + samplers[m].logEvidence();
            top = Math.max(top, log[m]);
        }
        double total = 0;
        double[] share = new double[log.length];
        for (int m = 0; m < log.length; m++) {
            share[m] = Math.exp(log[m] - top);
            total += share[m];
        }
        SplittableRandom random = new SplittableRandom(seed + 101);
        List<Draw> draws = new ArrayList<>();
        double due = random.nextDouble();
        for (int m = 0; m < log.length; m++) {
            share[m] /= total;
            due += share[m] * kept;
            int count = m + 1 < log.length ? (int) due : kept - draws.size();
            due -= count;
            if (count > 0) {
                take(targets[m], samplers[m].draws(), count, random, draws);
            }
        }
        // lamps are compared draw by draw: their orders must not go together
        Collections.shuffle(draws, new Random(seed ^ film.fingerprint()));
        return new CourseDraws(List.copyOf(draws), share, 1);
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
            draws.add(new Draw(
                    target.shape(point), CourseTarget.middleS(point), CourseTarget.riseS(point), dark, switched));
        }
    }
}
