/**
 * Worked solutions as data, exercise sheets made from them, and the grading of answers.
 *
 * <p>A solution has its answer as data and its steps as text, Markdown or HTML:
 *
 * <pre>{@code
 * WorkedStop.brakingDistance(Style.metric(), Given.of(20, Unit.MPS), Given.of(5, Unit.of("m/s²")))
 *         .answer().printed(); // 40.0 m
 * }</pre>
 */
@NullMarked
package io.github.stoplag.worked;

import org.jspecify.annotations.NullMarked;
