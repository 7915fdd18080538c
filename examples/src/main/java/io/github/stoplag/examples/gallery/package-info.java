/** Every kind of picture, with the code that made it. */
@NullMarked
package io.github.stoplag.examples.gallery;

import org.jspecify.annotations.NullMarked;
