/** Worked solutions as data, exercise sheets made from them, and the grading of answers. */
@NullMarked
package io.github.stoplag.worked;

import org.jspecify.annotations.NullMarked;
