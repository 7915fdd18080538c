package io.github.stoplag.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Pressure;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Table;
import java.util.Map;
import org.junit.jupiter.api.Test;

class HydroplaningTest {
    private static final Pressure CAR = Pressure.kPa(220);

    @Test
    void meetsThePublishedAircraftTypeValues() {
        Table table = Table.read(HydroplaningTest.class, "horne_worked.csv");
        assertThat(table.rows()).hasSize(7).allSatisfy(row -> {
            Speed speed = Hydroplaning.horneRolling(inflation(table, row)).speed();
            double value = switch (table.text(row, "speed_unit")) {
                case "mph" -> speed.inMph();
                case "km/h" -> speed.inKmh();
                default -> speed.inMps() * 3600 / 1852;
            };
            assertThat(value).isCloseTo(table.number(row, "published"), within(table.number(row, "tolerance")));
        });
    }

    private static Pressure inflation(Table table, Map<String, String> row) {
        double value = table.number(row, "inflation");
        return table.text(row, "inflation_unit").equals("psi") ? Pressure.psi(value) : Pressure.kPa(value);
    }

    /** Published in three unit sets: 9 (kn, psi), 10.35 (mph, psi), 6.34 (km/h, kPa); 6.36 circulates too (seen). */
    @Test
    void threeUnitSetsSayTheSame() {
        double root = Math.sqrt(CAR.inPsi());
        Speed speed = Hydroplaning.horneRolling(CAR).speed();
        assertThat(speed.inMph()).isCloseTo(10.35 * root, within(0.001 * speed.inMph()));
        assertThat(speed.inKmh()).isCloseTo(6.34 * Math.sqrt(220), within(0.0015 * speed.inKmh()));
        assertThat(speed.inKmh()).isCloseTo(6.36 * Math.sqrt(220), within(0.003 * speed.inKmh()));
    }

    /** Mixed units seen in print: 9 with mph, and 6.34 with psi. */
    @Test
    void mixedUnitsAreFarOff() {
        double kmh = Hydroplaning.horneRolling(CAR).speed().inKmh();
        assertThat(Speed.mph(9 * Math.sqrt(CAR.inPsi())).inKmh()).isLessThan(0.88 * kmh);
        assertThat(6.34 * Math.sqrt(CAR.inPsi())).isLessThan(0.4 * kmh);
    }

    @Test
    void psiWrittenAsKilopascalsIsRefused() {
        assertThatThrownBy(() -> Hydroplaning.horneRolling(Pressure.kPa(32)))
                .hasMessage("tyre inflation pressure must be in (100, 2500] kPa, got 32 kPa; a figure in psi belongs in"
                        + " Pressure.psi");
        assertThat(Hydroplaning.horneRolling(Pressure.psi(220)).caveats())
                .singleElement()
                .asString()
                .startsWith("tyre inflation pressure 220 psi is outside the validated range [24, 150] psi");
        assertThat(Hydroplaning.horneRolling(Pressure.psi(32)).caveats()).isEmpty();
    }

