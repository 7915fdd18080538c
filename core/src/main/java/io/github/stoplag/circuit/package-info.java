/**
 * The electrical side of a lamp swap: outage monitors, load resistors, isolating diodes, wiring drop, fuses, flashers.
 *
 * <p>Every result carries an {@link io.github.stoplag.source.Evidence}: what it rests on, how far to trust it and what
 * to mind. The checks judge given parts; they design nothing and approve nothing.
 *
 * <p>A fuse of 10 A in a circuit of 7 A, which draws 40 A for a moment when cold:
 *
 * <pre>{@code
 * Fuse.of(Current.amperes(10)).carry(Current.amperes(7), Current.amperes(40)).outcome(); // CARRIES
 * }</pre>
 */
@NullMarked
package io.github.stoplag.circuit;

import org.jspecify.annotations.NullMarked;
