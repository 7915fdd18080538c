/** A plan file's sweep as a Spark job whose rows and statistics have the bits of a local run. */
@NullMarked
package io.github.stoplag.examples.spark;

import org.jspecify.annotations.NullMarked;
