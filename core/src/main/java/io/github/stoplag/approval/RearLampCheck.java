package io.github.stoplag.approval;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Caveat;
import java.util.List;
import java.util.Objects;

/**
 * A rear lamp's intensity held against a {@link RearLampLimit}.
 *
 * @param intensity what was checked
 * @param lowest the least intensity it was held to
 * @param highest the greatest intensity it was held to
 * @param limit the row used, with its standing
 * @param judgedAs what it was judged as, for example {@code a single lamp by night}
 * @param caveats the reservations
 */
public record RearLampCheck(
        LuminousIntensity intensity,
        LuminousIntensity lowest,
        LuminousIntensity highest,
        RearLampLimit limit,
        String judgedAs,
        List<Caveat> caveats) {
    /** How an intensity stands to the limits. */
    public enum Verdict {
        /** Below the least intensity. */
        TOO_DIM("below"),
        /** Within the limits, both included. */
        WITHIN("within"),
        /** Above the greatest intensity. */
        TOO_BRIGHT("above");

        private final String word;

        Verdict(String word) {
            this.word = word;
        }
    }

    /**
     * Copies the caveats.
     *
     * @param intensity what was checked
     * @param lowest the least intensity it was held to
     * @param highest the greatest intensity it was held to
     * @param limit the row used, with its standing
     * @param judgedAs what it was judged as, for example {@code a single lamp by night}
     * @param caveats the reservations
     */
    public RearLampCheck {
        Objects.requireNonNull(highest, "highest");
        Objects.requireNonNull(intensity, "intensity");
        Objects.requireNonNull(judgedAs, "judgedAs");
        Objects.requireNonNull(limit, "limit");
        Objects.requireNonNull(lowest, "lowest");
        caveats = Check.copyOf("caveats", caveats);
    }

    /** {@return how the intensity stands to the limits} */
    public Verdict verdict() {
        if (intensity.compareTo(lowest) < 0) {
            return Verdict.TOO_DIM;
        }
        return intensity.compareTo(highest) > 0 ? Verdict.TOO_BRIGHT : Verdict.WITHIN;
    }

    /** {@return whether the intensity is within the limits} */
    public boolean within() {
        return verdict() == Verdict.WITHIN;
    }

    /** {@return what to mind whatever the verdict: an intensity on the axis is no type approval} */
    public List<Caution> cautions() {
        return List.of(Caution.LAMP_LAW, Caution.LICENSED_PRACTICE);
    }

    @Override
    public String toString() {
        return intensity + " is " + verdict().word + " [" + Numbers.text(lowest.inCandela()) + ", "
                + Numbers.text(highest.inCandela()) + "] cd of " + limit + " as " + judgedAs + ", " + limit.source();
    }
}
