package io.github.stoplag.examples.film;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The boxes of an MP4 or MOV file (ISO/IEC 14496-12, section 4): a length, a name of four letters, a content that may
 * be boxes again. No length is believed: each is held against what encloses it.
 */
final class MovieBoxes {
    private static final int MOST_BOXES = 100_000;
    private static final long LARGEST_INDEX = 256L << 20;

    /**
     * A box.
     *
     * @param type its name
     * @param body its content
     */
    record Box(String type, ByteBuffer body) {
        /** Gives the content from its start. */
        ByteBuffer content() {
            return body.duplicate();
        }

        /** Gives the boxes inside, from an offset on; what is cut off is left out. */
        List<Box> boxes(int from) {
            List<Box> found = new ArrayList<>();
            ByteBuffer at = body.duplicate();
            if (from > at.remaining()) {
                return found;
            }
            at.position(at.position() + from);
            while (at.remaining() >= 8 && found.size() < MOST_BOXES) {
                long size = Integer.toUnsignedLong(at.getInt());
                String type = name(at.getInt());
                int head = 8;
                if (size == 1 && at.remaining() >= 8) {
                    size = at.getLong();
                    head = 16;
                }
                long length = size == 0 ? at.remaining() : size - head;
                if (length < 0 || length > at.remaining()) {
                    break;
                }
                found.add(new Box(type, at.slice(at.position(), (int) length)));
                at.position(at.position() + (int) length);
            }
            return found;
        }

        /** Finds a box by the names of those that enclose it. */
        Optional<Box> find(String... path) {
            Optional<Box> here = Optional.of(this);
            for (String type : path) {
                here = here.flatMap(box -> box.boxes(0).stream()
                        .filter(inner -> inner.type.equals(type))
                        .findFirst());
            }
            return here;
        }
    }

    private MovieBoxes() {}

    /**
     * Finds the index of a film, the box {@code moov}.
     *
     * @return empty if there is none, as in a film that was cut off before it was closed
     * @throws IOException if the file cannot be read
     */
    static Optional<Box> index(FileChannel file) throws IOException {
        long at = 0;
        ByteBuffer head = ByteBuffer.allocate(16);
        for (int i = 0; i < MOST_BOXES && at + 8 <= file.size(); i++) {
            read(file, head.clear(), at);
            if (head.remaining() < 8) {
                break;
            }
            long size = Integer.toUnsignedLong(head.getInt());
            String type = name(head.getInt());
            int headLength = 8;
            if (size == 1 && head.remaining() >= 8) {
                size = head.getLong();
                headLength = 16;
            } else if (size == 0) {
                size = file.size() - at;
            }
            if (size < headLength || (size > file.size() - at && type.equals("moov"))) {
                break;
            }
            if (type.equals("moov")) {
                return size > LARGEST_INDEX
                        ? Optional.empty()
                        : Optional.of(new Box(
                                type, read(file, ByteBuffer.allocate((int) size - headLength), at + headLength)));
            }
            if (size > file.size() - at) {
                break;
            }
            at += size;
        }
        return Optional.empty();
    }

    /** Fills a buffer from a place on, as far as the file goes. */
    static ByteBuffer read(FileChannel file, ByteBuffer into, long from) throws IOException {
        long at = from;
        while (into.hasRemaining()) {
            int got = file.read(into, at);
            if (got < 0) {
                break;
            }
            at += got;
        }
        return into.flip();
    }

    /** Gives the four letters of a name. */
    static String name(int letters) {
        return new String(ByteBuffer.allocate(4).putInt(letters).array(), StandardCharsets.ISO_8859_1);
    }
}
