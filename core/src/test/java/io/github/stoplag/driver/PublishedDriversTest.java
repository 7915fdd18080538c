package io.github.stoplag.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.braking.Stop;
import io.github.stoplag.braking.StopOutcome;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.PublishedRange;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import java.util.List;
import org.junit.jupiter.api.Test;

class PublishedDriversTest {
    private static ReactionDistribution reaction(String study) {
        return ReactionStudy.published(study).response().orElseThrow().reaction();
    }

    @Test
    void distributionsMeetFiguresPublishedBesideTheirInputs() {
        Table table = Table.read(PublishedDriversTest.class, "percentiles.csv");
        assertThat(table.rows()).hasSize(28).allSatisfy(row -> {
            ReactionDistribution reaction = reaction(table.text(row, "study"));
            double argument = table.number(row, "probability");
            double value = switch (table.text(row, "quantity")) {
                case "quantile" -> reaction.quantile(argument).inSeconds();
                case "cdf" -> reaction.cdf(TimeSpan.seconds(argument));
                case "mean" -> reaction.mean().inSeconds();
                default -> reaction.standardDeviation().inSeconds();
            };
            assertThat(value)
                    .as("%s, residual %s", row, value - table.number(row, "published"))
                    .isCloseTo(table.number(row, "published"), within(table.number(row, "tolerance")));
        });
    }

    @Test
    void parametersMeetThoseOfASeparateProgram() {
        Table table = Table.read(PublishedDriversTest.class, "lognormal_parameters.csv");
        assertThat(table.rows()).hasSize(9).allSatisfy(row -> {
            LogNormalReaction reaction = (LogNormalReaction) reaction(table.text(row, "study"));
            assertThat(reaction.mu()).isCloseTo(table.number(row, "mu_ln_s"), within(6e-5));
            assertThat(reaction.sigma()).isCloseTo(table.number(row, "sigma_ln"), within(6e-5));
            assertThat(reaction.quantile(0.99).inSeconds()).isCloseTo(table.number(row, "p99_s"), within(2e-4));
        });
    }

    @Test
    void everyStudyHasItsSourceAndSaysWhatIsOurs() {
        assertThat(ReactionStudy.published()).hasSize(18).allSatisfy(study -> {
            assertThat(study.source().document()).isNotBlank();
            assertThat(study.central().inSeconds()).isBetween(0.5, 2.0);
            if (study.source().standing() != Standing.SEEN) {
                assertThat(study.caveats()).last().hasToString("the figures are known from memory");
            }
        });
        for (ReactionStudy.Expectancy expectancy : ReactionStudy.Expectancy.values()) {
            assertThat(ReactionStudy.published(expectancy)).hasSizeGreaterThan(2);
        }
        assertThat(ReactionStudy.published("green-2000-lamps").response()).isEmpty();
        assertThat(ReactionStudy.published("green-2000-lamps").central()).isEqualTo(TimeSpan.seconds(1.25));
    }

    /** Sivak, Olson & Farmer 1982: 72 % of 1644 changed speed within 3 s, 28 % did not (seen). */
    @Test
    void driversWhoDoNotRespondAreANamedOutcome() {
        ReactionStudy study = ReactionStudy.published("sivak-1982");
        DriverResponse drivers = study.response().orElseThrow();
        assertThat(drivers.respondingShare()).isCloseTo(0.72, within(1e-15));
        assertThat(study.caveats())
                .extracting(Object::toString)
                .contains(
                        "a share of 0.28 did not respond within 3 s; some of them may have responded later",
                        "the log-normal form is fitted here to the published figures");
        assertThat(drivers.quantile(0.95))
                .isEqualTo(new DriverResponse.Quantile.NoResponse(
                        "a share of 0.95 of drivers does not react at any time: only 0.72 respond"));
        assertThat(drivers.quantile(0.36))
                .isEqualTo(new DriverResponse.Quantile.Responds(
                        drivers.reaction().median(), drivers.reaction().evidence()));
        assertThat(drivers.shareResponded(TimeSpan.seconds(3))).isBetween(0.70, 0.72);
        assertThat(drivers.scaledBy(2).shareResponded(TimeSpan.seconds(6)))
                .isCloseTo(drivers.shareResponded(TimeSpan.seconds(3)), within(1e-12));
        assertThat(DriverResponse.ofAll(drivers.reaction()).quantile(0.95))
                .isInstanceOf(DriverResponse.Quantile.Responds.class);
        assertThatThrownBy(() -> new DriverResponse(drivers.reaction(), 0))
                .hasMessage("responding share of drivers must be in (0, 1], got 0");
    }

