/** Road and grade: the deceleration they allow. */
@NullMarked
package io.github.stoplag.road;

import org.jspecify.annotations.NullMarked;
