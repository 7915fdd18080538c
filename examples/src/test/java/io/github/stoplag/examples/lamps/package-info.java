@NullMarked
package io.github.stoplag.examples.lamps;

import org.jspecify.annotations.NullMarked;
