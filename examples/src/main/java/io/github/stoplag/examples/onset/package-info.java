/** How the light of stop lamps rises and falls, beside published figures. */
@NullMarked
package io.github.stoplag.examples.onset;

import org.jspecify.annotations.NullMarked;
