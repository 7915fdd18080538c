/** The electrical side of a lamp swap. */
@NullMarked
package io.github.stoplag.examples.circuit;

import org.jspecify.annotations.NullMarked;
