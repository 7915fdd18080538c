package io.github.stoplag.sight;

/** A criterion that says when a lamp that comes on is detected. */
public interface Detector {
    /**
     * Names the criterion with its parameters, as every result repeats it.
     *
     * @return the name, for example {@code 10 % of final intensity}
     */
    String criterion();

    /**
     * Finds the moment at which the signal is detected.
     *
     * @param signal the lamp that comes on at time 0
     * @return when it is seen, or that it never is
     */
    Detection detect(LampSignal signal);
}
