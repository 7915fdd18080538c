/**
 * Laws of chance with the same bits on every JDK, for whatever is drawn or quoted as a quantile: one implementation of
 * the log-normal and of the normal behind drivers, sweeps and uncertainties.
 *
 * <p>The median of a log-normal law is exp(μ):
 *
 * <pre>{@code
 * new Distribution.LogNormal(0, 0.5).quantile(0.5); // 1.0
 * }</pre>
 */
@NullMarked
package io.github.stoplag.chance;

import org.jspecify.annotations.NullMarked;
