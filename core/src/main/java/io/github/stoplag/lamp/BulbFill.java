package io.github.stoplag.lamp;

/**
 * What a bulb is filled with; it decides whether the filament loses heat to gas, and how fast its tungsten evaporates.
 *
 * <p>In gas near atmospheric pressure most evaporated atoms find back to the wire: "no more than a few per cent" of the
 * evaporation in vacuum remain (a Dutch physics book with a figure for argon and nitrogen, seen); 0.02 is taken. Under
 * pressure p the rate falls as p^−0.87 (vaporization of tungsten in argon, 80 to 300 mmHg, 2850 to 3150 K, seen in the
 * abstract), here used up to the 8 bar assumed of a halogen bulb.
 */
public enum BulbFill {
    /** Filled with argon, nitrogen or krypton: usual from some 10 W up. */
    GAS("gas", 0.02),
    /** Evacuated: usual for small filaments, which would lose too much to gas. */
    VACUUM("vacuum", 1),
    /** Halogen signal bulbs: gas under pressure with a halogen, whose cycle is not modelled. */
    HALOGEN("halogen gas", 0.02 * Math.pow(8, -0.87));

    private final String text;
    private final double evaporationRatio;

    BulbFill(String text, double evaporationRatio) {
        this.text = text;
        this.evaporationRatio = evaporationRatio;
    }

    /** {@return the tungsten that gets away over what would in vacuum} */
    public double evaporationRatio() {
        return evaporationRatio;
    }

    @Override
    public String toString() {
        return text;
    }
}
