package io.github.stoplag.sight;

import io.github.stoplag.quantity.TimeSpan;
import java.util.Objects;

/**
 * Recommends a criterion for the conditions a lamp is viewed in, and says by which rule.
 *
 * <p>Rules, the first that fits: {@link Rule#LIT_TAIL}, {@link Rule#LIGHT_BACKGROUND}, {@link Rule#DARK_BACKGROUND}.
 * All take the integrating eye with τ = 0.2 s, as published for Allard's law, and a threshold of light at the eye. What
 * that gives: an LED lamp without delay is seen before a 26 W filament lamp on 12.8 V, from 10 to 50 m, both of 42 cd,
 * by 57 to 100 ms by day and 22 to 32 ms at night; both of 5 cd by 81 to 152 ms and 28 to 43 ms.
 *
 * <p>That is less than the 166 ms between the two found in the laboratory (Sivak et al. 1993, mean of 42 cd and 5 cd,
 * seen). The thresholds are those of an observer who looks for the light; a driver busy with the road notices it later.
 * An eye with a threshold set by the same laboratory's 84 ms between 42 cd and 5 cd comes to within 25 % of the 166 ms
 * ({@link IntegratingEye}, {@link ModifiedAllard} and {@link BlondelReyDouglas} alike): this class sets none of that
 * kind. The shorter τ of 0.1 s published for day is not switched to by background, since a lamp would then be seen
 * sooner against a brighter one.
 */
public final class DetectorChooser {
    private static final TimeSpan TIME_CONSTANT = TimeSpan.seconds(0.2);
    /** The background in cd/m² below which the curve would fall under the night threshold. */
    private static final double CURVE_FROM = 1;

    private DetectorChooser() {}

    /** Why a criterion is recommended. */
    public enum Rule {
        /** The tail lamp is lit: a change must be told. */
        LIT_TAIL("the tail lamp is lit, so a change must be told: the threshold gains 25 % of the tail lamp's light"),
        /** A dark lamp against at least 1 cd/m². */
        LIGHT_BACKGROUND("the lamp is dark before, against at least 1 cd/m²: threshold by the published curve"),
        /** A dark lamp against less than 1 cd/m². */
        DARK_BACKGROUND("the lamp is dark before, against less than 1 cd/m²: threshold by the nominal range at night");

        private final String text;

        Rule(String text) {
            this.text = text;
        }

        @Override
        public String toString() {
            return text;
        }
    }

    /**
     * A recommended criterion; its outcomes carry the rule.
     *
     * @param detector the criterion
     * @param rule why it is recommended
     */
    public record Choice(Detector detector, Rule rule) implements Detector {

        /**
         * Refuses nulls.
         *
         * @param detector the criterion
         * @param rule why it is recommended
         * @throws NullPointerException if one that is required is null
         */
        public Choice {
            Objects.requireNonNull(detector, "detector");
            Objects.requireNonNull(rule, "rule");
        }

        @Override
        public String criterion() {
            return detector.criterion() + "; chosen because " + rule;
        }

        @Override
        public Detection detect(LampSignal signal) {
            return detector.detect(signal).by(criterion());
        }
    }

    /**
     * Recommends a criterion.
     *
     * @param conditions background, distance, air, tail lamp
     * @return the criterion with the rule that chose it
     * @throws IllegalArgumentException if the background exceeds 1e6 cd/m²
     */
    public static Choice choose(ViewingConditions conditions) {
        boolean dark = conditions.background().inCdPerM2() < CURVE_FROM;
        Threshold threshold =
                Threshold.background(dark ? ThresholdIlluminance.NIGHT : ThresholdIlluminance.CURVE, conditions);
        if (conditions.tailLit()) {
            return choice(threshold.withContrast(Threshold.SIGNAL_LAMP_CONTRAST), Rule.LIT_TAIL);
        }
        return choice(threshold, dark ? Rule.DARK_BACKGROUND : Rule.LIGHT_BACKGROUND);
    }

    private static Choice choice(Threshold threshold, Rule rule) {
        return new Choice(IntegratingEye.of(TIME_CONSTANT, threshold), rule);
    }
}
