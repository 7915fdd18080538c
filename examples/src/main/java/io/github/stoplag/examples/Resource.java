package io.github.stoplag.examples;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The texts that come with the programs. */
final class Resource {
    private Resource() {}

    static String text(String name) {
        try (InputStream in = Resource.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("resource " + name + " is missing");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
