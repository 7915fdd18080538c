@NullMarked
package io.github.stoplag.examples.sweep;

import org.jspecify.annotations.NullMarked;
