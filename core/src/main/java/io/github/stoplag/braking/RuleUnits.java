package io.github.stoplag.braking;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.NamedUnit;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.Units;
import java.math.BigDecimal;
import java.math.MathContext;

/** The units in which a published rule takes its speed and gives its distances. */
@SuppressWarnings("ImmutableEnumChecker") // a unit of the table does not change
public enum RuleUnits {
    /** Kilometres per hour and metres. */
    KMH_M("km/h", "m"),
    /** Miles per hour and international feet. */
    MPH_FT("mph", "ft");

    // a speed that went through m/s comes back as 69.99999999999999; rules that round halves up need the 70
    private static final MathContext AS_PRINTED = new MathContext(9);

    private final NamedUnit speed;
    private final NamedUnit length;

    RuleUnits(String speed, String length) {
        this.speed = Units.SPEED.unit(speed);
        this.length = Units.DISTANCE.unit(length);
    }

    static RuleUnits of(String speedUnit) {
        NamedUnit wanted = Units.SPEED.unit(speedUnit);
        for (RuleUnits units : values()) {
            if (units.speed.equals(wanted)) {
                return units;
            }
        }
        throw new IllegalArgumentException("speed unit of a rule must be km/h or mph, got \"" + speedUnit + "\"");
    }

    Speed speed(double number) {
        return new Speed(speed.toSi(number));
    }

    double speedUnitMps() {
        return speed.toSi(1);
    }

    double lengthUnitM() {
        return length.toSi(1);
    }

    /** The speed in this rule's unit as a person would write it: nine significant digits. */
    BigDecimal written(Speed speed) {
        return new BigDecimal(this.speed.fromSi(speed.inMps())).round(AS_PRINTED);
    }

    Distance distance(BigDecimal number) {
        return Distance.metres(number.doubleValue() * lengthUnitM());
    }
}
