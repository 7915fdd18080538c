/** The road under the tyre: surfaces and their friction, speed, slip, side force, water, drag and skids. */
@NullMarked
package io.github.stoplag.road;

import org.jspecify.annotations.NullMarked;
