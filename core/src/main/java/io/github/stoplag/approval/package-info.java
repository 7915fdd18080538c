/**
 * What the law asks of rear lamps: intensities, measuring points, stop against tail lamp, stop and emergency signals.
 *
 * <p>A stop lamp of 60 cd beside a tail lamp of 10 cd:
 *
 * <pre>{@code
 * StopTailRatio.FMVSS_108_NEAR_AXIS.check(LuminousIntensity.candela(60),
 *         LuminousIntensity.candela(10)).ratio(); // 6.0
 * }</pre>
 */
@NullMarked
package io.github.stoplag.approval;

import org.jspecify.annotations.NullMarked;
