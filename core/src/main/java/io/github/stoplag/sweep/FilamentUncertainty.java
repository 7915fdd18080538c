package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.lamp.BulbFilament;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.TungstenTables;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.List;
import java.util.Objects;
import java.util.function.ToDoubleFunction;

/**
 * How uncertain a filament lamp's time is: a budget of what its rating leaves open.
 *
 * <pre>
 *   u_c² = Σ uᵢ²,  uᵢ = ½ (t(…, xᵢ + aᵢ/√3, …) − t(…, xᵢ − aᵢ/√3, …)),  U = k u_c
 * </pre>
 *
 * <p>Inputs, each a factor within ±aᵢ of 1, rectangular (GUM, type B): power drawn, ±6 % from 15 W and ±10 % below
 * ({@link BulbFilament#usualToleranceRatio}); light, ±15 % where the flux is rated (seen), ±25 % where volts, watts
 * and life tell it; coil factor, ±14 %; gas-loss share, ±30 % (both assumed). The choice of tungsten tables enters as
 * w (t_classic − t_fits), w within ±1: the truth may lie as far on the other side. Supply, wiring and surroundings
 * are taken as given.
 *
 * <pre>{@code
 * FilamentLamp bulb = BulbCatalogue.published("P21W").majorLamp().build();
 * SupplyConditions on = SupplyConditions.of(Voltage.volts(13.5));
 * FilamentUncertainty.Budget half = FilamentUncertainty.of(bulb)
 *         .budget("time_to_half_s", lamp -> lamp.switchOn(on).timeToLevelS(0.5).orElseThrow());
 * half.contributions().size(); // 5
 * }</pre>
 */
public final class FilamentUncertainty implements Evident {
    private static final double CONFIDENCE = 0.95;
    private static final double COIL_FACTOR = 0.14;
    private static final double GAS_LOSS = 0.3;
    /** The inputs before the choice of tables. */
    private static final int TABLES = 4;

    private static final FilamentLamp.Variation AS_IS = new FilamentLamp.Variation(1, 1, 1, 1);

    private final FilamentLamp lamp;
    private final double powerTolerance;
    private final double lightTolerance;

    /**
     * A time with what each unknown brings in.
     *
     * @param time the time in seconds, with standard uncertainty and the interval that holds it with 95 %
     * @param contributions the parts of power, light, coil factor, gas loss and tungsten tables, with their signs
     * @param evidence what the widths rest on
     */
    public record Budget(Measurand.Estimate time, List<Measurand.Contribution> contributions, Evidence evidence)
            implements Evident {
        /**
         * Copies the list.
         *
         * @param time the time in seconds
         * @param contributions the parts
         * @param evidence what the widths rest on
         */
        public Budget {
            Objects.requireNonNull(evidence, "evidence");
            Objects.requireNonNull(time, "time");
            contributions = Check.copyOf("contributions", contributions);
        }
    }

    private FilamentUncertainty(FilamentLamp lamp, double powerTolerance, double lightTolerance) {
        this.lamp = lamp;
        this.powerTolerance = Check.above("tolerance of the power drawn", powerTolerance, 0, 0.5, "");
        this.lightTolerance = Check.above("tolerance of the light", lightTolerance, 0, 0.5, "");
    }

    /**
     * Starts with the usual tolerances.
     *
     * @param lamp the lamp
     * @return its uncertainty
     */
    public static FilamentUncertainty of(FilamentLamp lamp) {
        return new FilamentUncertainty(
                lamp, BulbFilament.usualToleranceRatio(lamp.ratedPower()), lamp.fluxRated() ? 0.15 : 0.25);
    }

    /**
     * Takes other tolerances.
     *
     * @param powerRatio half the width of the power drawn, over it, (0, 0.5]
     * @param lightRatio half the width of the flux, over it, (0, 0.5]
     * @return the changed uncertainty
     * @throws IllegalArgumentException if one is out of range
     */
    public FilamentUncertainty withTolerances(double powerRatio, double lightRatio) {
        return new FilamentUncertainty(lamp, powerRatio, lightRatio);
    }

