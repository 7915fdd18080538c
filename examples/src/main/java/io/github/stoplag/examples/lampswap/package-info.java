/** What a lamp swap changes: how much earlier the driver behind sees the light, and what that is worth. */
@NullMarked
package io.github.stoplag.examples.lampswap;

import org.jspecify.annotations.NullMarked;
