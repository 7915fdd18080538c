package io.github.stoplag.examples.teach;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.lamp.BulbCatalogue;
import io.github.stoplag.lamp.BulbRating;
import io.github.stoplag.lamp.FilamentDecay;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.worked.Given;
import io.github.stoplag.worked.Solution;
import io.github.stoplag.worked.Style;
import io.github.stoplag.worked.Unit;
import io.github.stoplag.worked.WorkedLamp;
import io.github.stoplag.worked.WorkedStop;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import java.util.function.IntFunction;

/** Questions on how soon a filament lamp lights and goes dark. */
final class ExplainedLamp {
    private static final String SEEN = "half its final light; when an eye sees it is another question: see lamp-swap";
    private static final String AT_ONCE =
            "the LED is taken to light at once; drivers and wiring of real ones take up to milliseconds";
    private static final int FEWEST = 4;
    private static final int MOST = 16;
    private static final MathContext DIGITS = new MathContext(6);
    private static final double ROOM_K = 293.15;

    private ExplainedLamp() {}

    static Solution warm(QuestionParts parts, Style style) {
        return heating(parts, style, lamp(parts), Slot.LEVEL);
    }

    private static Solution heating(QuestionParts parts, Style style, FilamentLamp lamp, Slot levelSlot) {
        Given supply = parts.orAssume(
                Slot.SUPPLY_OF_LAMP,
                Given.of(lamp.ratedVoltage().inVolts(), Unit.VOLT),
                "the voltage the bulb is rated at; a lower supply lights it later");
        Given series =
                parts.orAssume(Slot.SERIES, Given.of(0, Unit.OHM), "wiring and switch left out; they light it later");
        double level = level(parts, levelSlot, 50, SEEN);
        SupplyConditions conditions = SupplyConditions.of(
                        Voltage.volts(supply.amount().in(Unit.VOLT)))
                .withSeriesResistance(Resistance.ohms(series.amount().in(Unit.OHM)));
        FilamentOnset onset = lamp.switchOn(conditions);
        double atS = onset.timeToLevelS(level)
                .orElseThrow(() -> new InputException("the lamp never gets to " + percent(level)));
        Given to = kelvin(
                onset.temperatureAt(TimeSpan.seconds(atS)),
                "gives " + percent(level) + " of the final light, by the model of the lamp");
        onset.evidence().caveats().forEach(caveat -> parts.assume(caveat.text()));
        Given cold = Given.of(ROOM_K, Unit.KELVIN, "cold, 20 °C");
        return fewest(steps -> WorkedLamp.heatingTime(style, lamp, supply, series, cold, to, steps));
    }

    static Solution off(QuestionParts parts, Style style) {
        FilamentLamp lamp = lamp(parts);
        double level = level(parts, Slot.LEVEL, 10, "a tenth of its light left");
        FilamentDecay decay = FilamentDecay.of(
                lamp, SupplyConditions.of(Voltage.volts(0)).withInitialTemperature(lamp.filamentTemperature()));
        double atS = decay.timeToLevelS(level).orElseThrow();
        decay.evidence().caveats().forEach(caveat -> parts.assume(caveat.text()));
        Given lit = kelvin(lamp.filamentTemperature(), "lit at its rated voltage, by the model of the lamp");
        Given dark = kelvin(
                decay.temperatureAt(TimeSpan.seconds(atS)),
                "leaves " + percent(level) + " of the light, by the model of the lamp");
        return fewest(steps -> WorkedLamp.coolingTime(style, lamp, lit, dark, steps));
    }

