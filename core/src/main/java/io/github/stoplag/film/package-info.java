/**
 * From a film of lamps to numbers with their uncertainty: the camera, the light behind the grey values, the moments of
 * an onset or a decay, marks set by eye, and the lamp behind a filmed curve.
 */
@NullMarked
package io.github.stoplag.film;

import org.jspecify.annotations.NullMarked;
