/**
 * Runnable programs: what the library answers, from a scenario file to a table, pictures and a report. A room for each
 * program; below them the rooms all programs use; {@code ExamplesArchitectureTest} holds the order.
 */
@NullMarked
package io.github.stoplag.examples;

import org.jspecify.annotations.NullMarked;
