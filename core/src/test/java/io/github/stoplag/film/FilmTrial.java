package io.github.stoplag.film;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.Lens;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.sight.Detector;
import io.github.stoplag.sight.InstantEye;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sight.LampSignal;
import io.github.stoplag.sight.Threshold;
import io.github.stoplag.sweep.CounterRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * Films whose truth is known: bulb, supply, LED, exposure, moment within a frame and the fault of the film drawn at
 * random, filmed by the simulated camera and read as if nothing were known but what {@link Fault} tells.
 */
final class FilmTrial {
    /** What is wrong with a film. */
    enum Fault {
        PLAIN,
        TAIL_LIT,
        NOISE,
        CLIPPED,
        ASSUMED_CURVE,
        UNKNOWN_EXPOSURE,
        JITTER,
        ROLLING,
        CUT,
        CRUSHED
    }

    /** Which lamp does what. */
    enum Kind {
        FILAMENT_ON,
        FILAMENT_OFF,
        LED
    }

    /** A moment read, beside the truth. */
    record Outcome(Kind kind, String moment, double truthS, double loS, double hiS, double u) {
        boolean refused() {
            return moment.startsWith("refused");
        }

        boolean holdsWithin(double standardUncertainties) {
            return truthS >= loS - standardUncertainties * u && truthS <= hiS + standardUncertainties * u;
        }

        boolean holds() {
            return truthS >= loS && truthS <= hiS;
        }
    }

    static final double[] LEVELS = {0.01, 0.1, 0.5, 0.9};
    private static final LuminousIntensity STOP = LuminousIntensity.candela(60);
    private static final int ROWS = 1080;

    private final CounterRandom random;
    private final long index;
    private final double rateHz;
    private final Fault fault;
    private final boolean rising;
    private int axis;
    private final List<Outcome> outcomes = new ArrayList<>();

    @SuppressWarnings("EnumOrdinal") // a seed of its own for each fault
    private FilmTrial(double rateHz, Fault fault, boolean rising, long index) {
        random = CounterRandom.of(271_828 + 1000L * fault.ordinal() + (long) rateHz + (rising ? 0 : 500_000));
        this.index = index;
        this.rateHz = rateHz;
        this.fault = fault;
        this.rising = rising;
    }

    /** Films a filament and an LED coming on, or going out, and reads both. */
    static List<Outcome> run(double rateHz, Fault fault, boolean rising, long index) {
        FilmTrial trial = new FilmTrial(rateHz, fault, rising, index);
        trial.film();
        return trial.outcomes;
    }

    private double between(double lo, double hi) {
        return lo + (hi - lo) * random.uniform(axis++, index);
    }

    private <T> T oneOf(List<T> all) {
        return all.get((int) between(0, all.size()));
    }

    /** A lamp's light that rises to 1, and for one going out its complement; with the times of levels of it. */
    private record Lamp(
            DoubleUnaryOperator risen, DoubleUnaryOperator timeS, double settledS, Optional<OnsetCurve> on) {}

    private void film() {
        double intervalS = 1 / rateHz;
        double exposureS = intervalS * between(0.05, 1);
        TransferCurve curve = fault == Fault.ASSUMED_CURVE
                ? oneOf(List.of(TransferCurve.SRGB, TransferCurve.BT709, TransferCurve.power(between(2, 2.4))))
                : oneOf(List.of(TransferCurve.SRGB, TransferCurve.BT709, TransferCurve.LINEAR));
        double place = between(0, 1);
        Camera.Builder taken = Camera.takenAt(rateHz)
                .exposure(TimeSpan.seconds(exposureS))
                .transfer(curve)
                .rowTime(TimeSpan.seconds(0));
        Camera.Builder told = Camera.takenAt(rateHz).rowTime(TimeSpan.seconds(0));
        if (fault == Fault.JITTER) {
            TimeSpan jitter = TimeSpan.seconds(intervalS * between(0.05, 0.25));
            taken.jitter(jitter);
            told.jitter(jitter);
        }
        if (fault == Fault.ROLLING) {
            TimeSpan row = TimeSpan.seconds(intervalS / ROWS * between(0.3, 1));
            taken.rowTime(row);
            told.rowTime(row);
        }
        if (fault != Fault.UNKNOWN_EXPOSURE) {
            taken.exposurePlace(place);
            told.exposurePlace(place).exposure(TimeSpan.seconds(exposureS));
        }
        if (fault != Fault.ASSUMED_CURVE) {
            told.transfer(curve);
        }
        SimulatedCamera camera = SimulatedCamera.of(taken.build(), sensor());
        Camera known = told.build();
        Lamp filament = filament();
        Lamp led = led();
        double beforeS = Math.max(between(0.2, 0.4), 6 * intervalS);
        double beginS = -beforeS - between(0, 1) * intervalS;
        double afterS = fault == Fault.CUT
                ? filament.timeS().applyAsDouble(between(0.4, 0.95))
                : 1.3 * filament.settledS() + 0.1 + 6 * intervalS;
        int frames = (int) Math.ceil((afterS - beginS) * rateHz);
        FilmedChange ledRead = read(camera, known, Kind.LED, led, beginS, frames);
        FilmedChange filamentRead =
                read(camera, known, rising ? Kind.FILAMENT_ON : Kind.FILAMENT_OFF, filament, beginS, frames);
        if (filamentRead != null && ledRead != null) {
            double zeroS = led.timeS().applyAsDouble(FilmedChange.FIRST_LIGHT);
            tell(
                    rising ? Kind.FILAMENT_ON : Kind.FILAMENT_OFF,
                    "since led ",
                    filamentRead.since(ledRead),
                    filament,
                    -zeroS);
        }
    }

