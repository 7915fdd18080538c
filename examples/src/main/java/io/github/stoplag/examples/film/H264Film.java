package io.github.stoplag.examples.film;

import io.github.stoplag.examples.file.InputException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jcodec.codecs.h264.H264Decoder;
import org.jcodec.codecs.h264.io.model.SeqParameterSet;
import org.jcodec.codecs.h264.io.model.VUIParameters;
import org.jcodec.common.model.Picture;
import org.jcodec.common.model.Rect;

/**
 * A film coded by H.264 in an MP4 or MOV file, decoded in Java. The numbers are handed on as they were coded: no range
 * is stretched and no colour turned into another.
 */
final class H264Film implements FilmSource {
    private static final int LARGEST_FRAME = 64 << 20;
    private static final long MOST_PIXELS = 64L << 20;

    private final Path path;
    private final MovieTrack track;
    private final H264Parameters parameters;
    private final Facts facts;

    private H264Film(Path path, MovieTrack track, H264Parameters parameters, Facts facts) {
        this.path = path;
        this.track = track;
        this.parameters = parameters;
        this.facts = facts;
    }

    /**
     * Opens a film.
     *
     * @throws Undecodable if another decoder is needed
     * @throws InputException if it cannot be read at all
     */
    static H264Film open(Path path, MovieTrack track, List<String> caveats) throws Undecodable {
        H264Parameters parameters;
        SeqParameterSet sps;
        try {
            parameters = H264Parameters.of(track.described("avcC").orElseThrow().content());
            sps = parameters.first();
        } catch (RuntimeException e) {
            throw new Undecodable("its H.264 parameters cannot be read");
        }
        parameters.checkSupported();
        long width = 16L * (sps.picWidthInMbsMinus1 + 1);
        long height = 16L * SeqParameterSet.getPicHeightInMbs(sps);
        if (!(width > 0 && height > 0 && width * height <= MOST_PIXELS)) {
            throw new InputException(
                    path + ": pictures must have at most " + MOST_PIXELS + " pixels, got " + width + " x " + height);
        }
        Rect crop = H264Decoder.createFrame(sps, new byte[3][], 0, null, null, null, 0)
                .getCrop();
        int columns = crop == null ? (int) width : crop.getWidth();
        int rows = crop == null ? (int) height : crop.getHeight();
        boolean upright = track.quarters() % 2 == 0;
        Facts facts = new Facts(
                "H.264 film (" + track.codec() + "), decoded in Java",
                upright ? columns : rows,
                upright ? rows : columns,
                track.frames(),
                true,
                coding(sps, track, rows),
                caveats);
        H264Film film = new H264Film(path, track, parameters, facts);
        film.tryOut();
        return film;
    }

    private static Coding coding(SeqParameterSet sps, MovieTrack track, int height) {
        VUIParameters vui = sps.vuiParams;
        int matrix = Coding.UNSAID;
        int transfer = Coding.UNSAID;
        if (vui != null && vui.videoSignalTypePresentFlag) {
            if (vui.colourDescriptionPresentFlag) {
                matrix = vui.matrixCoefficients;
                transfer = vui.transferCharacteristics;
            }
            return Coding.yuv(8, vui.videoFullRangeFlag, true, matrix, transfer, height);
        }
        ByteBuffer colr = track.described("colr").map(MovieBoxes.Box::content).orElse(ByteBuffer.allocate(0));
        if (colr.remaining() >= 10 && MovieBoxes.name(colr.getInt(0)).startsWith("ncl")) {
            matrix = colr.getShort(8);
            transfer = colr.getShort(6);
            if (colr.remaining() >= 11 && MovieBoxes.name(colr.getInt(0)).equals("nclx")) {
                return Coding.yuv(8, (colr.get(10) & 0x80) != 0, true, matrix, transfer, height);
            }
        }
        return Coding.yuv(8, false, false, matrix, transfer, height);
    }

    /** Looks for what the decoder cannot do, so that it shows before anything is computed. */
    private void tryOut() throws Undecodable {
        try (FileChannel file = FileChannel.open(path)) {
            new Decoding(file).decode(0, buffer());
            for (int sample = 0; parameters.mayHaveB() && sample < track.frames(); sample++) {
                if (parameters.temporalDirect(coded(file, sample))) {
                    throw new Undecodable("its H.264 coding predicts motion over time (temporal direct mode)");
                }
            }
        } catch (IOException e) {
            throw new InputException(path + ": cannot be read: " + e.getMessage(), e);
        } catch (RuntimeException | StackOverflowError e) {
            throw new Undecodable("its H.264 coding cannot be decoded in Java"
                    + (e.getMessage() == null ? "" : " (" + e.getMessage() + ")"));
        }
    }

