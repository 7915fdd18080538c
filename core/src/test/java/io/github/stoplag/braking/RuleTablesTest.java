package io.github.stoplag.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import io.github.stoplag.quantity.NamedUnit;
import io.github.stoplag.quantity.Units;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A table of rules may be written in every unit and spelling that is read elsewhere. */
class RuleTablesTest {
    @Test
    void tablesReadEverySpelling() {
        every(Units.SPEED, unit -> number -> RuleTables.speed(number, unit).inMps());
        every(
                Units.DECELERATION,
                unit -> number -> RuleTables.deceleration(number, unit).inMps2());
        every(
                Units.DISTANCE,
                unit -> number -> RuleTables.distance(number, unit).inMetres());
    }

    private static void every(Units units, Function<String, DoubleUnaryOperator> door) {
        for (NamedUnit unit : units.list()) {
            Stream.concat(unit.exactSpellings().stream(), unit.looseSpellings().stream())
                    .forEach(spelling -> assertThat(door.apply(spelling).applyAsDouble(1.25))
                            .as(spelling)
                            .isEqualTo(unit.toSi(1.25)));
        }
    }

    @Test
    void aRuleOfItsOwnUnitsIsInKilometresOrMilesPerHour() {
        assertThat(RuleUnits.of("Miles per hour")).isEqualTo(RuleUnits.MPH_FT);
        assertThat(RuleUnits.of("kmh")).isEqualTo(RuleUnits.KMH_M);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RuleUnits.of("knots"))
                .withMessage("speed unit of a rule must be km/h or mph, got \"knots\"");
    }
}
