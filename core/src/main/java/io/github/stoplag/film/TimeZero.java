package io.github.stoplag.film;

import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sweep.CounterRandom;
import io.github.stoplag.sweep.Moments;

/**
 * Where a change's times count from, one value for each draw, with what is unknown of the camera's clock: the middle of
 * an unknown exposure and the delay of the rows of an unknown rolling shutter. Both are the same for all lamps of a
 * film, so a reference light in it takes most of them away.
 */
final class TimeZero {
    private static final CounterRandom RANDOM = CounterRandom.of(87_178_291_199L);
    private static final int ROW = 1;
    private static final int GIVEN = 2;

    private final double[] zeroS;
    private final double zeroU;
    private final double exposureU;
    private final double rowU;

    private TimeZero(double[] zeroS, double[] exposureS, double[] rowS) {
        this.zeroS = new double[zeroS.length];
        for (int i = 0; i < zeroS.length; i++) {
            this.zeroS[i] = zeroS[i] - exposureS[i] - rowS[i];
        }
        zeroU = deviation(zeroS);
        exposureU = deviation(exposureS);
        rowU = deviation(rowS);
    }

    /** The begin of frame 0. */
    static TimeZero film(Switching own, Camera camera, CourseDraws draws) {
        return given(own, camera, draws, 0, 0);
    }

    static TimeZero given(Switching own, Camera camera, CourseDraws draws, double timeS, double standardUncertaintyS) {
        double[] zero = new double[CourseDraws.KEPT];
        double[] exposure = new double[zero.length];
        double[] row = new double[zero.length];
        double intervalS = 1 / camera.takenHz();
        GreySeries series = own.series();
        double lowest = series.middleRow() + series.rows() / 2;
        for (int i = 0; i < zero.length; i++) {
            double radius = Math.sqrt(-2 * Math.log(RANDOM.uniform(GIVEN, 2L * i)));
            zero[i] = timeS + standardUncertaintyS * radius * Math.cos(2 * Math.PI * RANDOM.uniform(GIVEN, 2L * i + 1));
            if (camera.exposure().isEmpty()) {
                // the draws' times are those of an exposure of half the interval
                exposure[i] = (draws.draws().get(i).exposureRatio() - 0.5) * intervalS * (0.5 - camera.exposurePlace());
            }
            row[i] = series.middleRow() * unknownRowS(camera, lowest, i);
        }
        return new TimeZero(zero, exposure, row);
    }

    /** The times of another change in the same film. */
    static TimeZero of(Switching own, Camera camera, Switching other, double[] timesS) {
        double[] row = new double[timesS.length];
        GreySeries a = own.series();
        GreySeries b = other.series();
        double lowest = Math.max(a.middleRow() + a.rows() / 2, b.middleRow() + b.rows() / 2);
        for (int i = 0; i < row.length; i++) {
            row[i] = (a.middleRow() - b.middleRow()) * unknownRowS(camera, lowest, i);
        }
        return new TimeZero(timesS, new double[row.length], row);
    }

    /** An unknown row time: all rows down to the lowest seen are read within the frame interval. */
    private static double unknownRowS(Camera camera, double lowestRow, int draw) {
        boolean known = camera.rowTime().map(TimeSpan::inSeconds).isPresent();
        return known ? 0 : RANDOM.uniform(ROW, draw) / camera.takenHz() / Math.max(1, lowestRow);
    }

    double atS(int draw) {
        return zeroS[draw];
    }

    double zeroU() {
        return zeroU;
    }

    double exposureU() {
        return exposureU;
    }

    double rowU() {
        return rowU;
    }

    static double deviation(double[] values) {
        Moments moments = new Moments();
        moments.add(values, values.length);
        return values.length < 2 ? 0 : moments.standardDeviation();
    }
}
