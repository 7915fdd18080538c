package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * A sweep of pairs as a text of lines {@code key = value}: title, design, seed, lamps, and an axis by each key that
 * names one of {@link PairColumn}. It is read and written here; the program {@code sweep} prints a file that explains
 * every line.
 *
 * <p>The axes have a fixed order whatever that of the lines, so that the same values get the same random numbers.
 *
 * <p>Example: {@code PlanFile.parse("plan", text).model()}, to be run over {@code plan()}. A plan made in code is
 * written by {@code PlanFile.of("title", plan, lamps).text()}.
 */
public final class PlanFile {
    private final String name;
    private final Heading heading;
    private final List<PlanAxis> axes;
    private final Plan plan;
    private final PairModel pairModel;
    private final NavigableMap<String, LampLatency> described;
    private final NavigableMap<String, String> descriptions;

    /** What a plan calls itself, and whether its figures are made up. */
    record Heading(String title, boolean invented) {}

    PlanFile(
            String name,
            Heading heading,
            List<PlanAxis> axes,
            Plan plan,
            List<String> lamps,
            Map<String, LampLatency> described,
            Map<String, String> descriptions) {
        this(
                name,
                heading,
                axes,
                plan,
                PairModel.of(withLatencies(plan, lamps, described), lamps.toArray(String[]::new)),
                new TreeMap<>(described),
                new TreeMap<>(descriptions));
    }

    private PlanFile(
            String name,
            Heading heading,
            List<PlanAxis> axes,
            Plan plan,
            PairModel pairModel,
            NavigableMap<String, LampLatency> described,
            NavigableMap<String, String> descriptions) {
        this.name = name;
        this.heading = heading;
        this.axes = Check.copyOf("axes", axes);
        this.plan = plan;
        this.pairModel = pairModel;
        this.described = described;
        this.descriptions = descriptions;
    }

    /** The model of the pair wants a column for each latency, whatever it holds. */
    private static Plan withLatencies(Plan plan, List<String> lamps, Map<String, LampLatency> described) {
        Plan all = plan;
        for (String lamp : lamps) {
            if (described.containsKey(lamp) && described.get(lamp).table().isPresent()) {
                all = all.axis(Axis.constant(PairColumn.LATENCY.axis(lamp), PairColumn.LATENCY.unit(), 0));
            }
        }
        return all;
    }

    /**
     * Reads a plan in which every latency is an axis.
     *
     * @param name what messages call it, a file's name for example
     * @param text its lines
     * @return the plan
     * @throws IllegalArgumentException if they are malformed or do not go together; the message names key and value
     */
    public static PlanFile parse(String name, String text) {
        Objects.requireNonNull(text, "text");
        return parse(name, text, LampModels.NONE);
    }

    /**
     * Reads a plan.
     *
     * @param name what messages call it, a file's name for example
     * @param text its lines
     * @param models reads the lines that describe lamps
     * @return the plan
     * @throws IllegalArgumentException if they are malformed or do not go together; the message names key and value
     */
    public static PlanFile parse(String name, String text, LampModels models) {
        Objects.requireNonNull(text, "text");
        return PlanReader.read(name, text, models);
    }

    /**
     * Takes a plan made in code, to be written.
     *
     * @param title what it calls itself
     * @param plan the plan; axes of {@link PairColumn} alone, in that order, with laws that a plan file knows
     * @param lamps the lamps' names
     * @return the plan file
     * @throws IllegalArgumentException if a file cannot hold it
     */
    public static PlanFile of(String title, Plan plan, String... lamps) {
        Objects.requireNonNull(lamps, "lamps");
        Objects.requireNonNull(title, "title");
        List<PlanAxis> axes = plan.axes().stream().map(PlanAxis::of).toList();
        PlanFile file = new PlanFile(title, new Heading(title, false), axes, plan, List.of(lamps), Map.of(), Map.of());
        PlanFile readBack = parse(title, file.text());
        if (!readBack.plan.digest().equals(plan.digest())) {
            throw new IllegalArgumentException("a plan file has its axes in the order " + readBack.plan.columns()
                    + " and no exact quantiles, got " + plan);
        }
        return file;
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
        return new PlanFile(name, heading, axes, newPlan, pairModel, described, descriptions);
    }

