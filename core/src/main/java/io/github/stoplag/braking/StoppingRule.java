package io.github.stoplag.braking;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import java.util.Objects;

/** A published rule that gives a stopping distance for a speed. */
public interface StoppingRule extends Evident {
    /**
     * Names the rule in tables and reports.
     *
     * @return a short name with the edition or clause
     */
    String name();

    /**
     * Says who published it.
     *
     * @return the source and its standing
     */
    Source source();

    @Override
    default Evidence evidence() {
        return Evidence.of(name(), source());
    }

    /**
     * Says what the distance at a speed rests on.
     *
     * @param speed the speed
     * @return the evidence, with a caveat if the speed lies beyond what the rule was published for, where that is known
     */
    default Evidence evidence(Speed speed) {
        Objects.requireNonNull(speed, "speed");
        return evidence();
    }

    /**
     * Applies the rule.
     *
     * @param speed the speed
     * @return the distance, in the parts the rule speaks of
     */
    Parts at(Speed speed);

    /**
     * A stopping distance in two parts. The total is the sum of the parts as given, so rules that round each part add
     * the rounded parts.
     *
     * @param lag what is run before the brakes act: reaction, thinking or system lag, as the rule has it
     * @param braking what is run while they act
     */
    record Parts(Distance lag, Distance braking) {

        /**
         * Refuses nulls.
         *
         * @param lag what is run before the brakes act: reaction, thinking or system lag, as the rule has it
         * @param braking what is run while they act
         * @throws NullPointerException if one that is required is null
         */
        public Parts {
            Objects.requireNonNull(braking, "braking");
            Objects.requireNonNull(lag, "lag");
        }

        /**
         * Gives the whole distance.
         *
         * @return lag and braking part together
         */
        public Distance total() {
            return Distance.metres(lag.inMetres() + braking.inMetres());
        }
    }
}
