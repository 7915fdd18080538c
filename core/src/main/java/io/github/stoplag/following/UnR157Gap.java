package io.github.stoplag.following;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * The minimum following distance of UN Regulation No. 157 for automated lane keeping up to 60 km/h.
 *
 * <p>d = max(2 m, v · t(v)), t from a table, linear between its speeds
 *
 * <p>Range: speed in [0, 60] km/h; below the table's first speed, 7.2 km/h, its time gap of 1.0 s and the least
 * distance hold. Formula and first three rows read, the other rows, the interpolation rule and the 2 m from memory. A
 * requirement on a system, not on drivers.
 *
 * <pre>{@code
 * UnR157Gap.timeGap(Speed.kmh(36)); // 1.36 s
 * UnR157Gap.distance(Speed.kmh(36)); // 13.6 m
 * }</pre>
 */
public final class UnR157Gap {
    /** Where the table comes from. */
    public static final Source SOURCE =
            Source.fromMemory("UN Regulation No. 157, original series", "paragraph 5.2.3.3; rows up to 20 km/h seen");

    private static final double TOP_KMH = 60;
    private static final double LEAST_M = 2.0;
    private static final PolynomialSplineFunction TIME_GAP_S = read();

    private UnR157Gap() {}

    private static PolynomialSplineFunction read() {
        Table table = Table.read(UnR157Gap.class, "un_r157_following_gap.csv");
        return new LinearInterpolator().interpolate(table.numbers("speed_kmh"), table.numbers("min_time_gap_s"));
    }

    /**
     * Gives the minimum time gap.
     *
     * @param speed the speed of the vehicle behind, in [0, 60] km/h
     * @return t
     * @throws IllegalArgumentException if the speed is above 60 km/h
     */
    public static TimeSpan timeGap(Speed speed) {
        // 60 km/h given in another unit may come back a rounding error above 60
        double kmh = Math.min(TOP_KMH, Check.inRange("speed", speed.inKmh(), 0, TOP_KMH * (1 + 1e-12), "km/h"));
        return TimeSpan.seconds(TIME_GAP_S.value(Math.max(TIME_GAP_S.getKnots()[0], kmh)));
    }

    /**
     * Gives the minimum distance.
     *
     * @param speed the speed of the vehicle behind, in [0, 60] km/h
     * @return d
     * @throws IllegalArgumentException if the speed is above 60 km/h
     */
    public static Distance distance(Speed speed) {
        return Distance.metres(Math.max(LEAST_M, speed.inMps() * timeGap(speed).inSeconds()));
    }
}
