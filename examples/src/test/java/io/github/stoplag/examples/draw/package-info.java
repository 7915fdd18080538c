@NullMarked
package io.github.stoplag.examples.draw;

import org.jspecify.annotations.NullMarked;
