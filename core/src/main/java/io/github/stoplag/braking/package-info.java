/** Brake response, the stop of one vehicle, and published stopping rules. */
@NullMarked
package io.github.stoplag.braking;

import org.jspecify.annotations.NullMarked;
