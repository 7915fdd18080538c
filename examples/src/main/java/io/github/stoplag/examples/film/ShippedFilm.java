package io.github.stoplag.examples.film;

import io.github.stoplag.film.TransferCurve;
import io.github.stoplag.quantity.TimeSpan;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.function.Function;

/**
 * The film that comes with the program, and what is known of it: two invented lamps before a modelled camera, a
 * filament lamp and an LED lamp on one circuit. A test makes another like it.
 */
final class ShippedFilm {
    static final String RESOURCE = "invented-lamps.mp4";
    static final double TAKEN_HZ = 120;
    static final int WIDTH = 192;
    static final int HEIGHT = 112;
    static final LampRegion FILAMENT = new LampRegion("filament", 24, 40, 40, 32);
    static final LampRegion LED = new LampRegion("led", 128, 40, 40, 32);

    private final Path file;

    private ShippedFilm(Path file) {
        this.file = file;
    }

    /** Puts it into a file for as long as something uses it. */
    static <T> T with(Function<ShippedFilm, T> use) {
        try {
            Path folder = Files.createTempDirectory("stoplag-film");
            Path file = folder.resolve(RESOURCE);
            try (InputStream in = ShippedFilm.class.getResourceAsStream(RESOURCE)) {
                if (in == null) {
                    throw new IllegalStateException("resource " + RESOURCE + " is missing");
                }
                Files.copy(in, file, StandardCopyOption.REPLACE_EXISTING);
                return use.apply(new ShippedFilm(file));
            } finally {
                Files.deleteIfExists(file);
                Files.delete(folder);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    FilmReading read() {
        FilmReading read = FilmReading.of(
                file,
                FilmFile.Decoding.JAVA,
                Channel.LUMA,
                List.of(FILAMENT.text(), LED.text()),
                CameraOptions.of(TAKEN_HZ, TimeSpan.seconds(1 / 240.0), TransferCurve.BT709),
                frames -> new FilmProgress(new PrintWriter(Writer.nullWriter()), frames));
        return new FilmReading(RESOURCE, read.source(), read.lamps(), read.camera(), read.caveats());
    }
}
