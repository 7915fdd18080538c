@NullMarked
package io.github.stoplag.examples.following;

import org.jspecify.annotations.NullMarked;
