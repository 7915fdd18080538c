/**
 * Who published a figure, how firmly it is known here, and where it holds.
 *
 * <p>A value outside the range that was looked at:
 *
 * <pre>{@code
 * new Validity("speed", 5, 40, "m/s", Source.assumed("invented example")).check(50)
 *         .isPresent(); // true
 * }</pre>
 */
@NullMarked
package io.github.stoplag.source;

import org.jspecify.annotations.NullMarked;
