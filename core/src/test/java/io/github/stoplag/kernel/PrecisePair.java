package io.github.stoplag.kernel;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * The outcome of a pair to about 28 digits, as a reference for the kernel. The motion is cut where a phase changes,
 * where the relative acceleration passes 0 and where the relative speed does, so that the gap is monotone in each
 * piece; cuts and the contact are found by bisection and secants inside a bracket.
 */
final class PrecisePair {
    private static final int MOST_STEPS = 300;
    private static final double ROOT_S = 1e-26;

    final boolean contact;
    /** The moment of contact. */
    final double timeS;

    final double smallestGapM;
    final double leaderMps;
    final double followerMps;
    final double closingMps;
    final boolean leaderStanding;
    /** How near the decision was: the distance of the deciding gap from the border of contact. */
    final double marginM;

    private final PreciseStop leader;
    private final PreciseStop follower;
    private final DoubleDouble gapM;

    // of the walk over the pieces
    private DoubleDouble phaseS = DoubleDouble.ZERO;
    private DoubleDouble smallest;
    private double nearestM = Double.POSITIVE_INFINITY;
    private DoubleDouble crossedS = DoubleDouble.of(Double.NaN);
    private DoubleDouble crossedPhaseS = DoubleDouble.ZERO;

    PrecisePair(Scenario s) {
        leader = new PreciseStop(s.leaderMps(), s.leaderOnsetS(), s.leaderBuildUpS(), s.leaderMps2());
        follower = new PreciseStop(s.followerMps(), s.followerOnsetS(), s.followerBuildUpS(), s.followerMps2());
        gapM = DoubleDouble.of(s.gapM());
        smallest = gapM;
        contact = walk();
        marginM = nearestM;
        smallestGapM = contact ? 0 : smallest.hi();
        timeS = crossedS.hi();
        DoubleDouble leaderAt = contact ? leader.speedMps(crossedS, crossedPhaseS) : DoubleDouble.of(Double.NaN);
        DoubleDouble followerAt = contact ? follower.speedMps(crossedS, crossedPhaseS) : DoubleDouble.of(Double.NaN);
        leaderMps = leaderAt.hi();
        followerMps = followerAt.hi();
        closingMps = followerAt.minus(leaderAt).hi();
        leaderStanding = contact && crossedS.compareTo(leader.restS) >= 0;
    }

    double leaderRestS() {
        return leader.restS.hi();
    }

    /** The gap at any time. */
    double gapAtM(double atS) {
        return gap(DoubleDouble.of(atS), DoubleDouble.of(atS)).hi();
    }

    private DoubleDouble gap(DoubleDouble t, DoubleDouble phase) {
        return gapM.plus(leader.positionM(t, phase)).minus(follower.positionM(t, phase));
    }

    private DoubleDouble gap(DoubleDouble t) {
        return gap(t, phaseS);
    }

    private DoubleDouble rate(DoubleDouble t) {
        return leader.speedMps(t, phaseS).minus(follower.speedMps(t, phaseS));
    }

    private DoubleDouble bend(DoubleDouble t) {
        return follower.decelMps2(t, phaseS).minus(leader.decelMps2(t, phaseS));
    }

    private boolean walk() {
        List<DoubleDouble> cuts = Stream.of(leader, follower)
                .flatMap(v -> Stream.of(v.onsetS, v.fullS, v.restS))
                .filter(t -> t.sign() > 0 && Double.isFinite(t.hi()))
                .sorted()
                .toList();
        DoubleDouble from = DoubleDouble.ZERO;
        for (DoubleDouble to : cuts) {
            if (to.compareTo(from) > 0) {
                phaseS = from.plus(to).times(0.5);
                if (interval(from, to)) {
                    return true;
                }
                from = to;
            }
        }
        phaseS = from.plus(DoubleDouble.of(1));
        return lastInterval(from);
    }

    private boolean interval(DoubleDouble from, DoubleDouble to) {
        List<DoubleDouble> bends = withRoot(from, to, this::bend);
        DoubleDouble start = from;
        for (int i = 1; i < bends.size(); i++) {
            List<DoubleDouble> turns = withRoot(bends.get(i - 1), bends.get(i), this::rate);
            for (int k = 1; k < turns.size(); k++) {
                if (piece(start, turns.get(k))) {
                    return true;
                }
                start = turns.get(k);
            }
        }
        return false;
    }

    /** From the last change on, both go on at constant speeds. */
    private boolean lastInterval(DoubleDouble from) {
        DoubleDouble rate = rate(phaseS);
        if (rate.sign() >= 0) {
            return false;
        }
        DoubleDouble start = gap(from);
        if (start.sign() > 0) {
            cross(from.plus(start.over(rate.negated())));
        } else if (Double.isNaN(crossedS.hi())) {
            cross(from);
        }
        return true;
    }

    private boolean piece(DoubleDouble from, DoubleDouble to) {
        DoubleDouble start = gap(from);
        DoubleDouble end = gap(to);
        if (end.compareTo(smallest) < 0) {
            smallest = end;
        }
        if (end.sign() > 0) {
            crossedS = DoubleDouble.of(Double.NaN);
        } else if (start.sign() > 0) {
            cross(root(from, to, this::gap));
        } else if (Double.isNaN(crossedS.hi()) && end.compareTo(start) < 0) {
            cross(from);
        }
        nearestM = Math.min(nearestM, Math.abs(end.hi() + GapKernel.GRAZING_M));
        return end.hi() < -GapKernel.GRAZING_M;
    }

    private void cross(DoubleDouble atS) {
        crossedS = atS;
        crossedPhaseS = phaseS;
    }

    private static List<DoubleDouble> withRoot(
            DoubleDouble from, DoubleDouble to, UnaryOperator<DoubleDouble> function) {
        List<DoubleDouble> points = new ArrayList<>(3);
        points.add(from);
        if (function.apply(from).sign() * function.apply(to).sign() < 0) {
            points.add(root(from, to, function));
        }
        points.add(to);
        return points;
    }

    /** The root in a bracket: secants with the Illinois rule, every third step a bisection. */
    private static DoubleDouble root(DoubleDouble from, DoubleDouble to, UnaryOperator<DoubleDouble> function) {
        DoubleDouble left = from;
        DoubleDouble right = to;
        DoubleDouble atLeft = function.apply(left);
        DoubleDouble atRight = function.apply(right);
        int side = 0;
        for (int step = 0; step < MOST_STEPS && right.minus(left).hi() > ROOT_S * (1 + right.hi()); step++) {
            DoubleDouble middle = step % 3 == 2
                    ? left.plus(right).times(0.5)
                    : left.plus(right.minus(left).times(atLeft.over(atLeft.minus(atRight))));
            DoubleDouble value = function.apply(middle);
            if (value.sign() == 0) {
                return middle;
            }
            if (value.sign() == atLeft.sign()) {
                left = middle;
                atLeft = value;
                atRight = side < 0 ? atRight.times(0.5) : atRight;
                side = -1;
            } else {
                right = middle;
                atRight = value;
                atLeft = side > 0 ? atLeft.times(0.5) : atLeft;
                side = 1;
            }
        }
        return left.plus(right).times(0.5);
    }
}
