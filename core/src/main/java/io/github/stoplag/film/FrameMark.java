package io.github.stoplag.film;

import io.github.stoplag.quantity.Check;
import java.util.Objects;

/**
 * Where a person who steps through a film sets a mark: the last frame without the thing looked for and the first frame
 * with it.
 *
 * @param judge who looked, for example {@code first viewing}
 * @param lastWithout the number of the last frame without it, [0, 1e9]
 * @param firstWith the number of the first frame with it, above the other
 */
public record FrameMark(String judge, int lastWithout, int firstWith) {
    /**
     * Checks the order.
     *
     * @param judge who looked
     * @param lastWithout the number of the last frame without it
     * @param firstWith the number of the first frame with it
     * @throws IllegalArgumentException if the judge has no name or the frames are out of range or order
     */
    public FrameMark {
        Objects.requireNonNull(judge, "judge");
        if (judge.isBlank()) {
            throw new IllegalArgumentException("a frame mark must have a judge, got an empty text");
        }
        Check.inRange("last frame without a mark", lastWithout, 0, 1e9, "");
        Check.inRange("first frame with a mark", firstWith, lastWithout + 1.0, 1e9, "");
    }

    /**
     * Makes a mark between neighbouring frames.
     *
     * @param judge who looked
     * @param firstWith the number of the first frame with it, [1, 1e9]
     * @return the mark
     * @throws IllegalArgumentException if the frame is out of range
     */
    public static FrameMark at(String judge, int firstWith) {
        Objects.requireNonNull(judge, "judge");
        Check.inRange("first frame with a mark", firstWith, 1, 1e9, "");
        return new FrameMark(judge, firstWith - 1, firstWith);
    }
}
