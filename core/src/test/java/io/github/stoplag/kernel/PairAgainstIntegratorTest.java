package io.github.stoplag.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Every closed-form outcome against Dormand and Prince's method of order 8 with event detection. */
class PairAgainstIntegratorTest {
    @Test
    void outcomesAgreeWithNumericalIntegration() {
        SplittableRandom random = new SplittableRandom(31);
        GapEvent event = new GapEvent();
        int contacts = 0;
        int standing = 0;
        for (int i = 0; i < 2_000; i++) {
            Scenario scenario = Scenario.typical(random);
            scenario.event(event);
            IntegratorRival rival = new IntegratorRival(scenario);
            assertThat(event.contact()).as("%s", scenario).isEqualTo(rival.contact);
            if (event.contact()) {
                contacts++;
                standing += event.leaderStanding() ? 1 : 0;
                assertThat(event.timeS()).as("%s", scenario).isCloseTo(rival.contactS, within(1e-6));
                assertThat(event.closingSpeedMps()).as("%s", scenario).isCloseTo(rival.closingMps, within(1e-6));
            } else {
                assertThat(event.smallestGapM()).as("%s", scenario).isCloseTo(rival.smallestGapM, within(1e-6));
            }
        }
        assertThat(contacts).isBetween(400, 1_600);
        assertThat(standing).isBetween(100, contacts - 100);
    }
}
