package io.github.stoplag.braking;

import static io.github.stoplag.Refusals.assertMessage;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.Road;
import io.github.stoplag.source.Source;
import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;

class StopTest {
    private static final BrakeResponse RESPONSE = new BrakeResponse(TimeSpan.seconds(0.1), TimeSpan.seconds(0.4));

    @Test
    void partsAddUpAndTheTrajectoryTellsTheSame() {
        Stop stop = (Stop) Stop.of(Speed.kmh(100), TimeSpan.seconds(1), RESPONSE, Deceleration.mps2(7));
        assertThat(stop.reactionDistance().inMetres()).isCloseTo(100 / 3.6, within(1e-12));
        double sum = stop.reactionDistance().inMetres() + stop.brakingDistance().inMetres();
        assertThat(stop.stoppingDistance().inMetres()).isCloseTo(sum, within(1e-12));
        assertThat(stop.trajectory().restPositionM().orElseThrow()).isCloseTo(sum, within(1e-12));
        assertThat(stop.trajectory().restS().orElseThrow())
                .isCloseTo(stop.duration().inSeconds(), within(1e-13));
        assertThat(stop.deceleration()).isEqualTo(Deceleration.mps2(7));
        assertThat(stop).hasToString("stop from 27.7778 m/s in 91.1791 m and 5.26825 s");
    }

    @Test
    void roadSetsTheDeceleration() {
        Road road = Road.of(FrictionCoefficient.of(0.7), Grade.percent(-5));
        Stop stop = (Stop) Stop.onRoad(Speed.kmh(50), TimeSpan.seconds(1), BrakeResponse.INSTANT, road);
        double a = 9.80665 * (0.7 - 0.05) / Math.hypot(1, 0.05);
        double v = 50 / 3.6;
        assertThat(stop.brakingDistance().inMetres()).isCloseTo(v * v / (2 * a), within(1e-12));
    }

    @Test
    void neverStoppingIsAnOutcome() {
        Road ice = Road.of(FrictionCoefficient.of(0.05), Grade.percent(-10));
        assertThat(Stop.onRoad(Speed.kmh(50), TimeSpan.seconds(1), RESPONSE, ice))
                .extracting("reason")
                .isEqualTo("friction 0.05 does not slow a vehicle on a grade of -10 %: its acceleration"
                        + " downhill would be 0.487899 m/s²");
        assertThat(Stop.of(Speed.mps(20), TimeSpan.seconds(1), RESPONSE, Deceleration.mps2(0)))
                .extracting("reason")
                .isEqualTo("deceleration is 0 m/s²: the vehicle goes on at 20 m/s");
    }

    @Test
    void frictionThatJustBalancesTheDowngradeStopsNothing() {
        Road balanced = Road.of(FrictionCoefficient.of(0.1 + 0.2), Grade.percent(-30));
        assertThat(Stop.onRoad(Speed.kmh(100), TimeSpan.seconds(1), RESPONSE, balanced))
                .extracting("reason")
                .isEqualTo("friction 0.3 does not slow a vehicle on a grade of -30 %: its acceleration"
                        + " downhill would be 0 m/s²");
    }

    @Test
    void aStopBeyondAllDistanceIsNamedAsOne() {
        assertThat(Stop.of(Speed.mps(10), TimeSpan.seconds(0), BrakeResponse.INSTANT, Deceleration.mps2(1e-6)))
                .extracting("reason")
                .isEqualTo("a deceleration of 1e-6 m/s² takes 5e7 m and 1e7 s from 10 m/s, beyond the 1e7 m"
                        + " and 1e6 s looked at here");
        assertThat(Stop.of(Speed.mps(10), TimeSpan.seconds(0), BrakeResponse.INSTANT, Deceleration.mps2(1e-3)))
                .hasToString("stop from 10 m/s in 50000 m and 10000 s");
    }

    @Test
    void standingVehicleStopsAtOnce() {
        Stop stop = (Stop) Stop.of(Speed.mps(0), TimeSpan.seconds(1), RESPONSE, Deceleration.mps2(0));
        assertThat(stop.stoppingDistance().inMetres()).isZero();
        assertThat(stop.duration().inSeconds()).isZero();
    }

