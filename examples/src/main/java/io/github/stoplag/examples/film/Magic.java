package io.github.stoplag.examples.film;

import io.github.stoplag.examples.file.InputException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;

/** What a file is by its first bytes, whatever its name says. */
enum Magic {
    /** MP4 or MOV: the name of a box of ISO/IEC 14496-12 or QuickTime stands behind a length. */
    MOVIE,
    /** Another container of films, for ffmpeg. */
    OTHER_FILM,
    /** A PNG picture. */
    PNG,
    /** A JPEG picture. */
    JPEG,
    /** Text, perhaps a table. */
    TEXT,
    /** Nothing at all. */
    EMPTY,
    /** Something else. */
    UNKNOWN;

    private static final int LOOKED_AT = 1024;
    private static final int TRANSPORT_PACKET = 188;
    private static final Set<String> BOXES = Set.of("ftyp", "moov", "mdat", "wide", "free", "skip", "pnot");

    /**
     * Looks at a file.
     *
     * @throws InputException if it cannot be read
     */
    static Magic of(Path path) {
        try (InputStream input = Files.newInputStream(path)) {
            return of(input.readNBytes(LOOKED_AT));
        } catch (AccessDeniedException e) {
            throw new InputException(path + ": cannot be read: no permission to read it", e);
        } catch (IOException e) {
            throw new InputException(path + ": cannot be read: " + e.getMessage(), e);
        }
    }

    static Magic of(byte[] head) {
        String text = new String(head, StandardCharsets.ISO_8859_1);
        if (head.length == 0) {
            return EMPTY;
        } else if (text.startsWith("\u0089PNG\r\n\u001a\n")) {
            return PNG;
        } else if (text.startsWith("\u00ff\u00d8\u00ff")) {
            return JPEG;
        } else if (head.length >= 8 && BOXES.contains(text.substring(4, 8))) {
            return MOVIE;
        } else if (isOtherFilm(text)) {
            return OTHER_FILM;
        }
        return isText(head) ? TEXT : UNKNOWN;
    }

    private static boolean isOtherFilm(String text) {
        boolean riff = text.startsWith("RIFF") && text.length() >= 12 && text.startsWith("AVI ", 8);
        boolean transport =
                text.length() > TRANSPORT_PACKET && text.charAt(0) == 'G' && text.charAt(TRANSPORT_PACKET) == 'G';
        boolean blueRay = text.length() > 196 && text.charAt(4) == 'G' && text.charAt(196) == 'G';
        return riff
                || transport
                || blueRay
                || text.startsWith("\u001aE\u00df\u00a3") // Matroska, WebM
                || text.startsWith("\u0000\u0000\u0001\u00ba") // MPEG programme stream
                || text.startsWith("\u0000\u0000\u0001\u00b3") // MPEG-1 and 2 video
                || text.startsWith("FLV\u0001")
                || text.startsWith("OggS")
                || text.startsWith("0&\u00b2u") // Advanced Systems Format
                || text.startsWith("GIF8");
    }

    private static boolean isText(byte[] head) {
        for (byte b : head) {
            if ((b >= 0 && b < ' ' && b != '\t' && b != '\n' && b != '\r' && b != '\f') || b == 0x7f) {
                return false;
            }
        }
        return true;
    }
}
