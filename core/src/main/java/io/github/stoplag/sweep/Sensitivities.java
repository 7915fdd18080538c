package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.Empirical;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * What the result of a plan depends on, for one lamp: shares of variance, and each axis moved alone.
 *
 * @param lamp the lamp
 * @param contact the shares of the variance of contact (1 or 0), largest total first; empty if there are none
 * @param closingSpeed the same of the closing speed, 0 without contact
 * @param swings the contact probability with one axis held low and high, widest first
 * @param leftOut how many base scenarios the shares leave out because they or a mixture of two are impossible
 * @param without why there are no shares; empty if there are
 */
public record Sensitivities(
        String lamp,
        List<SobolIndices.Index> contact,
        List<SobolIndices.Index> closingSpeed,
        List<Swing> swings,
        long leftOut,
        Optional<String> without) {
    /** How many base scenarios the shares are estimated from, drawn anew, whatever the plan's number and design. */
    public static final int BASE = 1 << 15;

    private static final double LOW = 0.1;
    private static final double HIGH = 0.9;
    private static final double MOST_LEFT_OUT = 0.05;
    private static final int FEWEST = 200;
    private static final int GIVEN = 4096;

    /**
     * Refuses nulls.
     *
     * @param lamp the lamp
     * @param contact the shares of the variance of contact (1 or 0), largest total first; empty if there are none
     * @param closingSpeed the same of the closing speed, 0 without contact
     * @param swings the contact probability with one axis held low and high, widest first
     * @param leftOut how many base scenarios the shares leave out because they or a mixture of two are impossible
     * @param without why there are no shares; empty if there are
     * @throws NullPointerException if one that is required is null
     */
    public Sensitivities {
        Objects.requireNonNull(closingSpeed, "closingSpeed");
        Objects.requireNonNull(contact, "contact");
        Objects.requireNonNull(lamp, "lamp");
        Objects.requireNonNull(swings, "swings");
        Objects.requireNonNull(without, "without");
    }

    /**
     * The contact probability with one axis held and all others drawn.
     *
     * @param column the axis
     * @param low its 10 % quantile or lowest level
     * @param high its 90 % quantile or highest level
     * @param atLow the proportion at the low value
     * @param atHigh the proportion at the high value
     * @param drawn whether the ends are quantiles
     */
    public record Swing(String column, double low, double high, Proportion atLow, Proportion atHigh, boolean drawn) {

        /**
         * Refuses nulls.
         *
         * @param column the axis
         * @param low its 10 % quantile or lowest level
         * @param high its 90 % quantile or highest level
         * @param atLow the proportion at the low value
         * @param atHigh the proportion at the high value
         * @param drawn whether the ends are quantiles
         * @throws NullPointerException if one that is required is null
         */
        public Swing {
            Objects.requireNonNull(atHigh, "atHigh");
            Objects.requireNonNull(atLow, "atLow");
            Objects.requireNonNull(column, "column");
        }

        double width() {
            return Math.abs(atHigh.value() - atLow.value());
        }
    }

    /**
     * Computes them.
     *
     * @param file the plan
     * @param threads how many threads
     * @return the sensitivities of each lamp in order
     */
    public static List<Sensitivities> of(PlanFile file, int threads) {
        Plan plan = file.plan().withDesign(Design.random(BASE));
        List<Held> held = held(file, plan, threads);
        return file.lamps().stream()
                .map(lamp -> of(file, plan, lamp, swings(held, lamp), threads))
                .toList();
    }

    private static Sensitivities of(PlanFile file, Plan plan, String lamp, List<Swing> swings, int threads) {
        if (!plan.correlations().isEmpty()) {
            return without(lamp, swings, "shares of variance need independent axes");
        }
        try {
            String closing = PairOutput.CLOSING_SPEED.column(lamp);
            SobolIndices contact = SobolIndices.of(plan, file.model(), PairOutput.CONTACT.column(lamp), threads);
            long leftOut =
                    contact.rejects().stream().mapToLong(Rejects.Entry::count).sum();
            if (leftOut > MOST_LEFT_OUT * BASE) {
                return without(
                        lamp,
                        swings,
                        "in " + leftOut + " of " + BASE
                                + " base scenarios they or a mixture of two are impossible, which would bias them");
            }
            double contacts = contact.output().mean() * contact.output().count();
            if (Math.min(contacts, contact.output().count() - contacts) < FEWEST) {
                return without(
                        lamp,
                        swings,
                        "fewer than " + FEWEST + " of the base scenarios differ from the others in contact or none");
            }
            SobolIndices impact = SobolIndices.of(plan, file.model().filledWith(0), closing, threads);
            return new Sensitivities(
                    lamp, varying(plan, contact), varying(plan, impact), swings, leftOut, Optional.empty());
        } catch (IllegalArgumentException e) {
            // a result that does not vary has no variance to share out
            return without(lamp, swings, String.valueOf(e.getMessage()));
        }
    }

    private static Sensitivities without(String lamp, List<Swing> swings, String why) {
        return new Sensitivities(lamp, List.of(), List.of(), swings, 0, Optional.of(why));
    }

    /**
     * Says where the axes were held.
     *
     * @return words for the low and the high end
     */
    public String heldAt() {
        boolean quantiles = swings.stream().anyMatch(Swing::drawn);
        boolean levels = swings.stream().anyMatch(swing -> !swing.drawn);
        String low = "its lowest and highest level";
        return !quantiles ? low : "its 10 % and 90 % quantile" + (levels ? ", a list at " + low : "");
    }

    private static List<SobolIndices.Index> varying(Plan plan, SobolIndices indices) {
        List<String> constant = plan.axes().stream()
                .filter(axis -> axis.levels().length == 1)
                .map(Axis::column)
                .toList();
        return indices.indices().stream()
                .filter(index -> !constant.contains(index.column()))
                .sorted(Comparator.comparingDouble(SobolIndices.Index::total).reversed())
                .toList();
    }

    /** An axis and what the pairs did with it held low and high. */
    private record Held(Axis axis, double low, double high, PairTally atLow, PairTally atHigh) {}

    private static List<Held> held(PlanFile file, Plan plan, int threads) {
        List<Held> held = new ArrayList<>();
        for (Axis axis : plan.axes()) {
            double[] ends = ends(axis);
            if (ends[0] < ends[1]) {
                held.add(new Held(
                        axis,
                        ends[0],
                        ends[1],
                        run(file, held(plan, axis, ends[0], LOW), threads),
                        run(file, held(plan, axis, ends[1], HIGH), threads)));
            }
        }
        return held;
    }

    private static List<Swing> swings(List<Held> held, String lamp) {
        return held.stream()
                // without a single valid scenario there is no trace and no proportion
                .filter(h -> !h.atLow.trace().isEmpty() && !h.atHigh.trace().isEmpty())
                .map(h -> new Swing(
                        h.axis.column(),
                        h.low,
                        h.high,
                        h.atLow.lamp(lamp).contactProbability(),
                        h.atHigh.lamp(lamp).contactProbability(),
                        h.axis.distribution().isPresent()))
                .sorted(Comparator.comparingDouble(Swing::width).reversed())
                .toList();
    }

    private static double[] ends(Axis axis) {
        return axis.distribution()
                .map(drawn -> new double[] {drawn.quantile(LOW), drawn.quantile(HIGH)})
                .orElseGet(() -> {
                    double[] levels = axis.levels();
                    Arrays.sort(levels);
                    return new double[] {levels[0], levels[levels.length - 1]};
                });
    }

    private static PairTally run(PlanFile file, Plan held, int threads) {
        return Sweep.of(held, file.model())
                .withThreads(threads)
                .run(() -> new PairTally(file.pairModel()))
                .tally();
    }

    /**
     * The plan with one axis held at a value, its quantile of a share; one correlated with it is drawn given that
     * value. All axes keep their places, so that they keep their draws.
     */
    private static Plan held(Plan plan, Axis axis, double value, double share) {
        Map<String, Axis> changed = new HashMap<>(Map.of(axis.column(), Axis.constant(axis.column(), "", value)));
        List<Plan.Correlation> kept = new ArrayList<>();
        for (Plan.Correlation c : plan.correlations()) {
            boolean first = axis.column().equals(c.first());
            if (first || axis.column().equals(c.second())) {
                String other = first ? c.second() : c.first();
                changed.put(other, given(plan.axes().get(plan.columns().indexOf(other)), c.rho(), share));
            } else {
                kept.add(c);
            }
        }
        Plan held = Plan.of(plan.design(), plan.seed());
        for (Axis other : plan.axes()) {
            held = held.axis(changed.getOrDefault(other.column(), other));
        }
        for (Plan.Correlation c : kept) {
            held = held.correlate(c.first(), c.second(), c.rho());
        }
        return held;
    }

    /** An axis given that the one its normal score is correlated with lies at the quantile of a share. */
    private static Axis given(Axis axis, double rho, double share) {
        NormalDistribution normal = NormalDistribution.of(0, 1);
        Distribution free = axis.distribution().orElseThrow();
        double mean = rho * normal.inverseCumulativeProbability(share);
        double spread = Math.sqrt(1 - rho * rho);
        double[] quantiles = IntStream.range(0, GIVEN)
                .mapToDouble(i -> mean + spread * normal.inverseCumulativeProbability((i + 0.5) / GIVEN))
                .map(score -> free.quantile(normal.cumulativeProbability(score)))
                .toArray();
        return Axis.drawn(axis.column(), "", Empirical.of(quantiles));
    }

    /**
     * Gives the closing speed, 0 without contact, along each axis with the others in their middle.
     *
     * @param file the plan
     * @param lamp the lamp
     * @param points how many points on a drawn axis
     * @return the curves
     */
    public static List<OneAtATime.Curve> closingSpeedCurves(PlanFile file, String lamp, int points) {
        Objects.requireNonNull(lamp, "lamp");
        String closing = PairOutput.CLOSING_SPEED.column(lamp);
        return OneAtATime.curves(file.plan(), file.model().filledWith(0), closing, points);
    }
}
