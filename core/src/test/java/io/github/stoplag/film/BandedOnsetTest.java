package io.github.stoplag.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.film.FilmedChange.BandPoint;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sight.LampSignal;
import io.github.stoplag.source.Evidence;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class BandedOnsetTest {
    private static final FilamentOnset LAMP = FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26))
            .build()
            .switchOn(SupplyConditions.of(Voltage.volts(12.8)));
    private static final IntegratingEye EYE = IntegratingEye.of(TimeSpan.seconds(0.1), LuminousIntensity.candela(3));

    private static List<BandPoint> band(double halfWidthS) {
        List<BandPoint> band = new ArrayList<>();
        for (double level = 0.002; level < 0.999; level += 0.004) {
            double timeS = LAMP.timeToLevelS(level).orElseThrow();
            band.add(new BandPoint(level, timeS, timeS - halfWidthS, timeS + halfWidthS));
        }
        return band;
    }

    private static double seenS(OnsetCurve onset) {
        return EYE.detect(LampSignal.of(onset, LuminousIntensity.candela(60)))
                .orElseThrow()
                .inSeconds();
    }

    /** A curve moved as a whole moves the moment seen by as much, and the curve itself is seen when the model is. */
    @Test
    void whatIsSeenLiesBetweenEarlyAndLate() {
        BandedOnset banded = BandedOnset.of("lamp", band(0.004), Evidence.of("test"));
        assertThat(seenS(banded)).isCloseTo(seenS(LAMP), within(2e-5));
        assertThat(seenS(banded.early())).isCloseTo(seenS(banded) - 0.004, within(1e-6));
        assertThat(seenS(banded.late())).isCloseTo(seenS(banded) + 0.004, within(1e-6));
        BandedOnset later = banded.delayed(TimeSpan.seconds(0.01));
        assertThat(seenS(later)).isCloseTo(seenS(banded) + 0.01, within(1e-6));
        assertThat(later.beginS() - banded.beginS()).isCloseTo(0.01, within(1e-12));
        assertThat(later.settledS()).isCloseTo(banded.settledS() + 0.01, within(1e-9));
    }

    @Test
    void noLightComesBeforeTimeZero() {
        BandedOnset wide = BandedOnset.of("lamp", band(0.05), Evidence.of("test"));
        assertThat(wide.early().relativeIntensity(0)).isEqualTo(0);
        assertThat(seenS(wide.early())).isLessThan(seenS(wide));
    }

    @Test
    void refusesLevelsAndTimesOutOfOrder() {
        Evidence none = Evidence.none();
        BandPoint low = new BandPoint(0.1, 0.01, 0.008, 0.012);
        BandPoint mid = new BandPoint(0.5, 0.02, 0.018, 0.022);
        assertThatThrownBy(() -> BandedOnset.of("x", List.of(low, mid), none)).hasMessageContaining("got 2");
        assertThatThrownBy(() -> BandedOnset.of("x", List.of(low, mid, low), none))
                .hasMessageContaining("level of a banded onset must be in (0.5, 0.9999]");
        assertThatThrownBy(() -> BandedOnset.of("x", List.of(low, mid, new BandPoint(0.9, 0.015, 0, 1)), none))
                .hasMessageContaining("time of a level must be in [0.02, 100] s, got 0.015 s");
        assertThatThrownBy(() -> BandedOnset.of("x", List.of(low, mid, new BandPoint(0.9, 0.03, 0.031, 1)), none))
                .hasMessageContaining("early end of a level");
        assertThatThrownBy(() ->
                        BandedOnset.of("x", List.of(low, mid, new BandPoint(0.9, 0.03, 0.02, Double.NaN)), none))
                .hasMessageContaining("late end of a level");
    }
}
