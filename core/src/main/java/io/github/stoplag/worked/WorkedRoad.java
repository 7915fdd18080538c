package io.github.stoplag.worked;

import static io.github.stoplag.worked.Expression.number;

import io.github.stoplag.quantity.Pressure;
import io.github.stoplag.road.Hydroplaning;
import io.github.stoplag.source.Caution;
import io.github.stoplag.worked.Expression.Symbol;
import java.util.Objects;

/** Worked solutions on what lies between tyre and road: the speed from which a tyre rides on deep water. */
public final class WorkedRoad {
    private static final Unit PSI = Unit.of("psi");
    private static final Caution WATER = new Caution(
            "water",
            "A tyre can lose its grip on water well below this speed: worn treads, shallow water and braking make it"
                    + " lower. Slow down on standing water.");

    private WorkedRoad() {}

    /**
     * Works the hydroplaning speed of a rolling tyre on deep water: V = 9 √p, V in knots, p in psi.
     *
     * @param style the digits, and the unit of the answer; the formula fixes the units it is worked in
     * @param inflation the inflation pressure p
     * @return the solution
     * @throws IllegalArgumentException if the pressure is not in (100, 2500] kPa
     */
    public static Solution hydroplaning(Style style, Given inflation) {
        Objects.requireNonNull(inflation, "inflation");
        Objects.requireNonNull(style, "style");
        Hydroplaning.Result model = Hydroplaning.horneRolling(Pressure.psi(inflation.in(PSI)));
        Working w = Working.of(style, "Hydroplaning speed of a tyre", "speed from which the tyre rides on the water");
        Symbol p = w.given("p", "inflation pressure", inflation, PSI);
        w.assume("V in knots, p in psi: " + model.source());
        w.assume("a rolling, smooth or closely ribbed tyre on water too deep to drain; load and width do not count");
        model.caveats().forEach(caveat -> w.assume(caveat.text()));
        Symbol v = w.numericalStep(
                "V",
                "hydroplaning speed",
                number(9).times(p.root()),
                Unit.KNOT,
                Rounding.digits(style.carriedDigits()));
        w.checkAgainst(v, "the same formula in SI units", Amount.of(4.63 * Math.sqrt(inflation.in(PSI)), Unit.MPS));
        w.caution(WATER);
        return w.answer(v, style.units().roadSpeed());
    }
}
