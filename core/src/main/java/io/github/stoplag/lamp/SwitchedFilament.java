package io.github.stoplag.lamp;

import io.github.stoplag.source.Evidence;

/** A filament lamp with its supply, whose state is the filament's temperature in kelvin. */
final class SwitchedFilament implements SwitchedLamp {
    private final FilamentOnset first;
    private final HeatBalance balance;
    private final Photometry photometry;
    private final double steadyLog;

    SwitchedFilament(FilamentLamp lamp, SupplyConditions conditions) {
        first = lamp.switchOn(conditions);
        balance = HeatBalance.of(lamp, conditions);
        photometry = Photometry.tungsten(conditions.lens());
        steadyLog = photometry.logLuminance(first.steadyTemperature().inKelvin());
    }

    @Override
    public String label() {
        return first.label();
    }

    @Override
    public double restState() {
        return first.conditions().initialTemperature().inKelvin();
    }

    @Override
    public Phase switched(boolean on, double state) {
        double supplyV = on ? first.conditions().supply().inVolts() : 0;
        FilamentTransient course = new FilamentTransient(FilamentPath.of(label(), balance, supplyV, state));
        return new Phase() {
            @Override
            public double relativeIntensity(double sinceS) {
                return Math.exp(photometry.logLuminance(course.temperatureK(sinceS)) - steadyLog);
            }

            @Override
            public double state(double sinceS) {
                return course.temperatureK(sinceS);
            }
        };
    }

    @Override
    public Evidence evidence() {
        return first.evidence();
    }
}
