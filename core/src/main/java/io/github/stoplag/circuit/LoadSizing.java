package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;

/**
 * The load resistor that would keep an outage monitor content with an LED lamp: none, or the greatest that surely does.
 *
 * <p>In parallel with the lamp the resistor must draw I_h − I_LED(U) at every supply U, where I_h is the current from
 * which every unit reports healthy. With the resistor's own tolerance p:
 *
 * <pre>R ≤ min over U of U / (I_h − I_LED(U)) / (1 + p)</pre>
 */
public sealed interface LoadSizing extends Evident {
    /**
     * Finds the greatest load resistor for a monitor and a lamp.
     *
     * @param monitor the outage monitor
     * @param lamp the LED lamp
     * @param toleranceRatio the resistor's tolerance p as a share of its value, in [0, 0.5]
     * @return {@link NotNeeded} or {@link Needed}
     * @throws IllegalArgumentException if the tolerance is outside its range
     */
    static LoadSizing of(OutageMonitor monitor, CurrentDraw lamp, double toleranceRatio) {
        Objects.requireNonNull(lamp, "lamp");
        double p = Ranges.TOLERANCE.check(toleranceRatio);
        OutageVerdict alone = monitor.judge(lamp);
        if (alone.outcome() == OutageVerdict.Outcome.REPORTS_HEALTHY) {
            return new NotNeeded(alone, alone.evidence());
        }
        double healthyA = monitor.healthyFrom().inAmperes();
        DoubleUnaryOperator conductanceS = v -> (healthyA - lamp.currentA(v)) / v;
        double atLeastV = alone.lowest().supply().inVolts();
        double atV = Extremum.argMax(
                conductanceS,
                monitor.lowestSupply().inVolts(),
                monitor.highestSupply().inVolts(),
                DoubleStream.concat(Arrays.stream(lamp.knotsV()), DoubleStream.of(atLeastV))
                        .toArray());
        double siemens = conductanceS.applyAsDouble(atV);
        double ohms = greatestOhm(monitor, lamp, p, 1 / (siemens * (1 + p)));
        Evidence evidence = Evidence.of("load resistor: R ≤ U/(I_h − I_LED)/(1 + p) at every supply, I_h = "
                        + monitor.healthyFrom() + ", p = " + p)
                .with(alone.evidence())
                .withCaveat("a parallel resistor may hide a dead LED from the monitor; see LoadResistor.watch")
                .withCautions(Caution.LAMP_LAW, Caution.INSULATION, Caution.LICENSED_PRACTICE);
        return new Needed(
                Resistance.ohms(ohms), Voltage.volts(atV), Current.amperes(siemens * atV), p, alone, evidence);
    }

    /**
     * Settles the last digits of the limit by the monitor's own verdict, so that the two never differ: the limit as a
     * decimal of twelve digits if the monitor is content with it, else the nearest below with which it is.
     */
    private static double greatestOhm(OutageMonitor monitor, CurrentDraw lamp, double toleranceRatio, double limitOhm) {
        double ohms = new BigDecimal(limitOhm).round(new MathContext(12)).doubleValue();
        double off = Math.ulp(1.0);
        while (monitor.judge(lamp.plus(CurrentDraw.resistive(Resistance.ohms(ohms * (1 + toleranceRatio)))))
                        .outcome()
                != OutageVerdict.Outcome.REPORTS_HEALTHY) {
            ohms = limitOhm * (1 - off);
            off *= 2;
        }
        return ohms;
    }

    /**
     * The monitor reports the lamp healthy as it is.
     *
     * @param lampAlone the monitor's verdict on the lamp
     * @param evidence what it rests on
     */
    record NotNeeded(OutageVerdict lampAlone, Evidence evidence) implements LoadSizing {

        /**
         * Refuses nulls.
         *
         * @param lampAlone the monitor's verdict on the lamp
         * @param evidence what it rests on
         * @throws NullPointerException if one that is required is null
         */
        public NotNeeded {
            Objects.requireNonNull(evidence, "evidence");
            Objects.requireNonNull(lampAlone, "lampAlone");
        }
    }

    /**
     * The monitor needs a load.
     *
     * @param greatest the greatest nominal resistance that surely keeps the monitor content
     * @param decidingSupply the supply at which it only just does
     * @param toDraw the current the resistor must draw there
     * @param toleranceRatio the resistor's tolerance that was allowed for
     * @param lampAlone the monitor's verdict on the lamp without the resistor
     * @param evidence what it rests on
     */
    record Needed(
            Resistance greatest,
            Voltage decidingSupply,
            Current toDraw,
            double toleranceRatio,
            OutageVerdict lampAlone,
            Evidence evidence)
            implements LoadSizing {

        /**
         * Refuses nulls.
         *
         * @param greatest the greatest nominal resistance that surely keeps the monitor content
         * @param decidingSupply the supply at which it only just does
         * @param toDraw the current the resistor must draw there
         * @param toleranceRatio the resistor's tolerance that was allowed for
         * @param lampAlone the monitor's verdict on the lamp without the resistor
         * @param evidence what it rests on
         * @throws NullPointerException if one that is required is null
         */
        public Needed {
            Objects.requireNonNull(decidingSupply, "decidingSupply");
            Objects.requireNonNull(evidence, "evidence");
            Objects.requireNonNull(greatest, "greatest");
            Objects.requireNonNull(lampAlone, "lampAlone");
            Objects.requireNonNull(toDraw, "toDraw");
        }

        /**
         * Gives the greatest preferred value that still keeps the monitor content.
         *
         * @param series the series of values to be had
         * @return the preferred value, not above the greatest
         */
        public Resistance preferred(ESeries series) {
            return series.atMost(greatest);
        }
    }
}
