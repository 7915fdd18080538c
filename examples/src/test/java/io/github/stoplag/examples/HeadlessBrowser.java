package io.github.stoplag.examples;

import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Assumptions;

/**
 * A browser without a window, for what only a browser can tell: how large things come out and what the page looks like.
 * A test is skipped, and says so, where there is no browser or it cannot run.
 *
 * <p>Every call starts the browser once, with a profile of its own below {@code target} and without a network.
 */
public final class HeadlessBrowser {
    private static final List<String> NAMES =
            List.of("chromium", "chromium-browser", "google-chrome", "google-chrome-stable");
    private static final long PATIENCE_S = 120;
    private static final int NARROWEST = 500;
    private static final String START = "boxes-from-here";
    private static final String END = "boxes-to-here";

    private final Path program;
    private final Path folder;

    private HeadlessBrowser(Path program, Path folder) {
        this.program = program;
        this.folder = folder;
    }

    /**
     * An element as drawn, in CSS pixels of the page.
     *
     * @param left its left edge
     * @param top its upper edge
     * @param width its width
     * @param height its height
     * @param text its text, white space as one space
     */
    public record Box(double left, double top, double width, double height, String text) {
        /** Gives the box without the room that a line of text keeps above and below its letters. */
        Box letters() {
            double room = 0.2 * Math.min(width, height);
            return new Box(left + room, top + room, width - 2 * room, height - 2 * room, text);
        }

        boolean holds(Box other) {
            return left <= other.left
                    && other.left + other.width <= left + width
                    && top <= other.top
                    && other.top + other.height <= top + height;
        }

        boolean meets(Box other) {
            return left < other.left + other.width
                    && other.left < left + width
                    && top < other.top + other.height
                    && other.top < top + height;
        }
    }

    /** Finds a browser on the path, or skips the test. */
    public static HeadlessBrowser orSkip() throws IOException {
        Optional<Path> found = NAMES.stream()
                .flatMap(name -> Stream.of(String.valueOf(System.getenv("PATH")).split(File.pathSeparator, -1))
                        .map(folder -> Path.of(folder, name)))
                .filter(Files::isExecutable)
                .findFirst();
        if (found.isEmpty()) {
            throw skipped("none of " + NAMES + " is on the path");
        }
        Path below = Files.createDirectories(Path.of("target", "browser").toAbsolutePath());
        return new HeadlessBrowser(found.get(), Files.createTempDirectory(below, "run"));
    }

    /** Measures the elements that a selector finds in a page, in a window 1200 high. */
    public List<Box> boxes(String html, String selector, int width, boolean dark) throws IOException {
        String script = "<script>addEventListener('load',function(){var o='" + START + "\\n';"
                + "document.querySelector('iframe').contentDocument.querySelectorAll('" + selector + "')"
                + ".forEach(function(e){var b=e.getBoundingClientRect();"
                + "o+=[b.left,b.top,b.width,b.height].join(' ')+' '+e.textContent.replace(/\\s+/g,' ')+'\\n'});"
                + "var p=document.createElement('pre');p.textContent=o+'" + END
                + "';document.body.append(p)});</script>";
        Path page = Files.writeString(folder.resolve("measured.html"), framed(html, width, 1200, script));
        String dom = run(width, 1200, dark, "--dump-dom", page.toUri().toString());
        int from = dom.lastIndexOf(START + "\n");
        int to = dom.lastIndexOf(END);
        if (from < 0 || to < from) {
            throw skipped("it did not show the page");
        }
        List<Box> boxes = new ArrayList<>();
        dom.substring(from + START.length() + 1, to).lines().forEach(line -> boxes.add(box(line)));
        return boxes;
    }

    private static Box box(String line) {
        String[] fields = line.split(" ", 5);
        String text = fields[4].replace("&lt;", "<").replace("&gt;", ">").replace("&nbsp;", "\u00a0");
        return new Box(
                Double.parseDouble(fields[0]),
                Double.parseDouble(fields[1]),
                Double.parseDouble(fields[2]),
                Double.parseDouble(fields[3]),
                text.replace("&amp;", "&").strip());
    }

    /** Gives what a window shows of a page. */
    public BufferedImage picture(String html, int width, int height, boolean dark) throws IOException {
        Path page = Files.writeString(folder.resolve("shown.html"), framed(html, width, height, ""));
        Path picture = folder.resolve("shown.png");
        Files.deleteIfExists(picture);
        run(width, height, dark, "--screenshot=" + picture, page.toUri().toString());
        BufferedImage image = Files.exists(picture) ? ImageIO.read(picture.toFile()) : null;
        if (image == null) {
            throw skipped("it made no picture");
        }
        return image.getSubimage(0, 0, width, height);
    }

    /** Puts a page into a frame, for a window cannot be as narrow as that of a phone. */
    private static String framed(String html, int width, int height, String script) {
        return "<!DOCTYPE html><html><head><meta charset=\"utf-8\"><meta name=\"color-scheme\" content=\"light dark\">"
                + script + "</head><body style=\"margin:0\"><iframe style=\"display:block;border:0\" width=\"" + width
                + "\" height=\"" + height + "\" srcdoc=\""
                + html.replace("&", "&amp;").replace("\"", "&quot;") + "\"></iframe></body></html>";
    }

    private String run(int width, int height, boolean dark, String... more) throws IOException {
        Path out = folder.resolve("out.txt");
        List<String> command = new ArrayList<>(List.of(
                program.toString(),
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--disable-background-networking",
                "--no-first-run",
                "--hide-scrollbars",
                "--host-resolver-rules=MAP * ~NOTFOUND",
                "--user-data-dir=" + folder.resolve("profile"),
                "--window-size=" + Math.max(NARROWEST, width) + "," + height,
                "--blink-settings=preferredColorScheme=" + (dark ? 0 : 1)));
        command.addAll(List.of(more));
        try {
            Process process = new ProcessBuilder(command)
                    .redirectOutput(out.toFile())
                    .redirectError(folder.resolve("err.txt").toFile())
                    .start();
            if (!process.waitFor(PATIENCE_S, TimeUnit.SECONDS)) {
                process.descendants().forEach(ProcessHandle::destroyForcibly);
                process.destroyForcibly();
                throw skipped("it did not end within " + PATIENCE_S + " s");
            }
            if (process.exitValue() != 0) {
                throw skipped("it ended with exit code " + process.exitValue());
            }
            return Files.readString(out);
        } catch (IOException e) {
            throw skipped("it cannot be started: " + e.getMessage());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** Skips the test; the return type tells the compiler that this is the end. */
    private static UncheckedIOException skipped(String why) {
        String message = "not looked at in a browser: " + why;
        System.out.println(message);
        Assumptions.abort(message);
        return new UncheckedIOException(new IOException(message));
    }
}
