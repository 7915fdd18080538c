/**
 * What the law asks of rear lamps: intensities, measuring points, stop against tail lamp, stop and emergency signals.
 */
@NullMarked
package io.github.stoplag.approval;

import org.jspecify.annotations.NullMarked;
