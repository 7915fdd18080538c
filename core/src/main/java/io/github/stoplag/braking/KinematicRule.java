package io.github.stoplag.braking;

import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Source;

/**
 * A rule that fixes a reaction time and a deceleration, computed exactly: s = v t + v²/(2a).
 *
 * <p>Symbols: s distance [m], v speed [m/s], t reaction time [s], a deceleration [m/s²].
 *
 * @param name a short name with the edition or clause
 * @param reaction the reaction time t, in [0, 30] s
 * @param deceleration the deceleration a, above 0
 * @param source who published time and deceleration
 */
public record KinematicRule(String name, TimeSpan reaction, Deceleration deceleration, Source source)
        implements StoppingRule {
    /**
     * Checks the ranges.
     *
     * @param name a short name with the edition or clause
     * @param reaction the reaction time t, in [0, 30] s
     * @param deceleration the deceleration a, above 0
     * @param source who published time and deceleration
     * @throws IllegalArgumentException if the reaction time or the deceleration is out of range
     */
    public KinematicRule {
        Check.inRange("reaction time", reaction.inSeconds(), 0, 30, "s");
        Check.above("deceleration", deceleration.inMps2(), 0, 200, "m/s²");
    }

    @Override
    public Parts at(Speed speed) {
        return new Parts(
                Distance.metres(StopKernel.reactionDistanceM(speed.inMps(), reaction.inSeconds())),
                Distance.metres(StopKernel.brakingDistanceM(speed.inMps(), 0, deceleration.inMps2())));
    }
}
