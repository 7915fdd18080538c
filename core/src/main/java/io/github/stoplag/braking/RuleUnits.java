package io.github.stoplag.braking;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import java.math.BigDecimal;
import java.math.MathContext;

/** The units in which a published rule takes its speed and gives its distances. */
public enum RuleUnits {
    /** Kilometres per hour and metres. */
    KMH_M("km/h", 1 / 3.6, 1),
    /** Miles per hour and international feet. */
    MPH_FT("mph", Speed.MPS_PER_MPH, Distance.METRES_PER_FOOT);

    // a speed that went through m/s comes back as 69.99999999999999; rules that round halves up need the 70
    private static final MathContext AS_PRINTED = new MathContext(9);

    private final String speedUnit;
    private final double speedUnitMps;
    private final double lengthUnitM;

    RuleUnits(String speedUnit, double speedUnitMps, double lengthUnitM) {
        this.speedUnit = speedUnit;
        this.speedUnitMps = speedUnitMps;
        this.lengthUnitM = lengthUnitM;
    }

    static RuleUnits of(String speedUnit) {
        for (RuleUnits units : values()) {
            if (units.speedUnit.equals(speedUnit)) {
                return units;
            }
        }
        throw new IllegalArgumentException("speed unit must be km/h or mph, got \"" + speedUnit + "\"");
    }

    Speed speed(double number) {
        return this == KMH_M ? Speed.kmh(number) : Speed.mph(number);
    }

    double speedUnitMps() {
        return speedUnitMps;
    }

    double lengthUnitM() {
        return lengthUnitM;
    }

    /** The speed in this rule's unit as a person would write it: nine significant digits. */
    BigDecimal written(Speed speed) {
        return new BigDecimal(this == KMH_M ? speed.inKmh() : speed.inMph()).round(AS_PRINTED);
    }

    Distance distance(BigDecimal length) {
        return Distance.metres(length.doubleValue() * lengthUnitM);
    }
}
