package io.github.stoplag.sight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.Lens;
import io.github.stoplag.lamp.MeasuredLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;

class OnsetProperties {
    @Provide
    Arbitrary<FilamentLamp> lamps() {
        return Combinators.combine(
                        Arbitraries.of(6.75, 12.8, 13.5, 28.0),
                        Arbitraries.doubles().between(3, 40),
                        Arbitraries.doubles().between(2300, 3000),
                        Arbitraries.doubles().between(0, 0.4),
                        Arbitraries.doubles().between(0.5, 1))
                .as((volts, watts, kelvin, gas, coil) -> FilamentLamp.builder(Voltage.volts(volts), Power.watts(watts))
                        .filamentTemperature(Temperature.kelvin(kelvin))
                        .gasLossShare(gas)
                        .coilFactor(coil)
                        .build());
    }

    private static FilamentOnset onset(FilamentLamp lamp, double share, double seriesShare, Lens lens) {
        return lamp.switchOn(
                SupplyConditions.of(Voltage.volts(share * lamp.ratedVoltage().inVolts()))
                        .withSeriesResistance(Resistance.ohms(
                                seriesShare * lamp.ratedResistance().inOhms()))
                        .withLens(lens));
    }

    private static void assertRisesWithinBounds(OnsetCurve curve) {
        double before = curve.relativeIntensity(-1);
        for (int i = 0; i <= 200; i++) {
            double now = curve.relativeIntensity(1.3 * curve.settledS() * i / 200);
            assertThat(now).isBetween(0.0, 1.0);
            assertThat(now).isGreaterThanOrEqualTo(before * (1 - 1e-11));
            before = now;
        }
    }

    @Property(tries = 200, seed = "42")
    void filamentsRiseWithinBounds(
            @ForAll("lamps") FilamentLamp lamp,
            @ForAll @DoubleRange(min = 0.1, max = 1.15) double share,
            @ForAll @DoubleRange(min = 0, max = 0.3) double seriesShare,
            @ForAll Lens lens) {
        assertRisesWithinBounds(onset(lamp, share, seriesShare, lens));
    }

    @Property(tries = 200, seed = "42")
    void ledsRiseWithinBounds(
            @ForAll @DoubleRange(min = 0, max = 1) double delayS, @ForAll @DoubleRange(min = 0, max = 1) double riseS) {
        assertRisesWithinBounds(LedLamp.of(TimeSpan.seconds(delayS), TimeSpan.seconds(riseS)));
    }

    @Property(tries = 300, seed = "42")
    void measuredLampsRiseWithinBoundsWhateverTheNoise(
            @ForAll @Size(min = 2, max = 40) List<@DoubleRange(min = -0.2, max = 1.2) Double> samples) {
        double[] timeS = new double[samples.size()];
        Arrays.setAll(timeS, i -> 0.004 * i);
        assertRisesWithinBounds(MeasuredLamp.of(
                "noise",
                timeS,
                samples.stream().mapToDouble(Double::doubleValue).toArray()));
    }

    @Property(tries = 300, seed = "42")
    void aLowerSupplyNeverReachesTheSameLightSooner(
            @ForAll("lamps") FilamentLamp lamp,
            @ForAll @DoubleRange(min = 0.2, max = 1.15) double share,
            @ForAll @DoubleRange(min = 0.01, max = 0.5) double drop,
            @ForAll @DoubleRange(min = 0, max = 0.3) double seriesShare,
            @ForAll @DoubleRange(min = 0.01, max = 0.99) double level) {
        FilamentOnset high = onset(lamp, share, seriesShare, Lens.RED);
        FilamentOnset low = onset(lamp, share * (1 - drop), seriesShare, Lens.RED);
        double sameLight = level * low.relativeToRated() / high.relativeToRated();
        assertThat(low.timeToLevelS(level).orElseThrow())
                .isGreaterThan(high.timeToLevelS(sameLight).orElseThrow());
    }

    /**
     * True in the range of vehicle supplies; a filament that hardly glows can reach a share of its own dim light
     * sooner.
     */
    @Property(tries = 300, seed = "42")
    void aLowerSupplyNeverReachesTheSameShareSooner(
            @ForAll("lamps") FilamentLamp lamp,
            @ForAll @DoubleRange(min = 0.7, max = 1.15) double share,
            @ForAll @DoubleRange(min = 0.01, max = 0.3) double drop,
            @ForAll @DoubleRange(min = 0, max = 0.3) double seriesShare,
            @ForAll @DoubleRange(min = 0.01, max = 0.99) double level) {
        FilamentOnset high = onset(lamp, share, seriesShare, Lens.RED);
        FilamentOnset low = onset(lamp, share * (1 - drop), seriesShare, Lens.RED);
        assertThat(low.timeToLevelS(level).orElseThrow())
                .isGreaterThan(high.timeToLevelS(level).orElseThrow());
    }

    @Property(tries = 100, seed = "42")
    void theEnergyBalanceClosesInTheSteadyState(
            @ForAll("lamps") FilamentLamp lamp,
            @ForAll @DoubleRange(min = 0.05, max = 1.15) double share,
            @ForAll @DoubleRange(min = 0, max = 0.3) double seriesShare) {
        FilamentOnset onset = onset(lamp, share, seriesShare, Lens.CLEAR);
        double lossW =
                lamp.lossAt(onset.steadyTemperature(), Temperature.kelvin(300)).inWatts();
        assertThat(onset.steadyPower().inWatts() / lossW).isCloseTo(1, within(1e-9));
    }

    @Property(tries = 60, seed = "42")
    void aBrighterLampIsSeenNoLater(
            @ForAll("lamps") FilamentLamp lamp,
            @ForAll @DoubleRange(min = 2.1, max = 300) double finalCd,
            @ForAll @DoubleRange(min = 1.01, max = 3) double brighter) {
        IntegratingEye eye = IntegratingEye.of(TimeSpan.seconds(0.2), LuminousIntensity.candela(2));
        FilamentOnset onset = onset(lamp, 1, 0, Lens.RED);
        double dim = seenS(eye, onset, finalCd);
        assertThat(seenS(eye, onset, finalCd * brighter)).isLessThan(dim);
        // the light itself must have passed the threshold before the eye can have summed up to it
        assertThat(dim).isGreaterThan(onset.timeToLevelS(2 / finalCd).orElseThrow());
    }

    private static double seenS(Detector detector, OnsetCurve onset, double finalCd) {
        if (detector.detect(LampSignal.of(onset, LuminousIntensity.candela(finalCd))) instanceof Detection.Seen seen) {
            return seen.at().inSeconds();
        }
        throw new AssertionError("not seen");
    }
}
