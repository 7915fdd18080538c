/** Plan files, row files, manifests and resumable runs of sweeps. */
@NullMarked
package io.github.stoplag.examples.sweep.run;

import org.jspecify.annotations.NullMarked;
