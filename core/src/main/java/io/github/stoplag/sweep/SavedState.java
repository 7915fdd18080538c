package io.github.stoplag.sweep;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInput;
import java.io.DataInputStream;
import java.io.DataOutput;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.UTFDataFormatException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;

/**
 * The frame around saved content: mark, format version, kind, length, checksum, content. Numbers are big-endian as in
 * DataOutput.
 */
final class SavedState {
    private static final int MARK = 0x53_54_4C_47;
    private static final int VERSION = 2;
    private static final int MOST_BYTES = 1 << 28;

    /** Writes or reads content. */
    @FunctionalInterface
    interface Content<S> {
        void pass(S stream) throws IOException;
    }

    private SavedState() {}

    static void save(DataOutput out, String kind, Content<DataOutput> content) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        content.pass(new DataOutputStream(bytes));
        byte[] body = bytes.toByteArray();
        out.writeInt(MARK);
        out.writeShort(VERSION);
        out.writeUTF(kind);
        out.writeInt(body.length);
        out.writeInt(checksum(body));
        out.write(body);
    }

    static void restore(DataInput in, String kind, Content<DataInput> content) throws IOException {
        DataInputStream body = new DataInputStream(new ByteArrayInputStream(body(in, kind)));
        try {
            content.pass(body);
        } catch (EOFException e) {
            throw new IOException("the saved " + kind + " hold less than they should", e);
        } catch (IllegalArgumentException e) {
            throw new IOException("the saved " + kind + " hold what cannot be: " + e.getMessage(), e);
        }
        if (body.available() > 0) {
            throw new IOException("the saved " + kind + " hold " + body.available() + " bytes more than they should");
        }
    }

    private static byte[] body(DataInput in, String kind) throws IOException {
        try {
            int mark = in.readInt();
            if (mark != MARK) {
                throw new IOException("these bytes are no saved " + kind + ": they must start with "
                        + Integer.toHexString(MARK) + ", got " + Integer.toHexString(mark));
            }
            int version = in.readUnsignedShort();
            if (version != VERSION) {
                throw new IOException("saved " + kind + " must be of format " + VERSION + ", got format " + version);
            }
            String found = in.readUTF();
            if (!found.equals(kind)) {
                throw new IOException("these bytes must be saved " + kind + ", got saved " + found);
            }
            int length = in.readInt();
            int checksum = in.readInt();
            if (length < 0 || length > MOST_BYTES) {
                throw new IOException(
                        "saved " + kind + " must have a length in [0, " + MOST_BYTES + "] bytes, got " + length);
            }
            byte[] body = new byte[length];
            in.readFully(body);
            if (checksum(body) != checksum) {
                throw new IOException("the saved " + kind + " are damaged: their checksum does not fit");
            }
            return body;
        } catch (EOFException e) {
            throw new IOException("the saved " + kind + " end too early", e);
        } catch (UTFDataFormatException e) {
            throw new IOException("these bytes are no saved " + kind + ": their kind is no text", e);
        }
    }

    private static int checksum(byte[] body) {
        CRC32 crc = new CRC32();
        crc.update(body);
        return (int) crc.getValue();
    }

    static void text(DataOutput out, String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        out.writeInt(bytes.length);
        out.write(bytes);
    }

    static String text(DataInput in) throws IOException {
        byte[] bytes = new byte[Math.toIntExact(length(in.readInt(), MOST_BYTES))];
        in.readFully(bytes);
        return new String(bytes, StandardCharsets.UTF_8);
    }

    static long length(long found, long most) throws IOException {
        if (found < 0 || found > most) {
            throw new IOException("a saved count must be in [0, " + most + "], got " + found);
        }
        return found;
    }

    /** Writes counts, most of which are 0: how many are not, then for each the step to it and its value. */
    static void counts(DataOutput out, long[] counts) throws IOException {
        small(out, Arrays.stream(counts).filter(count -> count != 0).count());
        int last = -1;
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] != 0) {
                small(out, i - last - 1);
                small(out, counts[i]);
                last = i;
            }
        }
    }

    /** Overwrites counts. */
    static void counts(DataInput in, long[] counts) throws IOException {
        Arrays.fill(counts, 0);
        int index = -1;
        for (long left = length(small(in), counts.length); left > 0; left--) {
            index += 1 + (int) length(small(in), counts.length - 2L - index);
            counts[index] = length(small(in), Long.MAX_VALUE);
        }
    }

    /** Writes seven bits a byte, the lowest first; the top bit says that more follow. */
    private static void small(DataOutput out, long value) throws IOException {
        long rest = value;
        while ((rest & ~0x7FL) != 0) {
            out.writeByte((int) ((rest & 0x7F) | 0x80));
            rest >>>= 7;
        }
        out.writeByte((int) rest);
    }

    private static long small(DataInput in) throws IOException {
        long value = 0;
        int next = 0x80;
        for (int shift = 0; shift < 64 && (next & 0x80) != 0; shift += 7) {
            next = in.readByte();
            value |= (long) (next & 0x7F) << shift;
        }
        return value;
    }
}
