package io.github.stoplag.examples.sweep;

import io.github.stoplag.sweep.Axis;
import io.github.stoplag.sweep.Design;
import io.github.stoplag.sweep.OneAtATime;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.Plan;
import io.github.stoplag.sweep.Proportion;
import io.github.stoplag.sweep.SobolIndices;
import io.github.stoplag.sweep.Sweep;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What the result of a plan depends on, for one lamp: shares of variance, and each axis moved alone.
 *
 * @param lamp the lamp
 * @param contact the shares of the variance of contact (1 or 0), largest total first; empty if there are none
 * @param closingSpeed the same of the closing speed, 0 without contact
 * @param swings the contact probability with one axis held low and high, widest first
 * @param without why there are no shares; empty if there are
 */
public record Sensitivities(
        String lamp,
        List<SobolIndices.Index> contact,
        List<SobolIndices.Index> closingSpeed,
        List<Swing> swings,
        Optional<String> without) {
    /** How many base scenarios the shares are estimated from; fewer if the plan has fewer. */
    public static final int BASE = 1 << 15;

    private static final double LOW = 0.1;
    private static final double HIGH = 0.9;

    /**
     * The contact probability with one axis held and all others drawn.
     *
     * @param column the axis
     * @param low its 10 % quantile or lowest level
     * @param high its 90 % quantile or highest level
     * @param atLow the proportion at the low value
     * @param atHigh the proportion at the high value
     */
    public record Swing(String column, double low, double high, Proportion atLow, Proportion atHigh) {
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
        Plan plan =
                file.plan().withDesign(Design.random(Math.min(BASE, file.plan().size())));
        List<Held> held = held(file, plan, threads);
        return file.lamps().stream()
                .map(lamp -> of(file, plan, lamp, swings(held, lamp), threads))
                .toList();
    }

    private static Sensitivities of(PlanFile file, Plan plan, String lamp, List<Swing> swings, int threads) {
        if (!plan.correlations().isEmpty()) {
            return new Sensitivities(
                    lamp, List.of(), List.of(), swings, Optional.of("shares of variance need independent axes"));
        }
        try {
            String closing = "closing_speed_" + lamp + "_mps";
            return new Sensitivities(
                    lamp,
                    varying(plan, SobolIndices.of(plan, file.model(), "contact_" + lamp, threads)),
                    varying(plan, SobolIndices.of(plan, new ImpactModel(file.model(), closing), closing, threads)),
                    swings,
                    Optional.empty());
        } catch (IllegalArgumentException e) {
            // a result that does not vary has no variance to share out
            return new Sensitivities(lamp, List.of(), List.of(), swings, Optional.of(String.valueOf(e.getMessage())));
        }
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
    private record Held(String column, double low, double high, PairTally atLow, PairTally atHigh) {}

    private static List<Held> held(PlanFile file, Plan plan, int threads) {
        List<Held> held = new ArrayList<>();
        for (Axis axis : plan.axes()) {
            double[] ends = ends(axis);
            if (ends[0] < ends[1]) {
                held.add(new Held(
                        axis.column(),
                        ends[0],
                        ends[1],
                        held(file, plan, axis, ends[0], threads),
                        held(file, plan, axis, ends[1], threads)));
            }
        }
        return held;
    }

    private static List<Swing> swings(List<Held> held, String lamp) {
        return held.stream()
                // without a single valid scenario there is no trace and no proportion
                .filter(h -> !h.atLow.trace().isEmpty() && !h.atHigh.trace().isEmpty())
                .map(h -> new Swing(
                        h.column,
                        h.low,
                        h.high,
                        h.atLow.lamp(lamp).contactProbability(),
                        h.atHigh.lamp(lamp).contactProbability()))
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

    /** The other axes keep their places, so that they keep their draws. */
    private static PairTally held(PlanFile file, Plan plan, Axis axis, double value, int threads) {
        Plan held = Plan.of(plan.design(), plan.seed());
        for (Axis other : plan.axes()) {
            held = held.axis(other.equals(axis) ? Axis.constant(axis.column(), "", value) : other);
        }
        for (Plan.Correlation c : plan.correlations()) {
            if (!axis.column().equals(c.first()) && !axis.column().equals(c.second())) {
                held = held.correlate(c.first(), c.second(), c.rho());
            }
        }
        return Sweep.of(held, file.model())
                .withThreads(threads)
                .run(() -> new PairTally(file.pairModel()))
                .tally();
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
        String closing = "closing_speed_" + lamp + "_mps";
        return OneAtATime.curves(file.plan(), new ImpactModel(file.model(), closing), closing, points);
    }
}