    private Sensor sensor() {
        if (fault != Fault.NOISE) {
            return Sensor.USUAL;
        }
        int pixels = oneOf(List.of(1, 2, 4));
        double frameRatio = between(0.01, 0.05) * 0.6;
        return new Sensor(frameRatio * Math.sqrt(pixels) * 0.7, frameRatio * Math.sqrt(pixels), pixels, 0);
    }

    private Lamp filament() {
        double ratedV = between(0, 1) < 0.2 ? 27 : 13.5;
        FilamentLamp bulb = FilamentLamp.builder(Voltage.volts(ratedV), Power.watts(between(5, 30)))
                .filamentTemperature(Temperature.kelvin(between(2450, 3050)))
                .coilFactor(between(0.55, 0.95))
                .gasLossShare(between(0, 0.35))
                .build();
        SupplyConditions on = SupplyConditions.of(Voltage.volts(ratedV * between(0.8, 1.1)))
                .withSeriesResistance(Resistance.ohms(bulb.ratedResistance().inOhms() * between(0, 0.12)))
                .withAmbientTemperature(Temperature.kelvin(between(258, 315)))
                .withLens(oneOf(List.of(Lens.values())));
        if (rising) {
            OnsetCurve onset = bulb.switchOn(on);
            return new Lamp(
                    onset::relativeIntensity,
                    x -> onset.timeToLevelS(x).orElseThrow(),
                    onset.timeToLevelS(0.995).orElseThrow(),
                    Optional.of(onset));
        }
        var decay = bulb.switchOff(on);
        return new Lamp(
                t -> 1 - decay.relativeIntensity(t),
                x -> decay.timeToLevelS(1 - x).orElseThrow(),
                decay.timeToLevelS(0.005).orElseThrow(),
                Optional.empty());
    }

    private Lamp led() {
        double delayS = between(0, 0.005);
        double riseS = Math.exp(between(Math.log(5e-5), Math.log(0.01)));
        LedLamp led = LedLamp.of(TimeSpan.seconds(delayS), TimeSpan.seconds(riseS));
        return new Lamp(
                led::relativeIntensity,
                x -> led.timeToLevelS(x).orElseThrow(),
                led.settledS(),
                rising ? Optional.of(led) : Optional.empty());
    }

    private @Nullable FilmedChange read(
            SimulatedCamera camera, Camera told, Kind kind, Lamp lamp, double beginS, int frames) {
        double steady = fault == Fault.TAIL_LIT ? between(0.05, 0.3) : between(0.005, 0.03);
        double switched =
                fault == Fault.CLIPPED ? Math.exp(between(Math.log(1.05), Math.log(2.5))) : between(0.3, 0.65);
        // black set above the light of the dark: what lies below shows as black
        double crushed = fault == Fault.CRUSHED ? between(0.02, 0.08) * switched + steady : 0;
        LightCourse course = new LightCourse() {
            @Override
            public double lightRatio(double timeS) {
                double risen = lamp.risen().applyAsDouble(timeS);
                return steady - crushed + switched * (rising ? risen : 1 - risen);
            }

            @Override
            public double[] breakpointsS() {
                return lamp.on()
                        .map(OnsetCurve::breakpointsS)
                        .orElse(new double[] {0, lamp.timeS().applyAsDouble(1e-9)});
            }
        };
        boolean rolling = fault == Fault.ROLLING;
        GreySeries series = camera.film(
                kind.name(),
                course,
                TimeSpan.seconds(beginS),
                frames,
                1_000_003 * index + 17,
                rolling ? between(50, ROWS - 50) : 0,
                rolling ? between(10, 100) : 0);
        FilmedChange change;
        try {
            List<FilmedChange> all = FilmedLamp.of(series, told).changes();
            if (all.size() != 1 || all.get(0).rising() != rising) {
                throw new IllegalArgumentException("got changes " + all);
            }
            change = all.get(0);
        } catch (IllegalArgumentException e) {
            outcomes.add(new Outcome(kind, "refused: " + e.getMessage(), 0, 0, 0, 0));
            return null;
        }
        tell(kind, "", change, lamp, -beginS);
        return change;
    }

    private void tell(Kind kind, String prefix, FilmedChange change, Lamp lamp, double shiftS) {
        for (double level : LEVELS) {
            add(
                    kind,
                    prefix + "level " + level,
                    lamp.timeS().applyAsDouble(level) + shiftS,
                    change.level(rising ? level : 1 - level));
        }
        if (lamp.on().isEmpty()) {
            return;
        }
        LuminousIntensity tail = LuminousIntensity.candela(fault == Fault.TAIL_LIT ? 10 : 0);
        List<Detector> detectors = List.of(
                IntegratingEye.of(TimeSpan.seconds(0.1), LuminousIntensity.candela(3)),
                InstantEye.of(Threshold.intensity(LuminousIntensity.candela(5)).withContrast(0.25)));
        for (Detector detector : detectors) {
            double truthS = detector.detect(new LampSignal(lamp.on().orElseThrow(), STOP, tail))
                    .orElseThrow()
                    .inSeconds();
            Optional<FilmedMoment> seen = change.seen(detector, STOP, tail);
            if (seen.isPresent()) {
                add(kind, prefix + "seen " + detectors.indexOf(detector), truthS + shiftS, seen.get());
            }
        }
    }

    private void add(Kind kind, String name, double truthS, FilmedMoment moment) {
        outcomes.add(new Outcome(kind, name, truthS, moment.loS(), moment.hiS(), moment.standardUncertaintyS()));
    }
}
