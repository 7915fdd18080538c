package io.github.stoplag.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.assertj.core.data.Offset;

/** Values to text with a fixed count of decimals and back. */
class TextRoundTripProperties {
    private static final double RELATIVE = 1e-12;

    @Provide
    Arbitrary<ValueTypes> types() {
        return Arbitraries.of(ValueTypes.all());
    }

    @Property(tries = 2000, seed = "42")
    void textComesBackWithinHalfAStepOfTheLastDecimal(
            @ForAll("types") ValueTypes type,
            @ForAll @DoubleRange(min = 0.01, max = 0.4) double number,
            @ForAll @IntRange(max = 15) int decimals) {
        for (NamedUnit from : type.units().list()) {
            Object value = type.parse(number + " " + from.symbol());
            double si = type.si(value);
            for (NamedUnit unit : type.units().list()) {
                // a slope in degrees is no fixed multiple of the ratio: d tan / d angle is at most 1.16 up to 0.4
                double step = unit.isLinear() ? unit.toSi(1) - unit.toSi(0) : 1.17 * Math.toRadians(1);
                // a thermometer loses digits of the number it is written in, hence the kelvins at zero degrees
                double size = Math.abs(si) + (type.units() == Units.TEMPERATURE ? 460.0 : 0.0);
                double half = 0.5 * Math.pow(10, -decimals) * step * (1 + 1e-9);
                String text = type.format(value, unit.symbol(), decimals);
                // not the type's own reader: a value rounded over the edge of its range is refused
                assertThat(Math.abs(type.units().parseSi(text) - si))
                        .as("%s %s in %s", type, si, unit)
                        .isLessThanOrEqualTo(half + RELATIVE * size);
            }
        }
    }

    @Property(seed = "42")
    void feetAndInchesComeBackWithinHalfAnInch(@ForAll @DoubleRange(min = -9e6, max = 9e6) double metres) {
        String text = Distance.metres(metres).formatFeetAndInches();
        assertThat(text).matches("-?[0-9]+ ft ([0-9]|1[01]) in");
        assertThat(Distance.parse(text).inMetres()).isCloseTo(metres, Offset.offset(0.0127 + 1e-12 * Math.abs(metres)));
    }

    @Property(seed = "42")
    void everyFiniteNumberJavaPrintsIsReadExactly(@ForAll @DoubleRange(min = -1e7, max = 1e7) double metres) {
        assertThat(Distance.parse(metres + " m").inMetres()).isEqualTo(metres + 0.0);
    }
}
