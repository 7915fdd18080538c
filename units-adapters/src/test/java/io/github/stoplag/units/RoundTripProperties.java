package io.github.stoplag.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.Unit;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

class RoundTripProperties {
    private static final double RELATIVE = 1e-12;

    @Provide
    Arbitrary<Kind<?, ?>> kinds() {
        return Arbitraries.of(Kind.all());
    }

    @Property(tries = 200, seed = "42")
    void quantityInAnyUnitComesBack(
            @ForAll("kinds") Kind<?, ?> kind, @ForAll @DoubleRange(min = 0, max = 1) double share) {
        comesBack(kind, kind.lo() + share * (kind.hi() - kind.lo()));
    }

    private static <V, Q extends Quantity<Q>> void comesBack(Kind<V, Q> kind, double value) {
        List<Unit<Q>> units = kind.allUnits();
        for (Unit<Q> unit : units) {
            assertThat(Math.abs(kind.throughQuantity(value, unit) - value))
                    .as("%s %s in %s", kind, value, unit)
                    .isLessThanOrEqualTo(RELATIVE * Math.abs(value));
        }
    }
}
