package io.github.stoplag.kernel;

import java.util.Objects;

/**
 * Distance and time of a stop on a uniform road, in closed form on SI doubles.
 *
 * <p>The motion: constant speed v until the brake onset, deceleration rising linearly from 0 to a over the build-up
 * time tᵣ, then constant a to rest.
 *
 * <pre>
 *   stop after the build-up, v ≥ a tᵣ/2:   s = v tᵣ/2 + v²/(2a) − a tᵣ²/24,   t = v/a + tᵣ/2
 *   stop inside the build-up, v &lt; a tᵣ/2:  s = 2/3 v t,                       t = √(2 v tᵣ/a)
 * </pre>
 *
 * <p>Symbols: v speed [m/s], a deceleration [m/s²], tᵣ build-up time [s], s braking distance [m], t braking time [s].
 *
 * <p>Range: speeds and times not negative and finite. Arguments are not checked, NaN in gives NaN out. A deceleration
 * that is not above zero never stops a moving vehicle: the limit, positive infinity, is returned, which the typed face
 * turns into a named outcome.
 *
 * <p>Source: kinematics, integrated from the phases above; tested against numerical integration.
 */
public final class StopKernel {
    private StopKernel() {}

    /**
     * Gives the deceleration that friction and grade allow, exact with the slope angle θ = atan G: a = g (μ cos θ + sin
     * θ) = g (μ + G)/√(1 + G²).
     *
     * @param frictionRatio the friction coefficient μ
     * @param gradeRatio the grade G, rise over run, positive uphill in the direction of travel
     * @param gravityMps2 the acceleration of free fall g in m/s²
     * @return the deceleration in m/s², negative where the road speeds the vehicle up
     */
    public static double decelerationMps2(double frictionRatio, double gradeRatio, double gravityMps2) {
        return gravityMps2 * (frictionRatio + gradeRatio) / Math.sqrt(1 + gradeRatio * gradeRatio);
    }

    /**
     * Gives the distance run at constant speed before the brakes act: s = v t.
     *
     * @param speedMps the speed in m/s
     * @param timeS the time in s
     * @return the distance in m
     */
    public static double reactionDistanceM(double speedMps, double timeS) {
        return speedMps * timeS;
    }

    /**
     * Gives the distance from the first deceleration to rest.
     *
     * @param speedMps the speed in m/s
     * @param buildUpS the time of the linear build-up in s
     * @param decelMps2 the deceleration after the build-up in m/s²
     * @return the braking distance in m; positive infinity if the vehicle never stops
     */
    public static double brakingDistanceM(double speedMps, double buildUpS, double decelMps2) {
        if (!(decelMps2 > 0)) {
            return neverStops(speedMps, decelMps2);
        }
        if (speedMps >= 0.5 * decelMps2 * buildUpS) {
            return 0.5 * speedMps * (buildUpS + speedMps / decelMps2) - decelMps2 * buildUpS * buildUpS / 24;
        }
        return speedMps * Math.sqrt(2 * speedMps * buildUpS / decelMps2) * (2.0 / 3.0);
    }

    /**
     * Gives the time from the first deceleration to rest.
     *
     * @param speedMps the speed in m/s
     * @param buildUpS the time of the linear build-up in s
     * @param decelMps2 the deceleration after the build-up in m/s²
     * @return the braking time in s; positive infinity if the vehicle never stops
     */
    public static double brakingTimeS(double speedMps, double buildUpS, double decelMps2) {
        if (!(decelMps2 > 0)) {
            return neverStops(speedMps, decelMps2);
        }
        if (speedMps >= 0.5 * decelMps2 * buildUpS) {
            return speedMps / decelMps2 + 0.5 * buildUpS;
        }
        return Math.sqrt(2 * speedMps * buildUpS / decelMps2);
    }

    /**
     * Gives the distance from time 0 to rest: v t₀ plus the braking distance.
     *
     * @param speedMps the speed in m/s
     * @param brakeOnsetS the time of the first deceleration t₀ in s
     * @param buildUpS the time of the linear build-up in s
     * @param decelMps2 the deceleration after the build-up in m/s²
     * @return the stopping distance in m; positive infinity if the vehicle never stops
     */
    public static double stoppingDistanceM(double speedMps, double brakeOnsetS, double buildUpS, double decelMps2) {
        return speedMps * brakeOnsetS + brakingDistanceM(speedMps, buildUpS, decelMps2);
    }

