package io.github.stoplag.circuit;

import io.github.stoplag.circuit.OutageVerdict.Outcome;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;
import java.util.Optional;

/**
 * A turn-signal flasher, and whether LED lamps make it signal a failure. A check by threshold, not a design.
 *
 * <p>Three kinds by common practice: an electronic one that measures the lamps' current and flashes faster (about
 * twice) when it is too low; a thermal one, whose bimetal is heated by the lamps' current and does not switch when it
 * is too low; one that flashes at its own rate whatever hangs on it and so tells the driver nothing about a dead lamp.
 */
public final class Flasher {
    private final Optional<OutageMonitor> monitor;
    private final FlashRate healthyRate;
    private final Optional<FlashRate> errorRate;
    private final String kind;

    private Flasher(
            String kind, Optional<OutageMonitor> monitor, FlashRate healthyRate, Optional<FlashRate> errorRate) {
        this.kind = kind;
        this.monitor = monitor;
        this.healthyRate = healthyRate;
        this.errorRate = errorRate;
    }

    /**
     * An electronic flasher that changes its rate when the lamps draw too little.
     *
     * @param monitor the current it takes for healthy, and its supply range
     * @param healthyRate its rate with healthy lamps
     * @param errorRate its rate when it signals a failure
     * @return the flasher
     */
    public static Flasher loadMeasuring(OutageMonitor monitor, FlashRate healthyRate, FlashRate errorRate) {
        Objects.requireNonNull(errorRate, "errorRate");
        Objects.requireNonNull(monitor, "monitor");
        Objects.requireNonNull(healthyRate, "healthyRate");
        return new Flasher("load-measuring flasher", Optional.of(monitor), healthyRate, Optional.of(errorRate));
    }

    /**
     * A thermal flasher: too little current and it does not switch, so the lamps stay on or off.
     *
     * @param monitor the current it needs to switch, and its supply range
     * @param healthyRate its rate with its rated lamps
     * @return the flasher
     */
    public static Flasher thermal(OutageMonitor monitor, FlashRate healthyRate) {
        Objects.requireNonNull(monitor, "monitor");
        Objects.requireNonNull(healthyRate, "healthyRate");
        return new Flasher("thermal flasher", Optional.of(monitor), healthyRate, Optional.empty());
    }

    /**
     * A flasher whose rate does not depend on the load.
     *
     * @param rate its rate
     * @return the flasher
     */
    public static Flasher loadIndependent(FlashRate rate) {
        Objects.requireNonNull(rate, "rate");
        return new Flasher("load-independent flasher", Optional.empty(), rate, Optional.empty());
    }

    /** What a flasher does. */
    public enum Behaviour {
        /** Flashes at its healthy rate. */
        NORMAL("flashes normally"),
        /** Signals a failure by another rate. */
        ERROR_RATE("signals a failure by its rate"),
        /** Does not flash. */
        NO_FLASH("does not flash"),
        /** It depends on the unit or the supply. */
        MAY_DO_EITHER("may flash normally or signal a failure");

        private final String text;

        Behaviour(String text) {
            this.text = text;
        }

        @Override
        public String toString() {
            return text;
        }
    }

    /**
     * What a flasher does with given lamps.
     *
     * @param behaviour what it does
     * @param rate the rate it flashes at, nothing if it does not flash or the behaviour is uncertain
     * @param withinBand whether it surely flashes, and inside the band asked for
     * @param verdict what its current threshold makes of the lamps, nothing if it has none
     * @param evidence what it rests on
     */
    public record Report(
            Behaviour behaviour,
            Optional<FlashRate> rate,
            boolean withinBand,
            Optional<OutageVerdict> verdict,
            Evidence evidence)
            implements Evident {

        /**
         * Refuses nulls.
         *
         * @param behaviour what it does
         * @param rate the rate it flashes at, nothing if it does not flash or the behaviour is uncertain
         * @param withinBand whether it surely flashes, and inside the band asked for
         * @param verdict what its current threshold makes of the lamps, nothing if it has none
         * @param evidence what it rests on
         * @throws NullPointerException if one that is required is null
         */
        public Report {
            Objects.requireNonNull(behaviour, "behaviour");
            Objects.requireNonNull(evidence, "evidence");
            Objects.requireNonNull(rate, "rate");
            Objects.requireNonNull(verdict, "verdict");
        }
    }

    /**
     * Says what the flasher does with the lamps of one side.
     *
     * @param lamps all lamps and resistors of that side in parallel
     * @param band the lawful rates
     * @return the report
     */
    public Report with(CurrentDraw lamps, FlashRate.Band band) {
        Objects.requireNonNull(lamps, "lamps");
        Optional<OutageVerdict> verdict = monitor.map(m -> m.judge(lamps));
        Behaviour behaviour = verdict.map(v -> behaviour(v.outcome())).orElse(Behaviour.NORMAL);
        Optional<FlashRate> rate = switch (behaviour) {
            case NORMAL -> Optional.of(healthyRate);
            case ERROR_RATE -> errorRate;
            case NO_FLASH, MAY_DO_EITHER -> Optional.empty();
        };
        Evidence evidence = Evidence.of(
                        kind + ": " + healthyRate + " with healthy lamps (behaviour by common practice, no source)",
                        "lawful rates: " + band.source())
                .with(verdict.map(OutageVerdict::evidence).orElse(lamps.evidence()))
                .withCaveatIf(
                        monitor.isEmpty(),
                        "this flasher tells the driver nothing about a dead lamp; where the law asks for that,"
                                + " something else must")
                .withCautions(Caution.LAMP_LAW, Caution.LICENSED_PRACTICE);
        boolean within = rate.map(band::contains).orElse(false);
        return new Report(behaviour, rate, within, verdict, evidence);
    }

    private Behaviour behaviour(Outcome outcome) {
        return switch (outcome) {
            case REPORTS_HEALTHY -> Behaviour.NORMAL;
            case REPORTS_FAILED -> errorRate.isPresent() ? Behaviour.ERROR_RATE : Behaviour.NO_FLASH;
            case MAY_DO_EITHER -> Behaviour.MAY_DO_EITHER;
        };
    }
}