    /** What a later lamp costs; the time, if none is stated, is that of a bulb behind an LED. */
    static Solution lag(QuestionParts parts, Style style) {
        Optional<Given> stated = parts.find(Slot.LAG);
        if (stated.isEmpty() && parts.find(Slot.SPEED).isEmpty()) {
            parts.assume(AT_ONCE);
            parts.assume("no speed given: the time alone is worked, by which the bulb is later");
            return heating(parts, style, usual(parts), Slot.LEVEL_NAMED);
        }
        Given speed = parts.need(Slot.SPEED);
        if (stated.isPresent()
                && (parts.find(Slot.BULB).isPresent() || parts.named().isPresent())) {
            throw new InputException("lag takes a time or a bulb to find it from, not both");
        }
        Given lag = stated.orElseGet(() -> {
            FilamentLamp lamp = usual(parts);
            Given supply = parts.orAssume(
                    Slot.SUPPLY_OF_LAMP,
                    Given.of(lamp.ratedVoltage().inVolts(), Unit.VOLT),
                    "the voltage the bulb is rated at; a lower supply lights it later");
            double level = level(parts, Slot.LEVEL_NAMED, 50, SEEN);
            FilamentOnset onset = lamp.switchOn(
                    SupplyConditions.of(Voltage.volts(supply.amount().in(Unit.VOLT))));
            onset.evidence().caveats().forEach(caveat -> parts.assume(caveat.text()));
            double atS = onset.timeToLevelS(level)
                    .orElseThrow(() -> new InputException("the lamp never gets to " + percent(level)));
            parts.assume(AT_ONCE);
            return Given.of(
                    new BigDecimal(atS).round(new MathContext(3)).doubleValue(),
                    Unit.SECOND,
                    "until the bulb gives " + percent(level) + " of its light, by the model of the lamp");
        });
        return WorkedStop.lampLagDistance(style, speed, ExplainedStop.reaction(parts, Slot.REACTION_NAMED), lag);
    }

    /** The working with the fewest steps that comes near the model without steps. */
    private static Solution fewest(IntFunction<Solution> working) {
        int steps = FEWEST;
        Solution worked = working.apply(steps);
        while (steps < MOST && !worked.checks().stream().allMatch(Solution.Verification::agrees)) {
            steps *= 2;
            worked = working.apply(steps);
        }
        if (!worked.checks().stream().allMatch(Solution.Verification::agrees)) {
            throw new InputException("the light creeps to its end there, which a working in " + MOST
                    + " steps does not follow within 5 %; ask for a level further off");
        }
        return worked;
    }

    private static FilamentLamp lamp(QuestionParts parts) {
        Optional<String> name = parts.named();
        if (name.isPresent()) {
            if (parts.find(Slot.BULB).isPresent()) {
                throw new InputException("a bulb has a name or watts, got " + name.get() + " and "
                        + parts.need(Slot.BULB).amount());
            }
            BulbRating bulb = bulb(name.get(), parts);
            FilamentLamp lamp = bulb.majorLamp().build();
            parts.assume(bulb + " as rated: " + lamp.ratedPower() + " at " + lamp.ratedVoltage()
                    + (bulb.minor().isPresent() ? ", the stronger of its two filaments" : ""));
            return lamp;
        }
        return rated(parts, parts.need(Slot.BULB));
    }

    private static FilamentLamp usual(QuestionParts parts) {
        return parts.named().isPresent()
                ? lamp(parts)
                : rated(parts, parts.orAssume(Slot.BULB, Given.of(21, Unit.WATT), "the usual bulb of a stop lamp"));
    }

    private static FilamentLamp rated(QuestionParts parts, Given watts) {
        Given volts = parts.orAssume(
                Slot.RATED,
                Given.of(13.5, Unit.VOLT),
                "the test voltage of signal bulbs for 12 V vehicles (UN R37, from memory)");
        return FilamentLamp.builder(
                        Voltage.volts(volts.amount().in(Unit.VOLT)),
                        Power.watts(watts.amount().in(Unit.WATT)))
                .build();
    }

    /** The bulb of a name, for a 24 V vehicle if a rating above 20 V stands beside it. */
    static BulbRating bulb(String name, QuestionParts parts) {
        boolean truck = parts.find(Slot.RATED)
                .filter(volts -> volts.amount().in(Unit.VOLT) > 20)
                .isPresent();
        return truck ? BulbCatalogue.published(name, Voltage.volts(24)) : BulbCatalogue.published(name);
    }

    private static double level(QuestionParts parts, Slot slot, double assumed, String because) {
        double level = parts.orAssume(slot, Given.of(assumed, Unit.PERCENT), because)
                .amount()
                .in(Unit.NONE);
        if (!(level >= 0.001 && level <= 0.99)) {
            throw new InputException("level of the light must be in [0.1, 99] %, got " + percent(level));
        }
        return level;
    }

    private static String percent(double ratio) {
        return new BigDecimal(100 * ratio).round(DIGITS).stripTrailingZeros().toPlainString() + " %";
    }

    private static Given kelvin(Temperature temperature, String from) {
        return Given.of(new BigDecimal(temperature.inKelvin()).round(DIGITS).doubleValue(), Unit.KELVIN, from);
    }
}