    /** A normal law gives 1 driver in 1000 a time of 1.25 − 3.09 · 0.46 = −0.17 s: the answer itself says so. */
    @Test
    void quantileBeforeTheSignalCarriesACaveat() {
        DriverResponse drivers = ReactionStudy.published("brake-lamps-in-traffic-1993")
                .response()
                .orElseThrow();
        assertThat(drivers.quantile(0.001)).isInstanceOfSatisfying(DriverResponse.Quantile.Responds.class, early -> {
            assertThat(early.time().inSeconds()).isCloseTo(1.25 - 3.0902 * 0.46, within(1e-4));
            assertThat(early.caveats())
                    .extracting(Object::toString)
                    .anySatisfy(text -> assertThat(text).contains("lies before the signal"));
        });
        assertThat(drivers.quantile(0.5))
                .isInstanceOfSatisfying(
                        DriverResponse.Quantile.Responds.class,
                        median -> assertThat(median.caveats())
                                .noneSatisfy(caveat -> assertThat(caveat.text()).contains("before the signal")));
    }

    /**
     * AASHTO 1.5 s + 1.0 s = 2.5 s; US commercial manual 1.75 + 0.75 (seen); Hooper & McGee chain 2.34 s (from memory).
     */
    @Test
    void partsAddUpToTheNorms() {
        assertThat(PerceptionReaction.published("AASHTO").total()).isEqualTo(TimeSpan.seconds(2.5));
        assertThat(PerceptionReaction.published("US commercial driver's manual").total())
                .isEqualTo(TimeSpan.seconds(2.5));
        assertThat(PerceptionReaction.published("Hooper and McGee").total().inSeconds())
                .isCloseTo(2.34, within(1e-12));
        assertThat(PerceptionReaction.published("UK Highway Code").total().inSeconds())
                .isCloseTo(0.3048 / 0.44704, within(1e-6));
        assertThat(PerceptionReaction.published())
                .hasSize(9)
                .allSatisfy(set -> assertThat(set.total().inSeconds()).isBetween(0.6, 2.6));
        Source own = Source.assumed("test driver");
        PerceptionReaction parts =
                PerceptionReaction.of(TimeSpan.millis(400), TimeSpan.millis(300), TimeSpan.millis(200), own);
        assertThat(parts.total().inSeconds()).isCloseTo(0.9, within(1e-15));
        assertThat(parts.parts())
                .extracting(PerceptionReaction.Part::name)
                .containsExactly("perceive", "decide", "move the foot");
    }

    @Test
    void effectsStandBesideTheirContradictions() {
        assertThat(ResponseEffect.published("texting").timeRatio()).isEqualTo(1.37);
        assertThat(ResponseEffect.published("texting-track").timeRatio()).isEqualTo(1);
        assertThat(ResponseEffect.published()).hasSize(11).allSatisfy(effect -> {
            assertThat(effect.timeRatio()).isBetween(1.0, 1.5);
            assertThat(effect.factor()).isIn("age", "distraction", "alcohol", "drugs", "surprise");
        });
        assertThatThrownBy(() -> ResponseEffect.published("texting-on-track"))
                .hasMessageStartingWith("response effect must be one of texting-track, ");
    }

    /** The stored SI values are the printed ones: 0.32 g, 11.6 ft/s² and so on (seen). */
    @Test
    void chosenDecelerationsAreThePrintedOnes() {
        Table table = Table.read(PublishedDriversTest.class, "printed_decelerations.csv");
        assertThat(table.rows()).hasSize(8).allSatisfy(row -> {
            PublishedRange range = ChosenDeceleration.published().stream()
                    .filter(each -> each.id().equals(table.text(row, "id")))
                    .findFirst()
                    .orElseThrow();
            double unit = table.text(row, "unit").equals("g") ? 9.80665 : 0.3048;
            assertThat(range.low()).isCloseTo(table.number(row, "printed_low") * unit, within(0.005));
            assertThat(range.high()).isCloseTo(table.number(row, "printed_high") * unit, within(0.005));
        });
    }

