package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Current;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;

/**
 * What an outage monitor makes of a load over its supply range.
 *
 * @param outcome what it reports
 * @param deciding the operating point that settles the outcome: the lowest current unless the load is reported failed,
 *     then the highest
 * @param lowest the lowest current over the supply range and where it falls
 * @param highest the highest current over the supply range and where it falls
 * @param failedBelow the current below which even the most tolerant unit reports a failure
 * @param healthyFrom the current from which even the strictest unit reports a healthy lamp
 * @param evidence what it rests on
 */
public record OutageVerdict(
        Outcome outcome,
        OperatingPoint deciding,
        OperatingPoint lowest,
        OperatingPoint highest,
        Current failedBelow,
        Current healthyFrom,
        Evidence evidence)
        implements Evident {

    /**
     * Refuses nulls.
     *
     * @param outcome what it reports
     * @param deciding the operating point that settles the outcome: the lowest current unless the load is reported
     *     failed,
     *     then the highest
     * @param lowest the lowest current over the supply range and where it falls
     * @param highest the highest current over the supply range and where it falls
     * @param failedBelow the current below which even the most tolerant unit reports a failure
     * @param healthyFrom the current from which even the strictest unit reports a healthy lamp
     * @param evidence what it rests on
     * @throws NullPointerException if one that is required is null
     */
    public OutageVerdict {
        Objects.requireNonNull(deciding, "deciding");
        Objects.requireNonNull(evidence, "evidence");
        Objects.requireNonNull(failedBelow, "failedBelow");
        Objects.requireNonNull(healthyFrom, "healthyFrom");
        Objects.requireNonNull(highest, "highest");
        Objects.requireNonNull(lowest, "lowest");
        Objects.requireNonNull(outcome, "outcome");
    }

    /** What a monitor reports. */
    public enum Outcome {
        /** Healthy at every supply, whatever the unit's tolerance. */
        REPORTS_HEALTHY("reports a healthy lamp"),
        /** Failed at every supply, whatever the unit's tolerance. */
        REPORTS_FAILED("reports a failed lamp"),
        /** It depends on the unit or on the supply. */
        MAY_DO_EITHER("may report either");

        private final String text;

        Outcome(String text) {
            this.text = text;
        }

        @Override
        public String toString() {
            return text;
        }
    }

    @Override
    public String toString() {
        return "monitor " + outcome + ": the load draws " + deciding + "; failed below " + failedBelow
                + ", healthy from " + healthyFrom;
    }
}
