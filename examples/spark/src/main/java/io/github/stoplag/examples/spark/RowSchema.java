package io.github.stoplag.examples.spark;

import io.github.stoplag.sweep.PlanFile;
import java.util.List;
import java.util.stream.Stream;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;

/**
 * The columns of the rows: the scenario's index, then what was drawn and what came of it, units in the names; null
 * where a quantity does not exist, as the closing speed without contact.
 */
final class RowSchema {
    static final String SCENARIO = "scenario";

    private RowSchema() {}

    /** The columns of numbers: those of the plan, then those of the model. */
    static List<String> columns(PlanFile file) {
        return Stream.concat(file.plan().columns().stream(), file.model().outputs().stream())
                .toList();
    }

    static StructType of(PlanFile file) {
        StructType type = new StructType().add(SCENARIO, DataTypes.LongType, false);
        for (String column : columns(file)) {
            type = type.add(column, DataTypes.DoubleType, true);
        }
        return type;
    }
}
