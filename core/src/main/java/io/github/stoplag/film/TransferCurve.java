package io.github.stoplag.film;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Source;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * How a camera turns light into signal, and back.
 *
 * <pre>
 *   linear   V = L
 *   sRGB     V = 12.92 L up to L = 0.0031308, then 1.055 L^(1/2.4) − 0.055
 *   BT.709   V = 4.5 L up to L = β, then α L^0.45 − (α − 1), α = 1.09929682680944, β = 0.018053968510807
 *   power    V = L^(1/γ)
 *   measured straight between the points of a table
 * </pre>
 *
 * <p>Symbols: L light over the light of full scale, V signal over full scale, both plain ratios; α and β of BT.709 are
 * its 1.099 and 0.018 with the digits that close the gap of 0.00025 between its two pieces. The noise of a dark frame
 * goes below 0, so a curve is carried on: V(−L) = −V(L), and above 1 by the same formula; the table's ends straight on.
 *
 * <p>Telephones bend the curve further by local tone mapping and change their exposure by themselves: film with
 * exposure, focus and white balance locked.
 *
 * <p>Sources: IEC 61966-2-1:1999 (0.0031308, 12.92, 1.055 in a copy, seen; 0.04045 from memory); ITU-R BT.709-6 (1.099,
 * 4.5, 0.45, 0.018 from memory), α and β as in ITU-R BT.2020 to more digits (in a copy, seen).
 */
public final class TransferCurve {
    private static final double ALPHA = 1.09929682680944;
    private static final double BETA = 0.018053968510807;

    /** Signal proportional to light: raw sensor values, or light already worked out. */
    public static final TransferCurve LINEAR = new TransferCurve(
            "linear", Source.assumed("signal proportional to light"), DoubleUnaryOperator.identity(), v -> v);

