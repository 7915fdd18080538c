package io.github.stoplag.circuit;

import static io.github.stoplag.Refusals.assertMessage;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.TimeSpan;
import org.junit.jupiter.api.Test;

class OpenCircuitCutOutTest {
    @Test
    void turnsAShortInterruptionIntoALongerDarkness() {
        OpenCircuitCutOut driver = OpenCircuitCutOut.vehicleLedDriver();
        assertThat(driver.darkness(TimeSpan.seconds(100e-6)).inSeconds()).isEqualTo(100e-6);
        assertThat(driver.darkness(TimeSpan.seconds(200e-6)).inMillis()).isCloseTo(0.125 + 10.8, within(1e-9));
        assertThat(driver.darkness(TimeSpan.millis(25)).inMillis()).isCloseTo(0.125 + 3 * 10.8, within(1e-9));
        assertMessage(() -> driver.darkness(TimeSpan.seconds(-1)), "interruption must be in [0, 10000] s, got -1 s");
    }
}
