package io.github.stoplag.examples.program;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/**
 * Turns Ctrl-C and a polite kill into a wish to end, and holds the process until what is under way has been put away.
 */
public final class Interruption implements BooleanSupplier, AutoCloseable {
    private static final long LONGEST_S = 60;

    private final CountDownLatch ended = new CountDownLatch(1);
    private final Thread hook = new Thread(this::ask, "stoplag-interrupted");
    private volatile boolean asked;

    public Interruption() {
        Runtime.getRuntime().addShutdownHook(hook);
    }

    private void ask() {
        asked = true;
        try {
            if (!ended.await(LONGEST_S, TimeUnit.SECONDS)) {
                return;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public boolean getAsBoolean() {
        return asked;
    }

    @Override
    public void close() {
        ended.countDown();
        if (!asked) {
            try {
                Runtime.getRuntime().removeShutdownHook(hook);
            } catch (IllegalStateException e) {
                // it began to end just now: nothing is left to put away
                asked = true;
            }
        }
    }
}
