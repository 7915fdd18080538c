package io.github.stoplag.sweep;

import java.util.Objects;

/**
 * What {@link PairModel} gives for each lamp.
 *
 * <p>Example: {@code rows.column(PairOutput.CONTACT.column("led"))}.
 */
public enum PairOutput {
    /** Whether the vehicles touch: 1 or 0. */
    CONTACT("contact_<lamp>", "1 where the vehicles touch, else 0"),
    /** The closing speed at contact. */
    CLOSING_SPEED("closing_speed_<lamp>_mps", "follower's less leader's speed at contact; NaN without"),
    /** The smallest gap. */
    SMALLEST_GAP("smallest_gap_<lamp>_m", "the smallest gap, 0 on contact"),
    /** When it happens. */
    EVENT_TIME("event_time_<lamp>_s", "when they touch or are nearest, from the leader's pedal on");

    private static final int COUNT = values().length;

    private final String column;
    private final String meaning;

    PairOutput(String column, String meaning) {
        this.column = column;
        this.meaning = meaning;
    }

    /**
     * Gives the name of its column for a lamp.
     *
     * @param lamp the lamp
     * @return for example {@code closing_speed_led_mps}
     */
    public String column(String lamp) {
        Objects.requireNonNull(lamp, "lamp");
        return column.replace("<lamp>", lamp);
    }

    /**
     * Says what it means.
     *
     * @return in words
     */
    public String meaning() {
        return meaning;
    }

    /**
     * Gives its values among the output columns of a {@link PairModel}.
     *
     * @param outputs the columns in the order of {@link PairModel#outputs()}
     * @param lamp the number of the lamp in {@link PairModel#lamps()}
     * @return the column
     */
    @SuppressWarnings("EnumOrdinal") // the outputs are in the order of this list
    public double[] of(double[][] outputs, int lamp) {
        Objects.requireNonNull(outputs, "outputs");
        return outputs[COUNT * lamp + ordinal()];
    }
}