    @Test
    void regulationIdentityHoldsInBothUnitSystems() {
        // dm = 1/(25.92 k2) for km/h and metres
        QuadraticRule rule = QuadraticRule.published("un-r13h-type0");
        assertThat(rule.impliedDeceleration().inMps2()).isCloseTo(1 / (25.92 * 0.0060), within(1e-12));
        // mph²/20 ft: v²/(2a) with v = 22/15 ft/s gives a = 10 (22/15)² ft/s²
        QuadraticRule code = QuadraticRule.published("uk-highway-code");
        assertThat(code.impliedDeceleration().inFtps2()).isCloseTo(10 * Math.pow(22 / 15.0, 2), within(1e-12));
        assertThat(code.impliedLag().inSeconds()).isCloseTo(15 / 22.0, within(1e-15));
        assertThat(code).hasToString("UK Highway Code typical stopping distance");
    }

    @Test
    void quadraticRuleEqualsTheKinematicsItImplies() {
        for (String key : List.of("uk-highway-code", "un-r13h-type0", "un-r13-type0", "american-samoa")) {
            QuadraticRule rule = QuadraticRule.published(key);
            KinematicRule kinematic =
                    new KinematicRule(rule.name(), rule.impliedLag(), rule.impliedDeceleration(), rule.source());
            for (double kmh = 5; kmh <= 160; kmh += 15) {
                StoppingRule.Parts direct = rule.at(Speed.kmh(kmh));
                StoppingRule.Parts implied = kinematic.at(Speed.kmh(kmh));
                assertThat(direct.lag().inMetres()).isCloseTo(implied.lag().inMetres(), within(1e-6));
                assertThat(direct.total().inMetres()).isCloseTo(implied.total().inMetres(), within(1e-6));
            }
        }
    }

    @Test
    void exactSightDistanceDiffersFromThePublishedByItsRoundedCoefficients() {
        KinematicRule exact = AashtoSightDistance.US_CUSTOMARY.exact();
        assertThat(exact.name()).isEqualTo("AASHTO stopping sight distance, US customary, exact kinematics");
        // 60 mph = 88 ft/s: 88·2.5 + 88²/22.4 = 565.71 ft; the table adds up to 566.0 ft
        assertThat(exact.at(Speed.mph(60)).total().inFeet()).isCloseTo(220 + 7744 / 22.4, within(1e-9));
        assertThat(AashtoSightDistance.US_CUSTOMARY.at(Speed.mph(60)).total().inFeet())
                .isCloseTo(566.0, within(1e-9));
        // 100 km/h: 69.444 + 27.7778²/6.8 = 182.92 m against the table's 184.2 m
        assertThat(AashtoSightDistance.METRIC.exact().at(Speed.kmh(100)).total().inMetres())
                .isCloseTo(2.5 * 100 / 3.6 + Math.pow(100 / 3.6, 2) / 6.8, within(1e-9));
        assertThat(AashtoSightDistance.METRIC).hasToString("AASHTO stopping sight distance, metric");
    }

    @Test
    void badInputIsNamed() {
        assertMessage(
                () -> Stop.of(Speed.mps(20), TimeSpan.seconds(-1.2), RESPONSE, Deceleration.mps2(7)),
                "reaction time must be in [0, 30] s, got -1.2 s");
        assertMessage(
                () -> new BrakeResponse(TimeSpan.seconds(-0.1), TimeSpan.seconds(0)),
                "brake dead time must be in [0, 10] s, got -0.1 s");
        assertMessage(
                () -> new BrakeResponse(TimeSpan.seconds(0), TimeSpan.seconds(11)),
                "brake build-up time must be in [0, 10] s, got 11 s");
        assertMessage(
                () -> QuadraticRule.of(
                        "mine", RuleUnits.KMH_M, BigDecimal.ONE, BigDecimal.ZERO, Source.assumed("invented")),
                "coefficients of mine must be k1 >= 0 and k2 > 0, got 1 and 0");
        assertMessage(
                () -> new KinematicRule("mine", TimeSpan.seconds(1), Deceleration.mps2(0), Source.assumed("invented")),
                "deceleration must be in (0, 200] m/s², got 0 m/s²");
    }
}