    /**
     * Gives the time from time 0 to rest: t₀ plus the braking time, or 0 for a vehicle that stands already.
     *
     * @param speedMps the speed in m/s
     * @param brakeOnsetS the time of the first deceleration t₀ in s
     * @param buildUpS the time of the linear build-up in s
     * @param decelMps2 the deceleration after the build-up in m/s²
     * @return the stopping time in s; positive infinity if the vehicle never stops
     */
    public static double stoppingTimeS(double speedMps, double brakeOnsetS, double buildUpS, double decelMps2) {
        double brakingS = brakingTimeS(speedMps, buildUpS, decelMps2);
        return speedMps == 0 ? brakingS : brakeOnsetS + brakingS;
    }

    /**
     * Gives the constant deceleration that stops a vehicle within a distance: a = v²/(2s).
     *
     * @param speedMps the speed in m/s
     * @param distanceM the braking distance in m
     * @return the deceleration in m/s²; positive infinity at distance 0
     */
    public static double decelerationToStopMps2(double speedMps, double distanceM) {
        return speedMps * speedMps / (2 * distanceM);
    }

    /**
     * Gives the deceleration that stops a vehicle within a distance after a linear build-up, the inverse of {@link
     * #brakingDistanceM}.
     *
     * <pre>
     *   D = s − v tᵣ/2:  a = v²/(D + √(D² + v² tᵣ²/12))     for a stop after the build-up, a tᵣ/2 ≤ v
     *                    a = 8 v³ tᵣ/(9 s²)                  for a stop inside it
     * </pre>
     *
     * @param speedMps the speed in m/s
     * @param buildUpS the time of the linear build-up in s
     * @param distanceM the braking distance in m
     * @return the deceleration in m/s²; positive infinity at distance 0
     */
    public static double decelerationToStopMps2(double speedMps, double buildUpS, double distanceM) {
        double restM = distanceM - 0.5 * speedMps * buildUpS;
        double decelMps2 = speedMps * speedMps / (restM + Math.hypot(restM, speedMps * buildUpS / Math.sqrt(12)));
        return 0.5 * decelMps2 * buildUpS <= speedMps
                ? decelMps2
                : 8 * speedMps * speedMps * speedMps * buildUpS / (9 * distanceM * distanceM);
    }

    /**
     * Gives the speed from which a constant deceleration stops within a distance: v = √(2 a s).
     *
     * @param distanceM the braking distance in m
     * @param decelMps2 the deceleration in m/s²
     * @return the speed in m/s
     */
    public static double speedToStopMps(double distanceM, double decelMps2) {
        return Math.sqrt(2 * decelMps2 * distanceM);
    }

    /**
     * Fills an array with stopping distances, element by element as {@link #stoppingDistanceM(double, double, double,
     * double)} up to rounding.
     *
     * @param speedMps the speeds in m/s
     * @param brakeOnsetS the times of the first deceleration in s
     * @param buildUpS the times of the linear build-up in s
     * @param decelMps2 the decelerations after the build-up in m/s²
     * @param distanceM where the stopping distances in m go
     * @throws IllegalArgumentException if the arrays differ in length
     */
    public static void stoppingDistances(
            double[] speedMps, double[] brakeOnsetS, double[] buildUpS, double[] decelMps2, double[] distanceM) {
        Objects.requireNonNull(brakeOnsetS, "brakeOnsetS");
        Objects.requireNonNull(buildUpS, "buildUpS");
        Objects.requireNonNull(decelMps2, "decelMps2");
        Objects.requireNonNull(distanceM, "distanceM");
        Objects.requireNonNull(speedMps, "speedMps");
        int n = commonLength(speedMps, brakeOnsetS, buildUpS, decelMps2, distanceM);
        commonDistances(n, speedMps, brakeOnsetS, buildUpS, decelMps2, distanceM);
        for (int i = 0; i < n; i++) {
            if (!isCommonCase(speedMps[i], buildUpS[i], decelMps2[i])) {
                distanceM[i] = stoppingDistanceM(speedMps[i], brakeOnsetS[i], buildUpS[i], decelMps2[i]);
            }
        }
    }

    /**
     * Fills an array with stopping times, element by element as {@link #stoppingTimeS(double, double, double, double)}
     * up to rounding.
     *
     * @param speedMps the speeds in m/s
     * @param brakeOnsetS the times of the first deceleration in s
     * @param buildUpS the times of the linear build-up in s
     * @param decelMps2 the decelerations after the build-up in m/s²
     * @param timeS where the stopping times in s go
     * @throws IllegalArgumentException if the arrays differ in length
     */
    public static void stoppingTimes(
            double[] speedMps, double[] brakeOnsetS, double[] buildUpS, double[] decelMps2, double[] timeS) {
        Objects.requireNonNull(brakeOnsetS, "brakeOnsetS");
        Objects.requireNonNull(buildUpS, "buildUpS");
        Objects.requireNonNull(decelMps2, "decelMps2");
        Objects.requireNonNull(speedMps, "speedMps");
        Objects.requireNonNull(timeS, "timeS");
        int n = commonLength(speedMps, brakeOnsetS, buildUpS, decelMps2, timeS);
        commonTimes(n, speedMps, brakeOnsetS, buildUpS, decelMps2, timeS);
        for (int i = 0; i < n; i++) {
            if (!isCommonCase(speedMps[i], buildUpS[i], decelMps2[i])) {
                timeS[i] = stoppingTimeS(speedMps[i], brakeOnsetS[i], buildUpS[i], decelMps2[i]);
            }
        }
    }

