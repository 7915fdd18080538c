package io.github.stoplag.examples.onset;

import io.github.stoplag.approval.StopSignalRules;
import io.github.stoplag.examples.file.CsvText;
import io.github.stoplag.lamp.FlashingLamp;
import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.lamp.SwitchedLamp;
import io.github.stoplag.lamp.SwitchingPattern;
import io.github.stoplag.quantity.Numbers;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * A lamp that flashes, on for half of the time.
 *
 * @param lamp its name
 * @param frequencyHz how often a second
 * @param light its light
 * @param emergencySignal whether the emergency stop signal of UN R48 may use the frequency with this lamp
 */
record Flashes(String lamp, double frequencyHz, FlashingLamp light, boolean emergencySignal) {
    private static final double DUTY = 0.5;
    private static final List<String> HEADER = List.of(
            "lamp",
            "frequency_hz",
            "duty_ratio",
            "first_peak_ratio",
            "peak_ratio",
            "trough_ratio",
            "modulation_depth_ratio",
            "emergency_stop_signal");

    static List<Flashes> all() {
        SwitchedLamp filament = SwitchedLamp.filament(LaboratoryLamps.bulb(), LaboratoryLamps.conditions());
        return Stream.concat(
                        DoubleStream.of(1, 1.5, 2, 3, 4, 5).mapToObj(hz -> of("filament", filament, hz, true)),
                        DoubleStream.of(1.5, 5).mapToObj(hz -> of("LED", LaboratoryLamps.led(), hz, false)))
                .toList();
    }

    private static Flashes of(String name, SwitchedLamp lamp, double hz, boolean filament) {
        return new Flashes(
                name,
                hz,
                FlashingLamp.of(lamp, SwitchingPattern.flashing(hz, DUTY)),
                StopSignalRules.emergencyFrequencyAllowed(hz, filament));
    }

    static String csv(List<Flashes> flashes) {
        return CsvText.of(HEADER, flashes.stream().map(Flashes::fields));
    }

    private List<String> fields() {
        return List.of(
                lamp,
                Numbers.text(frequencyHz),
                Numbers.text(DUTY),
                Numbers.fixed(light.firstPeakRatio(), 4),
                Numbers.fixed(light.peakRatio(), 4),
                Numbers.fixed(light.troughRatio(), 4),
                Numbers.fixed(light.modulationDepth(), 4),
                emergencySignal ? "yes" : "no");
    }
}