    @Test
    void chosenDecelerationIsCutAtWhatTheRoadAllows() {
        Deceleration dry = Deceleration.mps2(8);
        ChosenDeceleration free = DecelerationStudy.published("unexpected-1997").upTo(Deceleration.mps2(20));
        assertThat(free.mean().inStandardGravities()).isCloseTo(0.55, within(1e-9));
        assertThat(free.quantile(0.05).inStandardGravities()).isCloseTo(0.55 - 0.07 * 1.6449, within(1e-5));
        assertThat(free.source().standing()).isEqualTo(Standing.FROM_MEMORY);
        ChosenDeceleration wet = DecelerationStudy.published("unexpected-1997").upTo(Deceleration.mps2(5));
        assertThat(wet.quantile(0.999)).isLessThan(Deceleration.mps2(5));
        assertThat(wet.mean()).isLessThan(Deceleration.mps2(5));
        assertThat(wet.cdf(Deceleration.mps2(5))).isEqualTo(1);
        assertThat(wet)
                .hasToString("chosen deceleration, normal with mean 5.39366 m/s², SD 0.686466 m/s², cut to 0 to 5"
                        + " m/s²");
        ChosenDeceleration made = ChosenDeceleration.ofQuantiles(
                0.1,
                Deceleration.mps2(3.4),
                0.9,
                Deceleration.mps2(6.4),
                Deceleration.mps2(60),
                Source.assumed("test"));
        assertThat(made.quantile(0.1).inMps2()).isCloseTo(3.4, within(1e-3));
        assertThat(made.mean().inMps2()).isCloseTo(4.9, within(1e-3));
        assertThatThrownBy(() -> ChosenDeceleration.ofQuantiles(
                        0.1, dry, 0.9, Deceleration.mps2(5), dry, Source.assumed("test")))
                .hasMessage(
                        "the upper quantile must exceed the lower in probability and deceleration, got 8 m/s² at 0.1 and"
                                + " 5 m/s² at 0.9");
        assertThatThrownBy(() -> DecelerationStudy.published("never"))
                .hasMessage("deceleration study must be one of unexpected-1997, expected-1997, got \"never\"");
    }

    /** UN R157 annex 4 appendix 3: 0.4 s + 0.75 s, then 0.774 g over 0.6 s, a jerk of 12.65 m/s³ (derived). */
    @Test
    void theCarefulDriverIsTheRegulations() {
        CarefulDriver driver = CarefulDriver.unR157();
        assertThat(driver.reaction().inSeconds()).isCloseTo(1.15, within(1e-15));
        assertThat(driver.deceleration().inStandardGravities()).isCloseTo(0.774, within(1e-15));
        assertThat(driver.jerkMps3()).isCloseTo(12.65, within(0.005));
        assertThat(CarefulDriver.unR157LateralWander().inMetres()).isEqualTo(0.375);
        assertThatThrownBy(() -> new CarefulDriver(
                        driver.riskEvaluation(),
                        driver.delay(),
                        TimeSpan.seconds(0),
                        driver.deceleration(),
                        driver.source()))
                .hasMessage("brake build-up time must be in (0, 10] s, got 0 s");
    }

    /** Whatever build-up a careful driver is given or refused, its brake response takes too. */
    @Test
    void aCarefulDriverOfAnyBuildUpAnswers() {
        CarefulDriver driver = CarefulDriver.unR157();
        for (double buildUpS : new double[] {1e-3, 9.999, 10, Math.nextUp(10.0), 12, 30}) {
            try {
                CarefulDriver other = new CarefulDriver(
                        driver.riskEvaluation(),
                        driver.delay(),
                        TimeSpan.seconds(buildUpS),
                        driver.deceleration(),
                        driver.source());
                assertThat(other.response().buildUp().inSeconds())
                        .isEqualTo(buildUpS)
                        .isLessThanOrEqualTo(10);
            } catch (IllegalArgumentException e) {
                assertThat(buildUpS).isGreaterThan(10);
                assertThat(e).hasMessageStartingWith("brake build-up time must be in (0, 10] s, got ");
            }
        }
    }

    /** Second method: v t + v tr/2 + v²/(2 a) − a tr²/24 by hand against the stop of the same driver. */
    @Test
    void theCarefulDriverStops() {
        CarefulDriver driver = CarefulDriver.unR157();
        double v = Speed.kmh(60).inMps();
        double a = 0.774 * 9.80665;
        StopOutcome outcome = Stop.of(Speed.kmh(60), driver.reaction(), driver.response(), driver.deceleration());
        assertThat(outcome)
                .isInstanceOfSatisfying(
                        Stop.class,
                        stop -> assertThat(stop.stoppingDistance().inMetres())
                                .isCloseTo(v * 1.15 + v * 0.3 + v * v / (2 * a) - a * 0.36 / 24, within(1e-9)));
    }

    @Test
    void unknownNamesListTheKnownOnes() {
        assertThatThrownBy(() -> ReactionStudy.published("sivak 1983"))
                .hasMessageStartingWith("reaction study must be one of sivak-1982, ")
                .hasMessageEndingWith("got \"sivak 1983\"");
        assertThatThrownBy(() -> PerceptionReaction.published("Aashto norm"))
                .hasMessageStartingWith("perception-reaction set must be one of AASHTO, ");
        assertThatThrownBy(() -> new PerceptionReaction("Aashto norm", List.of()))
                .hasMessage("a perception-reaction time needs at least one part, got none");
        assertThatThrownBy(() -> new PerceptionReaction.Part("decide", TimeSpan.seconds(-1), Source.assumed("test")))
                .hasMessage("time to decide must be in [0, 30] s, got -1 s");
    }
}
