package io.github.stoplag.examples.film;

import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Another program that decodes, started without a shell, listened to, and ended if it falls silent. */
final class Decoder implements AutoCloseable {
    /** The longest silence in seconds. */
    static final int LIMIT_S = 60;

    private static final Pattern UNIT = Pattern.compile("config in time_base: ([0-9]+)/([0-9]+)");
    private static final Pattern STAMP = Pattern.compile("\\bn: *[0-9]+ +pts: *(-?[0-9]+|NOPTS)");

    private final Process process;
    private final InputStream output;
    private final BlockingQueue<OptionalDouble> stampsS = new LinkedBlockingQueue<>();
    private final Thread listener;
    private volatile long heardNanos = System.nanoTime();
    private volatile boolean silent;
    private volatile @Nullable String complaint;
    private double unitS = Double.NaN;

    private Decoder(Process process) {
        this.process = process;
        this.output = new BufferedInputStream(process.getInputStream(), 1 << 16);
        this.listener = new Thread(this::listen, "stoplag-decoder-messages");
        listener.setDaemon(true);
        listener.start();
        Thread watch = new Thread(this::watch, "stoplag-decoder-watch");
        watch.setDaemon(true);
        watch.start();
    }

    /**
     * Starts a program.
     *
     * @throws IOException if it cannot be started
     */
    static Decoder start(List<String> command) throws IOException {
        Process process = new ProcessBuilder(command).start();
        process.getOutputStream().close();
        return new Decoder(process);
    }

    InputStream output() {
        return output;
    }

    /** Says that it gave something. */
    void alive() {
        heardNanos = System.nanoTime();
    }

    boolean timedOut() {
        return silent;
    }

    /** Takes the time stamp of the next frame. */
    OptionalDouble stampS() {
        try {
            OptionalDouble stamp = stampsS.poll(LIMIT_S, TimeUnit.SECONDS);
            return stamp == null ? OptionalDouble.empty() : stamp;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return OptionalDouble.empty();
        }
    }

    /** Waits for its end. */
    int exitCode() {
        try {
            int code = process.waitFor();
            listener.join();
            return code;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return -1;
        }
    }

    /** Gives the last error it wrote. */
    Optional<String> lastComplaint() {
        return Optional.ofNullable(complaint);
    }

    @Override
    public void close() {
        process.toHandle().destroy();
        try {
            if (!process.waitFor(2, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
        } catch (InterruptedException e) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
        }
    }

    private void listen() {
        try (BufferedReader lines =
                new BufferedReader(new InputStreamReader(process.getErrorStream(), StandardCharsets.UTF_8))) {
            String line;
            while ((line = lines.readLine()) != null) {
                hear(line);
            }
        } catch (IOException e) {
            // it was ended from here: nothing more to hear
            silent |= false;
        }
    }

    private void hear(String line) {
        alive();
        Matcher unit = UNIT.matcher(line);
        Matcher stamp = STAMP.matcher(line);
        if (unit.find()) {
            unitS = Double.parseDouble(unit.group(1)) / Double.parseDouble(unit.group(2));
        } else if (stamp.find()) {
            stampsS.add(
                    stamp.group(1).equals("NOPTS")
                            ? OptionalDouble.empty()
                            : OptionalDouble.of(Long.parseLong(stamp.group(1)) * unitS));
        } else if (line.contains("[error]")
                || line.contains("[fatal]")
                || line.contains("Unrecognized option")
                || (!line.contains("[info]") && !line.contains("[warning]") && !line.isBlank())) {
            complaint = line.replaceAll("\\[[^\\]]*\\] ?", "").strip();
        }
    }

    private void watch() {
        try {
            while (!process.waitFor(500, TimeUnit.MILLISECONDS)) {
                if (System.nanoTime() - heardNanos > TimeUnit.SECONDS.toNanos(LIMIT_S)) {
                    silent = true;
                    process.destroyForcibly();
                    return;
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
