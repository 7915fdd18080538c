package io.github.stoplag.examples.teach;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.examples.Spelled;
import io.github.stoplag.worked.Given;
import io.github.stoplag.worked.UnitSystem;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class MeasureTest {
    @ParameterizedTest
    @EnumSource
    void questionReadsEverySpelling(Measure measure) {
        Spelled.each(measure.table(), spelled -> {
            if (!spelled.spelling().isEmpty() || measure == Measure.FRICTION) {
                String text = "0.25 " + spelled.spelling();
                String asked = text + (measure == Measure.GRADE ? " up" : "");
                assertThat(measure.fits(asked)).as(asked).isTrue();
                Given given = measure.read(asked);
                double si = given.amount().in(measure.si());
                assertThat(si).as(asked).isCloseTo(spelled.unit().toSi(0.25), Offset.offset(1e-9 * (1 + si)));
            }
        });
    }

    @Test
    void systemOfUnitsIsThatOfTheUnitHoweverSpelled() {
        assertThat(Measure.SPEED.system("60 Miles per hour")).contains(UnitSystem.US_CUSTOMARY);
        assertThat(Measure.DISTANCE.system("8 ft 10 in")).contains(UnitSystem.US_CUSTOMARY);
        assertThat(Measure.DISTANCE.system("20 yards")).contains(UnitSystem.US_CUSTOMARY);
        assertThat(Measure.SPEED.system("60 kmh")).contains(UnitSystem.METRIC);
        assertThat(Measure.SPEED.system("60 knots")).isEmpty();
        assertThat(Measure.DECELERATION.system("0.7 g")).isEmpty();
        assertThat(Measure.TIME.system("2 min")).isEmpty();
    }
}
