/** The program {@code film}: from a film of lamps to the moments at which each is seen, and to metres on the road. */
@NullMarked
package io.github.stoplag.examples.film;

import org.jspecify.annotations.NullMarked;
