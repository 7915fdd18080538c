package io.github.stoplag.examples.film;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Assumptions;

/** Small films for the tests. */
final class Films {
    static final int WIDTH = 64;
    static final int HEIGHT = 48;

    private Films() {}

    /** Codes a film with an even square of 16 pixels at (16, 16), whose luma a function of the frame's number gives. */
    static Path square(Path file, int frames, double framesPerSecond, IntToDoubleFunction luma) throws IOException {
        return square(file, frames, n -> n / framesPerSecond, luma);
    }

    static Path square(Path file, int frames, IntToDoubleFunction stampS, IntToDoubleFunction luma) throws IOException {
        try (FilmWriter film = new FilmWriter(file, WIDTH, HEIGHT, 10)) {
            byte[] chroma = new byte[WIDTH * HEIGHT / 4];
            Arrays.fill(chroma, (byte) 128);
            for (int n = 0; n < frames; n++) {
                byte[] picture = new byte[WIDTH * HEIGHT];
                Arrays.fill(picture, (byte) 20);
                for (int y = 16; y < 32; y++) {
                    Arrays.fill(picture, y * WIDTH + 16, y * WIDTH + 32, (byte) Math.round(luma.applyAsDouble(n)));
                }
                film.add(
                        picture,
                        chroma,
                        chroma,
                        stampS.applyAsDouble(n),
                        stampS.applyAsDouble(n + 1) - stampS.applyAsDouble(n));
            }
        }
        return file;
    }

    /** Runs ffmpeg, or passes the test over with a message where it is missing. */
    static void ffmpeg(String... arguments) throws IOException, InterruptedException {
        Assumptions.assumeTrue(FfmpegFilm.isThere(), "ffmpeg is not on the path: this test is passed over");
        List<String> command =
                new ArrayList<>(List.of("ffmpeg", "-hide_banner", "-nostdin", "-loglevel", "error", "-y"));
        command.addAll(Arrays.asList(arguments));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        byte[] said = process.getInputStream().readAllBytes();
        Assumptions.assumeTrue(
                process.waitFor(60, TimeUnit.SECONDS) && process.exitValue() == 0,
                "this ffmpeg cannot make the test's film: " + new String(said, StandardCharsets.UTF_8));
    }
}
