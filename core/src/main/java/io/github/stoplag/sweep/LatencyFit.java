package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Numbers;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Cuts a box into cells, each with a polynomial that is good enough, or dark, or left to the simulation.
 *
 * <p>Degrees follow from the series along three lines of each axis; a cell is accepted when places held out agree. One
 * that does not get there, or that is seen in some corners alone, is halved along the axis to blame. Larger cells come
 * first, so that what the limit leaves to the simulation is small.
 */
final class LatencyFit {
    static final int MOST_ONSETS = 20_000;
    private static final int DEEPEST = 10;
    private static final int FIRST_ORDER = 8;
    private static final int HIGHEST_ORDER = 16;
    private static final int RAISE = 2;
    private static final int TRIES = 3;
    private static final int HELD_OUT_PER_AXIS = 16;
    private static final double MOST_DIRECT_RATIO = 1.0 / 16;

    private final List<TableAxis> axes;
    private final ToDoubleFunction<double[]> moment;
    private final double accuracyS;
    private final Deque<Node> open = new ArrayDeque<>();
    private int onsets;
    private int cells;
    private int largest = 1;
    private double worstS;
    private double directRatio;
    private double darkRatio;

    /** A cell, or two halves; what it holds is set once. */
    static final class Node {
        final double[] lo;
        final double[] hi;
        final int depth;
        int axis;
        double cut;

        @Nullable
        Node lower;

        @Nullable
        Node upper;

        @Nullable
        ChebyshevCell cell;

        boolean dark;

        Node(double[] lo, double[] hi, int depth) {
            this.lo = lo;
            this.hi = hi;
            this.depth = depth;
        }
    }

    LatencyFit(List<TableAxis> axes, ToDoubleFunction<double[]> moment, double accuracyS) {
        this.axes = axes;
        this.moment = at -> {
            onsets++;
            return moment.applyAsDouble(at);
        };
        this.accuracyS = accuracyS;
    }

    Node fit() {
        Node root = new Node(
                axes.stream().mapToDouble(axis -> axis.range().lo()).toArray(),
                axes.stream().mapToDouble(axis -> axis.range().hi()).toArray(),
                0);
        open.add(root);
        while (!open.isEmpty()) {
            Node node = open.remove();
            if (onsets >= MOST_ONSETS) {
                leave(node);
            } else {
                settle(node);
            }
        }
        if (directRatio > MOST_DIRECT_RATIO) {
            throw new IllegalArgumentException("table of detection must reach its accuracy within " + MOST_ONSETS
                    + " onsets in all but 6.25 % of its box, got "
                    + Numbers.text(100 * directRatio, 3)
                    + " % left: narrow the intervals, or allow a larger error");
        }
        return root;
    }

    private void settle(Node node) {
        int blame = borderAxis(node);
        if (blame >= 0) {
            halve(node, blame);
        } else if (Double.isNaN(moment.applyAsDouble(node.lo))) {
            cells++;
            node.dark = true;
            darkRatio += share(node);
        } else {
            int[] orders = new int[axes.size()];
            int slow = orders(node, orders);
            if (slow >= 0) {
                halve(node, slow);
            } else {
                interpolate(node, orders);
            }
        }
    }

    /** The axis along which corners differ most in whether the lamp is seen, or -1 if they all agree. */
    private int borderAxis(Node node) {
        int d = axes.size();
        boolean[] seen = new boolean[1 << d];
        for (int corner = 0; corner < seen.length; corner++) {
            double[] at = new double[d];
            for (int axis = 0; axis < d; axis++) {
                at[axis] = (corner >> axis & 1) == 0 ? node.lo[axis] : node.hi[axis];
            }
            seen[corner] = !Double.isNaN(moment.applyAsDouble(at));
        }
        int most = 0;
        int found = -1;
        for (int axis = 0; axis < d; axis++) {
            int differ = 0;
            for (int corner = 0; corner < seen.length; corner++) {
                differ += seen[corner] != seen[corner ^ 1 << axis] ? 1 : 0;
            }
            if (differ > most) {
                most = differ;
                found = axis;
            }
        }
        return found;
    }

