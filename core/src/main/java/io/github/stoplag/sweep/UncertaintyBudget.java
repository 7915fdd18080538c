package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Objects;

/**
 * The working of a first-order uncertainty: u_c, what each input brings in, effective degrees of freedom, U = k u_c.
 *
 * @param estimate value, combined standard uncertainty and the interval value ± U
 * @param contributions what each input brings in, in order
 * @param degreesOfFreedom the effective degrees of freedom ν by Welch and Satterthwaite, cut to a whole number;
 *     infinite if no input has any
 * @param coverageFactor k = t_p(ν)
 */
public record UncertaintyBudget(
        Measurand.Estimate estimate,
        List<Measurand.Contribution> contributions,
        double degreesOfFreedom,
        double coverageFactor) {
    /**
     * Copies the list.
     *
     * @param estimate value, combined standard uncertainty and the interval value ± U
     * @param contributions what each input brings in, in order
     * @param degreesOfFreedom the effective degrees of freedom ν
     * @param coverageFactor the coverage factor k
     */
    public UncertaintyBudget {
        Objects.requireNonNull(estimate, "estimate");
        contributions = Check.copyOf("contributions", contributions);
    }

    /** {@return the expanded uncertainty U = k u_c, in the unit of the result} */
    public double expanded() {
        return coverageFactor * estimate.standardUncertainty();
    }

    /**
     * Prints the result as the Guide does: uncertainties to two digits, U rounded up so that no interval is told
     * narrower than it is, the value to the place of u_c (JCGM 100:2008, 7.2.4 and 7.2.6, from memory).
     */
    @Override
    public String toString() {
        if (estimate.standardUncertainty() == 0) {
            return estimate.toString();
        }
        BigDecimal up = new BigDecimal(expanded()).round(new MathContext(2, RoundingMode.CEILING));
        StringBuilder text = new StringBuilder(estimate.valueText())
                .append(" ± ")
                .append(Measurand.Estimate.plain(up))
                .append(" at ")
                .append(Numbers.text(100 * estimate.coverage().confidence(), 4))
                .append(" % (k = ")
                .append(Numbers.fixed(coverageFactor, 2))
                .append(
                        Double.isInfinite(degreesOfFreedom)
                                ? ", normal"
                                : ", Student's t with " + Numbers.text(degreesOfFreedom) + " degrees of freedom")
                .append("; standard uncertainty ")
                .append(estimate.uncertaintyText())
                .append(")");
        for (Measurand.Contribution c : contributions) {
            text.append("\n  ")
                    .append(c.input())
                    .append(": ")
                    .append(Numbers.text(c.contribution(), 2))
                    .append(" from a standard uncertainty of ")
                    .append(Numbers.text(c.standardUncertainty(), 2));
        }
        return text.toString();
    }
}
