package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caveat;
import java.util.ArrayList;
import java.util.List;

/**
 * Warns of a filament hotter than it was made for. The measure is the voltage across the filament itself that holds its
 * temperature, U = √(loss · R), so that a series resistance or a short boost is not taken for overdrive.
 */
final class Overdrive {
    /** Above this share of the design voltage a caveat is due: assumed; a charging vehicle's supply stays below. */
    private static final double NOTICEABLE = 1.15;

    private Overdrive() {}

    static List<Caveat> caveats(FilamentLamp lamp, HeatBalance balance, double hottestK) {
        List<Caveat> caveats = new ArrayList<>();
        Voltage held = Voltage.volts(
                Math.sqrt(Math.max(0, balance.lossW(hottestK)) * lamp.wire().resistanceOhm(hottestK)));
        double relative = held.inVolts() / lamp.ratedVoltage().inVolts();
        if (relative > NOTICEABLE) {
            VoltageRerating.Published life = VoltageRerating.of(lamp)
                    .row(VoltageRerating.Quantity.LIFE, held)
                    .published()
                    .get(0);
            caveats.add(new Caveat("overdriven: " + Numbers.text(held.inVolts(), 4) + " V at the filament, "
                    + Numbers.text(relative, 3) + " times its design voltage of " + lamp.ratedVoltage()
                    + ", so its life falls steeply, to " + Numbers.text(100 * life.lowRatio(), 2) + " to "
                    + Numbers.text(100 * life.highRatio(), 2) + " % by the exponents "
                    + Numbers.text(life.exponentLow()) + " to " + Numbers.text(life.exponentHigh()) + " of "
                    + life.source() + ", which hold near the design voltage only"));
        }
        if (hottestK > Tungsten.validity().hi()) {
            caveats.add(new Caveat("filament at " + Numbers.text(hottestK, 4) + " K is close to melting at "
                    + Numbers.text(Tungsten.MELTING_POINT_K) + " K: it may fail at once"));
        }
        return caveats;
    }
}
