@NullMarked
package io.github.stoplag.examples.sweep.run;

import org.jspecify.annotations.NullMarked;
