package io.github.stoplag.sweep;

/** Is told how far a sweep has come. */
@FunctionalInterface
public interface SweepListener {
    /**
     * Takes note of progress; called after each chunk by one thread at a time, and should return soon.
     *
     * @param done scenarios counted so far
     * @param total scenarios to count
     */
    void progress(long done, long total);
}
