package io.github.stoplag.examples.film;

import io.github.stoplag.examples.file.InputException;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Finds out what a film is and what can read it. */
final class FilmFile {
    /** What decodes a film. */
    enum Decoding {
        /**
         * Java where it can and the film is short, ffmpeg else, which is much faster; where both can they give the
         * same.
         */
        AUTO,
        /** Java alone. */
        JAVA,
        /** Ffmpeg alone. */
        FFMPEG
    }

    /** From how many pixels on the waiting for Java is felt: some 40 frames of 1920 x 1080. */
    private static final long LONG_FILM = 80_000_000;

    private FilmFile() {}

    /**
     * Says what the file is, a folder being the pictures in it.
     *
     * @throws InputException if there is no such file, or it is empty
     */
    static Magic kind(Path path) {
        if (!Files.exists(path)) {
            throw new InputException(path + ": cannot be read: no such file");
        } else if (Files.isDirectory(path)) {
            return Magic.PNG;
        } else if (!Files.isRegularFile(path)) {
            throw new InputException(path + ": is neither a file nor a folder");
        }
        Magic magic = Magic.of(path);
        if (magic == Magic.EMPTY) {
            throw new InputException(path + ": is empty");
        }
        return magic;
    }

    /**
     * Opens a film or a folder of pictures.
     *
     * @throws InputException if it cannot be read
     */
    static FilmSource open(Path path, Decoding decoding) {
        Magic magic = kind(path);
        if (Files.isDirectory(path)) {
            return ImageFolder.open(path);
        }
        return switch (magic) {
            case MOVIE -> movie(path, decoding);
            case OTHER_FILM -> ffmpeg(path, decoding, "it is no MP4 or MOV film", List.of());
            case PNG, JPEG ->
                throw new InputException(path + ": is a single picture; give the folder that holds all frames");
            default ->
                throw new InputException(path + ": is no film that is known by its first bytes;"
                        + " give an MP4 or MOV film, a folder of pictures, or a CSV file");
        };
    }

    private static FilmSource movie(Path path, Decoding decoding) {
        if (decoding == Decoding.FFMPEG) {
            return FfmpegFilm.open(path, "ffmpeg was asked for", List.of());
        }
        try (FileChannel file = FileChannel.open(path)) {
            MovieBoxes.Box index = MovieBoxes.index(file)
                    .orElseThrow(() -> new InputException(path
                            + ": has no index (box \"moov\"): the film was cut off before it was closed, or is none"));
            if (MovieTrack.fragmented(index)) {
                return ffmpeg(path, decoding, "its frames lie in fragments", List.of());
            }
            Optional<MovieTrack> track = MovieTrack.of(index);
            if (track.isEmpty()) {
                throw new InputException(path + ": has no video track");
            } else if (track.get().frames() == 0) {
                throw new InputException(path + ": has no frames (length zero)");
            }
            return track(path, decoding, track.get(), file.size());
        } catch (MovieTrack.BadIndex e) {
            throw new InputException(path + ": is a damaged film: " + e.getMessage(), e);
        } catch (IOException e) {
            throw new InputException(path + ": cannot be read: " + e.getMessage(), e);
        }
    }

    private static FilmSource track(Path path, Decoding decoding, MovieTrack track, long fileBytes) {
        int whole = 0;
        while (whole < track.frames()
                && track.offsets()[whole] >= 0
                && track.offsets()[whole] + track.sizes()[whole] <= fileBytes) {
            whole++;
        }
        if (whole == 0) {
            throw new InputException(path + ": is cut off before its first frame");
        }
        List<String> caveats = whole == track.frames()
                ? List.of()
                : List.of("the film is cut off: " + whole + " of its " + track.frames() + " frames are there");
        if (!track.codec().equals("avc1") && !track.codec().equals("avc3")) {
            return ffmpeg(path, decoding, "its coding is " + track.codec().strip() + ", not H.264", caveats);
        }
        boolean isLong = track.pixels() * whole > LONG_FILM;
        if (decoding == Decoding.AUTO && isLong && FfmpegFilm.isThere()) {
            return FfmpegFilm.open(path, "it is long", caveats);
        }
        try {
            return H264Film.open(path, track.first(whole), caveats);
        } catch (Undecodable e) {
            String why = String.valueOf(e.getMessage());
            return ffmpeg(
                    path,
                    decoding,
                    why,
                    Stream.concat(caveats.stream(), interlaced(why)).toList());
        }
    }

    private static Stream<String> interlaced(String why) {
        return why.contains(H264Parameters.INTERLACED)
                ? Stream.of(
                        "the film's coding is interlaced: even and odd rows of a frame may be half a frame apart, and"
                                + " moments off by as much")
                : Stream.empty();
    }

    private static FilmSource ffmpeg(Path path, Decoding decoding, String why, List<String> caveats) {
        if (decoding == Decoding.JAVA) {
            throw new InputException(path + ": cannot be decoded in Java: " + why);
        }
        return FfmpegFilm.open(path, why, caveats);
    }
}
