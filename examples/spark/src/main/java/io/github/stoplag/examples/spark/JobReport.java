package io.github.stoplag.examples.spark;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.stoplag.examples.sweep.PlanFile;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.sweep.LampTally;
import io.github.stoplag.sweep.PairModel;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.Rejects;
import io.github.stoplag.sweep.SweepResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a job found, in words and as a manifest. */
final class JobReport {
    private static final double CONFIDENCE = 0.95;

    private JobReport() {}

    static List<String> lines(PlanFile file, SweepResult<PairTally> result) {
        List<String> lines = new ArrayList<>();
        lines.add(file.title());
        if (file.invented()) {
            lines.add("Data are invented.");
        }
        lines.add(result.scenarios() + " scenarios, " + result.rejected() + " of them impossible and left out.");
        result.rejects().forEach(reject -> lines.add("  " + reject));
        PairTally tally = result.tally();
        for (String lamp : file.lamps()) {
            lines.add(lamp(tally.lamp(lamp)));
        }
        for (int i = 0; i < file.lamps().size(); i++) {
            for (String other : file.lamps().subList(i + 1, file.lamps().size())) {
                String one = file.lamps().get(i);
                lines.add(one + " less " + other + ", on the same draws: " + tally.compare(one, other));
            }
        }
        lines.add(PairModel.STATEMENT);
        return lines;
    }

    private static String lamp(LampTally lamp) {
        String contact = lamp.lamp() + ": contact probability "
                + Numbers.text(lamp.contactProbability().value(), 5) + ", "
                + lamp.contactProbability().wilson(CONFIDENCE);
        return lamp.closingSpeedMps().count() == 0
                ? contact
                : contact
                        + String.format(
                                Locale.ROOT,
                                "; closing speed of the contacts: median %.2f m/s, 95 %% at or below %.2f m/s",
                                lamp.closingSpeedQuantilesMps().quantile(0.5),
                                lamp.closingSpeedQuantilesMps().quantile(0.95));
    }

    static String manifest(PlanFile file, SweepResult<PairTally> result) throws JsonProcessingException {
        ObjectMapper mapper = new ObjectMapper();
        ObjectNode root = mapper.createObjectNode();
        root.put("statement", PairModel.STATEMENT);
        root.put("title", file.title());
        root.put("data_invented", file.invented());
        ArrayNode plan = root.putArray("plan");
        file.text().lines().forEach(plan::add);
        root.put("plan_sha256", file.hash());
        root.put("scenarios_counted", result.scenarios());
        ArrayNode rejects = root.putArray("rejected");
        for (Rejects.Entry reject : result.rejects()) {
            rejects.addObject()
                    .put("reason", reject.reason())
                    .put("scenarios", reject.count())
                    .put("first_scenario", reject.firstIndex())
                    .put("first_inputs", reject.firstInputs());
        }
        return mapper.writerWithDefaultPrettyPrinter().writeValueAsString(root) + "\n";
    }
}
