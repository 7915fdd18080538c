package io.github.stoplag.sweep;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

/**
 * A plan run through a model, chunk by chunk over the cores.
 *
 * <p>Memory: for each thread the columns of 1024 rows, and together at most one tally for each thread or processor,
 * whichever are fewer, and three more; it does not grow with the plan. Nothing is allocated per scenario. The result
 * has the same bits for any count of threads.
 *
 * <p>Example: {@code Sweep.of(plan, model).withThreads(2).run(() -> new PairTally(model))}. Sweeps are immutable; each
 * {@code with} gives a new one.
 */
public final class Sweep {
    private static final int MOST_THREADS = 1024;

    private final Plan plan;
    private final Scenarios scenarios;
    private final Model model;
    private final int threads;
    private final SweepListener listener;
    private final BooleanSupplier cancelled;

    private Sweep(
            Plan plan,
            Scenarios scenarios,
            Model model,
            int threads,
            SweepListener listener,
            BooleanSupplier cancelled) {
        this.plan = plan;
        this.scenarios = scenarios;
        this.model = model;
        this.threads = threads;
        this.listener = listener;
        this.cancelled = cancelled;
    }

    /**
     * Joins a plan and a model, to be run on all cores; builds the plan's quantile tables.
     *
     * @param plan the values
     * @param model what to compute from them
     * @return the sweep
     * @throws IllegalArgumentException if the plan's columns are not just those the model needs, or two of the columns
     *     of the plan and of the model's outputs have the same name
     */
    public static Sweep of(Plan plan, Model model) {
        List<String> columns = plan.columns();
        if (columns.size() != model.inputs().size() || !columns.containsAll(model.inputs())) {
            throw new IllegalArgumentException(
                    "the plan must have an axis for each of " + model.inputs() + " and no other, got " + columns);
        }
        Set<String> names = new HashSet<>(columns);
        for (String output : model.outputs()) {
            if (!names.add(output)) {
                throw new IllegalArgumentException("the model's outputs must differ from each other and from the axes "
                        + columns + ", got " + model.outputs());
            }
        }
        return new Sweep(
                plan,
                plan.scenarios(),
                model,
                Math.min(MOST_THREADS, Runtime.getRuntime().availableProcessors()),
                (done, total) -> {},
                () -> false);
    }

    /**
     * Sets the number of threads; the result does not depend on it.
     *
     * @param newThreads how many, [1, 1024]; 1 runs in the caller's thread
     * @return the new sweep
     * @throws IllegalArgumentException if the number is out of range
     */
    public Sweep withThreads(int newThreads) {
        if (newThreads < 1 || newThreads > MOST_THREADS) {
            throw new IllegalArgumentException("threads must be in [1, 1024], got " + newThreads);
        }
        return new Sweep(plan, scenarios, model, newThreads, listener, cancelled);
    }

    /**
     * Sets who is told of progress.
     *
     * @param newListener the listener
     * @return the new sweep
     */
    public Sweep withListener(SweepListener newListener) {
        return new Sweep(plan, scenarios, model, threads, newListener, cancelled);
    }

    /**
     * Sets how to cancel: asked before each chunk. Interrupting the thread that called run also cancels, and keeps its
     * interrupt status.
     *
     * @param newCancelled true from when the run shall end
     * @return the new sweep
     */
    public Sweep withCancel(BooleanSupplier newCancelled) {
        return new Sweep(plan, scenarios, model, threads, listener, newCancelled);
    }

    /**
     * Runs the whole plan.
     *
     * @param tally makes empty tallies
     * @param <T> what is gathered
     * @return the total; incomplete if cancelled
     * @throws IllegalStateException if the model fails, naming the scenario and its inputs; or if a tally or the
     *     listener fails, with that failure as the cause
     */
    public <T extends Tally<T>> SweepResult<T> run(Supplier<T> tally) {
        return run(tally, tally.get(), 0, plan.chunks());
    }

    /**
     * Runs a stretch of the plan on top of an earlier total: for going on after a cut-off, and for a part of a cluster.
     * Stretches absorbed chunk by chunk in order have the bits of one run.
     *
     * @param tally makes empty tallies
     * @param total the total of the chunks before, or an empty tally; it is changed
     * @param fromChunk the first chunk, [0, endChunk]
     * @param endChunk the chunk after the last, at most {@link Plan#chunks()}
     * @param <T> what is gathered
     * @return the total; incomplete if cancelled
     * @throws IllegalArgumentException if there are no such chunks
     * @throws IllegalStateException if the model fails, naming the scenario and its inputs
     */
    public <T extends Tally<T>> SweepResult<T> run(Supplier<T> tally, T total, long fromChunk, long endChunk) {
        if (fromChunk < 0 || fromChunk > endChunk || endChunk > plan.chunks()) {
            throw new IllegalArgumentException("chunks must satisfy 0 <= from <= end <= " + plan.chunks()
                    + ", got from " + fromChunk + " to " + endChunk);
        }
        return run(tally, new SweepResult<>(plan, total, fromChunk, 0, false, List.of()), endChunk);
    }

    /**
     * Goes on with a run that was cut off, to the end of the plan. The result has the bits of a run that was not cut
     * off.
     *
     * @param tally makes empty tallies
     * @param cut what was gathered so far, by a run or read by {@link CheckpointFormat}; its tally is changed
     * @param <T> what is gathered
     * @return the total, with all scenarios and rejects since the first run; incomplete if cancelled
     * @throws IllegalArgumentException if the result is of another plan
     * @throws IllegalStateException if the model fails, naming the scenario and its inputs
     */
    public <T extends Tally<T>> SweepResult<T> resume(Supplier<T> tally, SweepResult<T> cut) {
        cut.requirePlan(plan);
        return run(tally, cut, plan.chunks());
    }

    private <T extends Tally<T>> SweepResult<T> run(Supplier<T> tally, SweepResult<T> before, long endChunk) {
        OrderedRun<T> run = new OrderedRun<>(plan, scenarios, model, tally, before, endChunk, listener, cancelled);
        return run.on((int) Math.min(threads, Math.max(1, endChunk - before.nextChunk())));
    }
}
