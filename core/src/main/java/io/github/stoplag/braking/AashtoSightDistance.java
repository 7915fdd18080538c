package io.github.stoplag.braking;

import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Source;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * AASHTO stopping sight distance on a level road as the design table prints it, with its rounded coefficients.
 *
 * <pre>
 *   US customary:  d = 1.47 V t + 1.075 V²/a   V in mph,  d in ft, a = 11.2 ft/s²
 *   metric:        d = 0.278 V t + 0.039 V²/a  V in km/h, d in m,  a = 3.4 m/s²       t = 2.5 s in both
 * </pre>
 *
 * <p>Each part is rounded half up to 0.1, the calculated distance is the sum of the rounded parts, the design value the
 * next multiple of 5 from there up. The same times and decelerations without any rounding are {@link #exact()}: 1.47 stands
 * for 22/15 and 0.278 for 1/3.6.
 *
 * <p>Validated range: the table's design speeds, 15 to 80 mph and 20 to 130 km/h. A sight distance for design, not the stop
 * of a given vehicle.
 *
 * <p>Source: AASHTO, A Policy on Geometric Design of Highways and Streets, table of stopping sight distance on level
 * roadways (2001 to 2018 editions); the equation as repeated in the TxDOT Roadway Design Manual, 4.11.1.
 */
public final class AashtoSightDistance implements StoppingRule {
    private static final BigDecimal REACTION_S = new BigDecimal("2.5");
    private static final BigDecimal DESIGN_STEP = new BigDecimal(5);

    /** Miles per hour and feet. */
    public static final AashtoSightDistance US_CUSTOMARY = new AashtoSightDistance(
            "AASHTO stopping sight distance, US customary",
            RuleUnits.MPH_FT,
            new BigDecimal("1.47"),
            new BigDecimal("1.075"),
            new BigDecimal("11.2"),
            Deceleration.ftps2(11.2));

    /** Kilometres per hour and metres. */
    public static final AashtoSightDistance METRIC = new AashtoSightDistance(
            "AASHTO stopping sight distance, metric",
            RuleUnits.KMH_M,
            new BigDecimal("0.278"),
            new BigDecimal("0.039"),
            new BigDecimal("3.4"),
            Deceleration.mps2(3.4));

    private final String name;
    private final RuleUnits units;
    private final BigDecimal lagPerSpeed;
    private final BigDecimal brakingPerSquare;
    private final Deceleration deceleration;

    private AashtoSightDistance(
            String name,
            RuleUnits units,
            BigDecimal perSpeedAndTime,
            BigDecimal timesDeceleration,
            BigDecimal printedDeceleration,
            Deceleration deceleration) {
        this.name = name;
        this.units = units;
        this.lagPerSpeed = perSpeedAndTime.multiply(REACTION_S);
        this.brakingPerSquare = timesDeceleration.divide(printedDeceleration, MathContext.DECIMAL64);
        this.deceleration = deceleration;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public Source source() {
        return Source.seen(
                "AASHTO, A Policy on Geometric Design of Highways and Streets (2001 to 2018), equation as repeated in the"
                        + " TxDOT Roadway Design Manual",
                "stopping sight distance on level roadways");
    }

    @Override
    public Parts at(Speed speed) {
        return new Parts(units.distance(lag(speed)), units.distance(braking(speed)));
    }

    /**
     * Gives the design value: the calculated distance raised to the next multiple of 5 ft or 5 m.
     *
     * @param speed the design speed
     * @return the design stopping sight distance
     */
    public Distance designDistance(Speed speed) {
        BigDecimal steps = lag(speed).add(braking(speed)).divide(DESIGN_STEP, 0, RoundingMode.CEILING);
        return units.distance(steps.multiply(DESIGN_STEP));
    }

    /**
     * Gives the rule with the same reaction time and deceleration and exact kinematics, without rounded coefficients.
     *
     * @return the exact rule
     */
    public KinematicRule exact() {
        return new KinematicRule(
                name + ", exact kinematics", TimeSpan.seconds(REACTION_S.doubleValue()), deceleration, source());
    }

    @Override
    public String toString() {
        return name;
    }

    private BigDecimal lag(Speed speed) {
        return lagPerSpeed.multiply(units.written(speed)).setScale(1, RoundingMode.HALF_UP);
    }

    private BigDecimal braking(Speed speed) {
        BigDecimal v = units.written(speed);
        return brakingPerSquare.multiply(v).multiply(v).setScale(1, RoundingMode.HALF_UP);
    }
}
