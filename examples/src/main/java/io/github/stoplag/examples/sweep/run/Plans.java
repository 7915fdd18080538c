package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.Resource;
import io.github.stoplag.examples.file.TextFile;
import io.github.stoplag.sweep.PlanFile;
import java.nio.file.Path;
import java.util.function.Supplier;

/** Plan files with the lamps that the programs know. */
public final class Plans {
    /** The name of the plan that comes with the programs. */
    public static final String SHIPPED = "highway_night.properties";

    private Plans() {}

    /**
     * Reads the plan that comes with the programs.
     *
     * @return the plan
     */
    public static PlanFile shipped() {
        return parse(SHIPPED, Resource.text(SHIPPED));
    }

    /**
     * Reads a plan.
     *
     * @param path where the file is
     * @return the plan
     * @throws InputException if it is missing, malformed, or its values do not go together; the message names file, key
     *     and value
     */
    public static PlanFile read(Path path) {
        return parse(path.toString(), TextFile.text(path));
    }

    /**
     * Reads a plan from the text of its file, for a machine that does not have the file.
     *
     * @param name the file's name
     * @param text its lines
     * @return the plan
     * @throws InputException if they are malformed or their values do not go together
     */
    public static PlanFile parse(String name, String text) {
        return complaining(() -> PlanFile.parse(name, text, DescribedLamps.IN_PLANS));
    }

    private static PlanFile complaining(Supplier<PlanFile> reader) {
        try {
            return reader.get();
        } catch (IllegalArgumentException e) {
            throw new InputException(String.valueOf(e.getMessage()), e);
        }
    }
}
