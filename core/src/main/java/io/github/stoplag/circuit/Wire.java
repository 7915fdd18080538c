package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import io.github.stoplag.source.Validity;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * A copper wire by cross-section, gauge or a standard's table, and its resistance at a length and temperature.
 *
 * <p>R = ρ₂₀ (L/A)(1 + α (T − 20 °C)), ρ₂₀ = 0.017241 Ω mm²/m and α = 0.00393 1/K of annealed copper (IEC 60028, seen).
 * A stranded wire has 2 to 5 % more than this; the tables of {@link Standard} allow for it.
 *
 * <p>Possible ranges: area (0, 500] mm², gauge −3 (0000) to 40, length [0, 1000] m, temperature [-100, 400] °C; used
 * here without a caveat from −40 to 150 °C (assumed).
 */
public final class Wire {
    private static final double RESISTIVITY_OHM_MM2_PER_M = 0.017241;
    private static final double ALPHA_PER_K = 0.00393;
    private static final Table STANDARDS = Table.read(Wire.class, "conductor_resistance.csv");
    private static final Validity TEMPERATURE = new Validity(
            "wire temperature", -40, 150, "°C", Source.assumed("straight-line law of copper's resistance"));

    /** A standard that limits the resistance of a conductor by its nominal cross-section. */
    public enum Standard {
        /** Stranded conductors of fixed cables. */
        IEC_60228_CLASS_2("IEC 60228 class 2"),
        /** Flexible conductors. */
        IEC_60228_CLASS_5("IEC 60228 class 5"),
        /** Road-vehicle cables; the figures are from memory. */
        ISO_6722("ISO 6722");

        private final String text;

        Standard(String text) {
            this.text = text;
        }

        @Override
        public String toString() {
            return text;
        }
    }

    private final double ohmsPerMetreAt20C;
    private final String label;
    private final Evidence evidence;

    private Wire(double ohmsPerMetreAt20C, String label, Evidence evidence) {
        this.ohmsPerMetreAt20C = ohmsPerMetreAt20C;
        this.label = label;
        this.evidence = evidence;
    }

    /**
     * A solid wire of a cross-section.
     *
     * @param areaMm2 A in mm², in (0, 500]
     * @return the wire
     * @throws IllegalArgumentException if the area is outside its range
     */
    public static Wire ofArea(double areaMm2) {
        Check.above("cross-section", areaMm2, 0, 500, "mm²");
        String label = "copper wire " + Numbers.text(areaMm2, 4) + " mm²";
        return new Wire(
                RESISTIVITY_OHM_MM2_PER_M / areaMm2,
                label,
                Evidence.of(label + ": R = ρL/A, ρ₂₀ = 0.017241 Ω mm²/m (IEC 60028, seen)")
                        .withCaveat("solid annealed copper: a stranded wire has 2 to 5 % more resistance"));
    }

    /**
     * A solid wire of the American wire gauge: diameter 0.127 mm × 92^((36 − n)/39).
     *
     * @param gauge n, from −3 (0000) to 40
     * @return the wire
     * @throws IllegalArgumentException if the gauge is outside its range
     */
    public static Wire ofAwg(int gauge) {
        Check.inRange("wire gauge", gauge, -3, 40, "AWG");
        double diameterMm = 0.127 * Math.pow(92, (36 - gauge) / 39.0);
        Wire wire = ofArea(Math.PI / 4 * diameterMm * diameterMm);
        return new Wire(wire.ohmsPerMetreAt20C, "AWG " + gauge + ", " + wire.label, wire.evidence);
    }

    /**
     * A wire with the highest resistance a standard allows for its nominal cross-section.
     *
     * @param standard the standard
     * @param areaMm2 a nominal cross-section in its table, in mm²
     * @return the wire
     * @throws IllegalArgumentException if the table has no such cross-section
     */
    public static Wire ofStandard(Standard standard, double areaMm2) {
        Objects.requireNonNull(standard, "standard");
        for (Map<String, String> row : STANDARDS.rows()) {
            if (standard.text.equals(row.get("standard")) && STANDARDS.number(row, "area_mm2") == areaMm2) {
                String label = standard + " " + Numbers.text(areaMm2) + " mm²";
                return new Wire(
                        STANDARDS.number(row, "resistance_mohm_per_m") / 1000,
                        label,
                        Evidence.of(label + ": highest resistance allowed at 20 °C (" + row.get("standing") + ")"));
            }
        }
        throw new IllegalArgumentException("cross-section of " + standard + " must be one of "
                + STANDARDS.rows().stream()
                        .filter(row -> standard.text.equals(row.get("standard")))
                        .map(row -> Numbers.text(STANDARDS.number(row, "area_mm2")))
                        .collect(Collectors.joining(", "))
                + " mm², got " + Numbers.text(areaMm2) + " mm²");
    }

    /**
     * Gives the resistance of a length of the wire.
     *
     * @param length L of the conductor itself, in [0, 1000] m
     * @param temperature T of the conductor, in [-100, 400] °C
     * @return R
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public Resistance resistance(Distance length, Temperature temperature) {
        Objects.requireNonNull(length, "length");
        double metres = Check.inRange("wire length", length.inMetres(), 0, 1000, "m");
        double celsius = Check.inRange("wire temperature", temperature.inCelsius(), -100, 400, "°C");
        return Resistance.ohms(ohmsPerMetreAt20C * metres * (1 + ALPHA_PER_K * (celsius - 20)));
    }

    /**
     * Says what the resistance at a temperature rests on.
     *
     * @param temperature T of the conductor
     * @return the evidence
     */
    public Evidence evidence(Temperature temperature) {
        return TEMPERATURE
                .check(temperature.inCelsius())
                .map(caveat -> evidence.withCaveat(caveat.text()))
                .orElse(evidence);
    }

    /**
     * Names the wire.
     *
     * @return a short name
     */
    public String label() {
        return label;
    }
}
