/**
 * The road under the tyre: surfaces and their friction, speed, slip, side force, water, drag and skids.
 *
 * <p>All friction used on the level: a = μ g:
 *
 * <pre>{@code
 * Road.level(FrictionCoefficient.of(0.5)).deceleration(); // Holds[deceleration=4.90332 m/s²]
 * }</pre>
 */
@NullMarked
package io.github.stoplag.road;

import org.jspecify.annotations.NullMarked;
