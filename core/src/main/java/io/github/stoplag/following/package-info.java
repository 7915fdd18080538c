/** Two vehicles on one lane: smallest gap, contact, closing speed, needed gap. */
@NullMarked
package io.github.stoplag.following;

import org.jspecify.annotations.NullMarked;
