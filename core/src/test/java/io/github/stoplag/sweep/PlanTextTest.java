package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.Empirical;
import io.github.stoplag.quantity.NamedUnit;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.Source;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.TruncatedNormalDistribution;
import org.junit.jupiter.api.Test;

/** Plans of pairs as text: what is written is read back with the same bits. */
class PlanTextTest {
    private static final String TEXT = """
            title = a \\\\ b, with = and : and ü
            invented = yes
            design = latin-hypercube
            scenarios = 700
            seed = -9
            lamps = old, led
            speed = truncated-normal 110 km/h, 12 km/h, 80 km/h, 140 km/h
            speed.source = from memory: someone, 1997
            time_gap = log-normal-mean-sd 1.17 s, 0.52 s
            reaction = study sivak-1982
            leader_decel = study unexpected-1997, 0.8 g
            follower_decel = empirical 8 m/s^2, 5.3 m/s^2, 6.1 m/s^2
            brake_dead_time = range 0.1 s, 0.3 s, 3
            brake_build_up = list 0.1 s, 0.25 s, 0.2 s
            grade = constant -2 %
            friction = triangular 0.45, 0.6, 0.85
            lamp_latency_old = log-normal -1.7, 0.2
            lamp_latency_led = constant 7.6 ms
            correlations = speed time_gap 0.2, reaction follower_decel -0.1
            """;

    @Test
    void everyFormIsReadBackAsItWasWritten() {
        PlanFile file = PlanFile.parse("plan", TEXT);
        PlanFile again = PlanFile.parse("again", file.text());
        assertThat(again.text()).isEqualTo(file.text());
        assertThat(again.digest()).isEqualTo(file.digest());
        assertThat(again.plan().digest()).isEqualTo(file.plan().digest());
        assertThat(again.notes()).isEqualTo(file.notes()).isNotEmpty();
        assertThat(again.title()).isEqualTo("a \\ b, with = and : and ü");
        assertThat(again.invented()).isTrue();
    }

    @Test
    void planMadeInCodeIsReadBackWithTheSameBits() {
        SplittableRandom random = new SplittableRandom(5);
        for (int trial = 0; trial < 50; trial++) {
            double lo = random.nextDouble(20);
            Plan plan = Plan.of(Design.sobol(1 + random.nextInt(1000)), random.nextLong())
                    .axis(PairColumn.SPEED.drawn(new Distribution.TruncatedNormal(
                            lo + 10 * random.nextDouble(), 4 * random.nextDouble() + 1, lo, lo + 40)))
                    .axis(PairColumn.GAP.drawn(
                            Empirical.of(random.doubles(40, 0, 100).toArray())))
                    .axis(PairColumn.REACTION.drawn(
                            new Distribution.LogNormal(random.nextDouble(-1, 1), random.nextDouble(0.1, 1))))
                    .axis(PairColumn.FOLLOWER_DECEL.drawn(new Distribution.Uniform(lo / 9, lo / 9 + 3)))
                    .axis(Axis.list(
                                    "lamp_latency_led",
                                    "s",
                                    random.doubles(5, 0, 1).toArray())
                            .from(Source.assumed("a guess")))
                    .axis(PairModel.responding(random.nextDouble()))
                    .correlate("speed_mps", "reaction_s", random.nextDouble(-1, 1));
            PlanFile file = PlanFile.of("made in code", plan, "led");
            assertThat(PlanFile.parse("read", file.text()).plan().digest()).isEqualTo(plan.digest());
        }
    }

    @Test
    void whatNoFileCanHoldIsRefused() {
        Plan gap = Plan.of(Design.random(10), 1).axis(Axis.constant("gap", "m", 20));
        assertThatThrownBy(() -> PlanFile.of("t", gap.axis(Axis.constant("mood", "", 1)), "led"))
                .hasMessage("an axis of a plan file must be one of a pair's columns, got mood");
        Plan turned = gap.axis(Axis.constant("speed", "mps", 20))
                .axis(Axis.constant("reaction", "s", 1))
                .axis(Axis.constant("follower_decel", "mps2", 6))
                .axis(Axis.constant("lamp_latency_led", "s", 0));
        assertThatThrownBy(() -> PlanFile.of("t", turned, "led"))
                .hasMessageStartingWith("a plan file has its axes in the order [speed_mps, gap_m,");
        Distribution own = new Distribution() {
            @Override
            public double quantile(double probability) {
                return probability;
            }

            @Override
            public double cdf(double value) {
                return value;
            }

            @Override
            public String canonical() {
                return "own";
            }
        };
        assertThatThrownBy(() -> PlanFile.of("t", gap.axis(PairColumn.SPEED.drawn(own)), "led"))
                .hasMessageStartingWith("speed_mps must have one of the laws constant, list,");
    }

    @Test
    void publishedDecelerationLawIsAnAxis() {
        Distribution law =
                PlanFile.parse("plan", TEXT).plan().axes().get(3).distribution().orElseThrow();
        TruncatedNormalDistribution library =
                TruncatedNormalDistribution.of(0.55 * 9.80665, 0.07 * 9.80665, 0, 0.8 * 9.80665);
        for (double p = 0.01; p < 1; p += 0.01) {
            assertThat(law.quantile(p)).isCloseTo(library.inverseCumulativeProbability(p), within(1e-9));
        }
    }

    @Test
    void everyUnitOfAQuantityIsRead() {
        for (PairColumn column : PairColumn.values()) {
            for (NamedUnit unit : column.units().list()) {
                double middle = 0.5 * (column.range().lo() + column.range().hi());
                String value = (Numbers.exact(unit.fromSi(middle)) + " " + unit.symbol()).strip();
                String key = column.axis("led");
                String text = (column == PairColumn.RESPONDS ? "share " : "constant ") + value;
                PlanLines lines = new PlanLines("plan", new TreeMap<>(Map.of(key, text)));
                Axis axis = PlanAxis.read(lines, key, column).axis();
                double read = axis.distribution().map(drawn -> 1 - drawn.cdf(0)).orElseGet(() -> axis.levels()[0]);
                assertThat(read).as("%s", text).isCloseTo(middle, within(1e-9 * Math.max(1, Math.abs(middle))));
            }
        }
    }

    @Test
    void shortestDigitsReadBackTheSameBits() {
        SplittableRandom random = new SplittableRandom(8);
        IntStream.range(0, 20_000).forEach(i -> {
            double value = Double.longBitsToDouble(random.nextLong());
            if (Double.isFinite(value)) {
                assertThat(Double.parseDouble(Numbers.exact(value))).isEqualTo(value);
            }
        });
        assertThat(Numbers.exact(0.1 + 0.2)).isEqualTo("0.30000000000000004");
        assertThat(Numbers.exact(0.1)).isEqualTo("0.1");
        assertThat(Numbers.exact(-0.0)).isEqualTo("0");
    }
}
