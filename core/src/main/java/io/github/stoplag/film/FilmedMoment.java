package io.github.stoplag.film;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.sweep.Measurand.Contribution;
import io.github.stoplag.sweep.Measurand.Estimate;
import java.util.List;
import java.util.Objects;

/**
 * A moment read off a film, in seconds from the time zero of the {@link FilmedChange} it comes from.
 *
 * <p>The coverage interval cuts the same share from both tails of what the film leaves possible (JCGM 101:2008, 7.7,
 * from memory); its ends may lie unevenly about the value. Where a bound is missing, as in a film that ends too early,
 * the interval is wide.
 *
 * @param name the moment, for example {@code level 10 %}
 * @param estimate the mean of the possible times, their standard deviation and the coverage interval, in seconds
 * @param reachedShare the share of possible courses that reach the moment at all, (0, 1]; the estimate is of these
 * @param budget what each source of uncertainty brings in, in seconds
 * @param evidence what it rests on, with every reservation
 */
public record FilmedMoment(
        String name, Estimate estimate, double reachedShare, List<Contribution> budget, Evidence evidence)
        implements Evident {

    /**
     * Refuses nulls.
     *
     * @param name the moment, for example {@code level 10 %}
     * @param estimate the mean of the possible times, their standard deviation and the coverage interval, in seconds
     * @param reachedShare the share of possible courses that reach the moment at all, (0, 1]; the estimate is of these
     * @param budget what each source of uncertainty brings in, in seconds
     * @param evidence what it rests on, with every reservation
     * @throws NullPointerException if one that is required is null
     */
    public FilmedMoment {
        Objects.requireNonNull(budget, "budget");
        Objects.requireNonNull(estimate, "estimate");
        Objects.requireNonNull(evidence, "evidence");
        Objects.requireNonNull(name, "name");
    }

    /** {@return the estimate in seconds} */
    public double valueS() {
        return estimate.value();
    }

    /** {@return the standard uncertainty in seconds} */
    public double standardUncertaintyS() {
        return estimate.standardUncertainty();
    }

    /** {@return the lower end of the coverage interval in seconds} */
    public double loS() {
        return estimate.coverage().lo();
    }

    /** {@return the upper end of the coverage interval in seconds} */
    public double hiS() {
        return estimate.coverage().hi();
    }

    /** {@return the coverage probability of the interval, 0.95} */
    public double coverage() {
        return estimate.coverage().confidence();
    }

    @Override
    public String toString() {
        return name + ": " + Numbers.text(1000 * valueS(), 4) + " ms, 95 % in [" + Numbers.text(1000 * loS(), 4) + ", "
                + Numbers.text(1000 * hiS(), 4) + "] ms";
    }
}
