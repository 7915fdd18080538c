package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;

/**
 * An LED lamp dimmed by switching it fast: the eye sees the mean, a camera with a short exposure sees one moment of it.
 *
 * <p>Mean Ī = (1/T) ∫ I dt over a period T; a camera with exposure time te starting at t sees (1/te) ∫ I dt from t to t
 * + te. For pulses of full height and duty D: exposures of a whole number of periods see D whatever the moment, shorter
 * ones see anything between 0 and 1.
 *
 * <p>Symbols: I light over the lamp's steady light; T in s; D in (0, 1]. Usual frequencies are 100 to 500 Hz (common
 * practice, no source); drivers recommend at most 2000 Hz (a driver's data sheet, seen). The eye fuses it above some 60
 * to 90 Hz when still, and sees separate dots in a quick glance up to far higher ones (common practice, no source).
 *
 * <pre>{@code
 * PulseWidthDimming tail = PulseWidthDimming.of(LedLamp.of(TimeSpan.seconds(0), TimeSpan.seconds(0)),
 *         200, 0.1);
 * tail.meanRatio(); // 0.1
 * tail.seenByCamera(TimeSpan.seconds(0.001)).dark(); // true
 * }</pre>
 */
public final class PulseWidthDimming implements Evident {
    private static final double FUSION_HZ = 90;
    private static final int PHASES = 720;

    private final FlashingLamp light;
    private final double frequencyHz;
    private final double dutyRatio;
    private final double settledS;
    private final double meanRatio;

    private PulseWidthDimming(LedLamp led, double frequencyHz, double dutyRatio) {
        this.frequencyHz = Check.inRange("dimming frequency", frequencyHz, 1, 1e5, "Hz");
        this.dutyRatio = Check.above("dimming duty", dutyRatio, 0, 1, "");
        light = FlashingLamp.of(led, SwitchingPattern.flashing(frequencyHz, dutyRatio));
        settledS = light.cyclesToRepeat() * light.pattern().periodS();
        meanRatio = light.meanRatio();
    }

    /**
     * Dims an LED lamp.
     *
     * @param led the lamp; its driver delay counts from each pulse, so it belongs to the dimming stage and is mostly 0
     * @param frequencyHz the dimming frequency, [1, 1e5] Hz
     * @param dutyRatio the share of the period with the LED on, (0, 1]
     * @return the dimmed light
     * @throws IllegalArgumentException if frequency or duty is out of range
     */
    public static PulseWidthDimming of(LedLamp led, double frequencyHz, double dutyRatio) {
        Objects.requireNonNull(led, "led");
        return new PulseWidthDimming(led, frequencyHz, dutyRatio);
    }

    /**
     * Gives the light of one moment.
     *
     * @param timeS the time since switch-on in seconds, up to 1e9 s
     * @return I over the undimmed light
     * @throws IllegalArgumentException as {@link FlashingLamp#relativeIntensity}
     */
    public double instantaneousRatio(double timeS) {
        return light.relativeIntensity(timeS);
    }

    /** {@return the mean light Ī once periodic, over the undimmed light: what the eye goes by} */
    public double meanRatio() {
        return meanRatio;
    }

    /**
     * What a camera records of one steady lamp from frame to frame.
     *
     * @param dimmest the least exposure over all moments of opening, as light over the undimmed light
     * @param brightest the greatest
     * @param dark whether a frame can show the lamp as off, below a hundredth of its mean
     */
    public record CameraView(double dimmest, double brightest, boolean dark) {}

    /**
     * Gives what a camera can see.
     *
     * @param exposure the exposure time, (0, 1] s
     * @return the range over all moments at which the shutter may open, on a grid of 1/720 period
     * @throws IllegalArgumentException if the exposure time is out of range
     */
    public CameraView seenByCamera(TimeSpan exposure) {
        Objects.requireNonNull(exposure, "exposure");
        double te = Check.above("exposure time", exposure.inSeconds(), 0, 1, "s");
        double periodS = light.pattern().periodS();
        double whole = Math.floor(te / periodS * (1 + 1e-12));
        double restS = Math.max(0, te - whole * periodS);
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        for (int i = 0; i < PHASES; i++) {
            double fromS = settledS + periodS * i / PHASES;
            double seen = (whole * periodS * meanRatio + light.integralS(fromS, fromS + restS)) / te;
            least = Math.min(least, seen);
            most = Math.max(most, seen);
        }
        return new CameraView(least, most, least < 0.01 * meanRatio);
    }

    /** {@return the basis of the light; reservations: slow enough to flicker, or pulses the driver cannot follow} */
    @Override
    public Evidence evidence() {
        return light.evidence()
                .withCaveatIf(
                        frequencyHz < FUSION_HZ,
                        "dimming at " + Numbers.text(frequencyHz) + " Hz can be seen as flicker: below some "
                                + Numbers.text(FUSION_HZ) + " Hz the eye does not fuse it (common practice, no source)")
                .withCaveatIf(
                        Math.abs(meanRatio / dutyRatio - 1) > 0.05,
                        "the mean light " + Numbers.text(meanRatio, 3) + " differs from the duty "
                                + Numbers.text(dutyRatio, 3)
                                + ": delay, rise and fall are not short against the pulse");
    }

    @Override
    public String toString() {
        return Numbers.text(frequencyHz) + " Hz, duty " + Numbers.text(100 * dutyRatio, 3) + " %, mean light "
                + Numbers.text(100 * meanRatio, 3) + " %";
    }
}
