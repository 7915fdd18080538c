package io.github.stoplag.examples.teach;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.worked.Given;
import io.github.stoplag.worked.Solution;
import io.github.stoplag.worked.Style;
import io.github.stoplag.worked.Unit;
import io.github.stoplag.worked.WorkedCircuit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;

/** Questions on the electrical side of a lamp swap. */
final class ExplainedCircuit {
    private static final MathContext DIGITS = new MathContext(4);
    private static final String COMMON = "a usual grade; common practice, no source";

    private ExplainedCircuit() {}

    static Solution resistor(QuestionParts parts, Style style) {
        Given healthy = healthy(parts);
        Given led = parts.orAssume(
                Slot.LED,
                Given.of(0, Unit.AMPERE),
                "the resistor alone has to satisfy the monitor, which is the safe side");
        if (!(led.amount().in(Unit.AMPERE) < healthy.amount().in(Unit.AMPERE))) {
            throw new InputException("by these figures no load resistor is needed: the LED lamp draws " + led.amount()
                    + " and the monitor takes " + healthy.amount() + " for healthy");
        }
        Optional<Given> rated = named(parts)
                .map(lamp -> Given.of(lamp.ratedVoltage().inVolts(), Unit.VOLT, "rating of the bulb"))
                .or(() -> parts.find(Slot.RATED));
        Given supply = rated.isPresent() && parts.find(Slot.SUPPLY).isEmpty()
                ? parts.orAssume(
                        Slot.SUPPLY,
                        rated.get(),
                        "the bulb's rated voltage; a vehicle at rest supplies less, for which the resistor must be smaller")
                : parts.need(Slot.SUPPLY);
        return WorkedCircuit.loadResistor(style, healthy, led, supply, tolerance(parts));
    }

    private static Optional<FilamentLamp> named(QuestionParts parts) {
        return parts.named()
                .map(name -> ExplainedLamp.bulb(name, parts).majorLamp().build());
    }

    private static Given healthy(QuestionParts parts) {
        Optional<Given> stated = parts.find(Slot.HEALTHY);
        if (stated.isPresent()) {
            if (parts.find(Slot.BULB).isPresent()) {
                throw new InputException(
                        "resistor takes a bulb or the current the monitor takes for healthy, not both");
            }
            return stated.get();
        }
        Optional<FilamentLamp> bulb = named(parts);
        Given power = bulb.map(lamp -> Given.of(lamp.ratedPower().inWatts(), Unit.WATT, "rating of the bulb"))
                .orElseGet(() -> parts.need(Slot.BULB));
        Given rated = bulb.map(lamp -> Given.of(lamp.ratedVoltage().inVolts(), Unit.VOLT, "rating of the bulb"))
                .orElseGet(() -> parts.need(Slot.RATED));
        double watts = power.amount().in(Unit.WATT);
        double volts = rated.amount().in(Unit.VOLT);
        if (!(watts > 0 && volts > 0)) {
            throw new InputException("power and rated voltage of the bulb must be above 0, got " + power.amount()
                    + " and " + rated.amount());
        }
        parts.assume("the monitor takes the whole rated current of the bulb for healthy; a real monitor's threshold is"
                + " lower, ask its maker or measure it");
        return Given.of(
                new BigDecimal(watts / volts).round(DIGITS).doubleValue(),
                Unit.AMPERE,
                "the bulb's rated current " + power.amount() + "/" + rated.amount());
    }

    private static Given tolerance(QuestionParts parts) {
        return parts.orAssume(Slot.TOLERANCE, Given.of(5, Unit.PERCENT), COMMON);
    }

    static Solution heat(QuestionParts parts, Style style) {
        return WorkedCircuit.resistorHeat(
                style,
                parts.need(Slot.RESISTANCE),
                tolerance(parts),
                parts.need(Slot.VOLTAGE),
                parts.need(Slot.THERMAL),
                parts.need(Slot.AMBIENT));
    }

    static Solution diode(QuestionParts parts, Style style) {
        return WorkedCircuit.diodeHeat(
                style,
                parts.need(Slot.FORWARD),
                parts.need(Slot.CURRENT),
                parts.need(Slot.THERMAL),
                parts.need(Slot.AMBIENT));
    }
}
