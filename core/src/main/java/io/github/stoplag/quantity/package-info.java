/**
 * Value types at the face of the library: small records that hold one SI double, name their units, check their range,
 * convert, compare and print. Physics lives in named methods elsewhere; there is no unit algebra here.
 *
 * <p>A speed from text and to text:
 *
 * <pre>{@code
 * Speed.parse("60 mph").format("km/h", 1); // 96.6 km/h
 * }</pre>
 */
@NullMarked
package io.github.stoplag.quantity;

import org.jspecify.annotations.NullMarked;
