package io.github.stoplag.examples.film;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import org.jcodec.codecs.h264.H264Encoder;
import org.jcodec.codecs.h264.encode.RateControl;
import org.jcodec.codecs.h264.io.model.SliceType;
import org.jcodec.common.Codec;
import org.jcodec.common.VideoCodecMeta;
import org.jcodec.common.io.NIOUtils;
import org.jcodec.common.io.SeekableByteChannel;
import org.jcodec.common.model.ColorSpace;
import org.jcodec.common.model.Packet;
import org.jcodec.common.model.Packet.FrameType;
import org.jcodec.common.model.Picture;
import org.jcodec.common.model.Size;
import org.jcodec.containers.mp4.muxer.CodecMP4MuxerTrack;
import org.jcodec.containers.mp4.muxer.MP4Muxer;

/** Codes pictures as an MP4 film by H.264, 8 bits in limited range, every frame with the time stamp it is given. */
final class FilmWriter implements AutoCloseable {
    private static final int TICKS = 90_000;
    /** Below it this encoder writes large steps of brightness wrongly. */
    private static final int FINEST = 8;

    private static final int COARSEST = 51;

    private final SeekableByteChannel file;
    private final MP4Muxer muxer;
    private final CodecMP4MuxerTrack track;
    private final H264Encoder encoder;
    private final int width;
    private final int height;
    private int frames;

    /**
     * Begins a film.
     *
     * @param path the file
     * @param width columns, even
     * @param height rows, even
     * @param quality the quantisation parameter of H.264 (QP), [8, 51], 8 the finest
     * @throws IOException if the file cannot be written
     */
    FilmWriter(Path path, int width, int height, int quality) throws IOException {
        if (quality < FINEST || quality > COARSEST) {
            throw new IllegalArgumentException(
                    "quantisation parameter of a film must be in [" + FINEST + ", " + COARSEST + "], got " + quality);
        }
        this.width = width;
        this.height = height;
        file = NIOUtils.writableChannel(path.toFile());
        muxer = MP4Muxer.createMP4MuxerToChannel(file);
        track = (CodecMP4MuxerTrack) muxer.addVideoTrack(
                Codec.H264, VideoCodecMeta.createSimpleVideoCodecMeta(new Size(width, height), ColorSpace.YUV420J));
        encoder = new H264Encoder(new Constant(quality));
    }

    /** The same quantisation for every picture, so that brightness is coded alike in all. */
    private record Constant(int quality) implements RateControl {
        @Override
        public int startPicture(Size size, int most, SliceType type) {
            return quality;
        }

        @Override
        public int initialQpDelta() {
            return 0;
        }

        @Override
        public int accept(int bits) {
            return 0;
        }
    }

    /**
     * Adds a frame.
     *
     * @param luma brightness, row by row, limited range
     * @param cb the blue colour difference of each square of four pixels, 128 for none
     * @param cr the red one
     * @param stampS when it is to be shown, in seconds
     * @param lastsS how long, in seconds
     * @throws IOException if it cannot be written
     */
    void add(byte[] luma, byte[] cb, byte[] cr, double stampS, double lastsS) throws IOException {
        Picture picture = Picture.create(width, height, ColorSpace.YUV420J);
        shift(luma, picture.getPlaneData(0));
        shift(cb, picture.getPlaneData(1));
        shift(cr, picture.getPlaneData(2));
        ByteBuffer room = ByteBuffer.allocate(4 * width * height + 65_536);
        var coded = encoder.encodeFrame(picture, room);
        track.addFrame(Packet.createPacket(
                coded.getData(),
                Math.round(stampS * TICKS),
                TICKS,
                Math.round(lastsS * TICKS),
                frames++,
                coded.isKeyFrame() ? FrameType.KEY : FrameType.INTER,
                null));
    }

    private static void shift(byte[] from, byte[] to) {
        for (int i = 0; i < from.length; i++) {
            to[i] = (byte) (from[i] ^ 0x80);
        }
    }

    @Override
    public void close() throws IOException {
        muxer.finish();
        file.close();
    }
}
