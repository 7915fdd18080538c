package io.github.stoplag.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Mass;
import io.github.stoplag.quantity.Speed;
import org.junit.jupiter.api.Test;

class RoadLoadTest {
    /** An invented car: 1500 kg, drag area 0.66 m², rolling resistance 0.012. */
    private static final RoadLoad CAR = RoadLoad.of(Mass.kg(1500), 0.66, 1.225, 0.012);

    private static final Deceleration BRAKES = Deceleration.mps2(7);

    /** Newton: at 30 m/s the air takes ρ C_d A v²/2 = 363.8 N, the tyres m g C_rr = 176.5 N. */
    @Test
    void forcesOverMassMakeTheDeceleration() {
        double air = 0.5 * 1.225 * 0.66 * 900;
        double tyres = 1500 * 9.80665 * 0.012;
        assertThat(CAR.decelerationAt(BRAKES, Speed.mps(30)).inMps2())
                .isCloseTo(7 + (air + tyres) / 1500, within(1e-12));
        assertThat(CAR.rolling().inMps2()).isCloseTo(tyres / 1500, within(1e-13));
        assertThat(CAR.dragPerM()).isCloseTo(air / 1500 / 900, within(1e-16));
    }

    @Test
    void withoutLoadItIsConstantDeceleration() {
        assertThat(RoadLoad.NONE
                        .brakingDistance(Speed.mps(30), Speed.mps(0), BRAKES)
                        .inMetres())
                .isCloseTo(900 / 14.0, within(1e-12));
        assertThat(RoadLoad.NONE
                        .brakingTime(Speed.mps(30), Speed.mps(9), BRAKES)
                        .inSeconds())
                .isCloseTo(3, within(1e-12));
        assertThat(CAR.brakingDistance(Speed.mps(30), Speed.mps(0), BRAKES))
                .isLessThan(RoadLoad.NONE.brakingDistance(Speed.mps(30), Speed.mps(0), BRAKES));
        assertThat(CAR.brakingTime(Speed.mps(30), Speed.mps(0), BRAKES))
                .isLessThan(RoadLoad.NONE.brakingTime(Speed.mps(30), Speed.mps(0), BRAKES));
    }

    @Test
    void coastingWithoutAnyResistanceIsRefused() {
        assertThatThrownBy(() -> RoadLoad.NONE.brakingDistance(Speed.mps(30), Speed.mps(0), Deceleration.mps2(0)))
                .hasMessage("deceleration at the final speed must be in (0, 100000] m/s², got 0 m/s²");
        assertThat(CAR.brakingDistance(Speed.mps(30), Speed.mps(0), Deceleration.mps2(0))
                        .inKm())
                .isBetween(1.0, 4.0);
    }

    @Test
    void namesWhatIsOutOfRange() {
        assertThatThrownBy(() -> RoadLoad.of(Mass.kg(1500), -1, 1.2, 0))
                .hasMessage("drag area must be in [0, 20] m², got -1 m²");
        assertThatThrownBy(() -> RoadLoad.of(Mass.kg(1500), 1, 1225, 0))
                .hasMessage("air density must be in [0, 2] kg/m³, got 1225 kg/m³");
        assertThatThrownBy(() -> RoadLoad.of(Mass.kg(1500), 1, 1.2, 1))
                .hasMessage("rolling resistance coefficient must be in [0, 0.5], got 1");
    }

    /** The published figures lie where a unit slip would put them out. */
    @Test
    void publishedFiguresAreRatios() {
        assertThat(RoadLoad.published()).hasSize(9).allSatisfy(range -> {
            assertThat(range.low()).isBetween(0.005, 1.1);
            assertThat(range.unit()).isEmpty();
        });
        assertThat(RoadLoad.published().get(0))
                .hasToString("rolling resistance coefficient of a car tyre on concrete or new asphalt: 0.01 to 0.015,"
                        + " The Engineering ToolBox, Rolling Resistance, table, page d_1303 (seen)");
    }
}
