package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Temperature;
import java.util.Objects;

/**
 * A power resistor's rating on a given mounting.
 *
 * <p>The rated power holds up to an ambient temperature T_r and falls in a straight line to zero at the limit T_max:
 * P(T) = P_r (T_max − T)/(T_max − T_r). The mounting allows P = (T_max − T)/R_th, R_th from element to ambient. The
 * lower of the two holds.
 *
 * @param ratedPower P_r on the maker's heat sink, above 0 W
 * @param ratedAmbient T_r
 * @param limit T_max of the element, above T_r
 * @param elementToSurfaceKPerW thermal resistance from element to surface in K/W, in [0, 1000]; 0 takes the surface as
 *     hot as the element, on the safe side
 * @param surfaceToAmbientKPerW thermal resistance from surface to ambient as mounted in K/W, in (0, 1000]
 */
public record ResistorRating(
        Power ratedPower,
        Temperature ratedAmbient,
        Temperature limit,
        double elementToSurfaceKPerW,
        double surfaceToAmbientKPerW) {
    /**
     * Checks the figures.
     *
     * @param ratedPower P_r on the maker's heat sink, above 0 W
     * @param ratedAmbient T_r
     * @param limit T_max of the element, above T_r
     * @param elementToSurfaceKPerW thermal resistance from element to surface in K/W, in [0, 1000]; 0 takes the surface
     *     as hot as the element, on the safe side
     * @param surfaceToAmbientKPerW thermal resistance from surface to ambient as mounted in K/W, in (0, 1000]
     * @throws IllegalArgumentException if one is outside its range
     */
    public ResistorRating {
        Objects.requireNonNull(limit, "limit");
        Objects.requireNonNull(ratedAmbient, "ratedAmbient");
        Objects.requireNonNull(ratedPower, "ratedPower");
        Ranges.RATED_POWER.check("rated power", ratedPower.inWatts());
        Check.above("temperature limit", limit.inCelsius(), ratedAmbient.inCelsius(), 1500, "°C");
        Check.inRange(
                "thermal resistance element to surface",
                elementToSurfaceKPerW,
                0,
                Ranges.THERMAL_RESISTANCE.hi(),
                "K/W");
        Ranges.THERMAL_RESISTANCE.check("thermal resistance surface to ambient", surfaceToAmbientKPerW);
    }

    /**
     * The aluminium-housed 50 W class on the maker's heat sink (30.5 cm × 30.5 cm × 1.5 mm aluminium): 50 W at 25 °C,
     * 3.5 K/W, 200 °C; seen in two makers' data sheets. The 3.5 K/W is not split in them: the surface is taken as the
     * element.
     *
     * @return the rating
     */
    public static ResistorRating aluminiumHoused50WOnStandardSink() {
        return new ResistorRating(Power.watts(50), Temperature.celsius(25), Temperature.celsius(200), 0, 3.5);
    }

    /**
     * Gives the thermal resistance from element to ambient.
     *
     * @return R_th in K/W
     */
    public double elementToAmbientKPerW() {
        return elementToSurfaceKPerW + surfaceToAmbientKPerW;
    }

    /**
     * Gives the power allowed at an ambient temperature: the lower of the maker's derating line and what the mounting
     * carries off.
     *
     * @param ambient the temperature around the mounted resistor
     * @return the power allowed without pause, 0 at and above the limit
     */
    public Power allowed(Temperature ambient) {
        Objects.requireNonNull(ambient, "ambient");
        double marginK = limit.inKelvin() - ambient.inKelvin();
        if (!(marginK > 0)) {
            return Power.watts(0);
        }
        double spanK = limit.inKelvin() - ratedAmbient.inKelvin();
        double derated = ratedPower.inWatts() * Math.min(1, marginK / spanK);
        return Power.watts(Math.min(derated, marginK / elementToAmbientKPerW()));
    }

    @Override
    public String toString() {
        return ratedPower + " at " + celsius(ratedAmbient) + ", limit " + celsius(limit) + ", "
                + Numbers.text(elementToAmbientKPerW()) + " K/W as mounted";
    }

    static String celsius(Temperature t) {
        return Numbers.text(t.inCelsius(), 4) + " °C";
    }
}
