/**
 * Value types at the face of the library: small records that hold one SI double, name their units, check their range,
 * convert, compare and print. Physics lives in named methods elsewhere; there is no unit algebra here.
 */
@NullMarked
package io.github.stoplag.quantity;

import org.jspecify.annotations.NullMarked;
