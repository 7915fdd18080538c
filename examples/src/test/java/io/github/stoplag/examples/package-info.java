@NullMarked
package io.github.stoplag.examples;

import org.jspecify.annotations.NullMarked;
