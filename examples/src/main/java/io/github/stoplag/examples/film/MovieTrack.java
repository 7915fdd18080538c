package io.github.stoplag.examples.film;

import io.github.stoplag.examples.film.MovieBoxes.Box;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The video track of an MP4 or MOV file: where each coded frame lies and when it is to be shown (ISO/IEC 14496-12,
 * section 8).
 *
 * @param codec the name of the coding, such as {@code avc1}
 * @param sampleEntry the boxes that describe the coding
 * @param pixels how many pixels the index says a picture has
 * @param quarters by how many quarters the picture is to be turned clockwise
 * @param offsets where each coded frame starts in the file, in the order of decoding
 * @param sizes its length in bytes
 * @param stampsS when it is to be shown, in seconds
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record MovieTrack(
        String codec, List<Box> sampleEntry, long pixels, int quarters, long[] offsets, int[] sizes, double[] stampsS) {
    private static final int MOST_FRAMES = 10_000_000;
    /** Fixed fields of a description of a video coding before the boxes in it. */
    private static final int SAMPLE_ENTRY_FIELDS = 78;

    /** Says that an index contradicts itself. */
    static final class BadIndex extends Exception {
        private static final long serialVersionUID = 1L;

        BadIndex(String message) {
            super(message);
        }
    }

    /**
     * Reads the first video track with frames of an index.
     *
     * @return empty if there is no video track
     * @throws BadIndex if the index contradicts itself
     */
    static Optional<MovieTrack> of(Box index) throws BadIndex {
        for (Box track : index.boxes(0)) {
            if (track.type().equals("trak") && handler(track).equals("vide")) {
                try {
                    return Optional.of(read(track));
                } catch (BufferUnderflowException | IllegalArgumentException | IndexOutOfBoundsException e) {
                    throw new BadIndex("its index is damaged");
                }
            }
        }
        return Optional.empty();
    }

    /** Says whether the frames lie in fragments that this index does not list. */
    static boolean fragmented(Box index) {
        return index.find("mvex").isPresent();
    }

    int frames() {
        return sizes.length;
    }

    /** Gives for each frame in the order of decoding its place in the order of time. */
    int[] ranks() {
        int[] byTime = IntStream.range(0, frames())
                .boxed()
                .sorted((a, b) -> Double.compare(stampsS[a], stampsS[b]))
                .mapToInt(Integer::intValue)
                .toArray();
        int[] ranks = new int[frames()];
        for (int rank = 0; rank < byTime.length; rank++) {
            ranks[byTime[rank]] = rank;
        }
        return ranks;
    }

    Optional<Box> described(String type) {
        return sampleEntry.stream().filter(box -> box.type().equals(type)).findFirst();
    }

    /** Gives the same track with its first frames in the order of decoding alone. */
    MovieTrack first(int count) {
        return new MovieTrack(
                codec,
                sampleEntry,
                pixels,
                quarters,
                Arrays.copyOf(offsets, count),
                Arrays.copyOf(sizes, count),
                Arrays.copyOf(stampsS, count));
    }

    private static String handler(Box track) {
        return track.find("mdia", "hdlr")
                .filter(box -> box.body().remaining() >= 12)
                .map(box -> MovieBoxes.name(box.body().getInt(8)))
                .orElse("");
    }

    private static MovieTrack read(Box track) throws BadIndex {
        Box table = needed(track, "mdia", "minf", "stbl");
        Box entry = needed(table, "stsd").boxes(8).stream().findFirst().orElseThrow(() -> missing("stsd"));
        int[] sizes = sizes(needed(table, "stsz").content());
        double unitS = 1.0 / timescale(needed(track, "mdia", "mdhd").content());
        return new MovieTrack(
                entry.type(),
                entry.boxes(SAMPLE_ENTRY_FIELDS),
                pixels(entry.content()),
                track.find("tkhd").map(box -> quarters(box.content())).orElse(0),
                offsets(table, sizes),
                sizes,
                stamps(
                        needed(table, "stts").content(),
                        table.find("ctts").map(Box::content).orElse(null),
                        sizes.length,
                        unitS));
    }

    private static Box needed(Box box, String... path) throws BadIndex {
        return box.find(path).orElseThrow(() -> missing(path[path.length - 1]));
    }

    private static BadIndex missing(String type) {
        return new BadIndex("its index lacks the box \"" + type + "\"");
    }

    private static long pixels(ByteBuffer entry) {
        return (long) (entry.getShort(24) & 0xffff) * (entry.getShort(26) & 0xffff);
    }

    private static long timescale(ByteBuffer mdhd) throws BadIndex {
        long ticks = Integer.toUnsignedLong(mdhd.getInt(mdhd.get(0) == 1 ? 20 : 12));
        if (ticks == 0) {
            throw new BadIndex("its index gives 0 ticks a second");
        }
        return ticks;
    }

    /** Reads the turn off the matrix of the track: its first row is (cos, sin). */
    private static int quarters(ByteBuffer tkhd) {
        int matrix = tkhd.get(0) == 1 ? 52 : 40;
        double turn = Math.atan2(tkhd.getInt(matrix + 4), tkhd.getInt(matrix));
        return Math.floorMod(Math.round(turn / (Math.PI / 2)), 4);
    }

    private static int[] sizes(ByteBuffer stsz) throws BadIndex {
        int same = stsz.getInt(4);
        int count = stsz.getInt(8);
        if (count < 0 || count > MOST_FRAMES || (same == 0 && stsz.remaining() - 12 < 4L * count)) {
            throw new BadIndex("its index is damaged: it cannot hold " + Integer.toUnsignedString(count) + " frames");
        }
        int[] sizes = new int[count];
        for (int i = 0; i < count; i++) {
            sizes[i] = same != 0 ? same : stsz.getInt(12 + 4 * i);
            if (sizes[i] < 0) {
                throw new BadIndex("its index is damaged: frame " + i + " has an impossible length");
            }
        }
        return sizes;
    }

    private static long[] offsets(Box table, int[] sizes) throws BadIndex {
        Optional<Box> narrow = table.find("stco");
        ByteBuffer chunks = narrow.isPresent()
                ? narrow.get().content()
                : needed(table, "co64").content();
        ByteBuffer runs = needed(table, "stsc").content();
        int chunkCount = chunks.getInt(4);
        int runCount = runs.getInt(4);
        long[] offsets = new long[sizes.length];
        int sample = 0;
        int run = 0;
        for (int chunk = 0; chunk < chunkCount && sample < sizes.length; chunk++) {
            while (run + 1 < runCount && runs.getInt(8 + 12 * (run + 1)) <= chunk + 1) {
                run++;
            }
            long at = narrow.isPresent()
                    ? Integer.toUnsignedLong(chunks.getInt(8 + 4 * chunk))
                    : chunks.getLong(8 + 8 * chunk);
            for (int left = runs.getInt(8 + 12 * run + 4); left > 0 && sample < sizes.length; left--) {
                offsets[sample] = at;
                at += sizes[sample++];
            }
        }
        if (sample < sizes.length) {
            throw new BadIndex("its index says where " + sample + " of " + sizes.length + " frames lie");
        }
        return offsets;
    }

    private static double[] stamps(ByteBuffer stts, @Nullable ByteBuffer ctts, int count, double unitS) {
        long[] decoded = new long[count];
        long time = 0;
        int sample = 0;
        for (int i = 0; i < stts.getInt(4) && sample < count; i++) {
            long step = Integer.toUnsignedLong(stts.getInt(12 + 8 * i));
            for (long left = Integer.toUnsignedLong(stts.getInt(8 + 8 * i)); left > 0 && sample < count; left--) {
                decoded[sample++] = time;
                time += step;
            }
        }
        long[] shift = new long[count];
        if (ctts != null) {
            int at = 0;
            for (int i = 0; i < ctts.getInt(4) && at < count; i++) {
                for (long left = Integer.toUnsignedLong(ctts.getInt(8 + 8 * i)); left > 0 && at < count; left--) {
                    shift[at++] = ctts.getInt(12 + 8 * i);
                }
            }
        }
        return IntStream.range(0, count)
                .mapToDouble(i -> (decoded[i] + shift[i]) * unitS)
                .toArray();
    }
}
