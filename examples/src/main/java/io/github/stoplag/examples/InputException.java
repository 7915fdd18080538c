package io.github.stoplag.examples;

import org.jspecify.annotations.Nullable;

/** Something the user gave cannot be used; the message is the one line that the program prints before it ends with exit code 2. */
final class InputException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    InputException(String message) {
        super(message.replaceAll("\\s*\\R\\s*", " "));
    }

    InputException(String message, @Nullable Throwable cause) {
        super(message.replaceAll("\\s*\\R\\s*", " "), cause);
    }
}
