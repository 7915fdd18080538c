package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Numbers;
import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * What a sweep of {@link ConditionalContact} gathers: for each lamp the mean contact probability, and the difference of
 * any two.
 */
public final class ConditionalTally implements SavableTally<ConditionalTally> {
    private final List<String> names;
    private final List<Moments> lamps = new ArrayList<>();
    // for lamps i < j, row by row of the upper triangle
    private final List<Moments> differences = new ArrayList<>();
    private final double[] scratch = new double[RowBlock.ROWS];

    /**
     * Makes an empty tally.
     *
     * @param model the model whose outputs are gathered
     */
    public ConditionalTally(ConditionalContact model) {
        Objects.requireNonNull(model, "model");
        names = model.lamps();
        for (int i = 0; i < names.size(); i++) {
            lamps.add(new Moments());
            for (int j = i + 1; j < names.size(); j++) {
                differences.add(new Moments());
            }
        }
    }

    @Override
    public void add(RowBlock rows) {
        int at = 0;
        for (int i = 0; i < names.size(); i++) {
            double[] first = rows.column(ConditionalContact.probabilityColumn(names.get(i)));
            lamps.get(i).add(first, rows.count());
            for (int j = i + 1; j < names.size(); j++) {
                double[] second = rows.column(ConditionalContact.probabilityColumn(names.get(j)));
                for (int row = 0; row < rows.count(); row++) {
                    scratch[row] = first[row] - second[row];
                }
                differences.get(at++).add(scratch, rows.count());
            }
        }
    }

    @Override
    public void absorb(ConditionalTally later) {
        for (int i = 0; i < lamps.size(); i++) {
            lamps.get(i).absorb(later.lamps.get(i));
        }
        for (int i = 0; i < differences.size(); i++) {
            differences.get(i).absorb(later.differences.get(i));
        }
    }

    @Override
    public void clear() {
        lamps.forEach(Moments::clear);
        differences.forEach(Moments::clear);
    }

    @Override
    public void save(DataOutput out) throws IOException {
        SavedState.save(out, "conditional statistics", content -> {
            SavedState.text(content, names.toString());
            for (Moments lamp : lamps) {
                lamp.save(content);
            }
            for (Moments difference : differences) {
                difference.save(content);
            }
        });
    }

    @Override
    public void restore(DataInput in) throws IOException {
        SavedState.restore(in, "conditional statistics", content -> {
            String saved = SavedState.text(content);
            if (!saved.equals(names.toString())) {
                throw new IOException("saved statistics must be of the lamps " + names + ", got " + saved);
            }
            for (Moments lamp : lamps) {
                lamp.restore(content);
            }
            for (Moments difference : differences) {
                difference.restore(content);
            }
        });
    }

    /**
     * Gives the contact probability with a lamp; see {@link PairModel#STATEMENT}.
     *
     * @param name the lamp
     * @return the conditional probabilities; their mean estimates P(contact), see {@link #contactInterval}
     * @throws IllegalArgumentException if there is no such lamp
     */
    public Moments contactProbability(String name) {
        return lamps.get(PairModel.lampIndex(names, name));
    }

    /**
     * Gives an interval of the contact probability for independent draws, see {@link Moments#boundedMeanInterval}; of a
     * Latin hypercube or a Sobol sequence it is too wide as a rule.
     *
     * @param name the lamp
     * @param confidence the confidence, [0.5, 1)
     * @return the interval, within [0, 1]
     * @throws IllegalArgumentException if there is no such lamp, there are fewer than two scenarios, or the confidence
     *     is out of range
     */
    public Interval contactInterval(String name, double confidence) {
        return contactProbability(name).boundedMeanInterval(confidence, 0, 1);
    }

    /**
     * Gives an interval of the difference of two lamps' contact probabilities for independent draws.
     *
     * @param first the first lamp
     * @param second a later lamp in the model's order
     * @param confidence the confidence, [0.5, 1)
     * @return the interval of the first's less the second's, within [−1, 1]
     * @throws IllegalArgumentException as {@link #difference}, if there are fewer than two scenarios, or the confidence
     *     is out of range
     */
    public Interval differenceInterval(String first, String second, double confidence) {
        return difference(first, second).boundedMeanInterval(confidence, -1, 1);
    }

    /**
     * Compares two lamps on the same draws.
     *
     * @param first the first lamp
     * @param second a later lamp in the model's order
     * @return the first's conditional probabilities less the second's; their mean estimates the difference, see {@link
     *     #differenceInterval}
     * @throws IllegalArgumentException if there is no such lamp or the second does not come after the first
     */
    public Moments difference(String first, String second) {
        int i = PairModel.lampIndex(names, first);
        int j = PairModel.lampIndex(names, second);
        if (i >= j) {
            throw new IllegalArgumentException(
                    "lamps must be compared in the order of " + names + ", got " + first + " with " + second);
        }
        return differences.get(i * (2 * names.size() - i - 1) / 2 + j - i - 1);
    }

    /**
     * Gives how many plain draws one draw is worth: the variance p (1 − p) of a contact counted 0 or 1 over the
     * variance found here.
     *
     * @param name the lamp
     * @return the factor, at least 1 up to scatter; infinite if the gap alone decides
     * @throws IllegalArgumentException if there is no such lamp, there are fewer than two scenarios, or contact is
     *     impossible or certain in all of them, when no draw has a variance
     */
    public double varianceReduction(String name) {
        Moments probability = contactProbability(name);
        double p = probability.mean();
        if (!(p > 0 && p < 1)) {
            throw new IllegalArgumentException("contact probability must be in (0, 1) to compare variances, got "
                    + Numbers.text(p) + " with lamp " + name);
        }
        return p * (1 - p) / probability.variance();
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < names.size(); i++) {
            Moments probability = lamps.get(i);
            text.append(names.get(i)).append(": contact probability ");
            if (probability.count() < 2) {
                text.append(probability).append('\n');
            } else {
                text.append(Numbers.text(probability.mean(), 4))
                        .append(", ")
                        .append(contactInterval(names.get(i), 0.95))
                        .append(", gap integrated out over ")
                        .append(probability.count())
                        .append(" draws\n");
            }
        }
        return text.append(PairModel.STATEMENT).toString();
    }
}
