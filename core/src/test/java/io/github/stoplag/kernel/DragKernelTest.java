package io.github.stoplag.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class DragKernelTest {
    static Stream<Arguments> cases() {
        return Stream.of(
                Arguments.of(30, 0, 7, 4e-4),
                Arguments.of(60, 10, 3.4, 4e-4),
                Arguments.of(25, 20, 0.1, 3e-4),
                Arguments.of(40, 15, 0, 5e-3),
                Arguments.of(40, 0, 8, 1e-12),
                Arguments.of(30, 0, 6, 0),
                Arguments.of(70, 0, 0.1, 0.2),
                Arguments.of(45, 35, -0.3, 4e-4));
    }

    /** Second method: the equation of motion integrated by an adaptive Runge-Kutta of order 8. */
    @ParameterizedTest
    @MethodSource("cases")
    void agreesWithTheIntegratedMotion(double from, double to, double decel, double drag) {
        double time = DragKernel.timeS(from, to, decel, drag);
        double[] state = integrate(from, decel, drag, time);
        assertThat(state[1]).isCloseTo(to, within(1e-8));
        assertThat(DragKernel.distanceM(from, to, decel, drag)).isCloseTo(state[0], within(1e-8 * (1 + state[0])));
        double[] half = integrate(from, decel, drag, time / 2);
        assertThat(DragKernel.speedAtTimeMps(from, time / 2, decel, drag)).isCloseTo(half[1], within(1e-9));
        assertThat(DragKernel.speedAtDistanceMps(from, half[0], decel, drag)).isCloseTo(half[1], within(1e-9));
    }

    private static double[] integrate(double from, double decel, double drag, double time) {
        double[] state = {0, from};
        FirstOrderDifferentialEquations motion = new FirstOrderDifferentialEquations() {
            @Override
            public int getDimension() {
                return 2;
            }

            @Override
            public void computeDerivatives(double t, double[] y, double[] dot) {
                dot[0] = y[1];
                dot[1] = -(decel + drag * y[1] * y[1]);
            }
        };
        new DormandPrince853Integrator(1e-12, time, 1e-12, 1e-12).integrate(motion, 0, state, time, state);
        return state;
    }

    /** The textbook forms, usable where k is not small. */
    @Test
    void equalsTheTextbookForms() {
        assertThat(DragKernel.distanceM(50, 5, 2, 0.01))
                .isCloseTo(Math.log((2 + 0.01 * 2500) / (2 + 0.01 * 25)) / 0.02, within(1e-12));
        double rate = Math.sqrt(2 * 0.01);
        double width = Math.sqrt(2 / 0.01);
        assertThat(DragKernel.timeS(50, 5, 2, 0.01))
                .isCloseTo((Math.atan(50 / width) - Math.atan(5 / width)) / rate, within(1e-13));
    }

    /** Coasting on drag alone: s = ln(v₀/v₁)/k, t = (1/v₁ − 1/v₀)/k. */
    @Test
    void coastsOnDragAlone() {
        assertThat(DragKernel.distanceM(40, 20, 0, 4e-4)).isCloseTo(Math.log(2) / 4e-4, within(1e-10));
        assertThat(DragKernel.timeS(40, 20, 0, 4e-4)).isCloseTo((1 / 20.0 - 1 / 40.0) / 4e-4, within(1e-10));
    }

    @Test
    void isAtRestBeyondTheStopAndTendsToTheTerminalSpeedOnAnIcySlope() {
        double stop = DragKernel.timeS(20, 0, 5, 1e-3);
        assertThat(DragKernel.speedAtTimeMps(20, stop, 5, 1e-3)).isZero();
        assertThat(DragKernel.speedAtTimeMps(20, 2 * stop, 5, 1e-3)).isZero();
        assertThat(DragKernel.speedAtDistanceMps(20, 1e3, 5, 1e-3)).isZero();
        double terminal = DragKernel.terminalSpeedMps(-0.5, 4e-4);
        assertThat(DragKernel.speedAtTimeMps(5, 1e4, -0.5, 4e-4)).isCloseTo(terminal, within(1e-9));
        assertThat(DragKernel.speedAtDistanceMps(60, 1e5, -0.5, 4e-4)).isCloseTo(terminal, within(1e-9));
    }

    @Test
    void namesWhatIsOutOfRange() {
        assertThatThrownBy(() -> DragKernel.distanceM(20, 30, 5, 0))
                .hasMessage("final speed must be in [0, 20] m/s, got 30 m/s");
        assertThatThrownBy(() -> DragKernel.timeS(20, 0, -0.5, 4e-4))
                .hasMessage("deceleration at the final speed must be in (0, 100000] m/s², got -0.5 m/s²");
        assertThatThrownBy(() -> DragKernel.distanceM(20, 0, 0, 4e-4))
                .hasMessage("deceleration at the final speed must be in (0, 100000] m/s², got 0 m/s²");
        assertThatThrownBy(() -> DragKernel.speedAtTimeMps(Double.NaN, 1, 5, 0))
                .hasMessage("initial speed must be in [0, 150] m/s, got NaN m/s");
        assertThatThrownBy(() -> DragKernel.distanceM(20, 0, 5, -1))
                .hasMessage("drag must be in [0, 1] 1/m, got -1 1/m");
    }
}
