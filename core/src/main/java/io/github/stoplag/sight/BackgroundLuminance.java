package io.github.stoplag.sight;

import io.github.stoplag.quantity.Luminance;
import io.github.stoplag.source.Source;

/**
 * Named luminances of what a lamp is seen against; assumed round values within the published steps of the same name.
 *
 * <p>The steps (runway visual range practice, from memory): night below 50, intermediate 50 to 999, normal day 1000 to
 * 12 000 cd/m², bright day above. A caller who measured the background gives that.
 */
public enum BackgroundLuminance {
    /** A bright day: 10 000 cd/m². */
    DAY(10_000, "bright end of a normal day, 1000 to 12 000 cd/m²"),
    /** Dusk or dawn: 100 cd/m². */
    DUSK(100, "dusk, between 50 and 999 cd/m²"),
    /** A lit road at night: 1 cd/m². */
    NIGHT(1, "lit road at night, well below 50 cd/m²");

    private final double cdPerM2;
    private final String why;

    BackgroundLuminance(double cdPerM2, String why) {
        this.cdPerM2 = cdPerM2;
        this.why = why;
    }

    /**
     * Gives the value.
     *
     * @return the background luminance B
     */
    public Luminance luminance() {
        return Luminance.cdPerM2(cdPerM2);
    }

    /**
     * Gives what the value rests on.
     *
     * @return an assumption with its reason
     */
    public Source source() {
        return Source.assumed(why);
    }
}
