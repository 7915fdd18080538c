/** Worked solutions of questions, and worksheets with a key and a grader. */
@NullMarked
package io.github.stoplag.examples.teach;

import org.jspecify.annotations.NullMarked;
