package io.github.stoplag.sweep;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * One run: threads take chunks in rising order, compute them apart, and absorb the tallies in chunk order. A thread
 * that is too far ahead waits, which bounds the tallies in store: one for each thread that can run at a time and two
 * more, so that threads beyond the processors cost no memory for tallies.
 */
final class OrderedRun<T extends Tally<T>> {
    private static final int SPARE = 2;

    private record Done<T>(T tally, List<Rejects.Entry> rejects) {}

    private final Plan plan;
    private final Model model;
    private final Scenarios scenarios;
    private final Supplier<T> newTally;
    private final SweepResult<T> before;
    private final long end;
    private final SweepListener listener;
    private final BooleanSupplier cancelled;
    private final Rejects rejects;

    // guarded by this
    private final TreeMap<Long, Done<T>> waiting = new TreeMap<>();
    private final Deque<T> spare = new ArrayDeque<>();
    private long next;
    private long absorbed;
    private boolean stopped;
    private int ahead = 1;
    private long failedChunk = Long.MAX_VALUE;
    private @Nullable Throwable failure;

    OrderedRun(
            Plan plan,
            Scenarios scenarios,
            Model model,
            Supplier<T> newTally,
            SweepResult<T> before,
            long end,
            SweepListener listener,
            BooleanSupplier cancelled) {
        this.plan = plan;
        this.model = model;
        this.scenarios = scenarios;
        this.newTally = newTally;
        this.before = before;
        this.end = end;
        this.listener = listener;
        this.cancelled = cancelled;
        this.rejects = new Rejects(plan.columns(), 0);
        this.rejects.resume(before.rejects());
        this.next = before.nextChunk();
        this.absorbed = before.nextChunk();
    }

    SweepResult<T> on(int threadCount) {
        ahead = ahead(threadCount, Runtime.getRuntime().availableProcessors());
        if (threadCount == 1) {
            work();
        } else {
            List<Thread> workers = new ArrayList<>();
            for (int i = 0; i < threadCount; i++) {
                Thread worker = new Thread(this::work, "stoplag-sweep-" + i);
                worker.setDaemon(true);
                workers.add(worker);
                worker.start();
            }
            workers.forEach(this::join);
        }
        return result();
    }

    /** How many chunks may be under way or waiting to be absorbed. */
    static int ahead(int threads, int processors) {
        return Math.min(threads, processors) + SPARE;
    }

    private void join(Thread worker) {
        boolean interrupted = false;
        while (worker.isAlive()) {
            try {
                worker.join();
            } catch (InterruptedException e) {
                interrupted = true;
                stop();
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private synchronized void stop() {
        stopped = true;
        notifyAll();
    }

    private synchronized SweepResult<T> result() {
        if (failure instanceof Error error) {
            throw error;
        }
        if (failure != null) {
            String message = failure.getMessage();
            throw new IllegalStateException(message == null ? failure.toString() : message, failure);
        }
        return new SweepResult<>(plan, before.tally(), absorbed, counted(absorbed), absorbed == end, rejects.entries());
    }

    /** Scenarios up to a chunk, those counted before included. */
    private long counted(long endChunk) {
        long startIndex = Math.min(before.nextChunk() * Plan.CHUNK, plan.size());
        return before.scenarios() + Math.min(endChunk * Plan.CHUNK, plan.size()) - startIndex;
    }

    private void work() {
        long chunk = -1;
        try {
            ChunkWorker worker = new ChunkWorker(plan, scenarios, model);
            for (chunk = take(); chunk >= 0; chunk = take()) {
                T tally = empty();
                List<Rejects.Entry> rejected = worker.compute(chunk, tally);
                absorb(chunk, new Done<>(tally, rejected));
            }
        } catch (RuntimeException | Error e) {
            fail(chunk, e);
        }
    }

    private synchronized long take() {
        while (!stopped && next < end && next >= absorbed + ahead) {
            try {
                wait();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                stopped = true;
            }
        }
        if (Thread.currentThread().isInterrupted() || cancelled.getAsBoolean()) {
            stop();
        }
        return stopped || next >= end ? -1 : next++;
    }

    private synchronized T empty() {
        return spare.isEmpty() ? newTally.get() : spare.pop();
    }

    private synchronized void absorb(long chunk, Done<T> done) {
        waiting.put(chunk, done);
        while (!waiting.isEmpty() && waiting.firstKey() == absorbed) {
            Done<T> first = waiting.pollFirstEntry().getValue();
            before.tally().absorb(first.tally());
            rejects.absorb(first.rejects());
            first.tally().clear();
            spare.push(first.tally());
            absorbed++;
            listener.progress(counted(absorbed), counted(end));
        }
        notifyAll();
    }

    private synchronized void fail(long chunk, Throwable e) {
        if (chunk < failedChunk || failure == null) {
            failedChunk = chunk;
            failure = e;
        }
        stop();
    }
}
