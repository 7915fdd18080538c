package io.github.stoplag.sight;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Objects;

/**
 * What it costs that a stop lamp goes dark late: the driver behind brakes longer than the one in front.
 *
 * <pre>
 *   Δv = a Δt,   s = a Δt²/2 + Δv²/(2 b),   t = s/v
 * </pre>
 *
 * <p>Symbols: Δt how much later the lamp is seen dark, [0, 10] s; a deceleration kept until then, b acceleration back
 * to the old speed, in m/s²; v speed at which braking should have ended, (0, 150] m/s; Δv speed lost, not above v; s by
 * how much the gap grows for nothing; t the time lost, which everyone behind loses too. It costs time and smooth
 * traffic, not safety of its own: the gap grows.
 *
 * <pre>{@code
 * LateDarkness late = LateDarkness.of(TimeSpan.seconds(0.1), Deceleration.mps2(3), Deceleration.mps2(1.5),
 *         Speed.kmh(50));
 * late.speedLost().inMps(); // 0.30000000000000004
 * }</pre>
 *
 * @param speedLost the speed Δv lost
 * @param gapGrown by how much the gap grows, s
 * @param timeLost the time lost, t
 */
public record LateDarkness(Speed speedLost, Distance gapGrown, TimeSpan timeLost) {

    /**
     * Refuses nulls.
     *
     * @param speedLost the speed Δv lost
     * @param gapGrown by how much the gap grows, s
     * @param timeLost the time lost, t
     * @throws NullPointerException if one that is required is null
     */
    public LateDarkness {
        Objects.requireNonNull(gapGrown, "gapGrown");
        Objects.requireNonNull(speedLost, "speedLost");
        Objects.requireNonNull(timeLost, "timeLost");
    }

    /**
     * Works the cost out.
     *
     * @param later how much later the lamp is seen dark, [0, 10] s
     * @param braking the deceleration kept until then
     * @param regaining the acceleration back to the old speed, above 0 m/s²
     * @param speed the speed at which braking should have ended, above 0
     * @return the cost
     * @throws IllegalArgumentException if one is out of range, or more speed would be lost than there is
     */
    public static LateDarkness of(TimeSpan later, Deceleration braking, Deceleration regaining, Speed speed) {
        Objects.requireNonNull(braking, "braking");
        Objects.requireNonNull(later, "later");
        Objects.requireNonNull(regaining, "regaining");
        double laterS = Check.inRange("time by which the lamp goes dark later", later.inSeconds(), 0, 10, "s");
        double mps = Check.above("speed", speed.inMps(), 0, Ranges.SPEED.hi(), "m/s");
        double backMps2 = Check.above("acceleration back", regaining.inMps2(), 0, Ranges.DECELERATION.hi(), "m/s²");
        double lostMps = Check.inRange("speed lost", braking.inMps2() * laterS, 0, mps, "m/s");
        double metres = lostMps * laterS / 2 + lostMps * lostMps / (2 * backMps2);
        return new LateDarkness(Speed.mps(lostMps), Distance.metres(metres), TimeSpan.seconds(metres / mps));
    }
}
