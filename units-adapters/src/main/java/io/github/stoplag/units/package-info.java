/**
 * The bridge between the core's value types and the outside: JSR-385 quantities ({@link Quantities}) and text with units
 * ({@link QuantityText}, {@link UnitTable}). Nothing here depends on the default locale.
 */
@NullMarked
package io.github.stoplag.units;

import org.jspecify.annotations.NullMarked;
