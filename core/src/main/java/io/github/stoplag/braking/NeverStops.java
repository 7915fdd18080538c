package io.github.stoplag.braking;

/**
 * The vehicle never comes to rest.
 *
 * @param reason why not, with the values compared
 */
public record NeverStops(String reason) implements StopOutcome {}
