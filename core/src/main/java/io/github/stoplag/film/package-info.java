/**
 * From a film of lamps to numbers with their uncertainty: the camera, the light behind the grey values, the moments of
 * an onset or a decay, marks set by eye, and the lamp behind a filmed curve.
 *
 * <p>The time between two frames of a film taken at 240 per second:
 *
 * <pre>{@code
 * Camera.takenAt(240).build().frameInterval(); // 0.00416667 s
 * }</pre>
 */
@NullMarked
package io.github.stoplag.film;

import org.jspecify.annotations.NullMarked;
