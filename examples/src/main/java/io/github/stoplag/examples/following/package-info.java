/** Who touches whom when the first of a pair or chain brakes. */
@NullMarked
package io.github.stoplag.examples.following;

import org.jspecify.annotations.NullMarked;
