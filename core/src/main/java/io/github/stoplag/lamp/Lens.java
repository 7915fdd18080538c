package io.github.stoplag.lamp;

import io.github.stoplag.source.Table;
import java.util.Arrays;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/** What the light passes on its way out of the lamp: it weights the spectrum, and so the onset curve. */
public enum Lens {
    /** No coloured lens: the bulb's own light. */
    CLEAR("clear lens"),
    /**
     * A red signal lens, a long-pass filter with half transmission near 600 nm (assumed curve, {@code red_lens.csv}).
     */
    RED("red lens");

    private final String text;

    Lens(String text) {
        this.text = text;
    }

    /**
     * Gives the transmission at the 5 nm steps of a wavelength column.
     *
     * @param wavelengthNm the wavelengths in nanometres
     * @return the transmission ratio at each
     */
    double[] transmissionRatio(double[] wavelengthNm) {
        double[] result = new double[wavelengthNm.length];
        if (this == CLEAR) {
            Arrays.fill(result, 1);
            return result;
        }
        Table table = Table.read(Lens.class, "red_lens.csv");
        PolynomialSplineFunction curve = new LinearInterpolator()
                .interpolate(table.numbers("wavelength_nm"), table.numbers("transmission_ratio"));
        for (int i = 0; i < result.length; i++) {
            result[i] = curve.value(wavelengthNm[i]);
        }
        return result;
    }

    @Override
    public String toString() {
        return text;
    }
}
