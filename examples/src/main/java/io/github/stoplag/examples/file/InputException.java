package io.github.stoplag.examples.file;

import org.jspecify.annotations.Nullable;

/**
 * Something the user gave cannot be used; the message is the one line that the program prints before it ends with exit
 * code 2.
 */
public final class InputException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * Makes it of a message.
     *
     * @param message what cannot be used and why; brought into one line
     */
    public InputException(String message) {
        super(message.replaceAll("\\s*\\R\\s*", " "));
    }

    /**
     * Makes it of a message and a cause.
     *
     * @param message what cannot be used and why; brought into one line
     * @param cause what found it out, if anything
     */
    public InputException(String message, @Nullable Throwable cause) {
        super(message.replaceAll("\\s*\\R\\s*", " "), cause);
    }
}
