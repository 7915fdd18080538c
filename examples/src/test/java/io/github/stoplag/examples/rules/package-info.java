@NullMarked
package io.github.stoplag.examples.rules;

import org.jspecify.annotations.NullMarked;
