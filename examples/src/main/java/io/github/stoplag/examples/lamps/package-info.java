/**
 * The lamps and the ways to say when a lamp is seen that a user's file may name: one list of each, for all programs.
 */
@NullMarked
package io.github.stoplag.examples.lamps;

import org.jspecify.annotations.NullMarked;
