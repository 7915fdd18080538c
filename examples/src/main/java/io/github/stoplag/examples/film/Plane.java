package io.github.stoplag.examples.film;

/**
 * One component of a picture inside an array of bytes.
 *
 * @param data the bytes
 * @param from the index of the first value
 * @param step bytes from one value to the next of a row
 * @param row bytes from one row to the next
 * @param wide whether a value takes two bytes, the lower one first
 * @param flip what to exchange in a byte: 0x80 where values are stored less 128
 */
@SuppressWarnings("ArrayRecordComponent") // never compared, and the array is the decoder's own
record Plane(byte[] data, int from, int step, int row, boolean wide, int flip) {
    static Plane of(byte[] data, int from, int step, int row) {
        return new Plane(data, from, step, row, false, 0);
    }

    int at(int x, int y) {
        int i = from + y * row + x * step;
        return wide ? (data[i] & 0xff) | (data[i + 1] & 0xff) << 8 : (data[i] & 0xff) ^ flip;
    }
}
