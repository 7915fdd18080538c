/**
 * The bridge between the core's value types and JSR-385: quantities ({@link Quantities}) and units
 * ({@link QuantityUnits}). Nothing here depends on the default locale.
 */
@NullMarked
package io.github.stoplag.units;

import org.jspecify.annotations.NullMarked;
