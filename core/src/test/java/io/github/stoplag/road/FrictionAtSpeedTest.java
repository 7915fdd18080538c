package io.github.stoplag.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.kernel.FrictionKernel;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;

class FrictionAtSpeedTest {
    private static final FrictionCoefficient F60 = FrictionCoefficient.of(0.35);

    /**
     * ASTM E1960: S_p = 14.2 + 89.7 MPD; F(60) = F60; one S_p further the friction has fallen by 1/e (seen in copies).
     */
    @Test
    void followsTheTransferFormula() {
        TexturedFriction friction = TexturedFriction.ofProfileDepth(F60, Distance.metres(0.001));
        assertThat(friction.speedConstant().inKmh()).isCloseTo(103.9, within(1e-9));
        assertThat(friction.at(Speed.kmh(60)).friction().inRatio()).isCloseTo(0.35, within(1e-15));
        assertThat(friction.at(Speed.kmh(163.9)).friction().inRatio()).isCloseTo(0.35 / Math.E, within(1e-12));
        assertThat(friction.at(Speed.kmh(60)).caveats()).isEmpty();
        assertThat(friction.at(Speed.kmh(120)).caveats())
                .singleElement()
                .asString()
                .startsWith("slip speed 120 km/h is outside the validated range [30, 90] km/h");
    }

    /** ASTM E1960, editions to 2003: S_p = -11.6 + 113.6 MTD (from memory), a line of its own beside that for MPD. */
    @Test
    void takesTextureDepthByItsOwnLine() {
        TexturedFriction byTexture = TexturedFriction.ofTextureDepth(F60, Distance.metres(0.001));
        assertThat(byTexture.speedConstant().inKmh()).isCloseTo(102.0, within(1e-9));
        SourcedFriction friction = byTexture.at(Speed.kmh(60));
        assertThat(friction.source().standing()).isEqualTo(Standing.FROM_MEMORY);
        assertThat(friction.caveats())
                .singleElement()
                .asString()
                .isEqualTo("the speed constant is known from memory: ASTM E1960, editions of 1998 and 2003");
        assertThat(byTexture.at(Speed.kmh(20)).caveats()).hasSize(2);
        assertThat(TexturedFriction.ofProfileDepth(F60, Distance.metres(0.001))
                        .at(Speed.kmh(60))
                        .source()
                        .standing())
                .isEqualTo(Standing.SEEN);
    }

    /**
     * The two lines and the relation MTD = 0.2 + 0.8 MPD (ASTM E1845) are fits of the same surfaces: they nearly agree.
     */
    @Test
    void theTwoDepthsNearlyAgree() {
        for (double mtdMm : new double[] {0.5, 1, 2, 4}) {
            double own = TexturedFriction.ofTextureDepth(F60, Distance.metres(mtdMm / 1000))
                    .speedConstant()
                    .inKmh();
            double throughProfile = TexturedFriction.ofProfileDepth(F60, Distance.metres((mtdMm - 0.2) / 0.8 / 1000))
                    .speedConstant()
                    .inKmh();
            assertThat(throughProfile - own).isBetween(-2.7, 2.7);
        }
    }

    @Test
    void takesTheIndexItself() {
        TexturedFriction index = TexturedFriction.ofIndex(F60, Speed.kmh(103.9));
        assertThat(index.at(Speed.kmh(80)).friction().inRatio()).isCloseTo(0.35 * Math.exp(-20 / 103.9), within(1e-12));
    }

    /** Second method: quadrature of v dv / (g μ(v)). */
    @Test
    void lockedSkidAgreesWithQuadrature() {
        TexturedFriction friction = TexturedFriction.ofProfileDepth(F60, Distance.metres(0.0006));
        double integral = new IterativeLegendreGaussIntegrator(20, 1e-13, 1e-13)
                .integrate(
                        100_000,
                        v -> v / (9.80665 * friction.at(Speed.mps(v)).friction().inRatio()),
                        Speed.kmh(20).inMps(),
                        Speed.kmh(110).inMps());
        assertThat(friction.lockedSkid(Speed.kmh(110), Speed.kmh(20)).inMetres())
                .isCloseTo(integral, within(1e-8));
    }

