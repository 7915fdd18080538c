package io.github.stoplag.braking;

import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Source;

/**
 * AASHTO stopping sight distance as the design tables print it, with their rounded coefficients, on the level and on
 * grades.
 *
 * <pre>
 *   level   US customary:  d = 1.47 V t + 1.075 V²/a                    V in mph,  d in ft, a = 11.2 ft/s²
 *           metric:        d = 0.278 V t + 0.039 V²/a                   V in km/h, d in m,  a = 3.4 m/s²
 *   grade   US customary:  d = 1.47 V t + V²/(30 (0.348 + G))           0.348 stands for 11.2/32.2
 *           metric:        d = 0.278 V t + V²/(254 (3.4/9.81 + G))      t = 2.5 s throughout
 * </pre>
 *
 * <p>On the level each part is rounded half up to 0.1, the calculated distance is the sum of the rounded parts, the
 * design value the next multiple of 5 from there up. On grades the table prints the next whole foot or metre up. A
 * grade of 0 in the grade form differs a little from the level form, whose coefficients are rounded otherwise. The same
 * times and decelerations without any rounding are {@link #exact()}: 1.47 stands for 22/15 and 0.278 for 1/3.6.
 *
 * <p>Validated range: the table's design speeds, 15 to 80 mph and 20 to 130 km/h, grades of 3, 6 and 9 %. A sight
 * distance for design, not the stop of a given vehicle.
 *
 * <p>Source: AASHTO, A Policy on Geometric Design of Highways and Streets, tables of stopping sight distance on level
 * roadways and on grades (2001 to 2018 editions); the level equation as repeated in the TxDOT Roadway Design Manual,
 * 4.11.1.
 */
public final class AashtoSightDistance implements GradedStoppingRule {
    /** Miles per hour and feet. */
    public static final AashtoSightDistance US_CUSTOMARY =
            new AashtoSightDistance("aashto-us", "aashto-us-grades", Deceleration.ftps2(11.2));

    /** Kilometres per hour and metres. */
    public static final AashtoSightDistance METRIC =
            new AashtoSightDistance("aashto-metric", "aashto-metric-grades", Deceleration.mps2(3.4));

    private final PublishedRule level;
    private final PublishedRule grades;
    private final Deceleration deceleration;

    private AashtoSightDistance(String levelKey, String gradesKey, Deceleration deceleration) {
        this.level = PublishedRule.published(levelKey);
        this.grades = PublishedRule.published(gradesKey);
        this.deceleration = deceleration;
    }

    @Override
    public String name() {
        return level.rule().name();
    }

    @Override
    public Source source() {
        return level.rule().source();
    }

    @Override
    public Evidence evidence(Speed speed) {
        return level.evidence(speed);
    }

    @Override
    public Parts at(Speed speed) {
        return level.asPublished(speed);
    }

    @Override
    public Parts at(Speed speed, Grade grade) {
        return grades.asPublished(speed, grade);
    }

    /**
     * Gives the design value on the level: the calculated distance raised to the next multiple of 5 ft or 5 m.
     *
     * @param speed the design speed
     * @return the design stopping sight distance
     */
    public Distance designDistance(Speed speed) {
        return level.designDistance(speed);
    }

    /**
     * Gives the design value on a grade: the distance raised to the next whole foot or metre.
     *
     * @param speed the design speed
     * @param grade the grade in the direction of travel, positive uphill
     * @return the stopping sight distance on the grade
     * @throws IllegalArgumentException if the grade outweighs the deceleration
     */
    public Distance designDistance(Speed speed, Grade grade) {
        return grades.designDistance(speed, grade);
    }

    /**
     * Gives the rule with the same reaction time and deceleration and exact kinematics, without rounded coefficients.
     *
     * @return the exact rule
     */
    public KinematicRule exact() {
        return new KinematicRule(name() + ", exact kinematics", TimeSpan.seconds(2.5), deceleration, source());
    }

    @Override
    public String toString() {
        return name();
    }
}