    /**
     * Works the budget of a time out.
     *
     * @param name the time with its unit, as in column names
     * @param timeS how it follows from the lamp: to a level of light, or until a detector sees it
     * @return time, contributions and evidence
     * @throws IllegalArgumentException if the time is not finite for every lamp within the tolerances
     */
    public Budget budget(String name, ToDoubleFunction<FilamentLamp> timeS) {
        Objects.requireNonNull(timeS, "timeS");
        Objects.requireNonNull(name, "name");
        Measurand measurand = measurand(timeS);
        return new Budget(
                measurand.firstOrder(CONFIDENCE),
                measurand.contributions(),
                evidence().with(Evidence.of(name + ": first-order law of propagation, unknowns independent")));
    }

    /**
     * Gives the time as a measurand, for a Monte Carlo beside the first order.
     *
     * @param timeS how the time follows from the lamp
     * @return the measurand with its five inputs
     */
    public Measurand measurand(ToDoubleFunction<FilamentLamp> timeS) {
        Objects.requireNonNull(timeS, "timeS");
        TungstenTables used = lamp.tungsten();
        TungstenTables other = used == TungstenTables.FITS ? TungstenTables.CLASSIC : TungstenTables.FITS;
        double byTablesS =
                timeS.applyAsDouble(lamp.varied(AS_IS, other)) - timeS.applyAsDouble(lamp.varied(AS_IS, used));
        return Measurand.of(x ->
                        timeS.applyAsDouble(lamp.varied(new FilamentLamp.Variation(x[0], x[1], x[2], x[3]), used))
                                + x[4] * byTablesS)
                .input("power_ratio", around(powerTolerance))
                .input("light_ratio", around(lightTolerance))
                .input("coil_factor_ratio", around(COIL_FACTOR))
                .input("gas_loss_ratio", around(GAS_LOSS))
                .input("tungsten_tables", new Distribution.Uniform(-1, 1));
    }

    /**
     * Gives the lamp that stands for one end of the interval of a time.
     *
     * <pre>
     *   xᵢ = 1 ∓ k u(xᵢ) (uᵢ / u_c) · u_c² / (u_c² − u_t²)
     * </pre>
     *
     * <p>Each unknown moves by its share of the variance, so that to first order the time moves by k u_c: the likeliest
     * of all lamps with that time. The choice of tables cannot be moved by degrees; the others take its part u_t over.
     * One such lamp stands for the whole bulb, whatever is asked of it next, as long as that rises with the time.
     *
     * @param timeS how the time follows from the lamp
     * @param early whether the early end, else the late one
     * @return the lamp
     * @throws IllegalArgumentException if the unknowns lead out of a range of {@link FilamentLamp.Builder}
     */
    public FilamentLamp end(ToDoubleFunction<FilamentLamp> timeS, boolean early) {
        Measurand measurand = measurand(timeS);
        Measurand.Estimate time = measurand.firstOrder(CONFIDENCE);
        List<Measurand.Contribution> parts = measurand.contributions();
        double moved = 0;
        double[] factor = new double[TABLES];
        for (int i = 0; i < TABLES; i++) {
            moved += parts.get(i).contribution() * parts.get(i).contribution();
        }
        double aside = (time.coverage().hi() - time.coverage().lo()) / 2 * (early ? -1 : 1);
        for (int i = 0; i < TABLES; i++) {
            factor[i] = moved > 0
                    ? 1
                            + aside
                                    * parts.get(i).standardUncertainty()
                                    * parts.get(i).contribution()
                                    / moved
                    : 1;
        }
        return lamp.varied(new FilamentLamp.Variation(factor[0], factor[1], factor[2], factor[3]), lamp.tungsten());
    }

    private static Distribution around(double halfWidth) {
        return new Distribution.Uniform(1 - halfWidth, 1 + halfWidth);
    }

    @Override
    public Evidence evidence() {
        return Evidence.of(
                "unknowns of " + lamp + ", rectangular: power drawn " + percent(powerTolerance) + ", light "
                        + percent(lightTolerance) + ", coil factor " + percent(COIL_FACTOR) + ", gas-loss share "
                        + percent(GAS_LOSS) + " (assumed), tungsten tables as far as the classic ones differ",
                "supply, wiring and surroundings taken as given");
    }

    private static String percent(double halfWidth) {
        return "±" + Math.round(100 * halfWidth) + " %";
    }
}
