package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.sweep.ConditionalContact;
import io.github.stoplag.sweep.Design;
import io.github.stoplag.sweep.Model;
import io.github.stoplag.sweep.PairModel;
import io.github.stoplag.sweep.Plan;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * A sweep of pairs written as a text file of lines {@code key = value}: design, seed, lamps, and an axis by each key
 * that names one. The shipped file explains every line.
 *
 * <p>The axes have a fixed order whatever that of the lines, so that the same values get the same random numbers.
 */
public final class PlanFile {
    /** The name of the plan that comes with the programs. */
    public static final String SHIPPED = "highway_night.properties";

    private final String name;
    private final String title;
    private final boolean invented;
    private final List<PlanAxis> axes;
    private final Plan plan;
    private final PairModel pairModel;
    private final Map<String, SupplyLamp> tables;

    PlanFile(
            String name,
            String title,
            boolean invented,
            List<PlanAxis> axes,
            Plan plan,
            PairModel pairModel,
            Map<String, SupplyLamp> tables) {
        this.name = name;
        this.title = title;
        this.invented = invented;
        this.axes = List.copyOf(axes);
        this.plan = plan;
        this.pairModel = pairModel;
        this.tables = new TreeMap<>(tables);
    }

    /**
     * Reads the plan that comes with the programs.
     *
     * @return the plan
     */
    public static PlanFile shipped() {
        return PlanReader.read(ScenarioFile.shipped(SHIPPED, PlanReader.VOCABULARY));
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
        return PlanReader.read(ScenarioFile.read(path, PlanReader.VOCABULARY));
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
        return PlanReader.read(ScenarioFile.of(name, text, PlanReader.VOCABULARY));
    }

    /**
     * Gives the plan with another number of scenarios.
     *
     * @param scenarios how many; in a grid, how many per combination of levels
     * @return the new plan
     * @throws IllegalArgumentException if the design cannot have so many, or the grid's combinations become too many
     */
    public PlanFile withScenarios(long scenarios) {
        return with(plan.withDesign(new Design(plan.design().kind(), scenarios)));
    }

    /**
     * Gives the plan with another seed.
     *
     * @param seed the seed
     * @return the new plan
     */
    public PlanFile withSeed(long seed) {
        return with(plan.withSeed(seed));
    }

    private PlanFile with(Plan newPlan) {
        // says so now if a grid is too large
        newPlan.size();
        return new PlanFile(name, title, invented, axes, newPlan, pairModel, tables);
    }

    /**
     * Gives where the plan was read.
     *
     * @return the file's name
     */
    public String name() {
        return name;
    }

    /**
     * Gives what the plan calls itself.
     *
     * @return the title
     */
    public String title() {
        return title;
    }

    /**
     * Says whether its figures are made up.
     *
     * @return true if the file says so
     */
    public boolean invented() {
        return invented;
    }

    /**
     * Gives the lamps.
     *
     * @return their names in order
     */
    public List<String> lamps() {
        return pairModel.lamps();
    }

    /**
     * Gives the plan to run.
     *
     * @return axes, design and seed
     */
    public Plan plan() {
        return plan;
    }

    /**
     * Gives the model to run the plan through.
     *
     * @return the model
     */
    public Model model() {
        return following(pairModel);
    }

    /** A model that is given latencies, with those that follow from the supply. */
    Model following(Model given) {
        return tables.isEmpty() ? given : new SupplyModel(given, lamps(), tables);
    }

    /** The model that integrates the gap out; to be run through {@link #following}. */
    ConditionalContact conditional() {
        return ConditionalContact.of(PlanReader.withLatencies(plan, tables.keySet()), lamps().toArray(String[]::new));
    }

    /**
     * Gives the model of the pair, which says what a tally gathers.
     *
     * @return the model
     */
    public PairModel pairModel() {
        return pairModel;
    }

    /**
     * Lists what is unknown of the lamps and not drawn by the plan.
     *
     * @return in words, at least one entry
     */
    public List<String> leftOut() {
        List<String> unknown = new ArrayList<>();
        for (String lamp : lamps()) {
            int at = plan.columns().indexOf(SupplyModel.latency(lamp));
            if (tables.containsKey(lamp)) {
                unknown.add(
                        lamp + ": coil factor, gas loss, series resistance and ambient temperature held at one value");
            } else if (plan.axes().get(at).distribution().isEmpty()) {
                unknown.add(lamp + ": latency "
                        + (plan.axes().get(at).levels().length == 1 ? "held at one value" : "listed"));
            } else {
                unknown.add(lamp + ": latency as drawn, not how well its distribution is known");
            }
        }
        return unknown;
    }

    /**
     * Says what the axes rest on, and what to know about published sets.
     *
     * @return one line for each axis with a source and for each reservation
     */
    public List<String> notes() {
        List<String> notes = new ArrayList<>();
        for (PlanAxis axis : axes) {
            String column = axis.axis().column();
            axis.axis().source().ifPresent(source -> notes.add(column + ": " + source + "."));
            axis.caveats().forEach(caveat -> notes.add(column + ": " + caveat.text() + "."));
        }
        tables.forEach((lamp, table) -> notes.add(SupplyModel.latency(lamp)
                + ": from supply_v by a table of the filament model behind a red lens over " + table.range()
                + ", within " + Numbers.text(1e6 * table.largestErrorS(), 2)
                + " µs of the model; seen by: " + table.seenBy() + "."));
        return notes;
    }

    /**
     * Gives all that decides the values of the scenarios, in SI units with every digit, in a fixed order: two plans
     * with the same text have the same scenarios, on every JDK.
     *
     * @return lines, each ended by a line feed
     */
    public String text() {
        StringBuilder text = new StringBuilder("plan of pairs, form 1\n");
        text.append("design = ")
                .append(plan.design().kind().name().toLowerCase(Locale.ROOT).replace('_', '-'))
                .append('\n');
        text.append("scenarios = ").append(plan.design().count()).append('\n');
        text.append("seed = ").append(plan.seed()).append('\n');
        text.append("lamps = ").append(String.join(", ", pairModel.lamps())).append('\n');
        axes.forEach(axis -> text.append(axis.axis().column())
                .append(" = ")
                .append(axis.canonical())
                .append('\n'));
        tables.forEach((lamp, table) -> text.append(SupplyModel.latency(lamp))
                .append(" = ")
                .append(table.canonical())
                .append('\n'));
        plan.correlations()
                .forEach(c -> text.append("correlation = ")
                        .append(c.first())
                        .append(' ')
                        .append(c.second())
                        .append(' ')
                        .append(ExactText.of(c.rho()))
                        .append('\n'));
        return text.toString();
    }

    /**
     * Gives the SHA-256 of the text.
     *
     * @return 64 hexadecimal digits
     */
    public String hash() {
        return Sha256.of(text());
    }

    @Override
    public String toString() {
        return title + ": " + plan.size() + " scenarios, "
                + plan.columns().stream().collect(Collectors.joining(", "));
    }
}
