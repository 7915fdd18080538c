package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class SensitivityTest {
    private static final double A = 7;
    private static final double B = 0.1;

    private static Plan plan(Design design) {
        Plan plan = Plan.of(design, 81);
        for (String name : List.of("x1", "x2", "x3")) {
            plan = plan.axis(Axis.drawn(name, "", new Distribution.Uniform(-Math.PI, Math.PI)));
        }
        return plan;
    }

    // another order than the plan's on purpose
    private static Model ishigami(double offset) {
        return Model.ofRows(List.of("x3", "x1", "x2"), List.of("other", "f"), (x, out) -> {
            double sine = Math.sin(x[2]);
            out[0] = -1;
            out[1] = offset + Math.sin(x[1]) + A * sine * sine + B * Math.pow(x[0], 4) * Math.sin(x[1]);
        });
    }

    /** Analytic values: Ishigami & Homma 1990, with V = a²/8 + bπ⁴/5 + b²π⁸/18 + 1/2. */
    @Test
    void indicesOfIshigamisFunction() {
        double fourth = Math.pow(Math.PI, 4);
        double v = A * A / 8 + B * fourth / 5 + B * B * fourth * fourth / 18 + 0.5;
        double v1 = 0.5 * Math.pow(1 + B * fourth / 5, 2);
        double v2 = A * A / 8;
        double v13 = B * B * fourth * fourth * 8 / 225;
        assertThat(v1 / v).isCloseTo(0.3139, within(5e-5));
        assertThat(v2 / v).isCloseTo(0.4424, within(5e-5));
        double[] first = {v1 / v, v2 / v, 0};
        double[] total = {(v1 + v13) / v, v2 / v, v13 / v};
        for (double offset : new double[] {0, 1000}) {
            SobolIndices random = SobolIndices.of(plan(Design.random(200_000)), ishigami(offset), "f", 2);
            SobolIndices sobol = SobolIndices.of(plan(Design.sobol(1 << 16)), ishigami(offset), "f", 2);
            assertThat(random.output().variance()).isCloseTo(v, within(0.1));
            for (int i = 0; i < 3; i++) {
                SobolIndices.Index index = random.indices().get(i);
                assertThat(index.column()).isEqualTo("x" + (i + 1));
                assertThat(index.first()).isCloseTo(first[i], within(4 * index.firstStandardError() + 0.004));
                assertThat(index.total()).isCloseTo(total[i], within(4 * index.totalStandardError() + 0.004));
                assertThat(index.firstStandardError()).isLessThan(0.006);
                assertThat(sobol.indices().get(i).first()).isCloseTo(first[i], within(0.002));
                assertThat(sobol.indices().get(i).total()).isCloseTo(total[i], within(0.002));
            }
        }
    }

    @Test
    void threadsDoNotMatter() {
        assertThat(SobolIndices.of(plan(Design.random(150_000)), ishigami(0), "f", 1)
                        .indices())
                .isEqualTo(SobolIndices.of(plan(Design.random(150_000)), ishigami(0), "f", 3)
                        .indices());
    }

    @Test
    void curvesFollowOneAxisAtATime() {
        List<OneAtATime.Curve> curves = OneAtATime.curves(
                plan(Design.random(10)).axis(Axis.list("unused", "", 1, 2, 3)),
                Model.ofRows(List.of("x1", "x2", "x3", "unused"), List.of("f"), (x, out) -> out[0] = x[0] + 10 * x[3]),
                "f",
                5);
        assertThat(curves).extracting(OneAtATime.Curve::column).containsExactly("x1", "x2", "x3", "unused");
        for (int k = 0; k < 5; k++) {
            double x = -Math.PI + (k + 0.5) / 5 * 2 * Math.PI;
            assertThat(curves.get(0).at().get(k)).isCloseTo(x, within(1e-12));
            assertThat(curves.get(0).output().get(k)).isCloseTo(x + 20, within(1e-12));
            assertThat(curves.get(1).output().get(k)).isCloseTo(20, within(1e-12));
        }
        assertThat(curves.get(3).output()).containsExactly(10.0, 20.0, 30.0);
    }

    @Test
    void badStudiesAreNamed() {
        assertThatThrownBy(() -> SobolIndices.of(plan(Design.latinHypercube(8)), ishigami(0), "f", 1))
                .hasMessageStartingWith(
                        "sensitivity indices need a random or Sobol design with independent axes, got ");
        assertThatThrownBy(() -> SobolIndices.of(plan(Design.random(8)), ishigami(0), "g", 1))
                .hasMessage("output must be one of [other, f], got g");
        assertThatThrownBy(() -> SobolIndices.of(plan(Design.random(8)), ishigami(0), "other", 1))
                .hasMessageStartingWith("output other must vary, got 16 values");
        assertThatThrownBy(() -> OneAtATime.curves(plan(Design.random(8)), ishigami(0), "f", 1))
                .hasMessage("curves need an output of [other, f] and 2 to 1000 points, got f and 1");
    }
}
