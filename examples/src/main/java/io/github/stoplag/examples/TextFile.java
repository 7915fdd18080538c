package io.github.stoplag.examples;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Opens the user's text files, UTF-8 with or without a byte order mark, and says in one line why one cannot be read. */
final class TextFile {
    private static final int BYTE_ORDER_MARK = 0xFEFF;

    private TextFile() {}

    static Reader open(Path path) throws IOException {
        BufferedReader reader = Files.newBufferedReader(path);
        reader.mark(1);
        if (reader.read() != BYTE_ORDER_MARK) {
            reader.reset();
        }
        return reader;
    }

    static InputException unreadable(Path path, Exception e) {
        Throwable cause = e instanceof IOException ? e : e.getCause();
        String why = String.valueOf(cause == null ? e.getMessage() : cause.getMessage());
        if (cause instanceof NoSuchFileException) {
            why = "no such file";
        } else if (cause instanceof AccessDeniedException) {
            why = "no permission to read it";
        } else if (cause instanceof CharacterCodingException) {
            why = "not UTF-8 text";
        }
        return new InputException(path + ": cannot be read: " + why, e);
    }
}
