/**
 * From an onset curve to the moment it is detected. Every result names the criterion it used.
 *
 * <p>An eye that sums light sees a sudden one of 60 cd after −τ ln(1 − 3 cd / 60 cd):
 *
 * <pre>{@code
 * LampSignal sudden = LampSignal.of(LedLamp.of(TimeSpan.seconds(0), TimeSpan.seconds(0)),
 *         LuminousIntensity.candela(60));
 * IntegratingEye.of(TimeSpan.seconds(0.1), LuminousIntensity.candela(3))
 *         .detect(sudden).orElseThrow(); // 0.00512933 s
 * }</pre>
 */
@NullMarked
package io.github.stoplag.sight;

import org.jspecify.annotations.NullMarked;
