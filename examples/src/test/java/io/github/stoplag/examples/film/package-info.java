/** Tests of the program {@code film}. */
@NullMarked
package io.github.stoplag.examples.film;

import org.jspecify.annotations.NullMarked;
