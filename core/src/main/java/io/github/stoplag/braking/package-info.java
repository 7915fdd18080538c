/**
 * Brake response, the stop of one vehicle, and published stopping rules.
 *
 * <p>A stop from 20 m/s: v t_r + v²/(2 a) = 20 m + 40 m:
 *
 * <pre>{@code
 * Stop.of(Speed.mps(20), TimeSpan.seconds(1), BrakeResponse.INSTANT,
 *         Deceleration.mps2(5)).orElseThrow().stoppingDistance(); // 60 m
 * }</pre>
 */
@NullMarked
package io.github.stoplag.braking;

import org.jspecify.annotations.NullMarked;
