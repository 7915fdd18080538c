package io.github.stoplag.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class PressureTest {
    /** NIST SP 811 appendix B.9: 1 psi = 6.894 757 E+03 Pa (from memory); 1 bar = 1e5 Pa exact. */
    @Test
    void convertsAsTheStandardsSay() {
        assertThat(Pressure.psi(1).inPascals()).isCloseTo(6894.757293168, within(1e-8));
        assertThat(Pressure.bar(2.2).inKPa()).isCloseTo(220, within(1e-12));
        assertThat(Pressure.kPa(220).inPsi()).isCloseTo(31.9083, within(1e-4));
        assertThat(Pressure.psi(32).inPsi()).isCloseTo(32, within(1e-13));
        assertThat(Pressure.kPa(250).inBar()).isEqualTo(2.5);
        assertThat(Pressure.psi(32)).hasToString("220.632 kPa");
    }

    @Test
    void comparesAndRefuses() {
        assertThat(Pressure.bar(2)).isGreaterThan(Pressure.psi(29)).isLessThan(Pressure.psi(29.1));
        assertThat(Pressure.psi(32).isCloseTo(Pressure.kPa(220.6), Pressure.kPa(0.1)))
                .isTrue();
        assertThat(Pressure.psi(32).isCloseTo(Pressure.kPa(220), Pressure.kPa(0.1)))
                .isFalse();
        assertThatThrownBy(() -> Pressure.kPa(-1)).hasMessage("pressure must be in [0, 1e8] Pa, got -1000 Pa");
        assertThatThrownBy(() -> Pressure.kPa(Double.NaN)).hasMessage("pressure must be in [0, 1e8] Pa, got NaN Pa");
    }
}
