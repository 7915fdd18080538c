package io.github.stoplag.examples.film;

/**
 * What the numbers of a picture mean: how many bits, and which of them are black and white.
 *
 * <p>Limited range puts black at 16 and white at 235 of 8 bits, colour differences within 16 to 240 (ITU-R BT.709);
 * full range uses all values.
 *
 * @param bits bits of a value
 * @param full whether black is 0 and white the greatest value
 * @param stated whether the film says so itself; else it is the usual range of its kind
 * @param kr the share of red in the brightness
 * @param kb the share of blue in the brightness
 * @param transfer what the film says of its transfer curve, by the numbers of ITU-T H.273; 2 if it says nothing
 */
record Coding(int bits, boolean full, boolean stated, double kr, double kb, int transfer) {
    /** The number of ITU-T H.273 for "not said". */
    static final int UNSAID = 2;

    private static final int HD_LINES = 720;

    /** A picture of red, green and blue in full range whose brightness is weighed as a camera's is (ITU-R BT.709). */
    static Coding rgb(int bits) {
        return new Coding(bits, true, true, 0.2126, 0.0722, UNSAID);
    }

    /**
     * A picture of brightness and colour difference; where the film does not say its matrix the height decides, as
     * players do.
     */
    static Coding yuv(int bits, boolean full, boolean stated, int matrix, int transfer, int height) {
        boolean bt601 = switch (matrix) {
            case 1, 9, 10 -> false;
            case 4, 5, 6, 7 -> true;
            default -> height < HD_LINES;
        };
        if (matrix == 9 || matrix == 10) {
            return new Coding(bits, full, stated, 0.2627, 0.0593, transfer);
        }
        return bt601
                ? new Coding(bits, full, stated, 0.299, 0.114, transfer)
                : new Coding(bits, full, stated, 0.2126, 0.0722, transfer);
    }

    Coding withRange(boolean nowFull) {
        return new Coding(bits, nowFull, true, kr, kb, transfer);
    }

    int greatest() {
        return (1 << bits) - 1;
    }

    double black() {
        return full ? 0 : 16 << (bits - 8);
    }

    double white() {
        return full ? greatest() : 235 << (bits - 8);
    }

    /** Gives a value as a share of the way from black to white. */
    double relative(double value) {
        return (value - black()) / (white() - black());
    }

    /** Gives a colour difference as a share, within ±0.5. */
    double difference(double value) {
        double middle = 1 << (bits - 1);
        return (value - middle) / (full ? greatest() : 224 << (bits - 8));
    }
}
