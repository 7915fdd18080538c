@NullMarked
package io.github.stoplag.examples.gallery;

import org.jspecify.annotations.NullMarked;
