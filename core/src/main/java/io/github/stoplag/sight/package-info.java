/** From an onset curve to the moment it is detected. Every result names the criterion it used. */
@NullMarked
package io.github.stoplag.sight;

import org.jspecify.annotations.NullMarked;
