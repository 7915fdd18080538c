package io.github.stoplag.following;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.braking.BrakingCapability;
import io.github.stoplag.braking.Stop;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.MeasuredLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Luminance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.Road;
import io.github.stoplag.road.SourcedFriction;
import io.github.stoplag.road.Surface;
import io.github.stoplag.sight.BlondelReyDouglas;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.Detector;
import io.github.stoplag.sight.DetectorChooser;
import io.github.stoplag.sight.InstantEye;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sight.LampSignal;
import io.github.stoplag.sight.ModifiedAllard;
import io.github.stoplag.sight.ShareOfFinal;
import io.github.stoplag.sight.Threshold;
import io.github.stoplag.sight.ViewingConditions;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Evident;
import java.util.List;
import java.util.NoSuchElementException;
import org.junit.jupiter.api.Test;

/** A reservation about a lamp or a road is still there when only the last result is held. */
class EvidenceTravelsTest {
    private static final TimeSpan TENTH = TimeSpan.seconds(0.1);
    private static final Threshold THREE = Threshold.intensity(LuminousIntensity.candela(3));
    private static final OnsetCurve NOISY =
            MeasuredLamp.of("noisy", new double[] {0, 0.05, 0.1, 0.15, 0.2}, new double[] {0, 0.4, 0.2, 0.9, 1});
    private static final LampSignal SIGNAL = LampSignal.of(NOISY, LuminousIntensity.candela(60));

    private static Pair pair(BrakingVehicle leader) {
        BrakingVehicle follower =
                BrakingVehicle.of(Speed.mps(25), TimeSpan.seconds(1), BrakeResponse.INSTANT, Deceleration.mps2(6));
        return Pair.of(leader, follower, Distance.metres(30), TimeSpan.seconds(0));
    }

    private static BrakingVehicle leader() {
        return BrakingVehicle.of(Speed.mps(25), TimeSpan.seconds(0), BrakeResponse.INSTANT, Deceleration.mps2(6));
    }

    private static void assertCarries(Evident result, Evident origin) {
        assertThat(result.basis()).containsAll(origin.basis());
        assertThat(result.caveats()).containsAll(origin.caveats());
    }

    @Test
    void aMeasuredCurvesCaveatReachesEveryDetection() {
        assertThat(NOISY.caveats()).isNotEmpty();
        ViewingConditions night = ViewingConditions.of(Luminance.cdPerM2(0.1), Distance.metres(50));
        for (Detector detector : List.of(
                ShareOfFinal.of(0.5),
                InstantEye.of(THREE),
                IntegratingEye.of(TENTH, THREE),
                ModifiedAllard.of(TENTH).detector(THREE),
                BlondelReyDouglas.of(TENTH).detector(THREE),
                DetectorChooser.choose(night))) {
            assertCarries(detector.detect(SIGNAL), NOISY);
            LampSignal dim = LampSignal.of(NOISY, LuminousIntensity.candela(0));
            Detection never = detector.detect(dim);
            assertThat(never).isInstanceOf(Detection.NeverSeen.class);
            assertCarries(never, NOISY);
        }
    }

    @Test
    void aDetectionsCaveatReachesPairEncounterDifferenceAndChain() {
        Detection seen = IntegratingEye.of(TENTH, THREE).detect(SIGNAL);
        Pair filmed = pair(leader()).withLamp(seen);
        assertThat(filmed.lampLatency()).isEqualTo(seen.orElseThrow());
        assertCarries(filmed, seen);
        assertCarries(filmed.encounter(), seen);
        Encounter other = pair(leader()).encounter();
        assertThat(other.caveats()).isEmpty();
        assertCarries(other.differenceTo(filmed.encounter()), seen);
        Chain.Member member = Chain.Member.of(leader(), Distance.metres(0), TimeSpan.seconds(0))
                .withLamp(seen);
        Chain chain = Chain.of(List.of(member, Chain.Member.of(leader(), Distance.metres(20), TimeSpan.seconds(0.2))));
        assertCarries(chain, seen);
        assertCarries(chain.differenceTo(chain), seen);
        assertThat(filmed.withLampLatency(TENTH).caveats()).isEmpty();
    }

