package io.github.stoplag.examples.film;

import java.io.PrintWriter;
import java.util.concurrent.TimeUnit;

/** Tells how far the reading of a long film is, a line every few seconds. */
final class FilmProgress {
    private static final long EVERY_NANOS = TimeUnit.SECONDS.toNanos(5);

    private final PrintWriter out;
    private final int frames;
    private String doing = "";
    private long toldNanos = System.nanoTime();

    /**
     * Makes it.
     *
     * @param out where it tells
     * @param frames how many frames there are, 0 if that is not known
     */
    FilmProgress(PrintWriter out, int frames) {
        this.out = out;
        this.frames = frames;
    }

    void start(String what) {
        doing = what;
        toldNanos = System.nanoTime();
    }

    void frame(int number) {
        long now = System.nanoTime();
        if (now - toldNanos > EVERY_NANOS) {
            toldNanos = now;
            out.println(doing + ": frame " + number + (frames > 0 ? " of " + frames : ""));
            out.flush();
        }
    }
}
