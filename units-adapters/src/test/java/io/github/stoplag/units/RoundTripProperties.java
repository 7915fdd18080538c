package io.github.stoplag.units;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.quantity.Distance;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.assertj.core.data.Offset;

class RoundTripProperties {
    private static final double RELATIVE = 1e-12;

    @Provide
    Arbitrary<Kind<?, ?>> kinds() {
        return Arbitraries.of(Kind.all());
    }

    @Property(tries = 2000, seed = "42")
    void textComesBackWithinHalfAStepOfTheLastDecimal(
            @ForAll("kinds") Kind<?, ?> kind,
            @ForAll @DoubleRange(min = 0, max = 1) double share,
            @ForAll @IntRange(max = 7) int unitIndex,
            @ForAll @IntRange(max = 15) int decimals) {
        double value = kind.lo() + share * (kind.hi() - kind.lo());
        List<String> names = kind.table().units();
        String unit = names.get(unitIndex % names.size());

        // slope in degrees is no fixed multiple of the ratio: d tan / d angle is at most 1.16 up to 0.4
        double step = unit.equals("deg")
                ? 1.17 * Math.toRadians(1)
                : 2 * (kind.parsed("1 " + unit) - kind.parsed("0.5 " + unit));
        // an offset scale loses digits of the number it is written in, hence the kelvins at zero degrees
        double size = Math.abs(value) + (kind.table() == UnitTable.TEMPERATURE ? 460.0 : 0.0);
        assertThat(Math.abs(kind.throughText(value, unit, decimals) - value))
                .as("%s %s in %s", kind, value, unit)
                .isLessThanOrEqualTo(0.5 * Math.pow(10, -decimals) * step * (1 + 1e-9) + RELATIVE * size);
    }

    @Property(tries = 2000, seed = "42")
    void quantityInAnyUnitComesBack(
            @ForAll("kinds") Kind<?, ?> kind,
            @ForAll @DoubleRange(min = 0, max = 1) double share,
            @ForAll @IntRange(max = 11) int unit) {
        double value = kind.lo() + share * (kind.hi() - kind.lo());
        assertThat(Math.abs(kind.throughQuantity(value, unit) - value))
                .as("%s %s", kind, value)
                .isLessThanOrEqualTo(RELATIVE * Math.abs(value));
    }

    @Property(seed = "42")
    void feetAndInchesComeBackWithinHalfAnInch(@ForAll @DoubleRange(min = -9e6, max = 9e6) double metres) {
        Distance distance = Distance.metres(metres);
        String text = QuantityText.feetAndInches(distance);
        assertThat(text).matches("-?[0-9]+ ft ([0-9]|1[01]) in");
        assertThat(QuantityText.parseDistance(text).inMetres())
                .isCloseTo(metres, Offset.offset(0.0127 + 1e-12 * Math.abs(metres)));
    }

    @Property(seed = "42")
    void everyFiniteNumberJavaPrintsIsReadExactly(@ForAll @DoubleRange(min = -1e7, max = 1e7) double metres) {
        assertThat(QuantityText.parseDistance(metres + " m").inMetres()).isEqualTo(metres + 0.0);
    }
}
