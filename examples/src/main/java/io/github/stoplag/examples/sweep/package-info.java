/** Sweeps of many scenarios: what they print and draw. */
@NullMarked
package io.github.stoplag.examples.sweep;

import org.jspecify.annotations.NullMarked;
