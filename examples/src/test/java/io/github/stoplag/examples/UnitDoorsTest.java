package io.github.stoplag.examples;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.examples.circuit.CircuitKeys;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.following.FollowingScenario;
import io.github.stoplag.examples.lampswap.Scenario;
import io.github.stoplag.quantity.Units;
import io.github.stoplag.units.QuantityUnits;
import io.github.stoplag.worked.Amount;
import java.util.stream.Stream;
import javax.measure.quantity.Speed;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What one door reads every door reads: keys of files, answers, JSR-385. */
class UnitDoorsTest {
    static Stream<Key<?>> keys() {
        return Stream.of(
                        Scenario.KEYS.stream().flatMap(keys -> keys.quantities().stream()),
                        CircuitKeys.KEYS.quantities().stream(),
                        FollowingScenario.OF_A_VEHICLE.quantities().stream())
                .flatMap(keys -> keys);
    }

    @ParameterizedTest
    @MethodSource("keys")
    void fileReadsEverySpelling(Key<?> key) {
        Spelled.readBy(key);
    }

    @Test
    void answersReadEverySpelling() {
        for (Units units : Units.all()) {
            Spelled.each(units, spelled -> {
                Amount amount = Amount.parse("12.25 " + spelled.spelling());
                assertThat(amount.number()).isEqualByComparingTo("12.25");
                assertThat(amount.unit().symbol()).isEqualTo(spelled.unit().symbol());
            });
        }
    }

    @Test
    void quantitiesHaveEverySpelling() {
        Spelled.each(
                Units.SPEED,
                spelled -> assertThat(QuantityUnits.unit(Units.SPEED, spelled.spelling(), Speed.class)
                                .getConverterTo(QuantityUnits.unit(Units.SPEED, "m/s", Speed.class))
                                .convert(12.25))
                        .isCloseTo(spelled.unit().toSi(12.25), Offset.offset(1e-12)));
    }
}
