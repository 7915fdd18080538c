/**
 * The files a user writes and what they hold: scenarios, their keys, measured curves; the one line that says what is
 * wrong.
 */
@NullMarked
package io.github.stoplag.examples.file;

import org.jspecify.annotations.NullMarked;