    /**
     * Fills two arrays with stopping distances and times, the same bits as {@link #stoppingDistances} and {@link
     * #stoppingTimes} in less time than both.
     *
     * @param speedMps the speeds in m/s
     * @param brakeOnsetS the times of the first deceleration in s
     * @param buildUpS the times of the linear build-up in s
     * @param decelMps2 the decelerations after the build-up in m/s²
     * @param distanceM where the stopping distances in m go
     * @param timeS where the stopping times in s go; another array than that of the distances
     * @throws IllegalArgumentException if the arrays differ in length or the last two are one
     */
    public static void stoppingDistancesAndTimes(
            double[] speedMps,
            double[] brakeOnsetS,
            double[] buildUpS,
            double[] decelMps2,
            double[] distanceM,
            double[] timeS) {
        Objects.requireNonNull(brakeOnsetS, "brakeOnsetS");
        Objects.requireNonNull(buildUpS, "buildUpS");
        Objects.requireNonNull(decelMps2, "decelMps2");
        Objects.requireNonNull(distanceM, "distanceM");
        Objects.requireNonNull(speedMps, "speedMps");
        Objects.requireNonNull(timeS, "timeS");
        int n = commonLength(speedMps, brakeOnsetS, buildUpS, decelMps2, distanceM);
        commonLength(speedMps, brakeOnsetS, buildUpS, decelMps2, timeS);
        if (distanceM == timeS) {
            throw new IllegalArgumentException("distances and times must go into two arrays, got one for both");
        }
        commonDistances(n, speedMps, brakeOnsetS, buildUpS, decelMps2, distanceM);
        commonTimes(n, speedMps, brakeOnsetS, buildUpS, decelMps2, timeS);
        for (int i = 0; i < n; i++) {
            if (!isCommonCase(speedMps[i], buildUpS[i], decelMps2[i])) {
                distanceM[i] = stoppingDistanceM(speedMps[i], brakeOnsetS[i], buildUpS[i], decelMps2[i]);
                timeS[i] = stoppingTimeS(speedMps[i], brakeOnsetS[i], buildUpS[i], decelMps2[i]);
            }
        }
    }

    // free of branches and with one store, so that the JIT turns the loop into vector instructions;
    // the caller mends the few stops inside the build-up
    private static void commonDistances(
            int n, double[] speedMps, double[] onsetS, double[] buildUpS, double[] decelMps2, double[] distanceM) {
        for (int i = 0; i < n; i++) {
            double v = speedMps[i];
            double tr = buildUpS[i];
            double a = decelMps2[i];
            distanceM[i] = v * onsetS[i] + (0.5 * v * (tr + v / a) - a * tr * tr * (1.0 / 24));
        }
    }

    private static void commonTimes(
            int n, double[] speedMps, double[] onsetS, double[] buildUpS, double[] decelMps2, double[] timeS) {
        for (int i = 0; i < n; i++) {
            timeS[i] = onsetS[i] + (speedMps[i] / decelMps2[i] + 0.5 * buildUpS[i]);
        }
    }

    /** The stop comes after the build-up; false as well for a vehicle that stands and for what is not a number. */
    private static boolean isCommonCase(double speedMps, double buildUpS, double decelMps2) {
        return speedMps > 0.5 * decelMps2 * buildUpS && decelMps2 > 0;
    }

    private static double neverStops(double speedMps, double decelMps2) {
        if (Double.isNaN(speedMps) || Double.isNaN(decelMps2)) {
            return Double.NaN;
        }
        return speedMps == 0 && decelMps2 == 0 ? 0 : Double.POSITIVE_INFINITY;
    }

    private static int commonLength(double[] first, double[] second, double[] third, double[] fourth, double[] out) {
        int n = first.length;
        if (second.length != n || third.length != n || fourth.length != n || out.length != n) {
            throw new IllegalArgumentException("arrays must have one length, got " + n + ", " + second.length + ", "
                    + third.length + ", " + fourth.length + ", " + out.length);
        }
        return n;
    }
}
