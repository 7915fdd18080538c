package io.github.stoplag.examples.file;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * A text that was decoded as its bytes ask for: by a byte order mark, as UTF-8 if it is, as UTF-16 if every other byte
 * is mostly zero, else as Windows-1252, the Latin-1 of spreadsheets.
 *
 * @param text the text without a byte order mark
 * @param encoding the name of what it was written in
 */
record Decoded(String text, String encoding) {
    private static final String MARK = "\uFEFF";

    static Decoded of(byte[] bytes) {
        if (startsWith(bytes, 0xFF, 0xFE)) {
            return of(bytes, StandardCharsets.UTF_16LE, "UTF-16").orElseGet(() -> latin(bytes));
        }
        if (startsWith(bytes, 0xFE, 0xFF)) {
            return of(bytes, StandardCharsets.UTF_16BE, "UTF-16").orElseGet(() -> latin(bytes));
        }
        int even = zeros(bytes, 0);
        int odd = zeros(bytes, 1);
        if (even + odd > bytes.length / 4) {
            Charset order = odd > even ? StandardCharsets.UTF_16LE : StandardCharsets.UTF_16BE;
            return of(bytes, order, "UTF-16").orElseGet(() -> latin(bytes));
        }
        return of(bytes, StandardCharsets.UTF_8, "UTF-8").orElseGet(() -> latin(bytes));
    }

    private static boolean startsWith(byte[] bytes, int first, int second) {
        return bytes.length >= 2 && (bytes[0] & 0xFF) == first && (bytes[1] & 0xFF) == second;
    }

    private static int zeros(byte[] bytes, int from) {
        int count = 0;
        for (int i = from; i < bytes.length; i += 2) {
            count += bytes[i] == 0 ? 1 : 0;
        }
        return count;
    }

    private static Optional<Decoded> of(byte[] bytes, Charset charset, String name) {
        try {
            // a new decoder reports what it cannot decode
            String text = charset.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
            return Optional.of(new Decoded(text.startsWith(MARK) ? text.substring(1) : text, name));
        } catch (CharacterCodingException e) {
            return Optional.empty();
        }
    }

    private static Decoded latin(byte[] bytes) {
        return new Decoded(new String(bytes, Charset.forName("windows-1252")), "Windows-1252 (Latin-1)");
    }
}
