package io.github.stoplag.following;

import io.github.stoplag.kernel.Trajectory;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * A stretch of time in which gap and closing speed are polynomials of the time τ since its start:
 *
 * <pre>
 *   h = h₀ − c₀ τ + b τ²/2 + q τ³/6      c = −h′ = c₀ − b τ − q τ²/2
 * </pre>
 *
 * @param startS when it starts
 * @param lengthS how long it lasts; the last one up to the contact, or until the gap closes no more
 * @param gapM the gap h₀ at its start
 * @param closingMps the closing speed c₀ at its start
 * @param bendMps2 the follower's deceleration less the leader's, b
 * @param bendRateMps3 how fast that grows, q
 */
record GapPiece(double startS, double lengthS, double gapM, double closingMps, double bendMps2, double bendRateMps3) {

    /** Cuts the motion of both vehicles, up to a contact at endS if that is finite. */
    static List<GapPiece> of(Encounter encounter, double endS) {
        double[] starts = Stream.of(encounter.leader(), encounter.follower())
                .flatMap(motion -> motion.phases().stream())
                .mapToDouble(Trajectory.Phase::startS)
                .filter(startS -> startS < endS || startS == 0)
                .sorted()
                .distinct()
                .toArray();
        Walk leader = new Walk(encounter.leader());
        Walk follower = new Walk(encounter.follower());
        List<GapPiece> pieces = new ArrayList<>();
        for (int i = 0; i < starts.length; i++) {
            double startS = starts[i];
            double untilS = i + 1 < starts.length ? starts[i + 1] : endS;
            leader.goTo(startS);
            follower.goTo(startS);
            GapPiece piece = new GapPiece(
                    startS,
                    untilS - startS,
                    encounter.gap().inMetres() + (leader.positionM() - follower.positionM()),
                    follower.speedMps() - leader.speedMps(),
                    follower.decelMps2() - leader.decelMps2(),
                    follower.phase.jerkMps3() - leader.phase.jerkMps3());
            pieces.add(piece.lengthS < Double.POSITIVE_INFINITY ? piece : piece.whileClosing());
        }
        return pieces;
    }

    /** Goes along a motion's phases, forward only. */
    private static final class Walk {
        private final List<Trajectory.Phase> phases;
        private int next = 1;
        private Trajectory.Phase phase;
        private double tauS;

        private Walk(Trajectory motion) {
            phases = motion.phases();
            phase = phases.get(0);
        }

        private void goTo(double timeS) {
            while (next < phases.size() && phases.get(next).startS() <= timeS) {
                phase = phases.get(next);
                next++;
            }
            tauS = timeS - phase.startS();
        }

        private double positionM() {
            return phase.positionM()
                    + tauS * (phase.speedMps() - tauS * (0.5 * phase.decelMps2() + tauS * phase.jerkMps3() / 6));
        }

        private double speedMps() {
            return Math.max(0, phase.speedMps() - tauS * (phase.decelMps2() + 0.5 * tauS * phase.jerkMps3()));
        }

        private double decelMps2() {
            return phase.decelMps2() + tauS * phase.jerkMps3();
        }
    }

    /** The last piece without a contact: no jerk, and the gap closes for a limited time if at all. */
    private GapPiece whileClosing() {
        double closingS = closingMps > 0 && bendMps2 > 0 ? closingMps / bendMps2 : 0;
        return new GapPiece(startS, closingS, gapM, closingMps, bendMps2, bendRateMps3);
    }

    double gapAtM(double tauS) {
        return gapM + tauS * (-closingMps + tauS * (0.5 * bendMps2 + tauS * bendRateMps3 / 6));
    }

    double closingAtMps(double tauS) {
        return closingMps - tauS * (bendMps2 + 0.5 * tauS * bendRateMps3);
    }

    double bendAtMps2(double tauS) {
        return bendMps2 + tauS * bendRateMps3;
    }

    /** The ends of the stretches in which the gap steadily closes or opens. */
    double[] turns() {
        return Polynomial.cuts(lengthS, Polynomial.quadraticRoots(closingMps, -bendMps2, -0.5 * bendRateMps3));
    }

    /**
     * The ends of the stretches in which the gap is steadily above or below a number of seconds at the closing speed.
     */
    double[] crossings(double thresholdS) {
        double[] shortfall = {
            gapM - thresholdS * closingMps,
            -closingMps + thresholdS * bendMps2,
            0.5 * (bendMps2 + thresholdS * bendRateMps3),
            bendRateMps3 / 6
        };
        double[] monotone =
                Polynomial.cuts(lengthS, Polynomial.quadraticRoots(shortfall[1], 2 * shortfall[2], 3 * shortfall[3]));
        return Polynomial.cuts(
                lengthS,
                DoubleStream.iterate(0, i -> i < monotone.length - 1, i -> i + 1)
                        .flatMap(i -> Polynomial.crossing(shortfall, monotone[(int) i], monotone[(int) i + 1]))
                        .toArray());
    }
}
