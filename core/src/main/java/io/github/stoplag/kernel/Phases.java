package io.github.stoplag.kernel;

/**
 * A buffer of constant-jerk phases on the way to an immutable trajectory, or reused from call to call by the gap
 * kernel.
 *
 * <p>In a phase, with τ the time since its start: v = v₀ − d₀ τ − k τ²/2 and s = s₀ + v₀ τ − d₀ τ²/2 − k τ³/6. The last
 * phase goes on for ever and has no jerk. Once the speed has come down to zero the vehicle rests for ever.
 */
final class Phases {
    /** A phase no longer than this moves nothing, and its jerk could overflow. */
    static final double SHORTEST_S = 1e-100;

    /** A deceleration no larger than this changes nothing in any time that counts, and its quotients could overflow. */
    static final double SLIGHTEST_MPS2 = 1e-100;

    final double[] startS;
    final double[] positionM;
    final double[] speedMps;
    final double[] decelMps2;
    final double[] jerkMps3;
    int count;
    /** When the vehicle comes to rest, infinite if it never does. */
    double restS;

    private double endS;
    private double endPositionM;
    private double endSpeedMps;

    Phases(int capacity) {
        startS = new double[capacity];
        positionM = new double[capacity];
        speedMps = new double[capacity];
        decelMps2 = new double[capacity];
        jerkMps3 = new double[capacity];
    }

    void begin(double initialMps) {
        count = 0;
        restS = Double.POSITIVE_INFINITY;
        endS = 0;
        endPositionM = 0;
        endSpeedMps = initialMps;
    }

    /**
     * Fills in the standard stop: cruise to the brake onset, linear build-up, constant deceleration (0: cruise for
     * ever).
     */
    void fillStop(double initialMps, double onsetS, double buildUpS, double finalDecelMps2) {
        begin(initialMps);
        if (finalDecelMps2 > 0) {
            append(0, 0, onsetS);
            if (buildUpS > 0) {
                append(0, finalDecelMps2 / buildUpS, buildUpS);
            }
            append(finalDecelMps2, 0, Double.POSITIVE_INFINITY);
        } else {
            append(0, 0, Double.POSITIVE_INFINITY);
        }
    }

    /** Appends a phase; the caller has made room for it and for the rest that may follow. */
    void append(double startDecelMps2, double jerk, double durationS) {
        if (!(durationS > SHORTEST_S) || restS < Double.POSITIVE_INFINITY) {
            return;
        }
        double startMps2 = Math.abs(startDecelMps2) > SLIGHTEST_MPS2 ? startDecelMps2 : 0;
        double tauS = timeToRestS(endSpeedMps, startMps2, jerk);
        if (tauS > 0) {
            store(startMps2, jerk);
        }
        if (tauS <= durationS && tauS < Double.POSITIVE_INFINITY) {
            advance(startMps2, jerk, tauS);
            rest();
        } else if (durationS < Double.POSITIVE_INFINITY) {
            advance(startMps2, jerk, durationS);
            if (endSpeedMps <= 0) {
                rest();
            }
        }
    }

    private void rest() {
        restS = endS;
        endSpeedMps = 0;
        store(0, 0);
    }

    private void store(double decel, double jerk) {
        startS[count] = endS;
        positionM[count] = endPositionM;
        speedMps[count] = endSpeedMps;
        decelMps2[count] = decel;
        jerkMps3[count] = jerk;
        count++;
    }

    private void advance(double decel, double jerk, double tauS) {
        endPositionM += tauS * (endSpeedMps - tauS * (0.5 * decel + tauS * jerk / 6));
        endSpeedMps -= tauS * (decel + 0.5 * tauS * jerk);
        endS += tauS;
    }

    /** First time at which the speed has come down to zero, infinite if it never does. */
    static double timeToRestS(double speed, double decel, double jerk) {
        if (speed <= 0 && (decel > 0 || (decel == 0 && jerk >= 0))) {
            return 0;
        }
        if (jerk == 0) {
            return decel > 0 ? speed / decel : Double.POSITIVE_INFINITY;
        }
        // v − d τ − k τ²/2 = 0, the first root at which the speed falls: −v' = d + k τ = √(d² + 2 k v)
        double square = decel * decel + 2 * jerk * speed;
        if (square < 0) {
            return Double.POSITIVE_INFINITY;
        }
        double root = Math.sqrt(square);
        double tauS = decel >= 0 ? 2 * speed / (decel + root) : (root - decel) / jerk;
        return tauS > 0 ? tauS : Double.POSITIVE_INFINITY;
    }

    double positionAtM(int phase, double timeS) {
        double tauS = timeS - startS[phase];
        return positionM[phase]
                + tauS * (speedMps[phase] - tauS * (0.5 * decelMps2[phase] + tauS * jerkMps3[phase] / 6));
    }

    double speedAtMps(int phase, double timeS) {
        double tauS = timeS - startS[phase];
        return speedMps[phase] - tauS * (decelMps2[phase] + 0.5 * tauS * jerkMps3[phase]);
    }
}
