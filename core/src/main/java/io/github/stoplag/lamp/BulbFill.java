package io.github.stoplag.lamp;

/** What a bulb is filled with; it decides whether the filament loses heat to gas. */
public enum BulbFill {
    /** Filled with argon, nitrogen or krypton: usual from some 10 W up. */
    GAS,
    /** Evacuated: usual for small filaments, which would lose too much to gas. */
    VACUUM
}
