package io.github.stoplag.sight;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Validity;
import java.util.Objects;
import java.util.Optional;

/**
 * Piéron's law: how reaction to a light that comes on at once shortens with its intensity.
 *
 * <p>t = t0 + k (I/I1)^(−p).
 *
 * <p>Symbols: t reaction time, t0 the part no intensity shortens, k the intensity's part at I1, in s; I, I1 intensity
 * in cd; p exponent, a plain ratio (0, 2]. Ranges: t0 [0, 10] s, k [0, 10] s, I and I1 above 0 cd. A lamp that rises
 * slowly is not covered: add its delay by one of the detectors instead, not both.
 *
 * <p>Source: form as in Front. Physiol. 6 (2015) 190 (seen); simple and choice reactions share the exponent, harder
 * tasks only raise t0 (Pins and Bonnet 1996, as told in a conference abstract, seen).
 *
 * <pre>{@code
 * PieronLaw law = PieronLaw.between(
 *         TimeSpan.seconds(0.2), LuminousIntensity.candela(1), LuminousIntensity.candela(100),
 *         TimeSpan.seconds(0.1), 0.33, Source.assumed("invented example"));
 * law.at(LuminousIntensity.candela(1)).intensityPart().inSeconds(); // 0.128
 * law.at(LuminousIntensity.candela(100)).intensityPart().inSeconds(); // 0.028
 * }</pre>
 */
public final class PieronLaw implements Evident {
    private final TimeSpan irreducible;
    private final double slowingS;
    private final LuminousIntensity reference;
    private final double exponent;
    private final Optional<Validity> validity;

    /** Published exponents; they differ by two because they were measured on different things. */
    public enum Exponent {
        /** 0.67: latency against the step of luminance, foveal, three decades of background. */
        LUMINANCE_STEP(
                0.67,
                Standing.SEEN,
                "Burkhardt, Gottesman, Kersten and Legge, J. Opt. Soc. Am. A 4 (1987) 530, abstract"),
        /** 0.33: the rule of thumb for luminance over a wide range. */
        RULE_OF_THUMB(0.33, Standing.FROM_MEMORY, "Piéron 1914 and 1920; Pins and Bonnet 1996");

        private final double ratio;
        private final Standing standing;
        private final String document;

        Exponent(double ratio, Standing standing, String document) {
            this.ratio = ratio;
            this.standing = standing;
            this.document = document;
        }

        /**
         * Gives the exponent.
         *
         * @return p
         */
        public double ratio() {
            return ratio;
        }

        /**
         * Says who published it.
         *
         * @return the source
         */
        public Source source() {
            return new Source(document, "", standing);
        }
    }

    /**
     * A reaction time by the law.
     *
     * @param total the reaction time t
     * @param intensityPart the part k (I/I1)^(−p) of it
     * @param law the law with its parameters
     * @param evidence the law, with a caveat outside the intensities it was set by
     */
    public record Reaction(TimeSpan total, TimeSpan intensityPart, String law, Evidence evidence) implements Evident {

        /**
         * Refuses nulls.
         *
         * @param total the reaction time t
         * @param intensityPart the part k (I/I1)^(−p) of it
         * @param law the law with its parameters
         * @param evidence the law, with a caveat outside the intensities it was set by
         * @throws NullPointerException if one that is required is null
         */
        public Reaction {
            Objects.requireNonNull(evidence, "evidence");
            Objects.requireNonNull(intensityPart, "intensityPart");
            Objects.requireNonNull(law, "law");
            Objects.requireNonNull(total, "total");
        }
    }

    private PieronLaw(
            TimeSpan irreducible,
            double slowingS,
            LuminousIntensity reference,
            double exponent,
            Optional<Validity> validity) {
        this.irreducible = irreducible;
        this.slowingS = slowingS;
        this.reference = reference;
        this.exponent = exponent;
        this.validity = validity;
        Check.inRange("irreducible reaction time", irreducible.inSeconds(), 0, 10, "s");
    }

