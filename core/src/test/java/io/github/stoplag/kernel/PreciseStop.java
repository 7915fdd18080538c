package io.github.stoplag.kernel;

/**
 * One standard stop in {@link DoubleDouble}, positions in closed form from time 0 on: s = v t − a f(t), f the second
 * integral of the ramp. Shares no code with the kernel.
 */
final class PreciseStop {
    private static final DoubleDouble NEVER = DoubleDouble.of(Double.POSITIVE_INFINITY);

    final DoubleDouble onsetS;
    final DoubleDouble fullS;
    final DoubleDouble restS;
    private final DoubleDouble speedMps;
    private final DoubleDouble buildUpS;
    private final DoubleDouble decelMps2;

    PreciseStop(double speedMps, double onsetS, double buildUpS, double decelMps2) {
        this.speedMps = DoubleDouble.of(speedMps);
        this.onsetS = DoubleDouble.of(onsetS);
        this.buildUpS = DoubleDouble.of(buildUpS);
        this.decelMps2 = DoubleDouble.of(decelMps2);
        fullS = this.onsetS.plus(this.buildUpS);
        restS = rest();
    }

    private DoubleDouble rest() {
        if (speedMps.sign() == 0) {
            return DoubleDouble.ZERO;
        }
        if (decelMps2.sign() == 0) {
            return NEVER;
        }
        DoubleDouble shed = decelMps2.times(buildUpS).times(0.5);
        return speedMps.compareTo(shed) < 0
                ? onsetS.plus(speedMps.times(buildUpS).times(2).over(decelMps2).squareRoot())
                : onsetS.plus(buildUpS.times(0.5)).plus(speedMps.over(decelMps2));
    }

    /** Where it is at a time that lies in the same phase as another one. */
    DoubleDouble positionM(DoubleDouble timeS, DoubleDouble phaseS) {
        DoubleDouble t = phaseS.compareTo(restS) >= 0 ? restS : timeS;
        DoubleDouble braked = t.minus(onsetS);
        DoubleDouble run = speedMps.times(t);
        if (phaseS.compareTo(onsetS) <= 0 || braked.sign() <= 0) {
            return run;
        }
        DoubleDouble square = braked.times(braked);
        if (phaseS.compareTo(fullS) <= 0 || t.compareTo(fullS) < 0) {
            return run.minus(
                    decelMps2.times(square).times(braked).over(buildUpS).over(DoubleDouble.of(6)));
        }
        // the second integral of min(1, x/b): x²/2 − b x/2 + b²/6
        return run.minus(decelMps2.times(square.minus(buildUpS.times(braked))
                .times(0.5)
                .plus(buildUpS.times(buildUpS).over(DoubleDouble.of(6)))));
    }

    DoubleDouble speedMps(DoubleDouble timeS, DoubleDouble phaseS) {
        if (phaseS.compareTo(restS) >= 0) {
            return DoubleDouble.ZERO;
        }
        if (phaseS.compareTo(onsetS) <= 0) {
            return speedMps;
        }
        DoubleDouble braked = timeS.minus(onsetS);
        return phaseS.compareTo(fullS) <= 0
                ? speedMps.minus(
                        decelMps2.times(braked).times(braked).over(buildUpS).times(0.5))
                : speedMps.minus(decelMps2.times(braked.minus(buildUpS.times(0.5))));
    }

    DoubleDouble decelMps2(DoubleDouble timeS, DoubleDouble phaseS) {
        if (phaseS.compareTo(restS) >= 0 || phaseS.compareTo(onsetS) <= 0) {
            return DoubleDouble.ZERO;
        }
        return phaseS.compareTo(fullS) <= 0
                ? decelMps2.times(timeS.minus(onsetS)).over(buildUpS)
                : decelMps2;
    }
}
