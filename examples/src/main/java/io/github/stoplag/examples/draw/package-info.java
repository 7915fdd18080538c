/** Pictures and pages: charts drawn to scale, as SVG and HTML. */
@NullMarked
package io.github.stoplag.examples.draw;

import org.jspecify.annotations.NullMarked;