    private ByteBuffer coded(FileChannel file, int sample) throws IOException {
        int size = track.sizes()[sample];
        if (size > LARGEST_FRAME) {
            throw new IllegalArgumentException(size + " bytes");
        }
        return MovieBoxes.read(file, ByteBuffer.allocate(size), track.offsets()[sample]);
    }

    private byte[][] buffer() {
        SeqParameterSet sps = parameters.first();
        int pixels = 256 * (sps.picWidthInMbsMinus1 + 1) * SeqParameterSet.getPicHeightInMbs(sps);
        return new byte[][] {new byte[pixels], new byte[pixels / 4], new byte[pixels / 4]};
    }

    @Override
    public Facts facts() {
        return facts;
    }

    @Override
    public void read(FrameTaker taker) {
        try (FileChannel file = FileChannel.open(path)) {
            new Decoding(file).all(taker);
        } catch (IOException e) {
            throw new InputException(path + ": cannot be read: " + e.getMessage(), e);
        }
    }

    /** One way through the film. */
    private final class Decoding {
        private final FileChannel file;
        private final H264Decoder decoder = new H264Decoder();
        private final int[] ranks = track.ranks();
        private final double firstS = Arrays.stream(track.stampsS()).min().orElse(0);
        /** Frames that were decoded before their time, by their place in the order of time. */
        private final Map<Integer, Frame> early = new HashMap<>();

        private final Map<Integer, byte[][]> buffers = new HashMap<>();
        private final Deque<byte[][]> free = new ArrayDeque<>();
        private int next;

        Decoding(FileChannel file) {
            this.file = file;
            parameters.give(decoder);
        }

        void all(FrameTaker taker) throws IOException {
            for (int sample = 0; sample < track.frames(); sample++) {
                byte[][] buffer = free.isEmpty() ? buffer() : free.pop();
                Raster raster = decoded(sample, buffer);
                int rank = ranks[sample];
                early.put(rank, new Frame(rank, track.stampsS()[sample] - firstS, raster));
                buffers.put(rank, buffer);
                Frame due;
                while ((due = early.remove(next)) != null) {
                    if (!taker.take(due)) {
                        return;
                    }
                    free.push(Objects.requireNonNull(buffers.remove(next++)));
                }
            }
        }

        private Raster decoded(int sample, byte[][] buffer) throws IOException {
            try {
                return raster(decode(sample, buffer));
            } catch (RuntimeException | StackOverflowError e) {
                throw new InputException(
                        path + ": frame " + ranks[sample] + " cannot be decoded: the film is damaged there"
                                + (e.getMessage() == null ? "" : " (" + e.getMessage() + ")"),
                        e);
            }
        }

        private Picture decode(int sample, byte[][] buffer) throws IOException {
            Picture picture = decoder.decodeFrameFromNals(parameters.units(coded(file, sample)), buffer);
            if (picture == null) {
                throw new IllegalArgumentException("no picture in it");
            }
            return picture;
        }

        private Raster raster(Picture picture) {
            Rect crop = picture.getCrop();
            int x = crop == null ? 0 : crop.getX();
            int y = crop == null ? 0 : crop.getY();
            Raster stored = new Raster.Yuv(
                    crop == null ? picture.getWidth() : crop.getWidth(),
                    crop == null ? picture.getHeight() : crop.getHeight(),
                    facts.coding(),
                    plane(picture, 0, x, y),
                    plane(picture, 1, x / 2, y / 2),
                    plane(picture, 2, x / 2, y / 2),
                    1,
                    1);
            Raster upright = Raster.Turned.of(stored, track.quarters());
            if (upright.width() != facts.width() || upright.height() != facts.height()) {
                throw new IllegalArgumentException("its pictures change their size");
            }
            return upright;
        }

        private static Plane plane(Picture picture, int component, int x, int y) {
            int row = picture.getPlaneWidth(component);
            return new Plane(picture.getPlaneData(component), y * row + x, 1, row, false, 0x80);
        }
    }
}
