/** JMH benchmarks: the kernel, the typed face and their rivals on the same scenarios in one run. */
@NullMarked
package io.github.stoplag.benchmarks;

import org.jspecify.annotations.NullMarked;
