package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;

/**
 * A filament lamp made fast by its circuit: kept warm by a standby voltage, then driven above its voltage until it is
 * nearly hot.
 *
 * <p>Boost time tb = ∫ C/N dT at the boost voltage, from the held temperature to the one with a share s of the final
 * light; then the supply's own voltage. The other lever, less mass, needs no circuit: a filament of the same voltage
 * and temperature and a share p of the power is faster by p^(2/3), so several fine filaments in parallel make a fast
 * lamp of the same light.
 *
 * <p>What the levers give, worked out for a 27 W signal bulb: standby below visible glow brings little, since most of
 * the way to full light is still to go; the boost brings most. Ranges: standby [0, supply), boost [supply, 5 × supply],
 * s in [0.1, 0.99]. The filament is never taken beyond its final temperature, but each boost shortens its life by an
 * amount no source gives.
 */
public final class FastFilament implements Evident {
    private static final double MOST_BOOST = 5;

    private final KeepWarm standby;
    private final TimeSpan boostTime;
    private final FilamentHistory history;
    private final Voltage boost;

    private FastFilament(KeepWarm standby, Voltage boost, TimeSpan boostTime, FilamentHistory history) {
        this.standby = standby;
        this.boost = boost;
        this.boostTime = boostTime;
        this.history = history;
    }

    /**
     * Switches a fast lamp on.
     *
     * @param lamp the bulb
     * @param conditions supply, wiring, surroundings and lens; the initial temperature is that of the standby
     * @param standbyVoltage the standby voltage, 0 V for none
     * @param boostVoltage the voltage at switch-on, the supply's own for none
     * @param untilRatio the share s of the final light at which the boost ends
     * @return the lamp's course
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static FastFilament of(
            FilamentLamp lamp,
            SupplyConditions conditions,
            Voltage standbyVoltage,
            Voltage boostVoltage,
            double untilRatio) {
        Objects.requireNonNull(boostVoltage, "boostVoltage");
        Objects.requireNonNull(lamp, "lamp");
        Objects.requireNonNull(standbyVoltage, "standbyVoltage");
        double supplyV = conditions.supply().inVolts();
        Check.inRange("standby voltage", standbyVoltage.inVolts(), 0, Math.nextDown(supplyV), "V");
        double boostV = Check.inRange("boost voltage", boostVoltage.inVolts(), supplyV, MOST_BOOST * supplyV, "V");
        Check.inRange("share of the final light at which the boost ends", untilRatio, 0.1, 0.99, "");
        KeepWarm held = KeepWarm.byVoltage(lamp, conditions.withSupply(standbyVoltage));
        FilamentOnset plain = lamp.switchOn(held.before(conditions));
        Photometry photometry = Photometry.tungsten(conditions.lens());
        double steadyK = plain.steadyTemperature().inKelvin();
        double endLog = photometry.logLuminance(steadyK) + Math.log(untilRatio);
        double heldK = held.temperature().inKelvin();
        double boostS = 0;
        if (boostV > supplyV && endLog > photometry.logLuminance(heldK)) {
            double endK = photometry.temperatureK(endLog, heldK, steadyK);
            boostS = HeatBalance.of(lamp, conditions).secondsBetween(heldK, endK, boostV);
        }
        SupplyCourse course = boostS > 0
                ? SupplyCourse.points(
                        new double[] {0, boostS, boostS, 2 * boostS}, new double[] {boostV, boostV, supplyV, supplyV})
                : SupplyCourse.step(conditions.supply());
        double endS = boostS + 1.2 * plain.settledS();
        return new FastFilament(
                held,
                boostVoltage,
                TimeSpan.seconds(boostS),
                FilamentHistory.of(lamp, held.before(conditions), course, TimeSpan.seconds(endS)));
    }

    /** {@return the state before switch-on} */
    public KeepWarm standby() {
        return standby;
    }

    /** {@return how long the boost lasts} */
    public TimeSpan boostTime() {
        return boostTime;
    }

    /** {@return temperature, current and light against time} */
    public FilamentHistory history() {
        return history;
    }

    /** {@return the light as an onset for a detector, in 4000 steps} */
    public MeasuredLamp onset() {
        return history.toOnset(4000);
    }

    /** {@return what the history rests on, with the reservations of standby and boost: glow, life} */
    @Override
    public Evidence evidence() {
        return history.evidence()
                .withCaveatIf(
                        standby.temperature().inKelvin() > FilamentOnset.VISIBLE_GLOW_K,
                        "standby glows: " + Numbers.text(standby.lightRatio(), 2) + " of the rated light at "
                                + Numbers.text(standby.temperature().inKelvin(), 4) + " K")
                .withCaveatIf(
                        boostTime.inSeconds() > 0,
                        "a boost to " + boost + " for " + Numbers.text(boostTime.inMillis(), 3)
                                + " ms at each switch-on shortens the filament's life by an amount no source gives");
    }
}
