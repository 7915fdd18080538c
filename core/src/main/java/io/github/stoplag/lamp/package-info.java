/**
 * Onset curves of signal lamps: LED, filament (electro-thermal, from the rating) and measured; tungsten; supply and
 * wiring.
 *
 * <p>How long an LED lamp takes from 10 to 90 % of its light:
 *
 * <pre>{@code
 * LedLamp.of(TimeSpan.millis(2), TimeSpan.millis(1)).riseTime(0.1, 0.9).orElseThrow(); // 0.001 s
 * }</pre>
 */
@NullMarked
package io.github.stoplag.lamp;

import org.jspecify.annotations.NullMarked;