    /** As S_p grows friction no longer falls: v²/(2 g μ); and the series joins the closed form. */
    @Test
    void lockedSkidTendsToConstantFriction() {
        assertThat(FrictionKernel.exponentialSkidM(25, 0, 0.5, 1e9, 9.8)).isCloseTo(625 / 9.8, within(2e-6));
        double below = FrictionKernel.exponentialSkidM(25, 0, 0.5, 25 / 0.2499999999, 9.8);
        double above = FrictionKernel.exponentialSkidM(25, 0, 0.5, 25 / 0.2500000001, 9.8);
        assertThat(above).isCloseTo(below, within(1e-7));
    }

    @Test
    void refusesDepthsThatMakeNoSense() {
        assertThatThrownBy(() -> TexturedFriction.ofProfileDepth(F60, Distance.metres(1)))
                .hasMessage("mean profile depth must be in [0, 5.8] mm, got 1000 mm");
        assertThatThrownBy(() -> TexturedFriction.ofTextureDepth(F60, Distance.metres(0.0001)))
                .hasMessage("mean texture depth must be in [0.12, 4.84] mm, got 0.1 mm");
        assertThatThrownBy(() -> TexturedFriction.ofIndex(F60, Speed.kmh(0.5)))
                .hasMessage("speed constant must be in [1, 540] km/h, got 0.5 km/h");
        assertThatThrownBy(() -> TexturedFriction.ofIndex(F60, Speed.kmh(100)).lockedSkid(Speed.mps(5), Speed.mps(6)))
                .hasMessage("final speed must be in [0, 5] m/s, got 6 m/s");
        assertThatThrownBy(() ->
                        TexturedFriction.ofProfileDepth(F60, Distance.metres(0)).at(Speed.mps(1)))
                .hasMessageStartingWith("friction coefficient must be in [0, 2], got");
    }

    /** The factors give back the stopping sight distances printed beside them: 22/15 V 2.5 + V²/(30 f). */
    @Test
    void theOlderDesignFactorsReproduceTheirSightDistances() {
        Table table = Table.read(FrictionAtSpeedTest.class, "aashto_1990_ssd_ft.csv");
        TabulatedFriction factors = TabulatedFriction.published("AASHTO 1990");
        assertThat(factors.source().standing()).isEqualTo(Standing.FROM_MEMORY);
        assertThat(table.rows()).hasSize(10).allSatisfy(row -> {
            double mph = table.number(row, "speed_mph");
            double f = factors.at(Speed.mph(mph)).friction().inRatio();
            assertThat(22.0 / 15 * mph * 2.5 + mph * mph / (30 * f))
                    .isCloseTo(table.number(row, "computed_ssd_ft"), within(0.05));
        });
    }

    @Test
    void interpolatesAndSaysWhereItHolds() {
        TabulatedFriction factors = TabulatedFriction.published("AASHTO 1990");
        assertThat(factors.at(Speed.mph(22.5)).friction().inRatio()).isCloseTo(0.39, within(1e-12));
        assertThat(factors.at(Speed.mph(52)).friction().inRatio()).isCloseTo(0.30, within(1e-12));
        assertThat(factors.at(Speed.mph(22.5)).caveats()).isEmpty();
        SourcedFriction slow = factors.at(Speed.mph(10));
        assertThat(slow.friction().inRatio()).isEqualTo(0.40);
        assertThat(slow.caveats())
                .singleElement()
                .asString()
                .startsWith("speed for friction table AASHTO 1990 16.0934 km/h is outside the validated range");
        assertThat(factors.at(Speed.mph(90)).friction().inRatio()).isEqualTo(0.28);
        TabulatedFriction seen = TabulatedFriction.published("RRL LR 131");
        assertThat(seen.source().standing()).isEqualTo(Standing.SEEN);
        assertThat(seen.at(Speed.mph(55)).friction().inRatio()).isCloseTo(0.35, within(1e-12));
        assertThat(TabulatedFriction.published("IRC 66")
                        .at(Speed.kmh(80))
                        .friction()
                        .inRatio())
                .isEqualTo(0.35);
        assertThatThrownBy(() -> TabulatedFriction.published("none"))
                .hasMessage("friction table must be one of AASHTO 1990, IRC 66, RRL LR 131, got \"none\"");
    }
}
