/** SI doubles for inner loops: static pure functions whose parameter names end in their unit. */
@NullMarked
package io.github.stoplag.kernel;

import org.jspecify.annotations.NullMarked;
