/**
 * Onset curves of signal lamps: LED, filament (electro-thermal, from the rating) and measured; tungsten; supply and
 * wiring.
 */
@NullMarked
package io.github.stoplag.lamp;

import org.jspecify.annotations.NullMarked;
