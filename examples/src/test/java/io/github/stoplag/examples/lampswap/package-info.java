@NullMarked
package io.github.stoplag.examples.lampswap;

import org.jspecify.annotations.NullMarked;
