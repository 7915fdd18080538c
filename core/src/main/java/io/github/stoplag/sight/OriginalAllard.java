package io.github.stoplag.sight;

import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Objects;

/**
 * Allard's effective intensity of 1876: the greatest response of an eye that forgets exponentially.
 *
 * <p>i(t) = (1/a) ∫ I(s) e^(−(t − s)/a) ds, Ie = max i. For a rectangle Ie = I (1 − e^(−T/a)), up to 30 % more than the
 * other methods.
 *
 * <p>Symbols: I, i, Ie in cd; a time constant in s, (0, 10] s, 0.2 s usual, in use 0.1 to 0.3 s. {@link IntegratingEye}
 * asks the same of a lamp that stays on.
 *
 * <p>Source: as quoted in US patent application 2004/0160598 with a = 0.2 s (seen); the 30 % in Ohno, note of 8 January
 * 2002 on effective intensity (seen).
 *
 * <pre>{@code
 * Flash flash = Flash.rectangle(LuminousIntensity.candela(100), TimeSpan.seconds(0.2));
 * OriginalAllard.of(TimeSpan.seconds(0.2)).of(flash).intensity(); // 63.2121 cd
 * }</pre>
 */
public final class OriginalAllard implements EffectiveIntensityMethod {
    private final TimeSpan timeConstant;
    private final double aS;

    private OriginalAllard(TimeSpan timeConstant) {
        this.timeConstant = timeConstant;
        aS = Gathering.checkConstantS(timeConstant);
    }

    /**
     * Makes the method.
     *
     * @param timeConstant the time constant a, (0, 10] s
     * @return the method
     * @throws IllegalArgumentException if it is out of range
     */
    public static OriginalAllard of(TimeSpan timeConstant) {
        Objects.requireNonNull(timeConstant, "timeConstant");
        return new OriginalAllard(timeConstant);
    }

    @Override
    public String name() {
        return "original Allard, a = " + timeConstant;
    }

    @Override
    public EffectiveIntensity of(Flash flash) {
        return EffectiveIntensity.of(SummationKernel.EXPONENTIAL.greatestCd(flash, aS), name(), timeConstant, flash);
    }

    /**
     * Gives the response of the eye at a time.
     *
     * @param flash the flash
     * @param time on the time scale of the flash
     * @return i(t)
     */
    public LuminousIntensity responseAt(Flash flash, TimeSpan time) {
        return LuminousIntensity.candela(SummationKernel.EXPONENTIAL.responseCd(flash, time.inSeconds(), aS));
    }

    @Override
    public String toString() {
        return name();
    }
}
