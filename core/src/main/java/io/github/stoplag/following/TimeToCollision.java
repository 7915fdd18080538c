package io.github.stoplag.following;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Source;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * The time to collision over a whole motion: how long the gap would last at the closing speed of the moment.
 *
 * <pre>
 *   TTC(t) = h(t) / c(t)  while c > 0
 *   TET(τ) = ∫ 1[TTC ≤ τ] dt      TIT(τ) = ∫ (τ − TTC) 1[TTC ≤ τ] dt
 * </pre>
 *
 * <p>h gap [m], c closing speed [m/s], τ threshold [s], TET time exposed [s], TIT time integrated [s²]. The course ends
 * at the contact. TTC falls where f = c² + h c′ is positive; f is convex in every phase of constant jerk (f″ = c′²), so
 * its few roots are bracketed and the smallest value cannot be missed. The exposed times are roots of a cubic; the
 * integral is by adaptive Gauss quadrature.
 *
 * <p>Range: τ in (0, 1e4] s. Source: {@link #SOURCE} for TTC, {@link #EXPOSURE_SOURCE} for TET and TIT, there as sums
 * over small time steps, here as the integrals they tend to.
 */
public final class TimeToCollision {
    /** Where time to collision comes from. */
    public static final Source SOURCE =
            Source.fromMemory("Hayward, Near-miss determination through use of a scale of danger, 1972", "definition");

    /** Where the exposed and the integrated time come from. */
    public static final Source EXPOSURE_SOURCE =
            Source.seen("Minderhoud & Bovy, Accident Analysis and Prevention 33:89-97, 2001", "TET and TIT");

    private static final GaussIntegratorFactory GAUSS = new GaussIntegratorFactory();
    private static final int POINTS = 12;
    private static final double TOLERANCE = 1e-12;
    private static final int MOST_HALVINGS = 40;

    private final List<GapPiece> pieces;
    private final Smallest smallest;

    private TimeToCollision(List<GapPiece> pieces, Smallest smallest) {
        this.pieces = pieces;
        this.smallest = smallest;
    }

    /** The smallest time to collision of a motion, or that there is none. */
    public sealed interface Smallest {
        /**
         * The gap closes at some time.
         *
         * @param value the smallest time to collision, 0 on a contact or a touch
         * @param at when it is reached
         */
        record Reached(TimeSpan value, TimeSpan at) implements Smallest {

            /**
             * Refuses nulls.
             *
             * @param value the smallest time to collision, 0 on a contact or a touch
             * @param at when it is reached
             * @throws NullPointerException if one that is required is null
             */
            public Reached {
                Objects.requireNonNull(at, "at");
                Objects.requireNonNull(value, "value");
            }
        }

        /** The follower is at no time faster than the leader. */
        record NeverClosing() implements Smallest {}
    }

    static TimeToCollision of(Encounter encounter) {
        PairOutcome outcome = encounter.outcome();
        Optional<TimeSpan> touch = Optional.empty();
        double endS = Double.POSITIVE_INFINITY;
        if (outcome instanceof PairOutcome.Contact contact) {
            touch = Optional.of(contact.at());
            endS = contact.at().inSeconds();
        } else if (outcome instanceof PairOutcome.NoContact none && none.grazing()) {
            touch = Optional.of(none.at());
        }
        List<GapPiece> pieces = GapPiece.of(encounter, endS);
        Smallest smallest = touch.<Smallest>map(at -> new Smallest.Reached(TimeSpan.seconds(0), at))
                .orElseGet(() -> smallest(pieces));
        return new TimeToCollision(pieces, smallest);
    }

    private static Smallest smallest(List<GapPiece> pieces) {
        return pieces.stream()
                .flatMap(TimeToCollision::candidates)
                .min(Comparator.comparing(Smallest.Reached::value))
                .<Smallest>map(reached -> reached)
                .orElseGet(Smallest.NeverClosing::new);
    }

    private static Stream<Smallest.Reached> candidates(GapPiece piece) {
        double[] turns = piece.turns();
        Stream<Smallest.Reached> found = Stream.empty();
        for (int i = 0; i + 1 < turns.length; i++) {
            double from = turns[i];
            double to = turns[i + 1];
            if (piece.closingAtMps(0.5 * (from + to)) > 0) {
                Stream<Double> times = Stream.concat(Stream.of(from, to), lowest(piece, from, to).stream());
                found = Stream.concat(
                        found,
                        times.filter(tauS -> piece.closingAtMps(tauS) > 0)
                                .filter(tauS -> ttcS(piece, tauS) <= 1e6)
                                .map(tauS -> new Smallest.Reached(
                                        TimeSpan.seconds(ttcS(piece, tauS)), TimeSpan.seconds(piece.startS() + tauS))));
            }
        }
        return found;
    }

    /** Where in a closing stretch TTC stops falling and starts to rise: the first root of the convex f. */
    private static Optional<Double> lowest(GapPiece piece, double from, double to) {
        if (!(fall(piece, from) > 0)) {
            return Optional.empty();
        }
        double end = to;
        if (fall(piece, to) >= 0) {
            if (!(fallRate(piece, from) < 0 && fallRate(piece, to) > 0)) {
                return Optional.empty();
            }
            end = Polynomial.root(tauS -> fallRate(piece, tauS), from, to);
        }
        return fall(piece, end) < 0
                ? Optional.of(Polynomial.root(tauS -> fall(piece, tauS), from, end))
                : Optional.empty();
    }

    private static double fall(GapPiece piece, double tauS) {
        double closing = piece.closingAtMps(tauS);
        return closing * closing - piece.gapAtM(tauS) * piece.bendAtMps2(tauS);
    }

    private static double fallRate(GapPiece piece, double tauS) {
        return -piece.closingAtMps(tauS) * piece.bendAtMps2(tauS) - piece.gapAtM(tauS) * piece.bendRateMps3();
    }

    private static double ttcS(GapPiece piece, double tauS) {
        return piece.gapAtM(tauS) / piece.closingAtMps(tauS);
    }

    /**
     * Gives the smallest value of the whole motion.
     *
     * @return the value and when, or that the gap never closes
     */
    public Smallest smallest() {
        return smallest;
    }

    /**
     * Gives the value at a time.
     *
     * @param time the time, not negative
     * @return the time to collision, or nothing while the gap does not close, after a contact, or above 1e6 s
     * @throws IllegalArgumentException if the time is not in [0, 1e6] s
     */
    public Optional<TimeSpan> at(TimeSpan time) {
        double timeS = Ranges.ELAPSED.check(time.inSeconds());
        return pieces.stream()
                .filter(piece -> timeS >= piece.startS() && timeS <= piece.startS() + piece.lengthS())
                .reduce((earlier, later) -> later)
                .filter(piece -> piece.closingAtMps(timeS - piece.startS()) > 0)
                .map(piece -> Math.max(0, ttcS(piece, timeS - piece.startS())))
                .filter(ttcS -> ttcS <= 1e6)
                .map(TimeSpan::seconds);
    }

    /**
     * Gives the first time at which the time to collision is at or below a threshold.
     *
     * @param threshold the threshold τ, in (0, 1e4] s
     * @return the time, or nothing if it never is so small
     * @throws IllegalArgumentException if the threshold is out of range
     */
    public Optional<TimeSpan> firstAtOrBelow(TimeSpan threshold) {
        Objects.requireNonNull(threshold, "threshold");
        double thresholdS = Check.above("time-to-collision threshold", threshold.inSeconds(), 0, 1e4, "s");
        for (GapPiece piece : pieces) {
            double[] cuts = piece.crossings(thresholdS);
            for (int i = 0; i + 1 < cuts.length; i++) {
                if (isBelow(piece, 0.5 * (cuts[i] + cuts[i + 1]), thresholdS)) {
                    return Optional.of(TimeSpan.seconds(piece.startS() + cuts[i]));
                }
            }
        }
        return Optional.empty();
    }

    private static boolean isBelow(GapPiece piece, double tauS, double thresholdS) {
        double closing = piece.closingAtMps(tauS);
        return closing > 0 && piece.gapAtM(tauS) <= thresholdS * closing;
    }

    /**
     * Gives the time exposed: for how long the time to collision is at or below a threshold.
     *
     * @param threshold the threshold τ, in (0, 1e4] s
     * @return TET
     * @throws IllegalArgumentException if the threshold is out of range
     */
    public TimeSpan exposed(TimeSpan threshold) {
        Objects.requireNonNull(threshold, "threshold");
        return TimeSpan.seconds(sum(threshold, (piece, from, to) -> to - from));
    }

    /**
     * Gives the time integrated: how far below a threshold the time to collision lies, integrated over the time
     * exposed.
     *
     * @param threshold the threshold τ, in (0, 1e4] s
     * @return TIT in s²
     * @throws IllegalArgumentException if the threshold is out of range
     */
    public double integratedS2(TimeSpan threshold) {
        Objects.requireNonNull(threshold, "threshold");
        double thresholdS = threshold.inSeconds();
        return sum(threshold, (piece, from, to) -> {
            UnivariateFunction below = tauS -> thresholdS - ttcS(piece, tauS);
            return halved(below, from, to, gauss(below, from, to), TOLERANCE * thresholdS * (to - from), MOST_HALVINGS);
        });
    }

    /**
     * Halves until two halves agree with the whole. A course that starts with an endless time to collision bends over
     * many powers of ten, which a rule of even steps does not follow; rounding cannot keep the halving going, since the
     * tolerance does not shrink with the stretch.
     */
    private static double halved(
            UnivariateFunction function, double from, double to, double whole, double tolerance, int halvings) {
        double middle = 0.5 * (from + to);
        double left = gauss(function, from, middle);
        double right = gauss(function, middle, to);
        return halvings == 0 || Math.abs(left + right - whole) <= tolerance
                ? left + right
                : halved(function, from, middle, left, tolerance, halvings - 1)
                        + halved(function, middle, to, right, tolerance, halvings - 1);
    }

    private static double gauss(UnivariateFunction function, double from, double to) {
        return GAUSS.legendre(POINTS, from, to).integrate(function);
    }

    private double sum(TimeSpan threshold, Part part) {
        double thresholdS = Check.above("time-to-collision threshold", threshold.inSeconds(), 0, 1e4, "s");
        double sum = 0;
        for (GapPiece piece : pieces) {
            double[] cuts = piece.crossings(thresholdS);
            for (int i = 0; i + 1 < cuts.length; i++) {
                if (cuts[i + 1] > cuts[i] && isBelow(piece, 0.5 * (cuts[i] + cuts[i + 1]), thresholdS)) {
                    sum += part.over(piece, cuts[i], cuts[i + 1]);
                }
            }
        }
        return sum;
    }

    private interface Part {
        double over(GapPiece piece, double fromS, double toS);
    }
}
