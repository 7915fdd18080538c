package io.github.stoplag.sight;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Illuminance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * The least light that must be switched on to be noticed: a threshold of its own and a share of the light already
 * there.
 *
 * <p>Ith = I0 + C Ib, with I0 = Eth d² e^(σ d) where an illuminance is given.
 *
 * <p>Symbols: Ith in cd; I0 the threshold against a dark lamp in cd; Eth threshold illuminance in lx; d distance in m;
 * σ extinction of the air ({@link Atmosphere}); Ib the light before
 * switch-on, of the lit tail lamp and of a source that glows already, in cd; C contrast threshold, a
 * Weber ratio (0, 10].
 *
 * <p>Sources: increment threshold with a constant term ("dark light"), Barlow 1957 (from memory); C = {@value
 * #SIGNAL_LAMP_CONTRAST}: most drivers cannot tell signal lamps whose intensities differ by less than 25 %, Huey,
 * Dekker and Lyons 1994, as told in the abstract of a study of low-beam lamps that itself found 11 to 19 % (seen). Both
 * compared steady lamps; a sudden change is easier to notice.
 */
public final class Threshold implements Evident {
    /** The contrast threshold of signal lamps as drivers see them, 25 %. */
    public static final double SIGNAL_LAMP_CONTRAST = 0.25;

    /** Where the figure of {@link #SIGNAL_LAMP_CONTRAST} comes from. */
    public static final Source SIGNAL_LAMP_CONTRAST_SOURCE = Source.seen(
            "Huey, Dekker and Lyons 1994",
            "as told in UMTRI, Just noticeable differences for low-beam headlamp intensities");

    /** A lamp 0.1 m wide is a point, 1 arc minute, from this distance on. */
    private static final double POINT_SOURCE_M = 0.1 / Math.toRadians(1 / 60.0);

    /** What the nominal threshold at night, 2e-7 lx, cannot see from 3 m on. */
    private static final double INVISIBLE_CD = 1e-6;

    private final double darkCd;
    private final String darkText;
    private final double contrastRatio;
    private final List<Caveat> caveats;

    private Threshold(double darkCd, String darkText, double contrastRatio, List<Caveat> caveats) {
        this.darkCd = darkCd;
        this.darkText = darkText;
        this.contrastRatio = contrastRatio;
        this.caveats = Check.copyOf("caveats", caveats);
    }

    /**
     * Makes a threshold of luminous intensity, good for one distance and background.
     *
     * @param intensity the threshold I0, (0, 1e6] cd
     * @return the threshold
     * @throws IllegalArgumentException if it is out of range
     */
    public static Threshold intensity(LuminousIntensity intensity) {
        double cd = Ranges.SHINING.check("threshold of the eye", intensity.inCandela());
        return new Threshold(cd, intensity.toString(), 0, List.of());
    }

    /**
     * Makes a threshold from an illuminance at the eye.
     *
     * @param illuminance the threshold Eth, (0, 1] lx
     * @param distance the distance d from lamp to eye, (0, 1e5] m
     * @param atmosphere the air between
     * @return the threshold
     * @throws IllegalArgumentException if illuminance or distance is out of range
     */
    public static Threshold illuminance(Illuminance illuminance, Distance distance, Atmosphere atmosphere) {
        return illuminance(illuminance, "", distance, atmosphere, List.of());
    }

    /**
     * Makes a threshold from the background the lamp is seen against.
     *
     * @param law the published threshold to use
     * @param conditions background, distance and air; whether the tail lamp is lit is left to {@link #withContrast}
     * @return the threshold
     * @throws IllegalArgumentException if the background is outside what the law can take
     */
    public static Threshold background(ThresholdIlluminance law, ViewingConditions conditions) {
        Objects.requireNonNull(law, "law");
        String origin = " (" + law + ", " + law.source().standing() + ", background " + conditions.background() + ")";
        return illuminance(
                law.at(conditions.background()),
                origin,
                conditions.distance(),
                conditions.atmosphere(),
                law.evidence(conditions.background()).caveats());
    }

    private static Threshold illuminance(
            Illuminance illuminance, String origin, Distance distance, Atmosphere air, List<Caveat> lawCaveats) {
        Check.above("threshold illuminance", illuminance.inLux(), 0, 1, "lx");
        List<Caveat> caveats = new ArrayList<>(lawCaveats);
        double m = distance.inMetres();
        double cd = illuminance.inLux() * air.candelaPerLux(distance);
        if (m < POINT_SOURCE_M) {
            caveats.add(
                    new Caveat("threshold illuminances hold for a point of light, about 1 arc minute (assumed): a lamp"
                            + " 0.1 m wide spans " + Numbers.text(Math.toDegrees(0.1 / m) * 60, 2) + " arc minutes at "
                            + distance
                            + " and needs more"));
        }
        String place = " at " + distance + (air == Atmosphere.CLEAR ? "" : " in " + air);
        return new Threshold(cd, Numbers.text(illuminance.inLux(), 3) + " lx" + origin + place, 0, caveats);
    }

    /**
     * Makes a threshold of contrast alone: the change of a lit lamp, however dim.
     *
     * @param ratio the contrast threshold C, (0, 10]
     * @return the threshold; it refuses signals without light before switch-on
     * @throws IllegalArgumentException if the ratio is out of range
     */
    public static Threshold contrast(double ratio) {
        return new Threshold(0, "", checkContrast(ratio), List.of());
    }

    /**
     * Adds a share of the light already there.
     *
     * @param ratio the contrast threshold C, (0, 10]
     * @return the threshold that the added light must exceed against a lit tail lamp
     * @throws IllegalArgumentException if the ratio is out of range
     */
    public Threshold withContrast(double ratio) {
        return new Threshold(darkCd, darkText, checkContrast(ratio), caveats);
    }

    private static double checkContrast(double ratio) {
        return Check.above("contrast threshold", ratio, 0, 10, "");
    }

    /** Gives Ith; infinite where fog lets nothing through. */
    double requiredCd(LampSignal signal) {
        double beforeCd = signal.beforeCd();
        if (darkText.isEmpty() && !(beforeCd > INVISIBLE_CD)) {
            throw new IllegalArgumentException("light before switch-on for a threshold of contrast alone must be above "
                    + Numbers.text(INVISIBLE_CD) + " cd, got " + Numbers.text(beforeCd, 3) + " cd");
        }
        return darkCd + contrastRatio * beforeCd;
    }

    /** Gives what a detection of this signal rests on: the light, this threshold and how far it holds. */
    Evidence evidence(LampSignal signal) {
        return signal.evidence()
                .with(evidence())
                .withCaveatIf(
                        contrastRatio == 0 && signal.steadyIntensity().inCandela() > 0,
                        "a tail lamp of " + signal.steadyIntensity()
                                + " is lit, and this criterion leaves it out: give the threshold a contrast");
    }

    @Override
    public Evidence evidence() {
        return Evidence.of("threshold of the eye: " + this).withCaveats(caveats);
    }

    Detection tooDim(String criterion, LampSignal signal, Course course, Evidence evidence) {
        double beforeCd = signal.beforeCd();
        return new Detection.NeverSeen(
                criterion,
                "the " + (course.rising() ? "final " : "greatest ") + Numbers.text(course.peakCd()) + " cd"
                        + (beforeCd > INVISIBLE_CD ? ", added to " + Numbers.text(beforeCd) + " cd," : "")
                        + " does not exceed the threshold of " + Numbers.text(requiredCd(signal)) + " cd",
                evidence);
    }

    @Override
    public String toString() {
        String contrast = Numbers.text(100 * contrastRatio) + " % of the lit tail lamp";
        return contrastRatio == 0 ? darkText : darkText.isEmpty() ? contrast : darkText + " plus " + contrast;
    }
}
