package io.github.stoplag.examples.program;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** Which Stoplag this is. */
public final class Build implements IVersionProvider {
    /** Gives the version, for example {@code 0.1.0}. */
    public static String stoplagVersion() {
        Properties build = new Properties();
        try (InputStream in = Build.class.getResourceAsStream("build.properties")) {
            build.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return build.getProperty("version", "unknown");
    }

    @Override
    public String[] getVersion() {
        return new String[] {"stoplag " + stoplagVersion() + " on Java " + Runtime.version()};
    }
}
