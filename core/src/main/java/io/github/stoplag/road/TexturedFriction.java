package io.github.stoplag.road;

import io.github.stoplag.kernel.FrictionKernel;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Validity;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Friction of a wet road that falls exponentially with slip speed, the faster the smoother its macrotexture: the
 * transfer formula of the International Friction Index.
 *
 * <p>F(S) = F60 exp((60 − S) / S_p); S_p = 14.2 + 89.7 MPD, or S_p = −11.6 + 113.6 MTD
 *
 * <p>F60 friction at 60 km/h; S slip speed in km/h; S_p speed constant in km/h; MPD mean profile depth and MTD mean
 * texture depth by volume (sand patch) in mm. Possible range: S_p [1, 540] km/h, MPD [0, 5.8] mm, MTD [0.12, 4.84] mm;
 * measured range of S: 30 to 90 km/h, outside it a caveat comes along.
 *
 * <p>Each depth has its own fitted line. The other way round from MTD, by MPD = (MTD − 0.2)/0.8 and the first line,
 * gives −8.2 + 112.1 MTD: 1.9 km/h more at 1 mm, 2.6 km/h (6 %) more at 0.5 mm, within 0.5 km/h at 2 mm.
 *
 * <p>Source: PIARC, Wambold et al. 1995; ASTM E1960, the line for MPD through copies, the one for MTD from memory; the
 * editions of 1998 and 2003 name both depths (scope 1.3, seen), that of 2007 only MPD.
 */
public final class TexturedFriction implements FrictionAtSpeed {
    /** The reference slip speed, 60 km/h. */
    public static final Speed REFERENCE = Speed.kmh(60);

    private static final Source SOURCE = Source.seen(
            "PIARC, International PIARC Experiment, Wambold et al. 1995; ASTM E1960",
            "transfer formula F60, S_p, read in copies");
    private static final Source TEXTURE_DEPTH_SOURCE =
            Source.fromMemory("ASTM E1960, editions of 1998 and 2003", "transfer formula F60, S_p = -11.6 + 113.6 MTD");
    private static final double INTERCEPT_KMH = 14.2;
    private static final double SLOPE_KMH_PER_MM = 89.7;
    private static final double TEXTURE_INTERCEPT_KMH = -11.6;
    private static final double TEXTURE_SLOPE_KMH_PER_MM = 113.6;

    private final FrictionCoefficient f60;
    private final double scaleKmh;
    private final Source source;

    private TexturedFriction(FrictionCoefficient f60, double scaleKmh, Source source) {
        this.f60 = f60;
        this.scaleKmh = Check.inRange("speed constant", scaleKmh, 1, 540, "km/h");
        this.source = source;
    }

    /**
     * Makes the friction from the two numbers of the index.
     *
     * @param f60 the friction at 60 km/h slip speed
     * @param speedConstant the speed constant S_p
     * @return the friction
     * @throws IllegalArgumentException if the constant is not in [1, 540] km/h
     */
    public static TexturedFriction ofIndex(FrictionCoefficient f60, Speed speedConstant) {
        Objects.requireNonNull(speedConstant, "speedConstant");
        Objects.requireNonNull(f60, "f60");
        return new TexturedFriction(f60, speedConstant.inKmh(), SOURCE);
    }

    /**
     * Makes the friction from the mean profile depth of the surface.
     *
     * @param f60 the friction at 60 km/h slip speed
     * @param meanProfileDepth the mean profile depth MPD
     * @return the friction
     * @throws IllegalArgumentException if the depth is not in [0, 5.8] mm
     */
    public static TexturedFriction ofProfileDepth(FrictionCoefficient f60, Distance meanProfileDepth) {
        Objects.requireNonNull(meanProfileDepth, "meanProfileDepth");
        Objects.requireNonNull(f60, "f60");
        double mpdMm = Check.inRange("mean profile depth", meanProfileDepth.inMetres() * 1000, 0, 5.8, "mm");
        return new TexturedFriction(f60, INTERCEPT_KMH + SLOPE_KMH_PER_MM * mpdMm, SOURCE);
    }

    /**
     * Makes the friction from the mean texture depth by volume (sand patch), S_p = −11.6 + 113.6 MTD, known from
     * memory.
     *
     * @param f60 the friction at 60 km/h slip speed
     * @param meanTextureDepth the mean texture depth MTD
     * @return the friction
     * @throws IllegalArgumentException if the depth is not in [0.12, 4.84] mm
     */
    public static TexturedFriction ofTextureDepth(FrictionCoefficient f60, Distance meanTextureDepth) {
        Objects.requireNonNull(f60, "f60");
        Objects.requireNonNull(meanTextureDepth, "meanTextureDepth");
        double mtdMm = Check.inRange("mean texture depth", meanTextureDepth.inMetres() * 1000, 0.12, 4.84, "mm");
        return new TexturedFriction(
                f60, TEXTURE_INTERCEPT_KMH + TEXTURE_SLOPE_KMH_PER_MM * mtdMm, TEXTURE_DEPTH_SOURCE);
    }

    @Override
    public SourcedFriction at(Speed speed) {
        double ratio = FrictionKernel.exponentialRatio(
                speed.inMps(), f60.inRatio(), REFERENCE.inMps(), speedConstant().inMps());
        List<Caveat> caveats = new ArrayList<>();
        if (source.standing() != Standing.SEEN) {
            caveats.add(new Caveat("the speed constant is known " + source.standing() + ": " + source.document()));
        }
        new Validity("slip speed", 30, 90, "km/h", SOURCE).check(speed.inKmh()).ifPresent(caveats::add);
        return new SourcedFriction(FrictionCoefficient.of(ratio), source, caveats);
    }

    /**
     * Gives the length of a locked-wheel skid on a level road with this friction.
     *
     * <p>s = v_p² / (g F0) · (h(v₀/v_p) − h(v₁/v_p)), h(x) = x e<sup>x</sup> − e<sup>x</sup> + 1
     *
     * <p>The formula is carried below the measured 30 km/h down to v₁; little of the length lies there.
     *
     * @param from the speed v₀ at the start
     * @param to the speed v₁ at the end, not above v₀
     * @return the skid length; standard gravity
     * @throws IllegalArgumentException if v₁ exceeds v₀ or the length is beyond 1e7 m
     */
    public Distance lockedSkid(Speed from, Speed to) {
        Objects.requireNonNull(from, "from");
        Check.inRange("final speed", to.inMps(), 0, from.inMps(), "m/s");
        double scaleMps = speedConstant().inMps();
        double rest = FrictionKernel.exponentialRatio(0, f60.inRatio(), REFERENCE.inMps(), scaleMps);
        Ranges.GRIP.check("friction at 60 km/h", f60.inRatio());
        return Distance.metres(FrictionKernel.exponentialSkidM(
                from.inMps(), to.inMps(), rest, scaleMps, Deceleration.STANDARD_GRAVITY_MPS2));
    }

    /**
     * Gives the speed constant.
     *
     * @return the speed constant S_p
     */
    public Speed speedConstant() {
        return Speed.kmh(scaleKmh);
    }
}