    /** The curve of IEC 61966-2-1, usual for pictures and for the screens they are shown on. */
    public static final TransferCurve SRGB = new TransferCurve(
            "sRGB",
            Source.seen("IEC 61966-2-1:1999", "transfer characteristic"),
            l -> l <= 0.0031308 ? 12.92 * l : 1.055 * Math.pow(l, 1 / 2.4) - 0.055,
            v -> v <= 12.92 * 0.0031308 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4));

    /** The camera curve of ITU-R BT.709, usual for films in standard dynamic range. */
    public static final TransferCurve BT709 = new TransferCurve(
            "BT.709",
            Source.fromMemory("ITU-R BT.709-6", "item 1.2, opto-electronic transfer characteristic"),
            l -> l < BETA ? 4.5 * l : ALPHA * Math.pow(l, 0.45) - (ALPHA - 1),
            v -> v < 4.5 * BETA ? v / 4.5 : Math.pow((v + ALPHA - 1) / ALPHA, 1 / 0.45));

    private static final Catalogue<TransferCurve> PUBLISHED =
            Catalogue.of("transfer curve", List.of(LINEAR, SRGB, BT709), curve -> curve.label);

    private final String label;
    private final Source source;
    private final DoubleUnaryOperator toSignal;
    private final DoubleUnaryOperator toLight;

    private TransferCurve(String label, Source source, DoubleUnaryOperator toSignal, DoubleUnaryOperator toLight) {
        this.label = label;
        this.source = source;
        this.toSignal = toSignal;
        this.toLight = toLight;
    }

    /**
     * Makes a power curve.
     *
     * @param gamma the exponent γ, [1, 4]; 1 is linear, 2.2 the rule of thumb
     * @return the curve
     * @throws IllegalArgumentException if the exponent is out of range
     */
    public static TransferCurve power(double gamma) {
        Check.inRange("gamma of a transfer curve", gamma, 1, 4, "");
        return new TransferCurve(
                "power " + Numbers.text(gamma),
                Source.assumed("signal as light to the power 1/" + Numbers.text(gamma)),
                l -> Math.pow(l, 1 / gamma),
                v -> Math.pow(v, gamma));
    }

    /**
     * Makes a curve from measured points: a grey wedge, or one steady lamp filmed with known exposures.
     *
     * @param lightRatio light over that of full scale, strictly increasing from 0 to 1
     * @param signalRatio signal over full scale at each, strictly increasing, in [0, 1]
     * @param source where the table comes from
     * @return the curve
     * @throws IllegalArgumentException if the columns differ in length, hold fewer than two points, do not increase or
     *     leave their range; the message names the point, counted from 0
     */
    public static TransferCurve measured(double[] lightRatio, double[] signalRatio, Source source) {
        Objects.requireNonNull(lightRatio, "lightRatio");
        Objects.requireNonNull(signalRatio, "signalRatio");
        Objects.requireNonNull(source, "source");
        if (lightRatio.length != signalRatio.length || lightRatio.length < 2) {
            throw new IllegalArgumentException(
                    "a measured transfer curve must have at least 2 points of light and signal," + " got "
                            + lightRatio.length + " and " + signalRatio.length);
        }
        for (int i = 0; i < lightRatio.length; i++) {
            rising("light", lightRatio, i);
            rising("signal", signalRatio, i);
        }
        if (lightRatio[0] != 0 || lightRatio[lightRatio.length - 1] != 1) {
            throw new IllegalArgumentException("light of a measured transfer curve must go from 0 to 1, got "
                    + Numbers.text(lightRatio[0]) + " to " + Numbers.text(lightRatio[lightRatio.length - 1]));
        }
        double[] light = lightRatio.clone();
        double[] signal = signalRatio.clone();
        return new TransferCurve(
                "measured, " + light.length + " points",
                source,
                l -> straight(light, signal, l),
                v -> straight(signal, light, v));
    }

    private static void rising(String name, double[] values, int i) {
        Check.inRange(name + " of point " + i + " of a transfer curve", values[i], 0, 1, "");
        if (i > 0 && !(values[i] > values[i - 1])) {
            throw new IllegalArgumentException(
                    name + " of point " + i + " of a transfer curve must be above that of point " + (i - 1) + ", "
                            + Numbers.text(values[i - 1]) + ", got " + Numbers.text(values[i]));
        }
    }

    private static double straight(double[] from, double[] to, double at) {
        int found = Arrays.binarySearch(from, at);
        int right = Math.min(from.length - 1, Math.max(1, found >= 0 ? found : -found - 1));
        double slope = (to[right] - to[right - 1]) / (from[right] - from[right - 1]);
        return to[right - 1] + slope * (at - from[right - 1]);
    }

    /**
     * Gives the curves of standards.
     *
     * @return linear, sRGB, BT.709
     */
    public static List<TransferCurve> published() {
        return PUBLISHED.list();
    }

    /**
     * Finds the curve of a standard.
     *
     * @param name {@code linear}, {@code sRGB} or {@code BT.709}
     * @return the curve
     * @throws IllegalArgumentException if there is none of that name
     */
    public static TransferCurve published(String name) {
        Objects.requireNonNull(name, "name");
        return PUBLISHED.get(name);
    }

    /**
     * Reads a curve from its text.
     *
     * @param name {@code linear}, {@code sRGB}, {@code BT.709} in any case, or {@code power 2.2}
     * @return the curve
     * @throws IllegalArgumentException if there is none of that name
     */
    public static TransferCurve parse(String name) {
        Objects.requireNonNull(name, "name");
        String text = name.strip();
        for (TransferCurve curve : PUBLISHED.list()) {
            if (curve.label.equalsIgnoreCase(text)) {
                return curve;
            }
        }
        try {
            if (text.startsWith("power ")) {
                return power(Double.parseDouble(text.substring("power ".length())));
            }
        } catch (NumberFormatException e) {
            throw unknown(name, e);
        }
        throw unknown(name, null);
    }

    private static IllegalArgumentException unknown(String name, @Nullable Throwable cause) {
        return new IllegalArgumentException(
                "transfer curve must be one of linear, sRGB, BT.709, power <gamma>, got \"" + name + "\"", cause);
    }

    /**
     * Turns light into signal.
     *
     * @param lightRatio light over that of full scale, a number
     * @return signal over full scale
     */
    public double signal(double lightRatio) {
        return this != LINEAR && lightRatio < 0 && toSignal.applyAsDouble(0) == 0
                ? -toSignal.applyAsDouble(-lightRatio)
                : toSignal.applyAsDouble(lightRatio);
    }

    /**
     * Turns signal into light.
     *
     * @param signalRatio signal over full scale, a number
     * @return light over that of full scale
     */
    public double light(double signalRatio) {
        return this != LINEAR && signalRatio < 0 && toLight.applyAsDouble(0) == 0
                ? -toLight.applyAsDouble(-signalRatio)
                : toLight.applyAsDouble(signalRatio);
    }

    /** {@return where the curve comes from} */
    public Source source() {
        return source;
    }

    /** {@return the curve's name, for example {@code sRGB}} */
    public String label() {
        return label;
    }

    @Override
    public String toString() {
        return label;
    }
}
