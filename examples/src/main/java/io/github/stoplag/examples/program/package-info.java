/** What all programs share: options, output folders, the line a user reads at the end. */
@NullMarked
package io.github.stoplag.examples.program;

import org.jspecify.annotations.NullMarked;
