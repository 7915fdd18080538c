package io.github.stoplag;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.assertj.core.api.ThrowableAssert.ThrowingCallable;

/**
 * How the library refuses a wrong input: by an {@link IllegalArgumentException} whose message is told to the letter.
 */
public final class Refusals {
    private Refusals() {}

    /** Asserts that a call is refused with exactly this message. */
    public static void assertMessage(ThrowingCallable call, String message) {
        assertThatThrownBy(call).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
    }
}
