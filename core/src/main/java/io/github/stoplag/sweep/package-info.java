/**
 * Sweeps: plans of named axes, runs over millions of scenarios, and what is learnt from them.
 *
 * <p>A {@link io.github.stoplag.sweep.Plan} says which values each scenario has, by its index alone; a
 * {@link io.github.stoplag.sweep.Model} computes columns from columns; a {@link io.github.stoplag.sweep.Sweep} runs
 * chunks of 65,536 scenarios over the cores and adds their {@link io.github.stoplag.sweep.Tally tallies} in chunk
 * order, so that the result has the same bits on any count of threads.
 *
 * <p>A contact probability found here is conditional: it says how often the drawn scenarios end in contact under the
 * plan's assumptions, given that the leader brakes. It is not a crash rate and proves no safety.
 *
 * <p>How sure a share of 30 in 1000 is, by Wilson:
 *
 * <pre>{@code
 * new Proportion(30, 1000).wilson(0.95); // [0.02109, 0.0425] at 95 %
 * }</pre>
 */
@NullMarked
package io.github.stoplag.sweep;

import org.jspecify.annotations.NullMarked;
