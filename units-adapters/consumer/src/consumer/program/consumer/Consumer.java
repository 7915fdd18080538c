package consumer;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.driver.LogNormalReaction;
import io.github.stoplag.following.BrakingVehicle;
import io.github.stoplag.following.Pair;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.Lens;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sight.LampSignal;
import io.github.stoplag.units.Quantities;

/** Reaches into each library that Stoplag stands on: solvers, distributions, random numbers, units. */
public final class Consumer {
    private Consumer() {}

    public static void main(String[] args) {
        Detection seen = IntegratingEye.of(TimeSpan.seconds(0.1), LuminousIntensity.candela(3))
                .detect(LampSignal.of(
                        FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26))
                                .build()
                                .switchOn(
                                        SupplyConditions.of(Voltage.volts(12.8)).withLens(Lens.RED)),
                        LuminousIntensity.candela(60)));
        TimeSpan reaction = LogNormalReaction.ofMeanAndSd(TimeSpan.seconds(1.1), TimeSpan.seconds(0.3))
                .quantile(0.9);
        BrakingVehicle van =
                BrakingVehicle.of(Speed.mph(60), TimeSpan.seconds(0), BrakeResponse.INSTANT, Deceleration.mps2(7));
        BrakingVehicle car = BrakingVehicle.of(Speed.mph(60), reaction, BrakeResponse.INSTANT, Deceleration.mps2(7));
        System.out.println(Pair.of(van, car, Distance.metres(30), seen).outcome());
        System.out.println(Quantities.toQuantity(Quantities.speed(Quantities.toQuantity(Speed.mph(60)))));
    }
}