    /**
     * Gives where the plan was read.
     *
     * @return the name it was given
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
        return heading.title;
    }

    /**
     * Says whether its figures are made up.
     *
     * @return true if the file says so
     */
    public boolean invented() {
        return heading.invented;
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

    /**
     * Gives the model that integrates the gap out.
     *
     * @return the model, to be run through {@link #following} over its own plan
     * @throws IllegalArgumentException as {@link ConditionalContact#of}
     */
    public ConditionalContact conditional() {
        return ConditionalContact.of(withLatencies(plan, lamps(), described), lamps().toArray(String[]::new));
    }

    /**
     * Lets the latencies of a model of the same pairs follow from circuit and filament where the plan says so.
     *
     * @param given a model that is given latencies
     * @return the model that the plan can be run through
     */
    public Model following(Model given) {
        List<String> circuit = plan.columns().stream()
                .filter(name ->
                        PairColumn.of(name).filter(PairColumn::isOfCircuit).isPresent())
                .toList();
        return circuit.isEmpty() ? given : LatencyModel.of(given, tables(), circuit);
    }

    private NavigableMap<String, LatencyTable> tables() {
        NavigableMap<String, LatencyTable> tables = new TreeMap<>();
        described.forEach((lamp, latency) -> latency.table().ifPresent(table -> tables.put(lamp, table)));
        return tables;
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
     * @return in words, possibly empty
     */
    public List<String> leftOut() {
        List<String> unknown = new ArrayList<>();
        for (String lamp : lamps()) {
            LampLatency latency = described.get(lamp);
            if (latency != null && latency.followsCircuit()) {
                String held = heldOfCircuit();
                if (!held.isEmpty()) {
                    unknown.add(lamp + ": " + held + " held at one value");
                }
            } else {
                Axis axis = plan.axes().get(plan.columns().indexOf(PairColumn.LATENCY.column(lamp)));
                unknown.add(lamp + ": latency "
                        + (axis.distribution().isPresent()
                                ? "as drawn, not how well its distribution is known"
                                : axis.levels().length == 1 ? "held at one value" : "listed"));
            }
        }
        return unknown;
    }

    private String heldOfCircuit() {
        List<String> held = new ArrayList<>();
        for (PairColumn column : PairColumn.values()) {
            int at = plan.columns().indexOf(column.column());
            boolean one = at < 0
                    || (plan.axes().get(at).distribution().isEmpty()
                            && plan.axes().get(at).levels().length == 1);
            if (column.isOfCircuit() && one) {
                held.add(column.range().name());
            }
        }
        return String.join(", ", held);
    }

    /**
     * Says what the axes rest on, and what to know about published sets and tabulated lamps.
     *
     * @return one line for each axis with a source, each reservation and each table
     */
    public List<String> notes() {
        List<String> notes = new ArrayList<>();
        for (PlanAxis axis : axes) {
            String column = axis.axis().column();
            axis.axis().source().ifPresent(source -> notes.add(column + ": " + source + "."));
            axis.caveats().forEach(caveat -> notes.add(column + ": " + caveat.text() + "."));
        }
        described.forEach((lamp, latency) -> latency.table().ifPresent(table -> {
            String column = PairColumn.LATENCY.column(lamp);
            notes.add(column + ": from " + String.join(", ", table.inputs()) + " by a table of " + table.onsets()
                    + " onsets, within "
                    + Numbers.text(1e6 * table.largestError().inSeconds(), 2)
                    + " µs of the simulation at places held out; " + latency.origin() + ".");
            table.evidence().caveats().forEach(caveat -> notes.add(column + ": " + caveat.text() + "."));
        }));
        return notes;
    }

    /**
     * Writes the plan, in SI units with every digit: read again it has the same scenarios, on every JDK.
     *
     * @return lines, each ended by a line feed
     */
    public String text() {
        StringBuilder text = new StringBuilder();
        line(text, PlanReader.TITLE, heading.title);
        if (heading.invented) {
            line(text, PlanReader.INVENTED, "yes");
        }
        line(text, PlanReader.DESIGN, PlanReader.word(plan.design().kind()));
        line(text, PlanReader.SCENARIOS, String.valueOf(plan.design().count()));
        line(text, PlanReader.SEED, String.valueOf(plan.seed()));
        line(text, PlanReader.LAMPS, String.join(", ", lamps()));
        for (PlanAxis axis : axes) {
            String key = axis.key();
            if (described.keySet().stream()
                    .noneMatch(lamp -> PairColumn.LATENCY.axis(lamp).equals(key))) {
                line(text, key, axis.text());
                axis.axis().source().ifPresent(source -> line(text, key + PlanAxis.SOURCE, PlanAxis.written(source)));
            }
        }
        descriptions.forEach((key, value) -> line(text, key, value));
        if (!plan.correlations().isEmpty()) {
            line(
                    text,
                    PlanReader.CORRELATIONS,
                    plan.correlations().stream()
                            .map(c -> key(c.first()) + " " + key(c.second()) + " " + Numbers.exact(c.rho()))
                            .collect(Collectors.joining(", ")));
        }
        return text.toString();
    }

    private static void line(StringBuilder text, String key, String value) {
        text.append(key).append(" = ").append(value.replace("\\", "\\\\")).append('\n');
    }

    private String key(String column) {
        return axes.get(plan.columns().indexOf(column)).key();
    }

    /**
     * Gives a digest of all that decides the values of the scenarios and of their outcomes: the plan's own, the lamps,
     * and the tables their latencies follow from. Titles and sources play no part.
     *
     * @return SHA-256 in 64 hexadecimal digits, the same on every JDK
     */
    public String digest() {
        StringBuilder all = new StringBuilder(plan.digest());
        lamps().forEach(lamp -> all.append('\n').append(lamp));
        tables().forEach((lamp, table) ->
                all.append('\n').append(lamp).append(' ').append(table.digest()));
        return PlanDigest.of(all.toString().getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public String toString() {
        return heading.title + ": " + plan.size() + " scenarios, " + String.join(", ", plan.columns());
    }
}
