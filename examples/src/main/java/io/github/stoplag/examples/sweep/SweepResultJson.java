package io.github.stoplag.examples.sweep;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.stoplag.examples.sweep.run.Manifest;
import io.github.stoplag.sweep.Interval;
import io.github.stoplag.sweep.PairModel;
import io.github.stoplag.sweep.PairedProportions;
import io.github.stoplag.sweep.Proportion;
import io.github.stoplag.sweep.SamplingError;
import java.util.function.Supplier;

/**
 * The result of a sweep for other programs: for each lamp and difference the estimate, its interval, and what that
 * covers.
 */
final class SweepResultJson {
    static final String FILE = "result.json";

    private SweepResultJson() {}

    static String of(SweepStudy study) throws JsonProcessingException {
        ObjectNode root = new ObjectMapper().createObjectNode();
        PairModel model = study.plan().pairModel();
        root.put("title", study.plan().title());
        root.put("invented_data", study.plan().invented());
        root.put("statement", PairModel.STATEMENT);
        root.put("scenarios_count", study.outcome().result().scenarios());
        root.put("rejected_count", study.outcome().result().rejected());
        root.put("responding_share_ratio", model.respondingRatio());
        root.put("population", model.population());
        root.put("interval_covers", ContactText.coverage(study.plan()));
        root.put("interval_confidence_ratio", SweepStudy.CONFIDENCE);
        ArrayNode lamps = root.putArray("lamps");
        ArrayNode differences = root.putArray("differences");
        if (study.anyValid()) {
            study.lamps().forEach(lamp -> lamp(lamps.addObject(), study, lamp));
            study.others().forEach(other -> difference(differences.addObject(), study, other));
        }
        return Manifest.print(root);
    }

    private static void lamp(ObjectNode entry, SweepStudy study, String lamp) {
        Proportion p = study.tally().lamp(lamp).contactProbability();
        entry.put("lamp", lamp);
        entry.put("contact_probability_ratio", p.value());
        interval(entry, study, () -> p.wilson(SweepStudy.CONFIDENCE));
    }

    private static void difference(ObjectNode entry, SweepStudy study, String other) {
        String first = study.reference();
        PairedProportions pair = study.tally().compare(first, other);
        entry.put("lamp", first);
        entry.put("less_lamp", other);
        entry.put("contact_probability_difference_ratio", pair.difference());
        interval(entry, study, () -> pair.differenceInterval(SweepStudy.CONFIDENCE));
    }

    private static void interval(ObjectNode entry, SweepStudy study, Supplier<Interval> interval) {
        if (study.samplingError() != SamplingError.NONE) {
            entry.put("sampling_interval_low_ratio", interval.get().lo());
            entry.put("sampling_interval_high_ratio", interval.get().hi());
        }
    }
}
