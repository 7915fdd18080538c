package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Numbers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;

/**
 * The scenarios of a sweep whose inputs are no possible combination: how many, why, and the first of each kind.
 *
 * <p>An evaluator reports rows here; the run counts them. At most 50 different reasons are told apart, further ones are
 * counted together.
 */
public final class Rejects {
    private static final int MOST_REASONS = 50;
    private static final int LEAST_DIGITS = 15;
    private static final int MOST_DIGITS = 17;
    private static final String OTHER = "other reasons";

    /**
     * One reason.
     *
     * @param reason why
     * @param count how many scenarios
     * @param firstIndex the first of them
     * @param firstInputs its inputs as text, column by column
     */
    public record Entry(String reason, long count, long firstIndex, String firstInputs) {

        /**
         * Refuses nulls.
         *
         * @param reason why
         * @param count how many scenarios
         * @param firstIndex the first of them
         * @param firstInputs its inputs as text, column by column
         * @throws NullPointerException if one that is required is null
         */
        public Entry {
            Objects.requireNonNull(firstInputs, "firstInputs");
            Objects.requireNonNull(reason, "reason");
        }

        @Override
        public String toString() {
            return count + " x " + reason + ", first scenario " + firstIndex + ": " + firstInputs;
        }
    }

    private final List<String> columns;
    private final Map<String, Entry> byReason = new TreeMap<>();
    private final boolean[] rejected;
    private boolean any;
    private long firstIndex;
    private double[][] inputs = new double[0][];

    Rejects(List<String> columns, int rows) {
        this.columns = columns;
        rejected = new boolean[rows];
    }

    void beginChunk() {
        byReason.clear();
    }

    void beginRows(long newFirstIndex, double[][] newInputs) {
        firstIndex = newFirstIndex;
        inputs = newInputs;
        if (any) {
            Arrays.fill(rejected, false);
            any = false;
        }
    }

    /**
     * Reports a row of those being evaluated; a row counts once.
     *
     * @param row the row
     * @param reason why its inputs cannot be, without its own values
     */
    public void reject(int row, String reason) {
        if (rejected[row]) {
            return;
        }
        rejected[row] = true;
        any = true;
        Entry known = byReason.get(reason);
        // the inputs are put into words for the first of a kind only
        add(new Entry(
                reason, 1, firstIndex + row, known == null ? describe(columns, inputs, row) : known.firstInputs()));
    }

    boolean any() {
        return any;
    }

    boolean isRejected(int row) {
        return rejected[row];
    }

    /** Takes up exactly what an earlier stretch reported. */
    void resume(List<Entry> earlier) {
        earlier.forEach(entry -> byReason.put(entry.reason(), entry));
    }

    /** Adds what a later chunk reported. */
    void absorb(List<Entry> later) {
        later.forEach(this::add);
    }

    private void add(Entry entry) {
        Entry known = byReason.get(entry.reason());
        if (known != null) {
            byReason.put(
                    entry.reason(),
                    new Entry(known.reason(), known.count() + entry.count(), known.firstIndex(), known.firstInputs()));
        } else if (reasons() < MOST_REASONS || entry.reason().equals(OTHER)) {
            byReason.put(entry.reason(), entry);
        } else {
            add(new Entry(OTHER, entry.count(), entry.firstIndex(), entry.firstInputs()));
        }
    }

    private int reasons() {
        return byReason.size() - (byReason.containsKey(OTHER) ? 1 : 0);
    }

    /**
     * Gives the reasons.
     *
     * @return one entry for each, in alphabetical order
     */
    public List<Entry> entries() {
        return new ArrayList<>(byReason.values());
    }

    static String describe(List<String> columns, double[][] inputs, int row) {
        StringBuilder text = new StringBuilder();
        for (int c = 0; c < inputs.length; c++) {
            text.append(c == 0 ? "" : ", ").append(columns.get(c)).append('=').append(exact(inputs[c][row]));
        }
        return text.toString();
    }

    /** A number as text that reads back to the same bits; unlike Double.toString it is the same on every JDK. */
    private static String exact(double value) {
        int digits = LEAST_DIGITS;
        String text = Numbers.text(value, digits);
        while (digits < MOST_DIGITS && Double.parseDouble(text) != value) {
            digits++;
            text = Numbers.text(value, digits);
        }
        return text;
    }
}
