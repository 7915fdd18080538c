/**
 * The driver: perception-reaction in parts, from norms, as distributions, and the deceleration drivers choose.
 *
 * <p>Reaction times by mean and standard deviation (invented figures):
 *
 * <pre>{@code
 * ReactionDistribution drivers = LogNormalReaction.ofMeanAndSd(TimeSpan.seconds(1.1), TimeSpan.seconds(0.3));
 * drivers.mean(); // 1.1 s
 * }</pre>
 */
@NullMarked
package io.github.stoplag.driver;

import org.jspecify.annotations.NullMarked;