    /**
     * Makes the law from its parameters.
     *
     * @param irreducible the time t0, [0, 10] s
     * @param slowing the intensity's part k at the reference, [0, 10] s
     * @param reference the reference intensity I1, above 0 cd
     * @param exponent the exponent p, (0, 2]
     * @return the law
     * @throws IllegalArgumentException if one is out of range
     */
    public static PieronLaw of(TimeSpan irreducible, TimeSpan slowing, LuminousIntensity reference, double exponent) {
        Objects.requireNonNull(irreducible, "irreducible");
        Objects.requireNonNull(reference, "reference");
        Objects.requireNonNull(slowing, "slowing");
        Check.inRange("intensity part of the reaction time", slowing.inSeconds(), 0, 10, "s");
        checkLit("reference intensity", reference);
        checkExponent(exponent);
        return new PieronLaw(irreducible, slowing.inSeconds(), reference, exponent, Optional.empty());
    }

    /**
     * Makes the law from how much later a dim light is answered than a bright one; between the two it interpolates.
     *
     * @param irreducible the time t0, [0, 10] s
     * @param dim the lower intensity, above 0 cd
     * @param bright the higher intensity, above the lower
     * @param later how much later the dim light is answered, [0, 10] s
     * @param exponent the exponent p, (0, 2]
     * @param source who measured the two
     * @return the law, with a caveat outside the two intensities
     * @throws IllegalArgumentException if one is out of range
     */
    public static PieronLaw between(
            TimeSpan irreducible,
            LuminousIntensity dim,
            LuminousIntensity bright,
            TimeSpan later,
            double exponent,
            Source source) {
        Objects.requireNonNull(bright, "bright");
        Objects.requireNonNull(dim, "dim");
        Objects.requireNonNull(irreducible, "irreducible");
        Objects.requireNonNull(later, "later");
        Objects.requireNonNull(source, "source");
        checkLit("lower intensity", dim);
        Check.above("higher intensity", bright.inCandela(), dim.inCandela(), Ranges.SHINING.hi(), "cd");
        Check.inRange("delay of the dim light", later.inSeconds(), 0, 10, "s");
        checkExponent(exponent);
        double atBrightS = later.inSeconds() / Math.expm1(exponent * Math.log(bright.inCandela() / dim.inCandela()));
        Validity validity = new Validity("luminous intensity", dim.inCandela(), bright.inCandela(), "cd", source);
        return new PieronLaw(irreducible, atBrightS, bright, exponent, Optional.of(validity));
    }

    private static void checkLit(String name, LuminousIntensity intensity) {
        Ranges.SHINING.check(name, intensity.inCandela());
    }

    private static void checkExponent(double exponent) {
        Check.above("exponent of Piéron's law", exponent, 0, 2, "");
    }

    /**
     * Gives the reaction time to a light.
     *
     * @param intensity the intensity I of the light that comes on, above 0 cd
     * @return the reaction with its parts
     * @throws IllegalArgumentException if the light is dark, or so dim that the time exceeds 1e6 s
     */
    public Reaction at(LuminousIntensity intensity) {
        checkLit("intensity of the light", intensity);
        TimeSpan part = TimeSpan.seconds(slowingS * Math.pow(intensity.inCandela() / reference.inCandela(), -exponent));
        return new Reaction(
                TimeSpan.seconds(irreducible.inSeconds() + part.inSeconds()),
                part,
                toString(),
                evidence()
                        .withCaveats(validity.flatMap(v -> v.check(intensity.inCandela())).stream()
                                .toList()));
    }

    @Override
    public Evidence evidence() {
        Evidence law = Evidence.of(toString());
        return validity.map(v -> law.with(Evidence.of("set by two intensities", v.source())))
                .orElse(law);
    }

    @Override
    public String toString() {
        return "Piéron's law, " + irreducible + " + " + Numbers.text(slowingS) + " s × (I/" + reference + ")^-"
                + Numbers.text(exponent);
    }
}
