package io.github.stoplag.examples.onset;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.lamp.FastFilament;
import io.github.stoplag.lamp.FilamentDecay;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caveat;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;

/**
 * A lamp that comes on and goes off again.
 *
 * @param key its name in column heads
 * @param name its name in tables and pictures
 * @param style its line style
 * @param what what it is
 * @param rise its light after switch-on over its own final light
 * @param decay its light after switch-off over its light before
 * @param fallS the time at which the light has fallen to a level
 * @param caveats the reservations about it
 */
record OnsetCourse(
        String key,
        String name,
        int style,
        String what,
        OnsetCurve rise,
        DoubleUnaryOperator decay,
        DoubleFunction<OptionalDouble> fallS,
        List<Caveat> caveats) {
    /** The lowest supply of the usual 12 V class, code C of ISO 16750-2:2010 (seen). */
    private static final Voltage DIM = Voltage.volts(9);

    static List<OnsetCourse> all() {
        SupplyConditions usual = LaboratoryLamps.conditions();
        SupplyConditions dim = usual.withSupply(DIM);
        FilamentLamp bulb = LaboratoryLamps.bulb();
        FilamentOnset standard = LaboratoryLamps.standard();
        FilamentOnset dimmed = bulb.switchOn(dim);
        FastFilament fast = LaboratoryLamps.fast();
        FilamentDecay toStandby = FilamentDecay.of(
                bulb, usual.withSupply(fast.standby().supply()).withInitialTemperature(standard.steadyTemperature()));
        String share = Numbers.text(100 * dimmed.relativeToRated() / standard.relativeToRated(), 2);
        return List.of(
                led(LaboratoryLamps.led()),
                filament(
                        "filament",
                        "filament lamp",
                        0,
                        "bulb 1157 at " + usual.supply() + ", " + usual.lens(),
                        standard,
                        bulb.switchOff(usual),
                        List.of()),
                filament(
                        "fast_filament",
                        "fast filament lamp",
                        3,
                        "the same bulb kept at " + fast.standby().supply() + " and boosted for "
                                + Text.milliseconds(fast.boostTime().inSeconds()) + " (assumed)",
                        fast.onset(),
                        toStandby,
                        fast.caveats()),
                filament(
                        "dim_supply",
                        "filament lamp on " + DIM,
                        4,
                        "the same bulb on a dim supply: it ends at " + share + " % of its usual light",
                        dimmed,
                        bulb.switchOff(dim),
                        List.of()));
    }

    private static OnsetCourse led(LedLamp led) {
        return new OnsetCourse(
                "led",
                "LED lamp",
                1,
                "a step on and off",
                led,
                t -> t > 0 ? 0 : 1,
                level -> OptionalDouble.of(0),
                led.caveats());
    }

    private static OnsetCourse filament(
            String key, String name, int style, String what, OnsetCurve rise, FilamentDecay decay, List<Caveat> more) {
        return new OnsetCourse(
                key,
                name,
                style,
                what,
                rise,
                decay::relativeIntensity,
                decay::timeToLevelS,
                Stream.of(rise.caveats(), decay.caveats(), more)
                        .flatMap(List::stream)
                        .distinct()
                        .toList());
    }

    OptionalDouble riseS(double level) {
        return rise.timeToLevelS(level);
    }
}
