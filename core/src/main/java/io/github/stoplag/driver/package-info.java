/** The driver: perception-reaction in parts, from norms, as distributions, and the deceleration drivers choose. */
@NullMarked
package io.github.stoplag.driver;

import org.jspecify.annotations.NullMarked;
