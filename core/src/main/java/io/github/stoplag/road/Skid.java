package io.github.stoplag.road;

import io.github.stoplag.kernel.SkidKernel;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import java.util.List;
import java.util.Objects;

/**
 * A skid over one surface or several: speed lost from length and length from speed.
 *
 * <p>v₀² = v₁² + Σ 2 aᵢ sᵢ; a = g (μ + G) / √(1 + G²)
 *
 * <p>v₀ entry speed, v₁ exit speed; aᵢ net deceleration and sᵢ length of each section; μ friction, G grade, positive
 * uphill. Speeds lost do not add, their squares do. A section may have a negative net deceleration: a slope steeper
 * than its friction, on which the vehicle gains speed. Range: lengths [0, 1e7] m, net decelerations [−200, 200] m/s².
 * Derived from work and kinetic energy; with rounded constants it is the V² = 30 d (f + G) of the trade (mph, ft).
 */
public final class Skid {
    private final List<Section> sections;

    private Skid(List<Section> sections) {
        this.sections = sections;
    }

    /**
     * One stretch of a skid.
     *
     * @param length the length s
     * @param netDecelMps2 the net deceleration a in m/s², negative where the slope beats friction
     */
    public record Section(Distance length, double netDecelMps2) {
        /**
         * Checks both.
         *
         * @param length the length s
         * @param netDecelMps2 the net deceleration a in m/s², negative where the slope beats friction
         * @throws IllegalArgumentException if the length is negative or the deceleration not in [−200, 200] m/s²
         */
        public Section {
            Objects.requireNonNull(length, "length");
            Ranges.LENGTH.check("skid length", length.inMetres());
            Ranges.SIGNED_DECELERATION.check("net deceleration", netDecelMps2);
        }

        /**
         * Makes a section from friction and grade, with standard gravity.
         *
         * @param length the length s
         * @param friction the friction μ
         * @param grade the grade G, positive uphill
         * @return the section
         * @throws IllegalArgumentException if the length is negative
         */
        public static Section of(Distance length, FrictionCoefficient friction, Grade grade) {
            Objects.requireNonNull(length, "length");
            double slope = grade.inRatio();
            double netDecelMps2 =
                    Deceleration.STANDARD_GRAVITY_MPS2 * (friction.inRatio() + slope) / Math.sqrt(1 + slope * slope);
            return new Section(length, netDecelMps2);
        }

        /**
         * Makes a section from a known deceleration.
         *
         * @param length the length s
         * @param deceleration the deceleration a
         * @return the section
         * @throws IllegalArgumentException if the length is negative
         */
        public static Section of(Distance length, Deceleration deceleration) {
            Objects.requireNonNull(length, "length");
            return new Section(length, deceleration.inMps2());
        }

        /**
         * Says whether friction alone would hold a vehicle on this section.
         *
         * @return true if the net deceleration is above 0
         */
        public boolean slows() {
            return netDecelMps2 > 0;
        }
    }

    /** How a skid ends. */
    public sealed interface End permits StillMoving, AtRest {}

    /**
     * The vehicle leaves the last section moving.
     *
     * @param speed the speed at its end
     */
    public record StillMoving(Speed speed) implements End {

        /**
         * Refuses nulls.
         *
         * @param speed the speed at its end
         * @throws NullPointerException if one that is required is null
         */
        public StillMoving {
            Objects.requireNonNull(speed, "speed");
        }
    }

    /**
     * The vehicle comes to rest on a section.
     *
     * @param section the section's index, from 0
     * @param skidded the length skidded from the start of the first section
     */
    public record AtRest(int section, Distance skidded) implements End {

        /**
         * Refuses nulls.
         *
         * @param section the section's index, from 0
         * @param skidded the length skidded from the start of the first section
         * @throws NullPointerException if one that is required is null
         */
        public AtRest {
            Objects.requireNonNull(skidded, "skidded");
        }
    }

    /**
     * Makes a skid.
     *
     * @param sections the sections in the order of travel, at least one
     * @return the skid
     * @throws IllegalArgumentException if there is no section
     */
    public static Skid over(Section... sections) {
        Objects.requireNonNull(sections, "sections");
        if (sections.length == 0) {
            throw new IllegalArgumentException("a skid needs at least one section, got none");
        }
        return new Skid(List.of(sections));
    }

    /**
     * Gives the speed at the start of the skid from the speed at its end.
     *
     * <p>From rest at the end this is the least speed that makes these marks: whatever was lost before or without marks
     * comes on top.
     *
     * @param atEnd the speed v₁ left at the end, zero if the vehicle came to rest
     * @return the entry speed v₀
     * @throws IllegalArgumentException if a section on which the vehicle gains speed would leave it faster than v₁, or
     *     the entry speed exceeds 150 m/s
     */
    public Speed entrySpeed(Speed atEnd) {
        Objects.requireNonNull(atEnd, "atEnd");
        double speedMps = atEnd.inMps();
        for (int i = sections.size() - 1; i >= 0; i--) {
            Section section = sections.get(i);
            double gained = -2 * section.netDecelMps2 * section.length.inMetres();
            if (gained > speedMps * speedMps) {
                throw new IllegalArgumentException("speed at the end of section " + i + " must be at least "
                        + Numbers.text(Math.sqrt(gained)) + " m/s, which the slope alone gives, got "
                        + Numbers.text(speedMps) + " m/s");
            }
            speedMps = SkidKernel.entrySpeedMps(speedMps, section.netDecelMps2, section.length.inMetres());
        }
        return Speed.mps(speedMps);
    }

    /**
     * Follows a vehicle through the skid.
     *
     * @param entry the entry speed v₀
     * @return the speed at the end, or where it came to rest
     */
    public End run(Speed entry) {
        Objects.requireNonNull(entry, "entry");
        double speedMps = entry.inMps();
        double skiddedM = 0;
        for (int i = 0; i < sections.size(); i++) {
            Section section = sections.get(i);
            double lengthM = section.length.inMetres();
            if (section.slows()) {
                double toRestM = SkidKernel.lengthM(speedMps, 0, section.netDecelMps2);
                if (toRestM <= lengthM) {
                    return new AtRest(i, Distance.metres(skiddedM + toRestM));
                }
            }
            speedMps = SkidKernel.exitSpeedMps(speedMps, section.netDecelMps2, lengthM);
            skiddedM += lengthM;
        }
        return new StillMoving(Speed.mps(speedMps));
    }

    /**
     * Gives the skid length between two speeds on one surface.
     *
     * @param from the speed v₀ at the start
     * @param to the speed v₁ at the end, not above v₀
     * @param deceleration the deceleration a, above 0
     * @return (v₀² − v₁²) / (2 a)
     * @throws IllegalArgumentException if v₁ exceeds v₀ or the deceleration is 0
     */
    public static Distance length(Speed from, Speed to, Deceleration deceleration) {
        Objects.requireNonNull(from, "from");
        return Distance.metres(SkidKernel.lengthM(from.inMps(), to.inMps(), deceleration.inMps2()));
    }

    /**
     * Combines speeds lost one after the other, each stated as the speed that would just have been used up.
     *
     * <p>v₀ = √(Σ vᵢ²)
     *
     * @param lost the speeds lost vᵢ and, if any, the speed left at the end
     * @return the entry speed
     * @throws IllegalArgumentException if it exceeds 150 m/s
     */
    public static Speed combine(Speed... lost) {
        Objects.requireNonNull(lost, "lost");
        double square = 0;
        for (Speed each : lost) {
            square += each.inMps() * each.inMps();
        }
        return Speed.mps(Math.sqrt(square));
    }
}
