package io.github.stoplag.following;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.PublishedRange;
import io.github.stoplag.source.Source;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Published measures of how near a moment of following is to a collision.
 *
 * <p>h gap [m], v_F, v_L speeds of follower and leader [m/s], a_L the leader's deceleration [m/s²]. Ranges: h in (0,
 * 1e5] m unless said otherwise, speeds in [0, 150] m/s. Each function names its source. The thresholds that authors
 * drew are in {@link #published()}; none is applied here.
 *
 * <p>For the course over a whole motion see {@link TimeToCollision}.
 *
 * <pre>{@code
 * SurrogateMeasures.timeToCollision(Distance.metres(30), Speed.mps(25), Speed.mps(15)).orElseThrow(); // 3 s
 * SurrogateMeasures.decelerationToAvoidCrash(Distance.metres(30), Speed.mps(25), Speed.mps(15)); // 1.66667 m/s²
 * }</pre>
 */
public final class SurrogateMeasures {
    /** Where the deceleration rate to avoid a crash comes from. */
    public static final Source DRAC_SOURCE = Source.seen(
            "Westhofen et al., Criticality metrics for automated driving, 2022", "required longitudinal acceleration");

    /** Where the deceleration to safety time comes from. */
    public static final Source DST_SOURCE =
            Source.seen("Westhofen et al., Criticality metrics for automated driving, 2022, after Hupfer 1997", "DST");

    /** Where the proportion of stopping distance comes from. */
    public static final Source PSD_SOURCE =
            Source.fromMemory("Allen, Shin & Cooper, Transportation Research Record 667, 1978", "PSD");

    private static final Catalogue<PublishedRange> PUBLISHED =
            Catalogue.readRanges("threshold", SurrogateMeasures.class, "surrogate_thresholds.csv");

    private SurrogateMeasures() {}

    /**
     * Gives the time to collision at constant speeds: TTC = h / (v_F − v_L). Source: {@link TimeToCollision#SOURCE}.
     *
     * @param gap the gap h, in [0, 1e5] m
     * @param follower the follower's speed v_F
     * @param leader the leader's speed v_L
     * @return TTC, or nothing if the gap does not close or only in more than 1e6 s
     * @throws IllegalArgumentException if the gap is out of range
     */
    public static Optional<TimeSpan> timeToCollision(Distance gap, Speed follower, Speed leader) {
        Objects.requireNonNull(follower, "follower");
        Objects.requireNonNull(gap, "gap");
        Objects.requireNonNull(leader, "leader");
        Ranges.GAP.check(gap.inMetres());
        double closingMps = follower.inMps() - leader.inMps();
        return closingMps > 0 && gap.inMetres() <= 1e6 * closingMps
                ? Optional.of(TimeSpan.seconds(gap.inMetres() / closingMps))
                : Optional.empty();
    }

    /**
     * Gives the deceleration rate to avoid a crash behind a leader of constant speed: DRAC = (v_F − v_L)² / (2 h), 0 if
     * the gap does not close. Source: {@link #DRAC_SOURCE} with a leader of constant speed.
     *
     * @param gap the gap h
     * @param follower the follower's speed v_F
     * @param leader the leader's speed v_L
     * @return DRAC
     * @throws IllegalArgumentException if the gap is out of range or DRAC would exceed 200 m/s²
     */
    public static Deceleration decelerationToAvoidCrash(Distance gap, Speed follower, Speed leader) {
        Objects.requireNonNull(follower, "follower");
        Objects.requireNonNull(gap, "gap");
        Objects.requireNonNull(leader, "leader");
        return decelerationToAvoidCrash(gap, follower, leader, Deceleration.mps2(0));
    }

    /**
     * Gives the constant deceleration that just avoids contact behind a leader that brakes at a constant rate to rest.
     *
     * <pre>
     *   a_L + (v_F − v_L)² / (2 h)           if 2 h / (v_F − v_L) ≤ v_L / a_L: one speed before the leader stands
     *   v_F² / (2 (h + v_L² / (2 a_L)))      otherwise, and for a follower that is not faster
     * </pre>
     *
     * <p>Source: {@link #DRAC_SOURCE} for the first line, which there has decelerations negative and prints the two
     * terms with opposite signs; here both are magnitudes and add up. The second line, for a leader that stands first,
     * is derived.
     *
     * @param gap the gap h
     * @param follower the follower's speed v_F
     * @param leader the leader's speed v_L
     * @param leaderDeceleration the leader's deceleration a_L; 0 for constant speed
     * @return the deceleration
     * @throws IllegalArgumentException if the gap is out of range or the deceleration would exceed 200 m/s²
     */
    public static Deceleration decelerationToAvoidCrash(
            Distance gap, Speed follower, Speed leader, Deceleration leaderDeceleration) {
        Objects.requireNonNull(follower, "follower");
        Objects.requireNonNull(gap, "gap");
        Objects.requireNonNull(leader, "leader");
        Objects.requireNonNull(leaderDeceleration, "leaderDeceleration");
        double gapM = gap(gap);
        double closingMps = follower.inMps() - leader.inMps();
        double leaderMps2 = leaderDeceleration.inMps2();
        if (leaderMps2 == 0 && leader.inMps() > 0) {
            double closing = Math.max(0, closingMps);
            return rate("deceleration rate to avoid a crash", closing * closing / (2 * gapM));
        }
        if (closingMps > 0 && 2 * gapM * leaderMps2 <= leader.inMps() * closingMps) {
            return rate("deceleration rate to avoid a crash", leaderMps2 + closingMps * closingMps / (2 * gapM));
        }
        double roomM = gapM + (leaderMps2 > 0 ? leader.inMps() * leader.inMps() / (2 * leaderMps2) : 0);
        return rate("deceleration rate to avoid a crash", follower.inMps() * follower.inMps() / (2 * roomM));
    }

    /**
     * Gives the deceleration to safety time: what keeps the follower a safety time behind a leader of constant speed.
     *
     * <p>DST = (v_F − v_L)² / (2 (h − v_L t_s)), 0 if the gap does not close. Source: {@link #DST_SOURCE}.
     *
     * @param gap the gap h, above v_L t_s
     * @param follower the follower's speed v_F
     * @param leader the leader's speed v_L
     * @param safetyTime the safety time t_s, in [0, 30] s
     * @return DST
     * @throws IllegalArgumentException if an input is out of range, the gap is not above the safety distance, or DST
     *     would exceed 200 m/s²
     */
    public static Deceleration decelerationToSafetyTime(
            Distance gap, Speed follower, Speed leader, TimeSpan safetyTime) {
        Objects.requireNonNull(follower, "follower");
        Objects.requireNonNull(gap, "gap");
        Objects.requireNonNull(leader, "leader");
        Objects.requireNonNull(safetyTime, "safetyTime");
        double keptM = leader.inMps() * Ranges.REACTION.check("safety time", safetyTime.inSeconds());
        Check.above("gap behind a leader with this safety time", gap(gap), keptM, 1e5, "m");
        double closingMps = Math.max(0, follower.inMps() - leader.inMps());
        return rate("deceleration to safety time", closingMps * closingMps / (2 * (gap.inMetres() - keptM)));
    }

    /**
     * Gives the proportion of stopping distance: the distance that remains to the point of a possible collision over
     * the shortest one in which the vehicle could stop; below 1 it cannot stop in time.
     *
     * <p>PSD = s / (v² / (2 a)). Source: {@link #PSD_SOURCE}.
     *
     * @param remaining the remaining distance s, in [0, 1e5] m
     * @param speed the vehicle's speed v, above 0
     * @param most the hardest deceleration a it is taken to reach, above 0
     * @return PSD
     * @throws IllegalArgumentException if an input is out of range, or the vehicle so slow that PSD exceeds 1e300
     */
    public static double proportionOfStoppingDistanceRatio(Distance remaining, Speed speed, Deceleration most) {
        Objects.requireNonNull(most, "most");
        Objects.requireNonNull(remaining, "remaining");
        Ranges.GAP.check("remaining distance", remaining.inMetres());
        Ranges.MOVING.check(speed.inMps());
        Ranges.BRAKING.check("hardest deceleration", most.inMps2());
        double ratio = remaining.inMetres() / speed.inMps() * (2 * most.inMps2() / speed.inMps());
        return Check.inRange("proportion of stopping distance at " + speed, ratio, 0, 1e300, "");
    }

    /**
     * Lists thresholds that authors drew for these measures.
     *
     * @return the rows of the table in order; the row's id starts with the measure
     */
    public static List<PublishedRange> published() {
        return PUBLISHED.list();
    }

    /**
     * Finds a threshold that authors drew for one of these measures.
     *
     * @param id the name of the row, which starts with the measure
     * @return the threshold
     * @throws IllegalArgumentException if no row has this name; the message offers the nearest
     */
    public static PublishedRange published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
    }

    private static double gap(Distance gap) {
        return Ranges.APART.check(gap.inMetres());
    }

    private static Deceleration rate(String name, double decelMps2) {
        return Deceleration.mps2(Ranges.DECELERATION.check(name, decelMps2));
    }
}