    @Test
    void aStopKeepsFrictionSourceCaveatsAndGrade() {
        SourcedFriction snow = Surface.published("snow-packed-1990").friction(0);
        assertThat(snow.caveats()).isNotEmpty();
        Road down = Road.of(snow, Grade.percent(-6));
        Stop stop = Stop.onRoad(Speed.kmh(50), TimeSpan.seconds(1), BrakeResponse.INSTANT, down)
                .orElseThrow();
        assertCarries(stop, snow);
        assertThat(stop.basis())
                .anyMatch(line -> line.contains("friction coefficient " + snow.friction())
                        && line.contains(snow.source().document()))
                .anyMatch(line -> line.contains("grade of -6 %"))
                .noneMatch(line -> line.contains("as given"));
        Road steep = Road.of(snow, Grade.percent(-60));
        assertCarries(Stop.onRoad(Speed.kmh(50), TimeSpan.seconds(1), BrakeResponse.INSTANT, steep), snow);
        assertCarries(
                new BrakingCapability(Deceleration.mps2(5), down, 0.8)
                        .stop(Speed.kmh(50), TimeSpan.seconds(1), BrakeResponse.INSTANT, Deceleration.mps2(5)),
                snow);
        assertCarries(
                pair(BrakingVehicle.onRoad(Speed.mps(25), TimeSpan.seconds(0), BrakeResponse.INSTANT, down))
                        .encounter(),
                snow);
    }

    @Test
    void aGivenFrictionIsSaidToBeGiven() {
        Road road = Road.level(FrictionCoefficient.of(0.7));
        assertThat(Stop.onRoad(Speed.kmh(50), TimeSpan.seconds(1), BrakeResponse.INSTANT, road)
                        .basis())
                .anyMatch(line -> line.contains("friction coefficient as given"));
    }

    @Test
    void theShortWayOutNamesTheReason() {
        Detection never = InstantEye.of(THREE)
                .detect(LampSignal.of(
                        LedLamp.of(TimeSpan.seconds(0), TimeSpan.seconds(0)), LuminousIntensity.candela(2)));
        assertThat(never.time()).isEmpty();
        assertThatThrownBy(never::orElseThrow)
                .isInstanceOf(NoSuchElementException.class)
                .hasMessage("lamp must be seen to have a time of detection, got never seen by threshold without"
                        + " summation over time, 3 cd: the final 2 cd does not exceed the threshold of 3 cd");
        Pair blind = Pair.of(
                leader(),
                BrakingVehicle.of(Speed.mps(25), TimeSpan.seconds(1), BrakeResponse.INSTANT, Deceleration.mps2(0)),
                Distance.metres(30),
                TENTH);
        assertThat(blind.gapNeeded().gap()).isEmpty();
        assertThatThrownBy(blind.gapNeeded()::orElseThrow)
                .isInstanceOf(NoSuchElementException.class)
                .hasMessage(
                        "gap needed must be bounded, got none that is enough: the follower does not brake and goes on"
                                + " at 25 m/s, the leader stops");
        assertThat(blind.outcome().contact()).isPresent();
        assertThat(blind.outcome().noContact()).isEmpty();
        assertThatThrownBy(Stop.of(Speed.mps(20), TENTH, BrakeResponse.INSTANT, Deceleration.mps2(0))::orElseThrow)
                .isInstanceOf(NoSuchElementException.class)
                .hasMessage(
                        "vehicle must stop to have a stopping distance, got never stops: deceleration is 0 m/s²: the"
                                + " vehicle goes on at 20 m/s");
    }

    @Test
    void caveatsAreKeptOnce() {
        Detection seen = InstantEye.of(THREE).detect(SIGNAL);
        Evident twice = Evident.joined(seen, seen, NOISY);
        assertThat(twice.caveats()).doesNotHaveDuplicates().containsAll(NOISY.caveats());
        assertThat(twice.caveats()).extracting(Caveat::text).allMatch(text -> !text.isBlank());
    }
}
