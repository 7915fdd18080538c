package io.github.stoplag.examples.lamps;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.film.BandedOnset;
import io.github.stoplag.lamp.Darkening;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.lamp.SwitchedLamp;
import io.github.stoplag.lamp.SwitchedOnset;
import io.github.stoplag.lamp.SwitchingPattern;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.Detector;
import io.github.stoplag.sight.LampFall;
import io.github.stoplag.sight.LampSet;
import io.github.stoplag.sight.LampSignal;
import io.github.stoplag.sweep.FilamentUncertainty;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A lamp as a file describes it, before it is switched on.
 *
 * @param intensityKey the key that gives how bright it is
 * @param given that intensity, at the design voltage of a bulb
 * @param bulb the bulb, if it is one steady filament lamp
 * @param followsSupply whether its light follows the supply: a filament lamp, or a set with one
 * @param switchedOn its light on a supply
 */
public record LampInput(
        String intensityKey,
        LuminousIntensity given,
        Optional<FilamentLamp> bulb,
        boolean followsSupply,
        Function<SupplyConditions, Light> switchedOn) {

    /**
     * A lamp's light after its circuit closes.
     *
     * @param onset how it rises
     * @param intensity how bright it is at the level 1 of its onset
     * @param falls how its light goes out after switch-off, lamp by lamp; empty if that is not known
     * @param switched the lamp as a pattern of flashing can switch it
     * @param set its lamps, if they are several
     * @param notes what the intensity rests on
     */
    public record Light(
            OnsetCurve onset,
            LuminousIntensity intensity,
            List<LampFall> falls,
            Optional<SwitchedLamp> switched,
            Optional<LampSet> set,
            List<String> notes) {
        public Light {
            falls = List.copyOf(falls);
            notes = List.copyOf(notes);
        }

        /** The light of one lamp that comes on once and of which nobody knows how it goes out. */
        static Light of(OnsetCurve onset, LuminousIntensity intensity, List<String> notes) {
            return new Light(onset, intensity, List.of(), Optional.empty(), Optional.empty(), notes);
        }

        /** Says how it goes out, and that it can flash. */
        Light that(OnsetCurve goesOut, SwitchedLamp flashes) {
            LampFall fall = new LampFall(goesOut, intensity, LuminousIntensity.candela(0));
            return new Light(onset, intensity, List.of(fall), Optional.of(flashes), set, notes);
        }

        /** Says by a criterion when it is seen, of several lamps with the first. */
        public Detection seenBy(Criterion criterion) {
            return set.map(lamps -> criterion.detect(lamps).detection())
                    .orElseGet(() -> criterion.detect(LampSignal.of(onset, intensity)));
        }

        /**
         * Says when it is seen to be dark, of several lamps when the last is; nothing if nobody knows how it goes out.
         *
         * @param tail the lit tail lamp beside each, 0 cd by day
         */
        public Optional<Detection> seenDark(Detector detector, LuminousIntensity tail) {
            List<Detection> all = falls.stream()
                    .map(fall -> new LampFall(fall.darkening(), fall.stop(), tail).seen(detector))
                    .toList();
            // a lamp whose light nobody misses was not noticed before either
            return all.stream()
                    .filter(detection -> detection.time().isPresent())
                    .max(Comparator.comparing(Detection::orElseThrow))
                    .or(() -> all.stream().findFirst());
        }

        /**
         * Gives the same light at one end of what a film, or a bulb's rating, leaves possible.
         *
         * @param early whether the early end, else the late one
         * @return the light, or nothing if nothing in it has an interval
         */
        public Optional<Light> end(boolean early) {
            if (set.isEmpty()) {
                return end(LampSignal.of(onset, intensity), early)
                        .map(end -> new Light(end.onset(), end.finalIntensity(), falls, switched, set, notes));
            }
            List<LampSet.Member> lamps = set.get().members();
            List<Optional<LampSignal>> ends =
                    lamps.stream().map(member -> end(member.signal(), early)).toList();
            if (ends.stream().allMatch(Optional::isEmpty)) {
                return Optional.empty();
            }
            LampSet bound = LampSet.of(IntStream.range(0, lamps.size())
                    .mapToObj(i -> new LampSet.Member(
                            lamps.get(i).name(),
                            ends.get(i).orElse(lamps.get(i).signal()),
                            lamps.get(i).delay(),
                            lamps.get(i).lateralM(),
                            lamps.get(i).heightM()))
                    .toList());
            return Optional.of(
                    new Light(bound.merged().onset(), intensity, falls, switched, Optional.of(bound), notes));
        }

        private static Optional<LampSignal> end(LampSignal signal, boolean early) {
            if (signal.onset() instanceof BandedOnset banded) {
                return Optional.of(LampSignal.of(early ? banded.early() : banded.late(), signal.finalIntensity()));
            }
            return signal.onset() instanceof FilamentOnset filament ? end(filament, signal, early) : Optional.empty();
        }

        /** The bulb at one end of what its rating leaves open, by the time to half its light. */
        private static Optional<LampSignal> end(FilamentOnset filament, LampSignal signal, boolean early) {
            SupplyConditions supply = filament.conditions();
            if (filament.staysDark().isPresent() || supply.ownTemperature().isPresent()) {
                return Optional.empty();
            }
            try {
                FilamentLamp end = FilamentUncertainty.of(filament.lamp())
                        .end(lamp -> lamp.switchOn(supply).timeToLevelS(0.5).orElseThrow(), early);
                FilamentOnset onset = end.switchOn(supply);
                return Optional.of(LampSignal.of(
                        onset,
                        LuminousIntensity.candela(signal.finalIntensity().inCandela()
                                * onset.relativeToRated()
                                / filament.relativeToRated())));
            } catch (IllegalArgumentException atTheEdge) {
                // a bulb at the edge of what the model takes: no interval is better than a cut one
                return Optional.empty();
            }
        }

        /** Gives how bright it ends up, which for a film that ends early is less than its full intensity. */
        public double endCd() {
            return intensity.inCandela() * onset.relativeIntensity(Double.POSITIVE_INFINITY);
        }
    }

    /** A filament lamp with its intensity at the design voltage. */
    public static LampInput ofBulb(
            ScenarioFile file, FilamentInput bulb, LuminousIntensity atRated, String intensityKey) {
        List<String> keys = Stream.concat(
                        SupplyInput.KEYS.names().stream(), bulb.keys().stream().limit(1))
                .toList();
        return new LampInput(
                intensityKey,
                atRated,
                Optional.of(bulb.lamp()),
                true,
                supply -> filament(file.making(keys, () -> bulb.lamp().switchOn(supply)), atRated, bulb.origin()));
    }

    private static Light filament(FilamentOnset onset, LuminousIntensity atRated, String origin) {
        LuminousIntensity intensity = LuminousIntensity.candela(atRated.inCandela() * onset.relativeToRated());
        Light light = Light.of(
                onset,
                intensity,
                List.of(
                        origin + ".",
                        Text.digits(intensity.inCandela()) + " cd = " + atRated + " at design voltage, given, times "
                                + Text.digits(onset.relativeToRated()) + ", the model's light on this supply.",
                        Text.digits(onset.steadyCurrent().inAmperes()) + " A and "
                                + Text.digits(onset.steadyPower().inWatts()) + " W once hot, "
                                + Text.digits(onset.inrushCurrent().inAmperes()) + " A at switch-on."));
        FilamentLamp lamp = onset.lamp();
        SupplyConditions supply = onset.conditions();
        SwitchedLamp flashes = SwitchedLamp.filament(lamp, supply);
        // on a supply that hardly warms it there is no light to lose
        return onset.staysDark().isPresent()
                ? new Light(onset, intensity, List.of(), Optional.of(flashes), Optional.empty(), light.notes())
                : light.that(Darkening.of(lamp.switchOff(supply)), flashes);
    }

    /** An LED lamp. */
    public static LampInput led(LedLamp lamp, LuminousIntensity intensity, String intensityKey) {
        Light light = Light.of(lamp, intensity, List.of(intensity + ", given.")).that(Darkening.of(lamp), lamp);
        return new LampInput(intensityKey, intensity, Optional.empty(), false, supply -> light);
    }

    /** A filmed lamp: the film gives the shape of the rise, the file its intensity. */
    public static LampInput filmed(FilmedCurves lamp, LuminousIntensity intensity, String intensityKey) {
        Light light = filmed(lamp, intensity, intensity.toString(), intensityKey);
        return new LampInput(intensityKey, intensity, Optional.empty(), false, supply -> light);
    }

    /**
     * This lamp filmed: the film gives the shape of the rise; how bright it ends up stays what it was, for a bulb the
     * intensity at design voltage times the model's light on the supply.
     */
    public LampInput filmedAs(FilmedCurves lamp) {
        if (bulb.isEmpty()) {
            return filmed(lamp, given, intensityKey);
        }
        return new LampInput(intensityKey, given, bulb, true, supply -> {
            LuminousIntensity onSupply = switchedOn.apply(supply).intensity();
            String origin = Text.digits(onSupply.inCandela()) + " cd, which is " + given
                    + " at design voltage times the model's light on this supply,";
            return filmed(lamp, onSupply, origin, intensityKey);
        });
    }

    private static Light filmed(FilmedCurves lamp, LuminousIntensity intensity, String origin, String intensityKey) {
        double end = lamp.onset().relativeIntensity(Double.POSITIVE_INFINITY);
        return new Light(
                lamp.onset(),
                intensity,
                lamp.darkening().stream()
                        .map(fall -> new LampFall(fall, intensity, LuminousIntensity.candela(0)))
                        .toList(),
                Optional.empty(),
                Optional.empty(),
                List.of((end < 1 ? Text.digits(intensity.inCandela() * end) + " cd = " : "") + origin
                        + (end < 1 ? " times " + Text.digits(end) + ", where the film ends" : "")
                        + "; the candela are the scenario's " + intensityKey
                        + ", the film gives the shape of the rise only."));
    }

    /** This lamp flashing for a time before it stays lit. */
    LampInput flashing(SwitchingPattern pattern, TimeSpan until) {
        return new LampInput(intensityKey, given, Optional.empty(), followsSupply, supply -> {
            Light steady = switchedOn.apply(supply);
            SwitchedLamp lamp = steady.switched()
                    .orElseThrow(
                            () -> new IllegalArgumentException("only a lamp whose model can be switched can flash, got "
                                    + steady.onset().label()));
            return new Light(
                    SwitchedOnset.flashing(lamp, pattern, until),
                    steady.intensity(),
                    steady.falls(),
                    steady.switched(),
                    steady.set(),
                    steady.notes());
        });
    }
}
