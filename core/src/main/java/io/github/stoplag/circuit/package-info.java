/**
 * The electrical side of a lamp swap: outage monitors, load resistors, isolating diodes, wiring drop, fuses, flashers.
 *
 * <p>Every result carries an {@link io.github.stoplag.source.Evidence}: what it rests on, how far to trust it and what
 * to mind. The checks judge given parts; they design nothing and approve nothing.
 */
@NullMarked
package io.github.stoplag.circuit;

import org.jspecify.annotations.NullMarked;
