package io.github.stoplag.road;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Pressure;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Validity;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * The speed from which a tyre rides on the water film, by published formulas, each a function of its own.
 *
 * <p>All of them were printed with pressures in psi; with a number in kPa they give 2.6 times the speed, which is why
 * they take a {@link Pressure}. Each formula refuses a pressure its kind of tyre does not have (common practice, no
 * source): a car's (100, 500] kPa, a truck's (130, 1200] kPa, so that 32 psi written as 32 kPa and 220 kPa written as
 * 220 psi are caught both ways; the aircraft type (100, 2500] kPa, where 220 psi is a real pressure and only the caveat
 * tells. Outside the source's own, narrower range every formula adds a caveat.
 * A formula is no proof that a tyre holds: slow down on standing water.
 *
 * <pre>{@code
 * Hydroplaning.horneRolling(Pressure.bar(2.2)).speed(); // 26.1537 m/s
 * }</pre>
 */
public final class Hydroplaning {
    private static final double MPS_PER_KNOT = 1852.0 / 3600.0;
    private static final double SPIN_DOWN_PERCENT = 10;
    private static final double TREAD_UNITS_PER_INCH = 32;

    private static final Source HORNE = Source.seen(
            "Horne & Dreher, Phenomena of Pneumatic Tire Hydroplaning, NASA TN D-2056, 1963",
            "V = 9 sqrt(p), knots and psi, read in copies");
    private static final Source HORNE_NON_ROTATING =
            Source.fromMemory("Horne et al., NASA studies on unrotating tyres", "V = 7.7 sqrt(p), knots and psi");
    private static final Source HORNE_TRUCK = Source.fromMemory(
            "Horne, Predicting the Minimum Dynamic Hydroplaning Speed, ASTM, 1984",
            "V = 7.95 sqrt(p / (w/l)), mph, psi");
    private static final Source GALLAWAY = Source.seen(
            "Gallaway et al., FHWA-RD-79-31, 1979", "V = SD^0.04 P^0.3 (TD + 1)^0.06 A, mph, psi, in, read in copies");

    private static final Tyre AIRCRAFT = new Tyre("tyre", 100, 2500, 24, 150);
    private static final Tyre TRUCK = new Tyre("truck tyre", 130, 1200, 20, 120);
    private static final Tyre CAR = new Tyre("car tyre", 100, 500, 18, 36);

    private Hydroplaning() {}

    /** A kind of tyre: the pressures it can have in kPa, and those of the formula's source in psi. */
    private record Tyre(String name, double aboveKPa, double upToKPa, double fromPsi, double toPsi) {
        void check(Pressure inflation, Source source, List<Caveat> caveats) {
            double kPa = inflation.inKPa();
            if (!(kPa > aboveKPa && kPa <= upToKPa)) {
                String slip = kPa > upToKPa ? "kPa belongs in Pressure.kPa" : "psi belongs in Pressure.psi";
                throw new IllegalArgumentException(name + " inflation pressure must be in (" + Numbers.text(aboveKPa)
                        + ", " + Numbers.text(upToKPa) + "] kPa, got " + Numbers.text(kPa) + " kPa; a figure in "
                        + slip);
            }
            new Validity(name + " inflation pressure", fromPsi, toPsi, "psi", source)
                    .check(inflation.inPsi())
                    .ifPresent(caveats::add);
        }
    }

    /**
     * A hydroplaning speed with what it rests on.
     *
     * @param speed the speed from which the tyre rides on the water
     * @param source the formula
     * @param caveats the reservations
     */
    public record Result(Speed speed, Source source, List<Caveat> caveats) implements Evident {
        /**
         * Copies the caveats.
         *
         * @param speed the speed from which the tyre rides on the water
         * @param source the formula
         * @param caveats the reservations
         */
        public Result {
            Objects.requireNonNull(source, "source");
            Objects.requireNonNull(speed, "speed");
            caveats = Check.copyOf("caveats", caveats);
        }

        @Override
        public Evidence evidence() {
            return Evidence.of("hydroplaning speed", source).withCaveats(caveats);
        }
    }

    /**
     * Gives the speed at which a rolling, closely ribbed or smooth tyre spins down on a flooded runway.
     *
     * <p>V = 9 √p, V in knots, p in psi; equal to 10.35 √p in mph and 6.34 √p in km/h with p in kPa. Deep water,
     * whatever load and width; source range 24 to 150 psi (from memory).
     *
     * @param inflation the inflation pressure p
     * @return the speed
     * @throws IllegalArgumentException if the pressure is not in (100, 2500] kPa
     */
    public static Result horneRolling(Pressure inflation) {
        Objects.requireNonNull(inflation, "inflation");
        return horne(inflation, 9.0, HORNE);
    }

    /**
     * Gives the speed at which a tyre that does not turn, locked or just touching down, fails to spin up.
     *
     * <p>V = 7.7 √p, V in knots, p in psi. Once a tyre has stopped on water it rides on it down to this speed.
     *
     * @param inflation the inflation pressure p
     * @return the speed
     * @throws IllegalArgumentException if the pressure is not in (100, 2500] kPa
     */
    public static Result horneNonRotating(Pressure inflation) {
        Objects.requireNonNull(inflation, "inflation");
        return horne(inflation, 7.7, HORNE_NON_ROTATING);
    }

