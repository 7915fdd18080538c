package io.github.stoplag.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Speed;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class FrictionEllipseTest {
    private static final Grade LEVEL = Grade.ratio(0);

    private static double left(FrictionEllipse.Left left) {
        return ((FrictionEllipse.Remaining) left).friction().inRatio();
    }

    /** The 3-4-5 triangle: 0.6 of the friction sideways leaves 0.8 along. */
    @Test
    void aCircleSharesByPythagoras() {
        FrictionEllipse circle = FrictionEllipse.circle(FrictionCoefficient.of(0.5));
        assertThat(left(circle.onStraight(Grade.ratio(0.3)))).isCloseTo(0.4, within(1e-12));
        assertThat(circle.onStraight(Grade.ratio(-0.3)).sideShare()).isCloseTo(0.6, within(1e-12));
        FrictionEllipse ellipse = FrictionEllipse.of(FrictionCoefficient.of(1), FrictionCoefficient.of(0.5));
        assertThat(left(ellipse.onStraight(Grade.ratio(0.3)))).isCloseTo(0.8, within(1e-12));
    }

    /** At v² = e g R the banked curve asks for no side friction (textbook banked curve; derived). */
    @Test
    void theBankedCurveAtItsDesignSpeedLeavesAll() {
        FrictionEllipse circle = FrictionEllipse.circle(FrictionCoefficient.of(0.7));
        Speed design = Speed.mps(Math.sqrt(0.1 * 9.80665 * 100));
        assertThat(left(circle.inCurve(design, Distance.metres(100), Grade.ratio(0.1))))
                .isCloseTo(0.7, within(1e-12));
        assertThat(left(circle.inCurve(design, Distance.metres(100), LEVEL)))
                .isCloseTo(Math.sqrt(0.49 - 0.01), within(1e-12));
    }

    /**
     * Design rule of the trade e + f = V²/(127 R) (km/h, m), which leaves the product e f out: 100 km/h, 394 m, e 8 %
     * needs f 0.12 (AASHTO limiting values, from memory).
     */
    @Test
    void meetsTheDesignRule() {
        FrictionEllipse circle = FrictionEllipse.circle(FrictionCoefficient.of(1));
        double side = circle.inCurve(Speed.kmh(100), Distance.metres(394), Grade.percent(8))
                .sideShare();
        assertThat(side).isCloseTo(0.12, within(0.003));
    }

    @Test
    void tooFastLeavesNothing() {
        FrictionEllipse circle = FrictionEllipse.circle(FrictionCoefficient.of(0.3));
        assertThat(circle.inCurve(Speed.mps(20), Distance.metres(100), LEVEL))
                .isInstanceOfSatisfying(FrictionEllipse.NothingLeft.class, none -> {
                    assertThat(none.reason())
                            .isEqualTo("side friction needed 0.407886 is not below the lateral friction 0.3");
                    assertThat(none.sideShare()).isCloseTo(400 / 980.665 / 0.3, within(1e-12));
                });
        assertThat(FrictionEllipse.circle(FrictionCoefficient.of(0.05)).onStraight(Grade.percent(6)))
                .isInstanceOf(FrictionEllipse.NothingLeft.class);
    }

    @Test
    void namesWhatIsWrong() {
        FrictionEllipse circle = FrictionEllipse.circle(FrictionCoefficient.of(0.3));
        assertThatThrownBy(() -> circle.inCurve(Speed.mps(20), Distance.metres(0), LEVEL))
                .hasMessage("curve radius must be in [1, 1e7] m, got 0 m");
        assertThatThrownBy(() -> FrictionEllipse.circle(FrictionCoefficient.of(0)))
                .hasMessage("longitudinal friction must be in (0, 2], got 0");
        assertThatThrownBy(() -> circle.inCurve(Speed.mps(100), Distance.metres(10), Grade.ratio(-0.5)))
                .hasMessageStartingWith("normal force over weight in the curve must be in (0, 100000], got -");
    }

    @Property(seed = "42")
    void whatIsLeftFallsWithSpeedOnALevelCurve(
            @ForAll @DoubleRange(min = 1, max = 20) double slow, @ForAll @DoubleRange(min = 0.1, max = 5) double more) {
        FrictionEllipse circle = FrictionEllipse.circle(FrictionCoefficient.of(0.8));
        Distance radius = Distance.metres(120);
        assertThat(left(circle.inCurve(Speed.mps(slow + more), radius, LEVEL)))
                .isLessThan(left(circle.inCurve(Speed.mps(slow), radius, LEVEL)));
    }
}