    @Test
    void eachFormulaRefusesPressuresItsTyresDoNotHave() {
        Distance ok = Distance.metres(0.003);
        // 220 kPa written as psi: 2.6 times the speed in the aircraft formula, hence refused where only a car's tyre
        // fits
        assertThatThrownBy(() -> Hydroplaning.gallaway(Pressure.psi(220), ok, ok, ok))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "car tyre inflation pressure must be in (100, 500] kPa, got 1516.85 kPa; a figure in kPa belongs"
                                + " in Pressure.kPa");
        assertThatThrownBy(() -> Hydroplaning.gallaway(Pressure.kPa(32), ok, ok, ok))
                .hasMessage(
                        "car tyre inflation pressure must be in (100, 500] kPa, got 32 kPa; a figure in psi belongs in"
                                + " Pressure.psi");
        assertThat(Hydroplaning.gallaway(Pressure.kPa(300), ok, ok, ok).caveats())
                .singleElement()
                .asString()
                .startsWith("car tyre inflation pressure 43.5113 psi is outside the validated range [18, 36] psi");
        assertThatThrownBy(() -> Hydroplaning.horneTruck(Pressure.psi(800), 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("truck tyre inflation pressure must be in (130, 1200] kPa, got 5515.81 kPa; a figure in kPa"
                        + " belongs in Pressure.kPa");
        assertThatThrownBy(() -> Hydroplaning.horneTruck(Pressure.kPa(120), 1))
                .hasMessageEndingWith("got 120 kPa; a figure in psi belongs in Pressure.psi");
        assertThat(Hydroplaning.horneTruck(Pressure.kPa(900), 1).caveats())
                .anySatisfy(
                        caveat -> assertThat(caveat.text()).startsWith("truck tyre inflation pressure 130.534 psi"));
        assertThatThrownBy(() -> Hydroplaning.horneNonRotating(Pressure.kPa(2501)))
                .hasMessageStartingWith(
                        "tyre inflation pressure must be in (100, 2500] kPa, got 2501 kPa; a figure in kPa");
    }

    /** A tyre that has stopped rides on water further down: 7.7 over 9 (from memory). */
    @Test
    void aLockedTyreRidesDownToALowerSpeed() {
        Hydroplaning.Result locked = Hydroplaning.horneNonRotating(CAR);
        assertThat(locked.speed().inMps()
                        / Hydroplaning.horneRolling(CAR).speed().inMps())
                .isCloseTo(7.7 / 9, within(1e-12));
        assertThat(locked.caveats()).singleElement().asString().startsWith("the formula is known from memory");
    }

    /** Heavy truck tyres hydroplane at 50 to 70 mph, empty ones at highway speed: TRR 1084:1-8, abstract (seen). */
    @Test
    void truckTyresHydroplaneWhenEmpty() {
        Pressure inflation = Pressure.psi(80);
        assertThat(Hydroplaning.horneTruck(inflation, 1.4).speed().inMph()).isBetween(50.0, 70.0);
        assertThat(Hydroplaning.horneTruck(inflation, 1.0).speed().inMph())
                .isCloseTo(7.95 * Math.sqrt(80), within(1e-9));
        assertThat(Hydroplaning.horneTruck(inflation, 0.59).speed().inMph())
                .isCloseTo(Hydroplaning.horneRolling(inflation).speed().inMph(), within(0.1));
        assertThat(Hydroplaning.horneTruck(inflation, 2).caveats()).hasSize(2);
        assertThatThrownBy(() -> Hydroplaning.horneTruck(inflation, 0))
                .hasMessage("footprint aspect ratio must be in [0.2, 3], got 0");
    }

    /**
     * Printed check: 88 km/h at 220 kPa on 2 mm of water, tread and texture not stated (seen); a tread of 4 to 8 mm on
     * fine texture must bracket it.
     */
    @Test
    void gallawayBracketsThePrintedCheck() {
        Distance film = Distance.metres(0.002);
        Distance fine = Distance.metres(0.0005);
        double worn = Hydroplaning.gallaway(CAR, Distance.metres(0.004), film, fine)
                .speed()
                .inKmh();
        double good = Hydroplaning.gallaway(CAR, Distance.metres(0.008), film, fine)
                .speed()
                .inKmh();
        assertThat(worn).isLessThan(88).isGreaterThan(84);
        assertThat(good).isGreaterThan(88).isLessThan(92);
    }

    /** Second method: the published product taken by logarithms with both branches written out. */
    @Test
    void gallawayTakesTheLargerBranch() {
        Distance tread = Distance.inches(8 / 32.0);
        Distance film = Distance.inches(0.1);
        double head = Math.exp(0.04 * Math.log(10) + 0.3 * Math.log(30) + 0.06 * Math.log(9));
        double filmTerm = Math.exp(-0.06 * Math.log(0.1));
        double smooth = head * (10.409 * filmTerm + 3.507);
        double coarse = head * (28.952 * filmTerm - 7.817) * Math.exp(0.14 * Math.log(0.05));
        assertThat(Hydroplaning.gallaway(Pressure.psi(30), tread, film, Distance.metres(0))
                        .speed()
                        .inMph())
                .isCloseTo(smooth, within(1e-10));
        assertThat(Hydroplaning.gallaway(Pressure.psi(30), tread, film, Distance.inches(0.05))
                        .speed()
                        .inMph())
                .isCloseTo(coarse, within(1e-10))
                .isGreaterThan(smooth);
    }

    @Test
    void gallawayNamesWhatIsOutOfRange() {
        Distance ok = Distance.metres(0.003);
        assertThat(Hydroplaning.gallaway(CAR, ok, ok, ok).caveats()).isEmpty();
        assertThat(Hydroplaning.gallaway(CAR, ok, Distance.metres(0.001), ok).caveats())
                .singleElement()
                .asString()
                .startsWith("water film 1 mm is outside the validated range [2.4, 10] mm");
        assertThatThrownBy(() -> Hydroplaning.gallaway(CAR, ok, Distance.metres(0), ok))
                .hasMessage("water film must be in (0, 100] mm, got 0 mm");
        assertThatThrownBy(() -> Hydroplaning.gallaway(CAR, Distance.metres(0.2), ok, ok))
                .hasMessage("tread depth must be in [0, 25] mm, got 200 mm");
        assertThatThrownBy(() -> Hydroplaning.gallaway(CAR, ok, ok, Distance.metres(-0.001)))
                .hasMessage("texture depth must be in [0, 10] mm, got -1 mm");
    }
}
