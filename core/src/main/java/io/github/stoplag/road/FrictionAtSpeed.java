package io.github.stoplag.road;

import io.github.stoplag.quantity.Speed;

/** Friction that depends on speed. */
public sealed interface FrictionAtSpeed permits TexturedFriction, TabulatedFriction {
    /**
     * Gives the friction at a speed.
     *
     * @param speed the speed; for locked wheels the slip speed equals the vehicle's
     * @return the friction coefficient with its source, and a caveat if the speed is outside what the source covers
     */
    SourcedFriction at(Speed speed);
}