    /** Sets the degree each axis needs; gives the axis that needs more than there is, or -1. */
    private int orders(Node node, int[] orders) {
        double most = 0;
        int slow = -1;
        for (int axis = 0; axis < orders.length; axis++) {
            for (double others : new double[] {0, -1, 1}) {
                double[] c = line(node, axis, others, FIRST_ORDER);
                int needed = needed(c);
                if (needed > FIRST_ORDER - RAISE) {
                    c = line(node, axis, others, HIGHEST_ORDER);
                    needed = needed(c);
                }
                orders[axis] = Math.max(orders[axis], needed);
                double tail = Math.abs(c[c.length - 1]) + Math.abs(c[c.length - 2]);
                if (needed > HIGHEST_ORDER - RAISE && !(tail <= most)) {
                    most = tail;
                    slow = axis;
                }
            }
        }
        return slow;
    }

    private double[] line(Node node, int axis, double others, int order) {
        double[] at = new double[node.lo.length];
        for (int k = 0; k < at.length; k++) {
            at[k] = TableAxis.between(node.lo[k], node.hi[k], others);
        }
        return ChebyshevCell.series(order, xi -> {
            at[axis] = TableAxis.between(node.lo[axis], node.hi[axis], xi);
            return moment.applyAsDouble(at);
        });
    }

    /** The least degree whose dropped terms are together below the axis's share of the accuracy; NaN needs all. */
    private int needed(double[] c) {
        double dropped = 0;
        for (int order = c.length - 1; order > 0; order--) {
            dropped += Math.abs(c[order]);
            if (!(dropped <= accuracyS / (2 * axes.size()))) {
                return order;
            }
        }
        return 0;
    }

    private void interpolate(Node node, int[] orders) {
        for (int attempt = 0; attempt < TRIES; attempt++) {
            ChebyshevCell cell = ChebyshevCell.of(node.lo, node.hi, orders, moment);
            double errorS = errorS(node, cell);
            if (errorS <= accuracyS) {
                cells++;
                node.cell = cell;
                largest = Math.max(largest, cell.size());
                worstS = Math.max(worstS, errorS);
                return;
            }
            for (int axis = 0; axis < orders.length; axis++) {
                orders[axis] += RAISE;
            }
        }
        int widest = 0;
        for (int axis = 1; axis < orders.length; axis++) {
            widest = orders[axis] > orders[widest] ? axis : widest;
        }
        halve(node, widest);
    }

    /** The largest error at places spread evenly by the additive recurrence of the generalised golden ratio. */
    private double errorS(Node node, ChebyshevCell cell) {
        int d = axes.size();
        double golden = 1.5;
        for (int i = 0; i < 60; i++) {
            golden = StrictMath.pow(1 + golden, 1.0 / (d + 1));
        }
        double[] scratch = new double[cell.size()];
        double[] at = new double[d];
        double worst = 0;
        for (int i = 1; i <= HELD_OUT_PER_AXIS * d; i++) {
            double step = 1;
            for (int axis = 0; axis < d; axis++) {
                step /= golden;
                double place = 0.5 + i * step;
                at[axis] = TableAxis.between(node.lo[axis], node.hi[axis], 2 * (place - Math.floor(place)) - 1);
            }
            double errorS = Math.abs(cell.value(at, scratch) - moment.applyAsDouble(at));
            if (!(errorS <= accuracyS)) {
                return Double.POSITIVE_INFINITY;
            }
            worst = Math.max(worst, errorS);
        }
        return worst;
    }

    private void halve(Node node, int axis) {
        if (node.depth >= DEEPEST) {
            leave(node);
            return;
        }
        node.axis = axis;
        node.cut = 0.5 * (node.lo[axis] + node.hi[axis]);
        double[] middleHi = node.hi.clone();
        middleHi[axis] = node.cut;
        double[] middleLo = node.lo.clone();
        middleLo[axis] = node.cut;
        node.lower = new Node(node.lo, middleHi, node.depth + 1);
        node.upper = new Node(middleLo, node.hi, node.depth + 1);
        open.add(node.lower);
        open.add(node.upper);
    }

    private void leave(Node node) {
        cells++;
        directRatio += share(node);
    }

    private static double share(Node node) {
        return Math.scalb(1.0, -node.depth);
    }

    int onsets() {
        return onsets;
    }

    int cells() {
        return cells;
    }

    int largest() {
        return largest;
    }

    double worstS() {
        return worstS;
    }

    double directRatio() {
        return directRatio;
    }

    double darkRatio() {
        return darkRatio;
    }
}
