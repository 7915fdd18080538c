/**
 * SI kernel: static pure functions and small buffers on doubles. Every parameter's name ends in its unit (Mps, Mps2, S,
 * M, Ratio); nothing is allocated in a call unless it says so; only {@code java.lang.Math} is used.
 *
 * <p>The kernel is the fast face for sweeps. Its functions do not check their arguments where a check would cost more
 * than the work; each says what it takes for granted. The checked face is in the packages {@code road}, {@code braking}
 * and {@code following}.
 *
 * <p>The stop from 20 m/s after 1 s with 5 m/s²:
 *
 * <pre>{@code
 * StopKernel.stoppingDistanceM(20, 1, 0, 5); // 60.0
 * }</pre>
 */
@NullMarked
package io.github.stoplag.kernel;

import org.jspecify.annotations.NullMarked;
