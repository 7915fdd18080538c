@NullMarked
package io.github.stoplag.examples.onset;

import org.jspecify.annotations.NullMarked;
