package io.github.stoplag.circuit;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.jspecify.annotations.Nullable;

/**
 * What stands between the supply and a lamp: wiring and, where another circuit feeds the lamp, an isolating diode.
 *
 * <p>The operating point solves U_s = U + I(U) R + U_F(I(U)) for the lamp's voltage U; where a load that draws less at
 * higher voltage has several solutions, the one with the highest lamp voltage is taken.
 */
public final class LampFeed {
    private static final int SCAN_STEPS = 400;

    private final double wiringOhm;
    private final @Nullable Diode diode;

    private LampFeed(double wiringOhm, @Nullable Diode diode) {
        this.wiringOhm = wiringOhm;
        this.diode = diode;
    }

    /**
     * Makes a feed through wiring.
     *
     * @param wiring its whole resistance there and back, contacts included
     * @return the feed
     */
    public static LampFeed of(Resistance wiring) {
        Objects.requireNonNull(wiring, "wiring");
        return new LampFeed(wiring.inOhms(), null);
    }

    /**
     * Puts an isolating diode into the feed.
     *
     * @param isolating the diode
     * @return the changed feed
     */
    public LampFeed withDiode(Diode isolating) {
        Objects.requireNonNull(isolating, "isolating");
        return new LampFeed(wiringOhm, isolating);
    }

    /**
     * Where a feed settles with a lamp.
     *
     * @param supply U_s
     * @param lampVoltage U
     * @param current I
     * @param wiringDrop I R
     * @param diodeDrop U_F, 0 V without a diode
     * @param evidence what it rests on
     */
    public record Point(
            Voltage supply,
            Voltage lampVoltage,
            Current current,
            Voltage wiringDrop,
            Voltage diodeDrop,
            Evidence evidence)
            implements Evident {

        /**
         * Refuses nulls.
         *
         * @param supply U_s
         * @param lampVoltage U
         * @param current I
         * @param wiringDrop I R
         * @param diodeDrop U_F, 0 V without a diode
         * @param evidence what it rests on
         * @throws NullPointerException if one that is required is null
         */
        public Point {
            Objects.requireNonNull(current, "current");
            Objects.requireNonNull(diodeDrop, "diodeDrop");
            Objects.requireNonNull(evidence, "evidence");
            Objects.requireNonNull(lampVoltage, "lampVoltage");
            Objects.requireNonNull(supply, "supply");
            Objects.requireNonNull(wiringDrop, "wiringDrop");
        }
    }

    /**
     * Solves the operating point of a settled load.
     *
     * @param load the load
     * @param supply U_s, not negative; a reversed supply is another fault
     * @return the operating point
     * @throws IllegalArgumentException if the supply is negative
     */
    public Point operate(CurrentDraw load, Voltage supply) {
        Objects.requireNonNull(load, "load");
        Objects.requireNonNull(supply, "supply");
        double supplyV = Ranges.SUPPLY.check("supply", supply.inVolts());
        double lampV = lampVoltageV(load, supplyV);
        double amperes = load.currentA(lampV);
        Evidence evidence = Evidence.of("operating point: U_s = U + I R + U_F(I), wiring " + Resistance.ohms(wiringOhm))
                .with(load.evidence())
                .withCaveatIf(
                        lampV < supplyV / 2,
                        "less than half the supply reaches the load: check for a short circuit or a wire too thin")
                .withCautions(Caution.FUSES, Caution.INSULATION, Caution.LICENSED_PRACTICE);
        if (diode != null) {
            evidence = evidence.with(diode.characteristic().evidence(amperes));
        }
        return new Point(
                supply,
                Voltage.volts(lampV),
                Current.amperes(amperes),
                Voltage.volts(amperes * wiringOhm),
                Voltage.volts(diodeDropV(amperes)),
                evidence);
    }

    private double lampVoltageV(CurrentDraw load, double supplyV) {
        UnivariateFunction left = u -> supplyV - u - lossV(load.currentA(u));
        double step = supplyV / SCAN_STEPS;
        double[] knotsV = load.knotsV();
        int knot = knotsV.length - 1;
        double high = supplyV;
        while (high > 0 && left.value(high) < 0) {
            double low = step * (Math.ceil(high / step - 1e-9) - 1);
            while (knot >= 0 && knotsV[knot] >= high) {
                knot--;
            }
            low = Math.max(0, knot >= 0 ? Math.max(low, knotsV[knot]) : low);
            if (left.value(low) >= 0) {
                return new BrentSolver(1e-14, 1e-13, 0).solve(1000, left, low, high);
            }
            high = low;
        }
        return high;
    }

    private double lossV(double amperes) {
        return amperes * wiringOhm + diodeDropV(amperes);
    }

    private double diodeDropV(double amperes) {
        return diode == null ? 0 : diode.characteristic().voltageV(amperes);
    }

    /**
     * Gives the current if the lamp end is shorted: U_s = I R + U_F(I). It is what the fuse must clear.
     *
     * @param supply U_s, not negative
     * @return the current
     * @throws IllegalArgumentException if the supply is negative or there is no wiring resistance to limit the current
     */
    public Current shortCircuitCurrent(Voltage supply) {
        Objects.requireNonNull(supply, "supply");
        double supplyV = Ranges.SUPPLY.check("supply", supply.inVolts());
        if (!(wiringOhm > 0)) {
            throw new IllegalArgumentException(
                    "a short circuit behind a wiring resistance of 0 Ω draws an unbounded current; give the wiring's"
                            + " resistance");
        }
        double most = supplyV / wiringOhm;
        if (diode == null || most == 0) {
            return Current.amperes(most);
        }
        return Current.amperes(new BrentSolver(1e-14, 1e-13, 0).solve(1000, i -> lossV(i) - supplyV, 0, most));
    }

    /**
     * Gives the load as the supply sees it, through wiring and diode: what a monitor at the supply end measures.
     *
     * @param load the load at the lamp end
     * @return the same load against the supply voltage
     */
    public CurrentDraw seenFromSupply(CurrentDraw load) {
        Objects.requireNonNull(load, "load");
        return CurrentDraw.composed(
                load.label() + " behind " + Resistance.ohms(wiringOhm) + (diode == null ? "" : " and a diode"),
                v -> load.currentA(lampVoltageV(load, v)),
                load.evidence().with(Evidence.of("seen through wiring " + Resistance.ohms(wiringOhm))),
                // where several lamp voltages belong to one supply the current jumps: both sides of the jump
                Arrays.stream(load.knotsV())
                        .map(v -> v + lossV(load.currentA(v)))
                        .flatMap(v -> DoubleStream.of(v, v * (1 + 1e-12)))
                        .toArray());
    }

    /**
     * Gives the onset of a filament lamp behind this feed.
     *
     * @param lamp the lamp
     * @param conditions supply, temperatures and lens; a series resistance in them adds to the wiring
     * @return the onset without the diode and the bracket of the onset with it
     * @throws IllegalArgumentException if the supply does not exceed the diode's drop or the filament starts hotter
     *     than it settles behind the diode
     */
    public FeedOnset onset(FilamentLamp lamp, SupplyConditions conditions) {
        double wiring = wiringOhm + conditions.seriesResistance().inOhms();
        FilamentOnset direct = lamp.switchOn(conditions.withSeriesResistance(Resistance.ohms(wiring)));
        if (diode == null) {
            return FeedOnset.bare(direct);
        }
        return FeedOnset.through(diode.characteristic(), direct);
    }

    /**
     * Gives the isolating diode.
     *
     * @return the diode, nothing without one
     */
    public Optional<Diode> diode() {
        return Optional.ofNullable(diode);
    }
}
