package io.github.stoplag.approval;

import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.source.Source;
import java.util.Objects;

/**
 * How much brighter a stop lamp must be than the tail lamp it is built together with.
 *
 * <p>UN R148: (Is + It)/It at least 5; FMVSS 108: Is/It at least 5 near the axis, 3 elsewhere. The UN numerator is the
 * sum of both, the American one the stop lamp alone: 5 the UN way is 4 the American way.
 *
 * <p>Symbols: Is intensity of the stop lamp alone, It of the tail (rear position) lamp alone, in the same direction.
 *
 * <pre>{@code
 * StopTailRatio.UN_R148.check(LuminousIntensity.candela(80), LuminousIntensity.candela(10)).met(); // true
 * }</pre>
 *
 * @param least the least ratio
 * @param withTailInNumerator whether the tail lamp counts in the numerator too
 * @param source law, place and standing
 */
public record StopTailRatio(double least, boolean withTailInNumerator, Source source) {
    /** Within 5° up and down and 10° left and right of the axis, reciprocally incorporated lamps ("should be"). */
    public static final StopTailRatio UN_R148 = new StopTailRatio(
            5, true, Source.seen("UN Regulation No. 148, 01 series (ECE/TRANS/WP.29/2022/92)", "4.8.3.5, p. 18"));

    /** At H-V, H-5L, H-5R and 5U-V. */
    public static final StopTailRatio FMVSS_108_NEAR_AXIS = new StopTailRatio(
            5, false, Source.seen("49 CFR 571.108, edition of 1 October 2025", "Table IX and S7.3.12.1"));

    /** At the other test points. */
    public static final StopTailRatio FMVSS_108_ELSEWHERE = new StopTailRatio(
            3, false, Source.seen("49 CFR 571.108, edition of 1 October 2025", "Table IX and S7.3.12.1"));

    /**
     * Refuses nulls.
     *
     * @param least the least ratio
     * @param withTailInNumerator whether the tail lamp counts in the numerator too
     * @param source law, place and standing
     * @throws NullPointerException if one that is required is null
     */
    public StopTailRatio {
        Objects.requireNonNull(source, "source");
    }

    /**
     * A pair of lamps held against a ratio.
     *
     * @param met whether it is reached
     * @param ratio the ratio, formed as the regulation forms it
     * @param rule the rule used
     */
    public record Result(boolean met, double ratio, StopTailRatio rule) {

        /**
         * Refuses nulls.
         *
         * @param met whether it is reached
         * @param ratio the ratio, formed as the regulation forms it
         * @param rule the rule used
         * @throws NullPointerException if one that is required is null
         */
        public Result {
            Objects.requireNonNull(rule, "rule");
        }

        @Override
        public String toString() {
            return (rule.withTailInNumerator ? "(stop + tail)/tail " : "stop/tail ") + Numbers.text(ratio, 3)
                    + (met ? " meets " : " misses ") + Numbers.text(rule.least) + " of " + rule.source;
        }
    }

    /**
     * Checks a pair of lamps in one direction.
     *
     * @param stop the stop lamp alone
     * @param tail the tail lamp alone, above 0 cd
     * @return the verdict
     * @throws IllegalArgumentException if the tail lamp gives no light
     */
    public Result check(LuminousIntensity stop, LuminousIntensity tail) {
        Objects.requireNonNull(tail, "tail");
        double tailCd = Ranges.SHINING.check("intensity of the tail lamp", tail.inCandela());
        double ratio = (stop.inCandela() + (withTailInNumerator ? tailCd : 0)) / tailCd;
        return new Result(ratio >= least, ratio, this);
    }
}
