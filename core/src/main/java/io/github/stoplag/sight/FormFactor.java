package io.github.stoplag.sight;

import io.github.stoplag.quantity.TimeSpan;
import java.util.Objects;

/**
 * The form-factor method (Schmidt-Clausen): the peak, reduced by how long the flash lasts at its peak's worth.
 *
 * <p>Ie = Imax/(1 + C/(F T)), F = ∫ I dt/(Imax T).
 *
 * <p>Symbols: Ie, Imax in cd; T duration in s; F form factor, a plain ratio; C in s, (0, 10] s, 0.2 s by night and 0.1
 * s by day. F T does not change when dark time is counted as part of the flash. For triangles of 0.2 to 2 s it gives
 * about 30 % more than {@link BlondelReyDouglas}.
 *
 * <p>Source: constants in a photometer maker's page on pulse measurement (seen); the formula from memory; the
 * comparison in Ohno, note of 8 January 2002 on effective intensity (seen).
 *
 * <pre>{@code
 * Flash flash = Flash.rectangle(LuminousIntensity.candela(100), TimeSpan.seconds(0.2));
 * FormFactor.of(TimeSpan.seconds(0.2)).of(flash).intensity(); // 50 cd
 * }</pre>
 */
public final class FormFactor implements EffectiveIntensityMethod {
    private final TimeSpan constant;
    private final double cS;

    private FormFactor(TimeSpan constant) {
        this.constant = constant;
        cS = Gathering.checkConstantS(constant);
    }

    /**
     * Makes the method.
     *
     * @param constant the constant C, (0, 10] s
     * @return the method
     * @throws IllegalArgumentException if it is out of range
     */
    public static FormFactor of(TimeSpan constant) {
        Objects.requireNonNull(constant, "constant");
        return new FormFactor(constant);
    }

    @Override
    public String name() {
        return "form factor, C = " + constant;
    }

    @Override
    public EffectiveIntensity of(Flash flash) {
        double peakCd = flash.peak().inCandela();
        double atPeakS = flash.integralCdS() / peakCd;
        return EffectiveIntensity.of(peakCd * atPeakS / (atPeakS + cS), name(), constant, flash);
    }

    @Override
    public String toString() {
        return name();
    }
}
