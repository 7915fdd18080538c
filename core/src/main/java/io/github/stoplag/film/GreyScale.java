package io.github.stoplag.film;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;

/**
 * Which grey values stand for no signal, for full signal and for the end of the scale.
 *
 * <p>V = (grey − black)/(white − black).
 *
 * <p>Full range: 0 to 2ⁿ − 1. Limited range, usual in films: 16 to 235 times 2^(n − 8), with codes left above white,
 * ITU-R BT.709-6 item 4.6 (from memory). A program that reads films usually stretches limited range to full before it
 * hands grey values on.
 *
 * @param black the grey value of no signal
 * @param white the grey value of full signal, V = 1
 * @param top the largest grey value the film can hold: at it a pixel is clipped
 * @param step the step between neighbouring grey values, 0 if there is none to mind
 */
public record GreyScale(double black, double white, double top, double step) {
    /** Eight bits, full range: what pictures and most readers of films give. */
    public static final GreyScale FULL_8_BIT = full(8);

    /**
     * Checks the order.
     *
     * @param black the grey value of no signal
     * @param white the grey value of full signal
     * @param top the largest grey value
     * @param step the step between neighbouring grey values
     * @throws IllegalArgumentException if black is not below white, white above top, a value beyond ±1e9 or the step
     *     out of [0, white − black]
     */
    public GreyScale {
        Check.inRange("black level", black, -1e9, 1e9, "");
        Check.above("white level", white, black, 1e9, "");
        Check.inRange("largest grey value", top, white, 1e9, "");
        Check.inRange("step of grey values", step, 0, white - black, "");
    }

    /**
     * Makes a full-range scale.
     *
     * @param bits the bit depth n, [1, 16]
     * @return 0 to 2ⁿ − 1
     * @throws IllegalArgumentException if the bit depth is out of range
     */
    public static GreyScale full(int bits) {
        double top = Math.pow(2, Check.inRange("bit depth", bits, 1, 16, "")) - 1;
        return new GreyScale(0, top, top, 1);
    }

    /**
     * Makes a limited-range scale.
     *
     * @param bits the bit depth n, [8, 16]
     * @return 16 to 235 times 2^(n − 8), clipped at 2ⁿ − 1
     * @throws IllegalArgumentException if the bit depth is out of range
     */
    public static GreyScale limited(int bits) {
        double unit = Math.pow(2, Check.inRange("bit depth", bits, 8, 16, "") - 8);
        return new GreyScale(16 * unit, 235 * unit, 256 * unit - 1, 1);
    }

    /**
     * Makes a scale of any other values, such as the columns of a spreadsheet.
     *
     * @param black the value of no signal
     * @param white the value of full signal, at which a pixel is clipped
     * @return the scale, without steps
     * @throws IllegalArgumentException if black is not below white
     */
    public static GreyScale between(double black, double white) {
        return new GreyScale(black, white, white, 0);
    }

    /**
     * {@return the signal V of a grey value}
     *
     * @param grey the grey value
     */
    public double signal(double grey) {
        return (grey - black) / (white - black);
    }

    /** {@return the least grey value a film can hold: at it a pixel is crushed to black} */
    public double bottom() {
        return Math.min(0, black);
    }

    /**
     * {@return the grey value of a signal, neither rounded nor clipped}
     *
     * @param signalRatio the signal V
     */
    public double grey(double signalRatio) {
        return black + signalRatio * (white - black);
    }

    @Override
    public String toString() {
        return "grey " + Numbers.text(black) + " to " + Numbers.text(white)
                + (top > white ? ", clipped at " + Numbers.text(top) : "")
                + (step > 0 ? ", in steps of " + Numbers.text(step) : "");
    }
}
