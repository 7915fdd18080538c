package io.github.stoplag.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.braking.AchievedDeceleration.DoesNotSlow;
import io.github.stoplag.braking.AchievedDeceleration.Limiter;
import io.github.stoplag.braking.AchievedDeceleration.Slows;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.Road;
import io.github.stoplag.source.PublishedRange;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class BrakingCapabilityTest {
    private static final double G = 9.80665;

    private static Road road(double friction, double gradePercent) {
        return Road.of(FrictionCoefficient.of(friction), Grade.percent(gradePercent));
    }

    @Test
    void theSmallestOfTheThreeHolds() {
        BrakingCapability dry = BrakingCapability.of(Deceleration.mps2(7), road(0.8, 0));
        assertThat(dry.under(Deceleration.mps2(3))).isEqualTo(new Slows(Deceleration.mps2(3), Limiter.DRIVER));
        assertThat(dry.under(Deceleration.mps2(9))).isEqualTo(new Slows(Deceleration.mps2(7), Limiter.BRAKES));
        assertThat(dry.full().limiter()).isEqualTo(Limiter.BRAKES);
        BrakingCapability wet = BrakingCapability.of(Deceleration.mps2(7), road(0.4, 0));
        assertThat(((Slows) wet.full()).deceleration().inMps2()).isCloseTo(0.4 * G, within(1e-12));
        assertThat(wet.full().limiter()).isEqualTo(Limiter.ROAD);
        BrakingCapability uneven = new BrakingCapability(Deceleration.mps2(7), road(0.4, 0), 0.75);
        assertThat(((Slows) uneven.full()).deceleration().inMps2()).isCloseTo(0.3 * G, within(1e-12));
    }

    @Test
    void gradeHelpsAndHinders() {
        double slope = G * Math.sin(Math.atan(0.1));
        BrakingCapability down = BrakingCapability.of(Deceleration.mps2(4), road(0.8, -10));
        assertThat(((Slows) down.full()).deceleration().inMps2()).isCloseTo(4 - slope, within(1e-12));
        BrakingCapability up = BrakingCapability.of(Deceleration.mps2(4), road(0.8, 10));
        Slows alone = (Slows) up.under(Deceleration.mps2(0.5));
        assertThat(alone.deceleration().inMps2()).isCloseTo(slope, within(1e-12));
        assertThat(alone.limiter()).isEqualTo(Limiter.GRADE);
    }

    @Test
    void whatDoesNotSlowIsAnOutcome() {
        BrakingCapability ice = BrakingCapability.of(Deceleration.mps2(7), road(0.05, -10));
        DoesNotSlow slide = (DoesNotSlow) ice.full();
        assertThat(slide.limiter()).isEqualTo(Limiter.ROAD);
        assertThat(ice.under(Deceleration.mps2(2)))
                .isEqualTo(new DoesNotSlow(
                        "demand 2 m/s², brakes 6.0242 m/s² and road -0.487899 m/s² on a grade of -10 %: the least of"
                                + " them does not slow the vehicle",
                        Limiter.ROAD));
        assertThat(ice.stop(Speed.kmh(50), TimeSpan.seconds(1), BrakeResponse.INSTANT, Deceleration.mps2(2)))
                .isInstanceOf(NeverStops.class);
        BrakingCapability faded = BrakingCapability.of(Deceleration.mps2(0.5), road(0.8, -10));
        assertThat(faded.full().limiter()).isEqualTo(Limiter.BRAKES);
        assertThat(faded.full()).isInstanceOf(DoesNotSlow.class);
        BrakingCapability dry = BrakingCapability.of(Deceleration.mps2(7), road(0.8, 0));
        assertThat(dry.under(Deceleration.mps2(0)).limiter()).isEqualTo(Limiter.DRIVER);
        assertThat(((Stop) dry.stop(Speed.mps(20), TimeSpan.seconds(1), BrakeResponse.INSTANT, Deceleration.mps2(5)))
                        .stoppingDistance()
                        .inMetres())
                .isCloseTo(60, within(1e-12));
    }

    /** With brakes and demand out of the way the road's own deceleration is left. */
    @Property(seed = "42")
    void withoutOtherLimitsTheRoadDecides(
            @ForAll @DoubleRange(min = 0.1, max = 1.2) double friction,
            @ForAll @DoubleRange(min = -9, max = 9) double gradePercent) {
        Road road = road(friction, gradePercent);
        Slows slows = (Slows) BrakingCapability.of(Deceleration.mps2(100), road).full();
        io.github.stoplag.road.RoadDeceleration.Holds holds =
                (io.github.stoplag.road.RoadDeceleration.Holds) road.deceleration();
        assertThat(slows.deceleration()).isEqualTo(holds.deceleration());
        assertThat(slows.limiter()).isEqualTo(Limiter.ROAD);
    }

    @Test
    void badInputIsNamed() {
        assertThatThrownBy(() -> BrakingCapability.of(Deceleration.mps2(0), road(0.8, 0)))
                .hasMessage("brake capacity must be in (0, 200] m/s², got 0 m/s²");
        assertThatThrownBy(() -> new BrakingCapability(Deceleration.mps2(7), road(0.8, 0), 1.1))
                .hasMessage("share of friction used must be in (0, 1], got 1.1");
    }

    @Test
    void responsesOfBrakeSystems() {
        BrakeSystem truck = BrakeSystem.published("fmvss121-truck");
        assertThat(truck.kind()).isEqualTo(BrakeSystem.Kind.PNEUMATIC);
        assertThat(truck.response().buildUp()).isEqualTo(TimeSpan.seconds(0.45));
        assertThat(truck.response().equivalentLag()).isEqualTo(TimeSpan.seconds(0.225));
        // 0.1 and 0.15 per km/h are 0.36 and 0.54 s: the rules and the systems say the same
        assertThat(BrakeSystem.published("un-r13h").response().equivalentLag().inSeconds())
                .isCloseTo(QuadraticRule.published("un-r13h-type0").impliedLag().inSeconds(), within(1e-12));
        assertThat(BrakeSystem.published("un-r13").response().equivalentLag().inSeconds())
                .isCloseTo(QuadraticRule.published("un-r13-type0").impliedLag().inSeconds(), within(1e-12));
        // 32 ft at 55 mph
        assertThat(BrakeSystem.published("us-cdl-air").response().deadTime().inSeconds())
                .isCloseTo(32 / (55 * 22 / 15.0), within(5e-4));
        assertThat(BrakeSystem.published(BrakeSystem.Kind.HYDRAULIC))
                .extracting(BrakeSystem::id)
                .containsExactly("un-r13h", "swiss-build-up");
        assertThat(BrakeSystem.published(BrakeSystem.Kind.PNEUMATIC)).hasSizeGreaterThan(3);
        assertThat(BrakeSystem.published()).allSatisfy(system -> {
            assertThat(system.what()).isNotBlank();
            assertThat(system.source().document()).isNotBlank();
        });
        List<PublishedRange> figures = BrakeResponse.published();
        assertThat(figures).extracting(PublishedRange::id).contains("emergency-jerk-50kmh");
        // UN R157: 0.774 g in 0.6 s is a jerk of 12.65 m/s³
        assertThat(BrakeResponse.ofJerk(TimeSpan.seconds(0.1), Deceleration.standardGravities(0.774), 12.65)
                        .buildUp()
                        .inSeconds())
                .isCloseTo(0.6, within(1e-4));
        assertThatThrownBy(() -> BrakeResponse.ofJerk(TimeSpan.seconds(0), Deceleration.mps2(7), 0))
                .hasMessage("jerk must be in (0, 1000] m/s³, got 0 m/s³");
        assertThatThrownBy(() -> BrakeSystem.published("un-r13-h"))
                .hasMessageStartingWith("brake system must be one of un-r13, un-r13h, ")
                .hasMessageEndingWith(", got \"un-r13-h\"");
    }

    /** The lag of a distance formula is dead time plus half the build-up, up to a t_b²/24. */
    @Property(seed = "42")
    void equivalentLagCostsTheSameDistance(
            @ForAll @DoubleRange(min = 10, max = 50) double speedMps,
            @ForAll @DoubleRange(min = 0, max = 0.5) double deadS,
            @ForAll @DoubleRange(min = 0, max = 1) double buildUpS) {
        BrakeResponse response = new BrakeResponse(TimeSpan.seconds(deadS), TimeSpan.seconds(buildUpS));
        BrakeResponse lag = new BrakeResponse(response.equivalentLag(), TimeSpan.seconds(0));
        double full = metres(speedMps, response);
        assertThat(metres(speedMps, lag)).isCloseTo(full + 6 * buildUpS * buildUpS / 24, within(1e-9));
    }

    private static double metres(double speedMps, BrakeResponse response) {
        return ((Stop) Stop.of(Speed.mps(speedMps), TimeSpan.seconds(0), response, Deceleration.mps2(6)))
                .stoppingDistance()
                .inMetres();
    }
}
