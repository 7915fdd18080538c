package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.List;
import java.util.Objects;

/** What comes of switching a filament lamp on, faults included. */
public sealed interface SwitchOnOutcome extends Evident {
    /**
     * The lamp lights.
     *
     * @param onset its onset
     */
    record Lights(FilamentOnset onset) implements SwitchOnOutcome {

        /**
         * Refuses nulls.
         *
         * @param onset its onset
         * @throws NullPointerException if one that is required is null
         */
        public Lights {
            Objects.requireNonNull(onset, "onset");
        }

        @Override
        public Evidence evidence() {
            return onset.evidence();
        }
    }

    /**
     * The filament warms but does not glow visibly, or does not warm at all.
     *
     * @param onset its onset, of no use as a signal
     * @param reason why it stays dark, with the temperature reached
     */
    record TooDim(FilamentOnset onset, String reason) implements SwitchOnOutcome {

        /**
         * Refuses nulls.
         *
         * @param onset its onset, of no use as a signal
         * @param reason why it stays dark, with the temperature reached
         * @throws NullPointerException if one that is required is null
         */
        public TooDim {
            Objects.requireNonNull(onset, "onset");
            Objects.requireNonNull(reason, "reason");
        }

        @Override
        public Evidence evidence() {
            return onset.evidence();
        }
    }

    /**
     * The supply drives the filament beyond 3600 K, the end of the tungsten tables and about to melt at 3695 K.
     *
     * @param after the time until it reaches 3600 K
     * @param limit the voltage at which it would settle at 3600 K
     * @param reason what happens
     * @param evidence what the outcome rests on
     */
    record BurnsOut(TimeSpan after, Voltage limit, String reason, Evidence evidence) implements SwitchOnOutcome {

        /**
         * Refuses nulls.
         *
         * @param after the time until it reaches 3600 K
         * @param limit the voltage at which it would settle at 3600 K
         * @param reason what happens
         * @param evidence what the outcome rests on
         * @throws NullPointerException if one that is required is null
         */
        public BurnsOut {
            Objects.requireNonNull(after, "after");
            Objects.requireNonNull(evidence, "evidence");
            Objects.requireNonNull(limit, "limit");
            Objects.requireNonNull(reason, "reason");
        }
    }

    /**
     * A broken filament, a burnt-out bulb or a loose contact: no current, no light.
     *
     * @param acrossGap the voltage that stands across the gap
     * @param reason what happens
     */
    record OpenCircuit(Voltage acrossGap, String reason) implements SwitchOnOutcome {

        /**
         * Refuses nulls.
         *
         * @param acrossGap the voltage that stands across the gap
         * @param reason what happens
         * @throws NullPointerException if one that is required is null
         */
        public OpenCircuit {
            Objects.requireNonNull(acrossGap, "acrossGap");
            Objects.requireNonNull(reason, "reason");
        }

        @Override
        public Evidence evidence() {
            return Evidence.of(reason);
        }
    }

    /**
     * The lamp is bridged: only switch and harness limit the current, and take all the power.
     *
     * @param current U/Rs
     * @param wiringPower U²/Rs, heating the wiring until the fuse opens
     * @param reason what happens
     * @param cautions what to mind
     */
    record ShortCircuit(Current current, Power wiringPower, String reason, List<Caution> cautions)
            implements SwitchOnOutcome {

        /**
         * Refuses nulls.
         *
         * @param current U/Rs
         * @param wiringPower U²/Rs, heating the wiring until the fuse opens
         * @param reason what happens
         * @param cautions what to mind
         * @throws NullPointerException if one that is required is null
         */
        public ShortCircuit {
            Objects.requireNonNull(cautions, "cautions");
            Objects.requireNonNull(current, "current");
            Objects.requireNonNull(reason, "reason");
            Objects.requireNonNull(wiringPower, "wiringPower");
        }

        @Override
        public Evidence evidence() {
            return new Evidence(List.of(reason), List.of(), cautions);
        }
    }

    /**
     * Works out what a sound lamp does.
     *
     * @param lamp the lamp
     * @param conditions supply, wiring, temperatures and lens
     * @return lights, too dim, or burns out
     * @throws IllegalArgumentException if the filament starts hotter than it will settle
     */
    static SwitchOnOutcome of(FilamentLamp lamp, SupplyConditions conditions) {
        HeatBalance balance = HeatBalance.of(lamp, conditions);
        double supplyV = conditions.supply().inVolts();
        double initialK = conditions.initialTemperature().inKelvin();
        // loss grows far faster than what a constant supply can give, so one look at the hot end decides
        if (balance.netW(FilamentWire.HIGHEST_K, supplyV) > 0) {
            TimeSpan after = TimeSpan.seconds(balance.secondsBetween(initialK, FilamentWire.HIGHEST_K, supplyV));
            Voltage limit = Voltage.volts(balance.holdingV(FilamentWire.HIGHEST_K));
            return new BurnsOut(
                    after,
                    limit,
                    conditions.supply() + " is above the " + Numbers.text(limit.inVolts(), 4) + " V that hold "
                            + lamp.label() + " at 3600 K: it passes 3600 K after "
                            + Numbers.text(after.inMillis(), 3) + " ms and melts at 3695 K",
                    FilamentOnset.basis(lamp, conditions, "switched on to a step of " + conditions.supply()));
        }
        FilamentOnset onset = lamp.switchOn(conditions);
        double steadyK = onset.steadyTemperature().inKelvin();
        if (steadyK < FilamentOnset.VISIBLE_GLOW_K) {
            return new TooDim(
                    onset,
                    conditions.supply() + " holds the filament at " + Numbers.text(steadyK, 4)
                            + " K; solids begin to glow near " + Numbers.text(FilamentOnset.VISIBLE_GLOW_K)
                            + " K (Draper point, from memory)");
        }
        return new Lights(onset);
    }

    /**
     * Works out what a supply does to an open lamp circuit.
     *
     * @param conditions the supply
     * @return no current and no light
     */
    static OpenCircuit openCircuit(SupplyConditions conditions) {
        return new OpenCircuit(
                conditions.supply(),
                "open circuit: no current and no light, the whole " + conditions.supply() + " stands across the gap");
    }

    /**
     * Works out what a supply does to a bridged lamp.
     *
     * @param conditions the supply and the series resistance, which must be above 0 Ω
     * @return the current and where its power goes
     * @throws IllegalArgumentException if the series resistance is 0 Ω: nothing would limit the current
     */
    static ShortCircuit shortCircuit(SupplyConditions conditions) {
        Resistance wiring = conditions.seriesResistance();
        if (!(wiring.inOhms() > 0)) {
            throw new IllegalArgumentException(
                    "series resistance must be above 0 Ω for a short circuit to have a finite" + " current, got "
                            + wiring);
        }
        double volt = conditions.supply().inVolts();
        Current current = Current.amperes(volt / wiring.inOhms());
        return new ShortCircuit(
                current,
                Power.watts(volt * volt / wiring.inOhms()),
                "short circuit: " + Numbers.text(current.inAmperes(), 3) + " A through " + wiring
                        + " of switch and harness until the fuse opens; no light",
                List.of(Caution.FUSES, Caution.INSULATION));
    }
}
