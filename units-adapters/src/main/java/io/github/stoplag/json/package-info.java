/**
 * Value types, results and their evidence as JSON, by a module for Jackson
 * ({@link io.github.stoplag.json.StoplagModule}). Jackson is an optional dependency: who uses this package adds
 * {@code com.fasterxml.jackson.core:jackson-databind}.
 */
@NullMarked
package io.github.stoplag.json;

import org.jspecify.annotations.NullMarked;
