package io.github.stoplag.lamp;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * What heats and what cools a filament at a temperature: C(T) dT/dt = I² R(T) − loss(T), I = U/(R(T) + Rs).
 *
 * <p>Symbols: C heat capacity in J/K; U supply in V; Rs series resistance in Ω; T0 surroundings in K.
 */
record HeatBalance(FilamentWire wire, double seriesOhm, double ambientK) {
    private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(10);
    private static final double PANEL_K = 50;

    static HeatBalance of(FilamentLamp lamp, SupplyConditions conditions) {
        return new HeatBalance(
                lamp.wire(),
                conditions.seriesResistance().inOhms(),
                conditions.ambientTemperature().inKelvin());
    }

    double currentA(double temperatureK, double supplyV) {
        return supplyV / (wire.resistanceOhm(temperatureK) + seriesOhm);
    }

    double filamentW(double temperatureK, double supplyV) {
        double ohm = wire.resistanceOhm(temperatureK);
        double ampere = supplyV / (ohm + seriesOhm);
        return ampere * ampere * ohm;
    }

    double lossW(double temperatureK) {
        return wire.lossW(temperatureK, ambientK);
    }

    double netW(double temperatureK, double supplyV) {
        return filamentW(temperatureK, supplyV) - lossW(temperatureK);
    }

    /** Gives ln(gain/loss), far straighter in the temperature than their difference. */
    double logRatio(double temperatureK, double supplyV) {
        return Math.log(filamentW(temperatureK, supplyV) / lossW(temperatureK));
    }

    /** Guesses the steady temperature by the usual law T ~ U^0.37 from the rated one. */
    double nearSteadyK(double supplyV) {
        double ratedV = Math.sqrt(wire.ratedW() * wire.ratedOhm());
        double guessK = wire.filamentK() * Math.pow(supplyV / ratedV, 0.37);
        return Math.min(FilamentWire.HIGHEST_K - 1, Math.max(ambientK + 100, guessK));
    }

    /** Gives the supply that just holds a temperature. */
    double holdingV(double temperatureK) {
        double ohm = wire.resistanceOhm(temperatureK);
        return (ohm + seriesOhm) * Math.sqrt(lossW(temperatureK) / ohm);
    }

    /** Gives the time from one temperature to another, between which the balance must not vanish. */
    double secondsBetween(double fromK, double toK, double supplyV) {
        int panels = Math.max(1, (int) Math.ceil(Math.abs(toK - fromK) / PANEL_K));
        double half = (toK - fromK) / panels / 2;
        double sum = 0;
        for (int i = 0; i < panels; i++) {
            double mid = fromK + (2 * i + 1) * half;
            sum += half * RULE.integrate(x -> wire.heatCapacityJPerK(mid + half * x) / netW(mid + half * x, supplyV));
        }
        return sum;
    }
}
