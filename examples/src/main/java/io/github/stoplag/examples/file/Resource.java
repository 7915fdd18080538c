package io.github.stoplag.examples.file;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The texts that come with the programs. */
public final class Resource {
    private static final String ROOT = "/io/github/stoplag/examples/";

    private Resource() {}

    /** Gives a text that lies at the root of the programs. */
    public static String text(String name) {
        return text(Resource.class, ROOT + name);
    }

    /** Gives a text that lies beside a class. */
    public static String text(Class<?> beside, String name) {
        try (InputStream in = beside.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("resource " + name + " is missing");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
