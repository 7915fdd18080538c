/** Who published a figure, how firmly it is known here, and where it holds. */
@NullMarked
package io.github.stoplag.source;

import org.jspecify.annotations.NullMarked;
