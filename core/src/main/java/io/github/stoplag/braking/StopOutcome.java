package io.github.stoplag.braking;

/** What becomes of a braking vehicle: it stops, or it never does. */
public sealed interface StopOutcome permits Stop, NeverStops {}
