/** Published stopping rules beside the tables they were published with. */
@NullMarked
package io.github.stoplag.examples.rules;

import org.jspecify.annotations.NullMarked;
