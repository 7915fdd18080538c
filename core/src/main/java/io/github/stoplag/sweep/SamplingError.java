package io.github.stoplag.sweep;

import java.util.Optional;

/** What an interval that is made for independent draws means for a plan. */
public enum SamplingError {
    /** The draws are independent: it is as wide as it says. */
    INDEPENDENT(""),
    /** The design spreads its scenarios evenly, which leaves less to chance than independent draws do. */
    SPREAD(
            "The intervals are those of as many independent draws; this design spreads its scenarios more evenly, so that they are"
                    + " as a rule too wide. Runs with other seeds show the scatter."),
    /** Nothing is drawn. */
    NONE("No intervals: the grid draws nothing, its shares are those of its combinations and have no sampling error.");

    private final String note;

    SamplingError(String note) {
        this.note = note;
    }

    /**
     * Tells which of them a plan has.
     *
     * @param plan the plan
     * @return no error for a grid of levels alone, the full error for a random design
     */
    public static SamplingError of(Plan plan) {
        boolean levels = plan.axes().stream().map(Axis::distribution).allMatch(Optional::isEmpty);
        if (plan.design().kind() == Design.Kind.GRID && levels) {
            return NONE;
        }
        return plan.design().kind() == Design.Kind.RANDOM ? INDEPENDENT : SPREAD;
    }

    /**
     * Says it to a reader.
     *
     * @return a sentence or two, empty if the intervals are as wide as they say
     */
    public String note() {
        return note;
    }
}
