package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.chance.Distribution;
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

    /** z = x₁ + x₂ of variances 1/12 and 4/12: shares 0.2 and 0.8, whatever the axes are called. */
    @Test
    void namesOfAxesDoNotMatter() {
        for (List<String> names :
                List.of(List.of("a", "b"), List.of("b", "a"), List.of("x", "y"), List.of("fa", "fab"))) {
            Plan plan = Plan.of(Design.sobol(1 << 14), 82)
                    .axis(Axis.drawn(names.get(0), "", new Distribution.Uniform(0, 1)))
                    .axis(Axis.drawn(names.get(1), "", new Distribution.Uniform(0, 2)));
            SobolIndices sum =
                    SobolIndices.of(plan, Model.ofRows(names, List.of("z"), (x, out) -> out[0] = x[0] + x[1]), "z", 1);
            for (int i = 0; i < 2; i++) {
                assertThat(sum.indices().get(i).column()).isEqualTo(names.get(i));
                assertThat(sum.indices().get(i).first()).isCloseTo(i == 0 ? 0.2 : 0.8, within(0.002));
                assertThat(sum.indices().get(i).total()).isCloseTo(i == 0 ? 0.2 : 0.8, within(0.002));
            }
        }
    }

    /**
     * The stated standard errors against the scatter of 300 repetitions, whose own relative standard error is 1/√600.
     */
    @Test
    void standardErrorsAreTheScatterOfRepetitions() {
        Moments[] first = {new Moments(), new Moments(), new Moments()};
        Moments[] total = {new Moments(), new Moments(), new Moments()};
        double[] firstStated = new double[3];
        double[] totalStated = new double[3];
        int repetitions = 300;
        for (int k = 0; k < repetitions; k++) {
            Plan plan = plan(Design.random(1024)).replicate(k);
            List<SobolIndices.Index> indices =
                    SobolIndices.of(plan, ishigami(0), "f", 1).indices();
            for (int i = 0; i < 3; i++) {
                first[i].add(indices.get(i).first());
                total[i].add(indices.get(i).total());
                firstStated[i] += indices.get(i).firstStandardError() / repetitions;
                totalStated[i] += indices.get(i).totalStandardError() / repetitions;
            }
        }
        for (int i = 0; i < 3; i++) {
            assertThat(firstStated[i] / first[i].standardDeviation())
                    .as("first %d", i)
                    .isBetween(0.88, 1.12);
            assertThat(totalStated[i] / total[i].standardDeviation())
                    .as("total %d", i)
                    .isBetween(0.88, 1.12);
        }
    }

    /**
     * A model of one's own that gives no value, NaN, in half of the scenarios, whatever x1 and x2 are: statistics and
     * indices are those of x1 + x2, of variances 1 and 4 shares, where it exists.
     */
    @Test
    void outputsThatDoNotExistEverywhereCountWhereTheyDo() {
        Plan plan = Plan.of(Design.sobol(1 << 14), 83)
                .axis(Axis.drawn("x1", "", new Distribution.Uniform(0, 1)))
                .axis(Axis.drawn("x2", "", new Distribution.Uniform(0, 2)))
                .axis(Axis.drawn("x3", "", new Distribution.Uniform(0, 1)));
        Model own =
                Model.ofRows(plan.columns(), List.of("f"), (x, out) -> out[0] = x[2] < 0.5 ? Double.NaN : x[0] + x[1]);
        Moments moments = Sweep.of(plan, own)
                .withThreads(1)
                .run(() -> new ColumnTally("f"))
                .tally()
                .moments();
        assertThat(moments.count()).isCloseTo(1 << 13, within(2L));
        assertThat(moments.mean()).isCloseTo(1.5, within(1e-3));
        SobolIndices indices = SobolIndices.replicated(plan, own, "f", 4, 1);
        double[] share = {0.2, 0.8, 0};
        for (int i = 0; i < 3; i++) {
            assertThat(indices.indices().get(i).first()).isCloseTo(share[i], within(0.01));
            assertThat(indices.indices().get(i).total()).isCloseTo(share[i], within(0.01));
        }
        assertThat(indices.withoutValue()).isCloseTo(4 * 5 * (1L << 13), within(500L));
        assertThat(indices.output().variance()).isCloseTo(5 / 12.0, within(1e-3));
        Model never = Model.ofRows(plan.columns(), List.of("f"), (x, out) -> {});
        assertThatThrownBy(() -> SobolIndices.of(plan, never, "f", 1))
                .hasMessageStartingWith("output f must vary, got");
        Model infinite = Model.ofRows(plan.columns(), List.of("f"), (x, out) -> out[0] = 1 / (x[0] > 0.5 ? 0 : x[1]));
        assertThatThrownBy(() -> SobolIndices.of(plan, infinite, "f", 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageMatching("output f must be a finite number in every scenario that is not rejected, or NaN"
                        + " where it does not exist, got infinity [0-9]+ times");
    }

    /** Ishigami's analytic values lie within the scatter of repetitions, which is far below that of draws. */
    @Test
    void repetitionsTellTheErrorOfASobolDesign() {
        double fourth = Math.pow(Math.PI, 4);
        double v = A * A / 8 + B * fourth / 5 + B * B * fourth * fourth / 18 + 0.5;
        double[] first = {0.5 * Math.pow(1 + B * fourth / 5, 2) / v, A * A / 8 / v, 0};
        SobolIndices plain = SobolIndices.of(plan(Design.sobol(1 << 13)), ishigami(0), "f", 1);
        SobolIndices indices = SobolIndices.replicated(plan(Design.sobol(1 << 13)), ishigami(0), "f", 8, 1);
        for (int i = 0; i < 3; i++) {
            SobolIndices.Index index = indices.indices().get(i);
            // Student's t of 99.9 % with seven degrees of freedom, and what a ratio of means is biased at most
            assertThat(index.first()).isCloseTo(first[i], within(5.41 * index.firstStandardError() + 1e-4));
            assertThat(index.firstStandardError())
                    .isLessThan(0.25 * plain.indices().get(i).firstStandardError() + 1e-6);
        }
        assertThatThrownBy(() -> SobolIndices.replicated(plan(Design.sobol(64)), ishigami(0), "f", 1, 1))
                .hasMessage("repetitions must be in [2, 1000], got 1");
    }

    @Test
    void rejectedScenariosAreLeftOut() {
        Model rejecting = Model.ofRows(List.of("x1", "x2", "x3"), List.of("f"), (x, out) -> {
            if (x[0] < -3) {
                throw new IllegalArgumentException("x1 must be at least -3, got " + x[0]);
            }
            out[0] = x[1];
        });
        SobolIndices indices = SobolIndices.of(plan(Design.random(4096)), rejecting, "f", 1);
        assertThat(indices.rejects()).extracting(Rejects.Entry::reason).containsExactly("x1 must be at least -3");
        assertThat(indices.indices().get(1).first()).isCloseTo(1, within(0.1));
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
        Plan many = Plan.of(Design.random(8), 1);
        for (int i = 0; i <= 200; i++) {
            many = many.axis(Axis.drawn("x" + i, "", new Distribution.Uniform(0, 1)));
        }
        Plan tooMany = many;
        assertThatThrownBy(() -> SobolIndices.of(tooMany, ishigami(0), "f", 1))
                .hasMessage("sensitivity indices need at most 200 axes, got 201");
        assertThatThrownBy(() -> OneAtATime.curves(plan(Design.random(8)), ishigami(0), "f", 1))
                .hasMessage("curves need an output of [other, f] and 2 to 1000 points, got f and 1");
    }
}
