package io.github.stoplag.examples.spark;

import io.github.stoplag.examples.sweep.run.Plans;
import io.github.stoplag.sweep.PlanFile;
import java.io.Serializable;

/**
 * A plan as it travels to the machines of a cluster: the text of its file, read anew on each, so that none needs the
 * file.
 *
 * @param name the file's name
 * @param text the file's text; empty for the plan that comes with the programs
 * @param scenarios how many scenarios, instead of what the file says
 * @param seed the seed, instead of what the file says
 */
record PlanText(String name, String text, long scenarios, long seed) implements Serializable {
    /** Takes a plan file with its own number of scenarios and seed. */
    static PlanText of(String name, String text) {
        PlanFile plan = parse(name, text);
        return new PlanText(
                name, text, plan.plan().design().count(), plan.plan().seed());
    }

    private static PlanFile parse(String name, String text) {
        return text.isEmpty() ? Plans.shipped() : Plans.parse(name, text);
    }

    PlanText withScenarios(long newScenarios) {
        return new PlanText(name, text, newScenarios, seed);
    }

    PlanText withSeed(long newSeed) {
        return new PlanText(name, text, scenarios, newSeed);
    }

    PlanFile plan() {
        return parse(name, text).withScenarios(scenarios).withSeed(seed);
    }
}
