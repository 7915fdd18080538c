package io.github.stoplag.lamp;

import io.github.stoplag.source.Table;
import java.util.Map;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * How hot a filament of a given life may be: it ends when a share of it has evaporated.
 *
 * <pre>
 * life = x density d/(4 h M(T)),    M = p(T) √(W/(2π R T)),    log10(p/Pa) = A − B/(T − C)
 * </pre>
 *
 * <p>Symbols: x share of the mass gone at the end; d diameter of the wire, which volts, watts and T give; h evaporation
 * in the fill over that in vacuum, {@link BulbFill}; M rate of free evaporation in kg/(m² s) (Langmuir); p vapour
 * pressure; W molar mass; R gas constant. That life hangs on evaporation and thickness of the wire: a maker of small
 * lamps and, up to some 3000 h, a study of general lamps (both seen in extracts). x is 0.055, the middle of 0.03 to 0.1
 * (from memory); with h it was set once for all bulbs. T goes as about life^(−1/37), so that a life wrong by a factor
 * of 2 moves T by 2 % and the light by a fifth.
 */
final class FilamentEvaporation {
    /** The life of a bulb of which nothing is said: assumed. */
    static final double USUAL_LIFE_H = 1000;

    /** Where the temperature found this way was seen to tell the light within 25 %. */
    static final String RANGE = "from 3 W (above 16 V from 10 W) that live up to 3000 h, without halogen";

    private static final double LEAST_W = 3;
    private static final double LEAST_W_ABOVE_16_V = 10;
    private static final double LONGEST_LIFE_H = 3000;
    private static final double SHARE_GONE = 0.055;
    private static final double MOLAR_MASS_KG = 0.18384;
    private static final double GAS_CONSTANT = 8.314462618;
    private static final double S_PER_H = 3600;
    private static final double LOWEST_K = 1800;
    private static final double HIGHEST_K = 3500;
    private static final Table TABLE = Table.read(FilamentEvaporation.class, "tungsten_vapour_pressure.csv");
    private static final Map<String, String> ROW = TABLE.rows().get(0);
    private static final double A = TABLE.number(ROW, "A");
    private static final double B = TABLE.number(ROW, "B");
    private static final double C = TABLE.number(ROW, "C");

    private FilamentEvaporation() {}

    static double vapourPressurePa(double temperatureK) {
        return Math.pow(10, A - B / (temperatureK - C));
    }

    static double kgPerM2S(double temperatureK) {
        return vapourPressurePa(temperatureK) * Math.sqrt(MOLAR_MASS_KG / (2 * Math.PI * GAS_CONSTANT * temperatureK));
    }

    static double lifeH(FilamentWire wire, BulbFill fill) {
        double kelvin = wire.filamentK();
        return SHARE_GONE
                * Tungsten.densityKgPerM3(kelvin)
                * wire.diameterM()
                / (4 * fill.evaporationRatio() * kgPerM2S(kelvin) * S_PER_H);
    }

    /**
     * Finds the temperature at which the wire lives as long; the life falls steeply and steadily with the temperature.
     */
    static double temperatureK(DoubleFunction<FilamentWire> wireAtK, BulbFill fill, double lifeH) {
        return new BrentSolver(1e-12, 1e-9)
                .solve(100, k -> Math.log(lifeH(wireAtK.apply(k), fill) / lifeH), LOWEST_K, HIGHEST_K);
    }

    static boolean holds(double ratedV, double ratedW, double lifeH, BulbFill fill) {
        return ratedW >= (ratedV > 16 ? LEAST_W_ABOVE_16_V : LEAST_W)
                && lifeH <= LONGEST_LIFE_H
                && fill != BulbFill.HALOGEN;
    }

    static String basis() {
        return "filament temperature from volts, watts and life by evaporation: vapour pressure of " + TABLE.source(ROW)
                + ", rate by Langmuir, " + SHARE_GONE + " of the mass gone at the end (assumed)";
    }
}
