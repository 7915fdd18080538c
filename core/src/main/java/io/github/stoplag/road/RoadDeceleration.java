package io.github.stoplag.road;

import io.github.stoplag.quantity.Deceleration;

/** The deceleration a road allows with locked or fully used tyres, or that it allows none. */
public sealed interface RoadDeceleration {
    /**
     * The road slows the vehicle.
     *
     * @param deceleration the deceleration, above 0
     */
    record Holds(Deceleration deceleration) implements RoadDeceleration {}

    /**
     * The road cannot slow the vehicle: friction does not outweigh the downgrade.
     *
     * @param reason why not, with the values compared
     */
    record CannotHold(String reason) implements RoadDeceleration {}
}
