package io.github.stoplag.examples.sweep.run;

import com.fasterxml.jackson.core.io.NumberOutput;

/**
 * Doubles as the shortest text that reads back to the same bits; unlike {@code Double.toString} it is the same on every
 * JDK.
 */
final class ExactText {
    private ExactText() {}

    static String of(double value) {
        return NumberOutput.toString(value, true);
    }
}
