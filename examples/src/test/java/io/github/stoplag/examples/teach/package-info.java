@NullMarked
package io.github.stoplag.examples.teach;

import org.jspecify.annotations.NullMarked;
