package io.github.stoplag.examples.film;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jcodec.codecs.h264.H264Decoder;
import org.jcodec.codecs.h264.H264Utils;
import org.jcodec.codecs.h264.decode.SliceHeaderReader;
import org.jcodec.codecs.h264.io.model.NALUnit;
import org.jcodec.codecs.h264.io.model.NALUnitType;
import org.jcodec.codecs.h264.io.model.PictureParameterSet;
import org.jcodec.codecs.h264.io.model.SeqParameterSet;
import org.jcodec.codecs.h264.io.model.SliceHeader;
import org.jcodec.codecs.h264.io.model.SliceType;
import org.jcodec.common.io.BitReader;
import org.jcodec.common.model.ColorSpace;

/**
 * The parameters of an H.264 track, from its box {@code avcC} (ISO/IEC 14496-15, section 5.3.3), and what the decoder
 * in Java cannot do with it.
 *
 * @param sps sequence parameter sets, without the byte that says what they are
 * @param pps picture parameter sets, likewise
 * @param lengthBytes how many bytes give the length of a unit of a frame
 */
record H264Parameters(List<ByteBuffer> sps, List<ByteBuffer> pps, int lengthBytes) {
    static final String INTERLACED = "interlaced";

    private static final int BASELINE = 66;
    private static final int MAIN = 77;
    private static final int HIGH = 100;

    static H264Parameters of(ByteBuffer box) {
        int lengthBytes = (box.get(4) & 3) + 1;
        box.position(5);
        List<ByteBuffer> sps = sets(box, box.get() & 0x1f);
        return new H264Parameters(sps, sets(box, box.get() & 0xff), lengthBytes);
    }

    private static List<ByteBuffer> sets(ByteBuffer box, int count) {
        List<ByteBuffer> sets = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            byte[] set = new byte[box.getShort() & 0xffff];
            box.get(set);
            sets.add(ByteBuffer.wrap(set, 1, set.length - 1).slice());
        }
        return sets;
    }

    /** Gives the first sequence's parameters. */
    SeqParameterSet first() {
        return SeqParameterSet.read(plain(sps.get(0)));
    }

    private static ByteBuffer plain(ByteBuffer set) {
        ByteBuffer copy = ByteBuffer.allocate(set.remaining());
        copy.put(set.duplicate()).flip();
        H264Utils.unescapeNAL(copy);
        return copy;
    }

    void give(H264Decoder decoder) {
        decoder.addSps(sps);
        decoder.addPps(pps);
    }

    /** Gives the units of a coded frame. */
    List<ByteBuffer> units(ByteBuffer frame) {
        List<ByteBuffer> units = new ArrayList<>();
        while (frame.remaining() > lengthBytes) {
            int length = 0;
            for (int i = 0; i < lengthBytes; i++) {
                length = length << 8 | (frame.get() & 0xff);
            }
            if (length < 0 || length > frame.remaining()) {
                throw new BufferUnderflowException();
            }
            if (length > 0) {
                units.add(frame.slice(frame.position(), length));
            }
            frame.position(frame.position() + length);
        }
        return units;
    }

    /**
     * Checks that the decoder in Java can do this coding.
     *
     * @throws Undecodable if it cannot
     */
    void checkSupported() throws Undecodable {
        SeqParameterSet first = first();
        if (first.bitDepthLumaMinus8 != 0 || first.bitDepthChromaMinus8 != 0) {
            throw new Undecodable("its H.264 coding has more than 8 bits");
        } else if (first.chromaFormatIdc != ColorSpace.YUV420J) {
            throw new Undecodable("its H.264 coding has a colour format other than 4:2:0");
        } else if (!first.frameMbsOnlyFlag || first.mbAdaptiveFrameFieldFlag) {
            throw new Undecodable("its H.264 coding is " + INTERLACED);
        } else if (!List.of(BASELINE, MAIN, HIGH).contains(first.profileIdc)) {
            throw new Undecodable("its H.264 coding has profile " + first.profileIdc);
        }
    }

    /** Says whether any frame can be predicted from later ones. */
    boolean mayHaveB() {
        return first().profileIdc != BASELINE;
    }

    /**
     * Says whether motion in a frame is taken over in time from another one, which the decoder in Java gets wrong
     * without a word (found by holding its frames against another decoder's).
     */
    boolean temporalDirect(ByteBuffer frame) {
        Map<Integer, SeqParameterSet> sequences = new HashMap<>();
        sps.forEach(set -> {
            SeqParameterSet read = SeqParameterSet.read(plain(set));
            sequences.put(read.seqParameterSetId, read);
        });
        Map<Integer, PictureParameterSet> pictures = new HashMap<>();
        pps.forEach(set -> {
            PictureParameterSet read = PictureParameterSet.read(plain(set));
            pictures.put(read.picParameterSetId, read);
        });
        for (ByteBuffer unit : units(frame)) {
            NALUnit kind = NALUnit.read(unit);
            if (kind.type == NALUnitType.NON_IDR_SLICE) {
                BitReader bits = BitReader.createBitReader(
                        plain(unit.slice(0 + unit.position(), Math.min(64, unit.remaining()))));
                SliceHeader header = SliceHeaderReader.readPart1(bits);
                PictureParameterSet picture = pictures.get(header.picParameterSetId);
                if (header.sliceType == SliceType.B && picture != null) {
                    SliceHeaderReader.readPart2(header, kind, sequences.get(picture.seqParameterSetId), picture, bits);
                    if (!header.directSpatialMvPredFlag) {
                        return true;
                    }
                }
            }
        }
        return false;
    }
}
