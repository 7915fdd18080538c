package io.github.stoplag.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.stoplag.braking.Stop;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class CarefulDriverProperties {
    private static final Source INVENTED = new Source("invented drivers", "this test", Standing.INVENTED);

    /** Whoever is accepted can brake: no range inside is narrower than the one at the door. */
    @Property(seed = "42")
    void anAcceptedDriverResponds(
            @ForAll @DoubleRange(min = -1, max = 31) double riskEvaluationS,
            @ForAll @DoubleRange(min = -1, max = 31) double delayS,
            @ForAll @DoubleRange(min = -1, max = 14) double buildUpS,
            @ForAll @DoubleRange(min = 0, max = 200) double decelMps2) {
        CarefulDriver driver;
        try {
            driver = new CarefulDriver(
                    TimeSpan.seconds(riskEvaluationS),
                    TimeSpan.seconds(delayS),
                    TimeSpan.seconds(buildUpS),
                    Deceleration.mps2(decelMps2),
                    INVENTED);
        } catch (IllegalArgumentException refused) {
            assertThat(refused).hasMessageMatching(".+ must be in [(\\[]0, \\d+\\] (s|m/s²), got .+");
            return;
        }
        Stop stop = Stop.of(Speed.kmh(50), driver.reaction(), driver.response(), driver.deceleration())
                .orElseThrow();
        assertThat(driver.response().buildUp()).isEqualTo(driver.buildUp());
        assertThat(driver.jerkMps3() * driver.buildUp().inSeconds()).isCloseTo(decelMps2, withinPercentage(1e-9));
        assertThat(stop.stoppingDistance().inMetres())
                .isGreaterThanOrEqualTo(50 / 3.6 * driver.reaction().inSeconds());
    }
}
