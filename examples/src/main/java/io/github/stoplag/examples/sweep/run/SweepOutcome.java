package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.sweep.ContactMap;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.SweepResult;
import java.util.List;

/**
 * What a run of a plan file gave.
 *
 * @param plan the plan
 * @param result the statistics, incomplete if the run was cut off
 * @param map contacts by gap and speed
 * @param rows what was to be written of the scenarios
 * @param columns the columns of the rows, without the scenario's number
 */
public record SweepOutcome(
        PlanFile plan, SweepResult<PairTally> result, ContactMap map, SweepRows rows, List<String> columns) {
    /**
     * Copies the list.
     *
     * @param plan the plan
     * @param result the statistics, incomplete if the run was cut off
     * @param map contacts by gap and speed
     * @param rows what was to be written of the scenarios
     * @param columns the columns of the rows, without the scenario's number
     */
    public SweepOutcome {
        columns = List.copyOf(columns);
    }

    /**
     * Gives the number of scenarios that are in whole part files.
     *
     * @return how many
     */
    public long rowsWritten() {
        long counted = Math.min(result.scenarios(), rows.count());
        return counted == rows.count() ? counted : counted / RowFiles.PART_ROWS * RowFiles.PART_ROWS;
    }

    /**
     * Lists the part files that hold them.
     *
     * @return their names in order
     */
    public List<String> partNames() {
        return RowFiles.names(rows.format(), rowsWritten());
    }
}
