/**
 * Laws of chance with the same bits on every JDK, for whatever is drawn or quoted as a quantile: one implementation of
 * the log-normal and of the normal behind drivers, sweeps and uncertainties.
 */
@NullMarked
package io.github.stoplag.chance;

import org.jspecify.annotations.NullMarked;
