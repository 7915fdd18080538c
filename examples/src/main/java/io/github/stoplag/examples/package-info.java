/** Runnable programs: what the library answers, from a scenario file to a table, pictures and a report. */
@NullMarked
package io.github.stoplag.examples;

import org.jspecify.annotations.NullMarked;