    private static Result horne(Pressure inflation, double knotsPerRootPsi, Source source) {
        List<Caveat> caveats = caveats(source);
        AIRCRAFT.check(inflation, source, caveats);
        double knots = knotsPerRootPsi * Math.sqrt(inflation.inPsi());
        return new Result(Speed.mps(knots * MPS_PER_KNOT), source, caveats);
    }

    /**
     * Gives the hydroplaning speed of a truck tyre from the shape of its footprint.
     *
     * <p>V = 7.95 √(p / (w/l)), V in mph, p in psi. A lightly loaded tyre has a short, wide footprint (large w/l) and
     * hydroplanes at a lower speed; at w/l = 0.59 the formula meets the aircraft-type one.
     *
     * @param inflation the inflation pressure p, possible (130, 1200] kPa, source range 20 to 120 psi (from memory)
     * @param footprintAspectRatio the footprint's width over its length w/l, possible [0.2, 3], source range 0.4 to 1.4
     *     (from memory)
     * @return the speed
     * @throws IllegalArgumentException if the pressure is not in (130, 1200] kPa or the ratio not in [0.2, 3]
     */
    public static Result horneTruck(Pressure inflation, double footprintAspectRatio) {
        Objects.requireNonNull(inflation, "inflation");
        List<Caveat> caveats = caveats(HORNE_TRUCK);
        TRUCK.check(inflation, HORNE_TRUCK, caveats);
        Check.inRange("footprint aspect ratio", footprintAspectRatio, 0.2, 3, "");
        new Validity("footprint aspect ratio", 0.4, 1.4, "", HORNE_TRUCK)
                .check(footprintAspectRatio)
                .ifPresent(caveats::add);
        double mph = 7.95 * Math.sqrt(inflation.inPsi() / footprintAspectRatio);
        return new Result(Speed.mph(mph), HORNE_TRUCK, caveats);
    }

    /**
     * Gives the hydroplaning speed of a car tyre from tread, texture and water depth, at 10 % spin-down.
     *
     * <p>V = SD<sup>0.04</sup> P<sup>0.3</sup> (TD + 1)<sup>0.06</sup> A, A = max(10.409/WD<sup>0.06</sup> + 3.507,
     * (28.952/WD<sup>0.06</sup> − 7.817) TXD<sup>0.14</sup>); V in mph, SD = 10 %, P in psi, TD in 1/32 in, WD and TXD
     * in in. Car tyres; validated for films from 2.4 mm (from memory), below with a caveat.
     *
     * @param inflation the inflation pressure P, possible (100, 500] kPa, source range 18 to 36 psi (from memory)
     * @param treadDepth the tread depth TD, [0, 25] mm
     * @param waterFilm the water depth WD above the texture, (0, 100] mm
     * @param textureDepth the mean texture depth TXD, [0, 10] mm
     * @return the speed
     * @throws IllegalArgumentException if the pressure is not in (100, 500] kPa or a depth is out of range
     */
    public static Result gallaway(Pressure inflation, Distance treadDepth, Distance waterFilm, Distance textureDepth) {
        Objects.requireNonNull(inflation, "inflation");
        Objects.requireNonNull(textureDepth, "textureDepth");
        Objects.requireNonNull(treadDepth, "treadDepth");
        Objects.requireNonNull(waterFilm, "waterFilm");
        List<Caveat> caveats = caveats(GALLAWAY);
        CAR.check(inflation, GALLAWAY, caveats);
        Check.inRange("tread depth", treadDepth.inMetres() * 1000, 0, 25, "mm");
        double filmMm = Check.above("water film", waterFilm.inMetres() * 1000, 0, 100, "mm");
        Check.inRange("texture depth", textureDepth.inMetres() * 1000, 0, 10, "mm");
        new Validity("water film", 2.4, 10, "mm", GALLAWAY).check(filmMm).ifPresent(caveats::add);
        double film = Math.pow(waterFilm.inInches(), 0.06);
        double smooth = 10.409 / film + 3.507;
        double textured = (28.952 / film - 7.817) * Math.pow(textureDepth.inInches(), 0.14);
        double mph = Math.pow(SPIN_DOWN_PERCENT, 0.04)
                * Math.pow(inflation.inPsi(), 0.3)
                * Math.pow(treadDepth.inInches() * TREAD_UNITS_PER_INCH + 1, 0.06)
                * Math.max(smooth, textured);
        return new Result(Speed.mph(mph), GALLAWAY, caveats);
    }

    private static List<Caveat> caveats(Source source) {
        List<Caveat> caveats = new ArrayList<>();
        if (source.standing() != Standing.SEEN) {
            caveats.add(new Caveat("the formula is known " + source.standing() + ": " + source.document()));
        }
        return caveats;
    }
}
