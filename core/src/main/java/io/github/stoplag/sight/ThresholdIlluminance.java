package io.github.stoplag.sight;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Illuminance;
import io.github.stoplag.quantity.Luminance;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import io.github.stoplag.source.Validity;
import java.util.Arrays;
import java.util.Objects;

/**
 * The least illuminance at the eye from a point of light that is seen against a background, as published.
 *
 * <p>They hold for a steady point of light and an observer who looks for it; a light that must be noticed by someone
 * busy with the road needs more.
 */
public enum ThresholdIlluminance implements Evident {
    /**
     * The continuous curve log10 E = 0.05 (log10 B)² + 0.573 log10 B − 6.667, E in lx, B in cd/m²; possible [1e-3, 1e6]
     * cd/m².
     *
     * <p>Checked range [1, 4e4] cd/m²: from where it meets the night threshold of 2e-7 lx to where it meets the 1e-3 lx
     * of a bright day.
     */
    CURVE("published curve", Standing.FROM_MEMORY, "ICAO Doc 9328, runway visual range", 1, 4e4) {
        @Override
        public Illuminance at(Luminance background) {
            double b = Math.log10(
                    Check.inRange("background luminance of the curve", background.inCdPerM2(), 1e-3, 1e6, "cd/m²"));
            return Illuminance.lux(Math.pow(10, 0.05 * b * b + 0.573 * b - 6.667));
        }
    },
    /** One value each for night, intermediate, normal day and bright day, in background_steps.csv. */
    STEPS("published steps", Standing.FROM_MEMORY, "ICAO Annex 3, attachment D", 0, 1e5) {
        @Override
        public Illuminance at(Luminance background) {
            int found = Arrays.binarySearch(Steps.FROM_CD_PER_M2, background.inCdPerM2());
            return Illuminance.lux(Steps.THRESHOLD_LX[found >= 0 ? found : -found - 2]);
        }
    },
    /**
     * 2e-7 lx at night whatever the background, by which the nominal range of signal lights is stated; checked [0, 50]
     * cd/m².
     */
    NIGHT("nominal range at night", Standing.SEEN, "IES lighting definitions, nominal range of a light signal", 0, 50) {
        @Override
        public Illuminance at(Luminance background) {
            return Illuminance.lux(2e-7);
        }
    };

    private final String text;
    private final Standing standing;
    private final String document;
    private final double loCdPerM2;
    private final double hiCdPerM2;

    ThresholdIlluminance(String text, Standing standing, String document, double loCdPerM2, double hiCdPerM2) {
        this.text = text;
        this.standing = standing;
        this.document = document;
        this.loCdPerM2 = loCdPerM2;
        this.hiCdPerM2 = hiCdPerM2;
    }

    /**
     * Gives the threshold against a background.
     *
     * @param background the background luminance B
     * @return the threshold E
     * @throws IllegalArgumentException if the background is outside what the law can take
     */
    public abstract Illuminance at(Luminance background);

    /**
     * Says who published it.
     *
     * @return the source
     */
    public Source source() {
        return new Source(document, "", standing);
    }

    @Override
    public Evidence evidence() {
        return Evidence.of("threshold illuminance, " + text, source());
    }

    /**
     * Says what the threshold against a background rests on.
     *
     * @param background the background luminance B
     * @return the evidence, with a caveat for a background outside the checked range
     */
    public Evidence evidence(Luminance background) {
        Objects.requireNonNull(background, "background");
        Validity validity = new Validity("background luminance", loCdPerM2, hiCdPerM2, "cd/m²", source());
        return evidence()
                .withCaveats(validity.check(background.inCdPerM2()).stream().toList());
    }

    @Override
    public String toString() {
        return text;
    }

    /** The table, read once. */
    private static final class Steps {
        private static final Table TABLE = Table.read(ThresholdIlluminance.class, "background_steps.csv");
        static final double[] FROM_CD_PER_M2 = TABLE.numbers("from_cd_per_m2");
        static final double[] THRESHOLD_LX = TABLE.numbers("threshold_lx");
    }
}
