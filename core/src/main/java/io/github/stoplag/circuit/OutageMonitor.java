package io.github.stoplag.circuit;

import io.github.stoplag.circuit.OutageVerdict.Outcome;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Evidence;
import java.util.Objects;

/**
 * A lamp-outage monitor that compares the lamp's current with a threshold.
 *
 * <p>A unit reports a failure while I(U) &lt; I_t; its own I_t lies anywhere in I_t (1 ± tolerance). So the monitor
 * surely reports healthy from I_t (1 + tolerance), surely failed below I_t (1 − tolerance), and may do either between.
 * The verdict covers every supply voltage U in the range.
 *
 * <p>Possible ranges: threshold (0, 1000] A, tolerance [0, 1), 0 &lt; lowest supply ≤ highest supply. The threshold is
 * taken as the same at every supply, and the lamp as settled.
 */
public final class OutageMonitor {
    private final double failedBelowA;
    private final double healthyFromA;
    private final double loV;
    private final double hiV;

    private OutageMonitor(double failedBelowA, double healthyFromA, Voltage lowestSupply, Voltage highestSupply) {
        this.failedBelowA = failedBelowA;
        this.healthyFromA = healthyFromA;
        this.hiV = Ranges.LIVE_SUPPLY.check("highest supply", highestSupply.inVolts());
        this.loV = Check.above("lowest supply", lowestSupply.inVolts(), 0, hiV, "V");
    }

    /**
     * Makes a monitor from its threshold and tolerance.
     *
     * @param threshold I_t, in (0, 1000] A
     * @param toleranceRatio the tolerance of I_t as a share of it, in [0, 1)
     * @param lowestSupply the lowest supply it works at, above 0 V
     * @param highestSupply the highest supply, not below the lowest
     * @return the monitor
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public static OutageMonitor of(
            Current threshold, double toleranceRatio, Voltage lowestSupply, Voltage highestSupply) {
        Objects.requireNonNull(highestSupply, "highestSupply");
        Objects.requireNonNull(lowestSupply, "lowestSupply");
        Objects.requireNonNull(threshold, "threshold");
        double t = Check.above("monitor threshold", threshold.inAmperes(), 0, 1000, "A");
        if (!(toleranceRatio >= 0 && toleranceRatio < 1)) {
            throw new IllegalArgumentException("monitor tolerance must be in [0, 1), got " + toleranceRatio);
        }
        return new OutageMonitor(t * (1 - toleranceRatio), t * (1 + toleranceRatio), lowestSupply, highestSupply);
    }

    /**
     * Makes a monitor from the two currents a specification gives.
     *
     * @param failedBelow the current below which a failure is always reported, not negative
     * @param healthyFrom the current from which a healthy lamp is always reported, above 0, not below the other
     * @param lowestSupply the lowest supply it works at, above 0 V
     * @param highestSupply the highest supply, not below the lowest
     * @return the monitor
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public static OutageMonitor between(
            Current failedBelow, Current healthyFrom, Voltage lowestSupply, Voltage highestSupply) {
        Objects.requireNonNull(failedBelow, "failedBelow");
        Objects.requireNonNull(healthyFrom, "healthyFrom");
        Objects.requireNonNull(highestSupply, "highestSupply");
        Objects.requireNonNull(lowestSupply, "lowestSupply");
        double healthy = Check.above("healthy current", healthyFrom.inAmperes(), 0, 1000, "A");
        double failed = Check.inRange("failure current", failedBelow.inAmperes(), 0, healthy, "A");
        return new OutageMonitor(failed, healthy, lowestSupply, highestSupply);
    }

    /**
     * Says what the monitor reports for a load.
     *
     * @param load the settled load on the monitored wire
     * @return the verdict with the supplies and currents that decide it
     */
    public OutageVerdict judge(CurrentDraw load) {
        Objects.requireNonNull(load, "load");
        OperatingPoint lowest = pointAt(load, Extremum.argMin(load::currentA, loV, hiV, load.knotsV()));
        OperatingPoint highest = pointAt(load, Extremum.argMax(load::currentA, loV, hiV, load.knotsV()));
        Outcome outcome;
        if (lowest.current().inAmperes() >= healthyFromA) {
            outcome = Outcome.REPORTS_HEALTHY;
        } else if (highest.current().inAmperes() < failedBelowA) {
            outcome = Outcome.REPORTS_FAILED;
        } else {
            outcome = Outcome.MAY_DO_EITHER;
        }
        Evidence evidence = Evidence.of("monitor: failed below " + failedBelow() + ", healthy from " + healthyFrom()
                        + ", supply " + lowestSupply() + " to " + highestSupply())
                .with(load.evidence())
                .withCaveat(
                        "the monitor is taken to see the settled lamp and a threshold that does not follow the supply;"
                                + " one that tests with short pulses sees a cold filament and may judge otherwise")
                .withCautions(Caution.LAMP_LAW, Caution.LICENSED_PRACTICE);
        OperatingPoint deciding = outcome == Outcome.REPORTS_FAILED ? highest : lowest;
        return new OutageVerdict(outcome, deciding, lowest, highest, failedBelow(), healthyFrom(), evidence);
    }

    private static OperatingPoint pointAt(CurrentDraw load, double supplyV) {
        return new OperatingPoint(Voltage.volts(supplyV), Current.amperes(load.currentA(supplyV)));
    }

    /**
     * Gives the current below which every unit reports a failure.
     *
     * @return I_t (1 − tolerance)
     */
    public Current failedBelow() {
        return Current.amperes(failedBelowA);
    }

    /**
     * Gives the current from which every unit reports a healthy lamp.
     *
     * @return I_t (1 + tolerance)
     */
    public Current healthyFrom() {
        return Current.amperes(healthyFromA);
    }

    /**
     * Gives the lowest supply voltage.
     *
     * @return the voltage
     */
    public Voltage lowestSupply() {
        return Voltage.volts(loV);
    }

    /**
     * Gives the highest supply voltage.
     *
     * @return the voltage
     */
    public Voltage highestSupply() {
        return Voltage.volts(hiV);
    }
}
