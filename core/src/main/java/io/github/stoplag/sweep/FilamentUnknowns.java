package io.github.stoplag.sweep;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Range;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.Detector;
import io.github.stoplag.sight.LampSignal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A filament lamp and an eye of which not all is known: some of coil factor, gas loss, supply, series resistance and
 * ambient temperature have an interval, the rest one value.
 *
 * <p>I∞ = I(design) L(Ts)/L(Td): the lamp's intensity follows the supply, as in {@link FilamentOnset#relativeToRated}.
 * An interval of no width is a value, not an unknown. Other unknowns, of the eye for example, are tabulated by
 * {@link LatencyTable#of} with a simulation of one's own.
 */
public final class FilamentUnknowns {
    private final Circuit known;
    private final LuminousIntensity atDesign;
    private final LuminousIntensity tail;
    private final Detector eye;
    private final List<Unknown> unknowns;

    private record Circuit(FilamentLamp lamp, SupplyConditions conditions) {}

    /** Sets one quantity of lamp or conditions. */
    private interface Setter {
        Circuit set(Circuit circuit, double value);
    }

    private record Unknown(TableAxis axis, Setter setter) {}

    private FilamentUnknowns(
            Circuit known, LuminousIntensity atDesign, LuminousIntensity tail, Detector eye, List<Unknown> unknowns) {
        this.known = known;
        this.atDesign = atDesign;
        this.tail = tail;
        this.eye = eye;
        this.unknowns = Check.copyOf("unknowns", unknowns);
    }

    /**
     * Starts with everything known.
     *
     * @param lamp the bulb
     * @param conditions supply, wiring, temperatures and lens
     * @param atDesign the lamp's luminous intensity at the bulb's design voltage
     * @param eye who looks
     * @return no unknowns yet
     */
    public static FilamentUnknowns of(
            FilamentLamp lamp, SupplyConditions conditions, LuminousIntensity atDesign, Detector eye) {
        Objects.requireNonNull(atDesign, "atDesign");
        Objects.requireNonNull(conditions, "conditions");
        Objects.requireNonNull(eye, "eye");
        Objects.requireNonNull(lamp, "lamp");
        return new FilamentUnknowns(
                new Circuit(lamp, conditions), atDesign, LuminousIntensity.candela(0), eye, List.of());
    }

    /**
     * Lets a tail lamp burn beside the lamp.
     *
     * @param steady its intensity
     * @return the changed setting
     */
    public FilamentUnknowns withTailLit(LuminousIntensity steady) {
        Objects.requireNonNull(steady, "steady");
        return new FilamentUnknowns(known, atDesign, steady, eye, unknowns);
    }

    /**
     * Leaves the coil factor open: column {@code coil_factor}.
     *
     * @param loRatio its lowest value, [0.5, 1]
     * @param hiRatio its highest value
     * @return the changed setting
     * @throws IllegalArgumentException if the interval is out of range or order, or the quantity has one already
     */
    public FilamentUnknowns coilFactor(double loRatio, double hiRatio) {
        return with(
                "coil_factor",
                "coil factor",
                loRatio,
                hiRatio,
                "",
                (circuit, ratio) -> new Circuit(circuit.lamp.withCoilFactor(ratio), circuit.conditions));
    }

    /**
     * Leaves the share of power lost to gas and supports open: column {@code gas_loss_ratio}.
     *
     * @param loRatio its lowest value, [0, 0.5]
     * @param hiRatio its highest value
     * @return the changed setting
     * @throws IllegalArgumentException if the interval is out of range or order, or the quantity has one already
     */
    public FilamentUnknowns gasLossShare(double loRatio, double hiRatio) {
        return with(
                "gas_loss_ratio",
                "gas-loss share",
                loRatio,
                hiRatio,
                "",
                (circuit, ratio) -> new Circuit(circuit.lamp.withGasLossShare(ratio), circuit.conditions));
    }

    /**
     * Leaves the supply voltage open: column {@code supply_v}.
     *
     * @param lo its lowest value, [0, 1000] V
     * @param hi its highest value
     * @return the changed setting
     * @throws IllegalArgumentException if the interval is out of range or order, or the quantity has one already
     */
    public FilamentUnknowns supply(Voltage lo, Voltage hi) {
        Objects.requireNonNull(hi, "hi");
        Objects.requireNonNull(lo, "lo");
        return with(
                "supply_v",
                "supply voltage",
                lo.inVolts(),
                hi.inVolts(),
                "V",
                (circuit, volt) -> new Circuit(circuit.lamp, circuit.conditions.withSupply(Voltage.volts(volt))));
    }

    /**
     * Leaves the resistance of switch and harness open: column {@code series_resistance_ohm}.
     *
     * @param lo its lowest value, [0, 100] Ω
     * @param hi its highest value
     * @return the changed setting
     * @throws IllegalArgumentException if the interval is out of range or order, or the quantity has one already
     */
    public FilamentUnknowns seriesResistance(Resistance lo, Resistance hi) {
        Objects.requireNonNull(hi, "hi");
        Objects.requireNonNull(lo, "lo");
        return with(
                "series_resistance_ohm",
                "series resistance",
                lo.inOhms(),
                hi.inOhms(),
                "Ω",
                (circuit, ohm) ->
                        new Circuit(circuit.lamp, circuit.conditions.withSeriesResistance(Resistance.ohms(ohm))));
    }

    /**
     * Leaves the temperature of the surroundings open: column {@code ambient_k}.
     *
     * @param lo its lowest value, [200, 500] K
     * @param hi its highest value
     * @return the changed setting
     * @throws IllegalArgumentException if the interval is out of range or order, or the quantity has one already
     */
    public FilamentUnknowns ambientTemperature(Temperature lo, Temperature hi) {
        Objects.requireNonNull(hi, "hi");
        Objects.requireNonNull(lo, "lo");
        return with(
                "ambient_k",
                "ambient temperature",
                lo.inKelvin(),
                hi.inKelvin(),
                "K",
                (circuit, k) ->
                        new Circuit(circuit.lamp, circuit.conditions.withAmbientTemperature(Temperature.kelvin(k))));
    }

    private FilamentUnknowns with(String column, String name, double lo, double hi, String unit, Setter setter) {
        if (!(lo <= hi)) {
            throw new IllegalArgumentException(name + " must be given from its lowest to its highest value, got "
                    + Numbers.text(lo) + " to " + Numbers.text(hi) + (unit.isEmpty() ? "" : " " + unit));
        }
        if (unknowns.stream().anyMatch(unknown -> unknown.axis.column().equals(column))) {
            throw new IllegalArgumentException(name + " must be given once, got another interval");
        }
        // both ends are tried at once: the lamp knows its ranges
        Circuit at = setter.set(known, lo);
        setter.set(known, hi);
        if (lo == hi) {
            return new FilamentUnknowns(at, atDesign, tail, eye, unknowns);
        }
        List<Unknown> more = new ArrayList<>(unknowns);
        more.add(new Unknown(new TableAxis(column, Range.closed(name, lo, hi, unit)), setter));
        return new FilamentUnknowns(known, atDesign, tail, eye, more);
    }

    /** {@return the unknowns, in the order in which they were named} */
    public List<TableAxis> axes() {
        return unknowns.stream().map(Unknown::axis).toList();
    }

    /**
     * Simulates the lamp.
     *
     * @param values one value for each unknown
     * @return when it is detected
     * @throws IllegalArgumentException if a value is outside its interval, or as {@link FilamentLamp#switchOn}
     */
    public Detection simulate(double... values) {
        Objects.requireNonNull(values, "values");
        if (values.length != unknowns.size()) {
            throw new IllegalArgumentException(
                    "values of a simulation must be " + unknowns.size() + ", got " + values.length);
        }
        Circuit circuit = known;
        for (int i = 0; i < values.length; i++) {
            Unknown unknown = unknowns.get(i);
            circuit = unknown.setter.set(circuit, unknown.axis.range().check(values[i]));
        }
        FilamentOnset onset = circuit.lamp.switchOn(circuit.conditions);
        LuminousIntensity intensity = LuminousIntensity.candela(atDesign.inCandela() * onset.relativeToRated());
        return eye.detect(LampSignal.of(onset, intensity).withTailLit(tail));
    }

    /**
     * Tabulates the moment of detection over the unknowns.
     *
     * @param accuracy the largest error allowed, [1e-7, 1] s
     * @return the table
     * @throws IllegalArgumentException if nothing is unknown, or as {@link LatencyTable#of}
     */
    public LatencyTable table(TimeSpan accuracy) {
        Objects.requireNonNull(accuracy, "accuracy");
        return LatencyTable.of(axes(), this::simulate, accuracy);
    }
}
