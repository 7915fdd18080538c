package io.github.stoplag.examples.sweep;

import io.github.stoplag.examples.InputException;
import io.github.stoplag.examples.Key;
import io.github.stoplag.examples.ScenarioFile;
import io.github.stoplag.sweep.Design;
import io.github.stoplag.sweep.Model;
import io.github.stoplag.sweep.PairModel;
import io.github.stoplag.sweep.Plan;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A sweep of pairs written as a text file of lines {@code key = value}: design, seed, lamps, and an axis by each key that names one.
 * The shipped file explains every line.
 *
 * <p>The axes have a fixed order whatever that of the lines, so that the same values get the same random numbers.
 */
public final class PlanFile {
    /** The name of the plan that comes with the programs. */
    public static final String SHIPPED = "highway_night.properties";

    private static final int LONGEST_TITLE = 120;
    private static final String TITLE = "title";
    private static final String INVENTED = "invented";
    private static final String DESIGN = "design";
    private static final String SCENARIOS = "scenarios";
    private static final String SEED = "seed";
    private static final String LAMPS = "lamps";
    private static final String CORRELATIONS = "correlations";
    private static final List<String> DESIGNS = List.of("grid", "random", "latin-hypercube", "sobol");
    private static final Pattern LAMP = Pattern.compile("[a-z][a-z0-9_]*");

    private static final ScenarioFile.Vocabulary VOCABULARY = vocabulary();

    private final ScenarioFile file;
    private final String title;
    private final boolean invented;
    private final List<String> lamps;
    private final List<PlanAxis> axes;
    private final Plan plan;
    private final PairModel pairModel;

    private PlanFile(
            ScenarioFile file,
            String title,
            boolean invented,
            List<String> lamps,
            List<PlanAxis> axes,
            Plan plan,
            PairModel pairModel) {
        this.file = file;
        this.title = title;
        this.invented = invented;
        this.lamps = List.copyOf(lamps);
        this.axes = List.copyOf(axes);
        this.plan = plan;
        this.pairModel = pairModel;
    }

    private static ScenarioFile.Vocabulary vocabulary() {
        List<String> fixed = Stream.concat(
                        Stream.of(TITLE, INVENTED, DESIGN, SCENARIOS, SEED, LAMPS, CORRELATIONS),
                        AxisKind.vehicleNames())
                .toList();
        Predicate<String> has = key -> {
            String axis =
                    key.endsWith(PlanAxis.SOURCE) ? key.substring(0, key.length() - PlanAxis.SOURCE.length()) : key;
            return fixed.contains(key)
                    || AxisKind.vehicleNames().anyMatch(axis::equals)
                    || axis.startsWith(AxisKind.LATENCY);
        };
        return new ScenarioFile.Vocabulary(
                has,
                String.join(", ", fixed) + ", " + AxisKind.LATENCY + "<lamp>, and " + PlanAxis.SOURCE
                        + " behind the name of an axis");
    }

    /**
     * Reads the plan that comes with the programs.
     *
     * @return the plan
     */
    public static PlanFile shipped() {
        return of(ScenarioFile.shipped(SHIPPED, VOCABULARY));
    }

    /**
     * Reads a plan.
     *
     * @param path where the file is
     * @return the plan
     * @throws InputException if it is missing, malformed, or its values do not go together; the message names file, key and value
     */
    public static PlanFile read(Path path) {
        return of(ScenarioFile.read(path, VOCABULARY));
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
        return of(ScenarioFile.of(name, text, VOCABULARY));
    }

    private static PlanFile of(ScenarioFile file) {
        String title = file.text(TITLE, null);
        if (title.length() > LONGEST_TITLE) {
            throw file.bad(TITLE, title, "must have 1 to " + LONGEST_TITLE + " characters, got " + title.length());
        }
        boolean invented = file.word(INVENTED, "no", List.of("yes", "no")).equals("yes");
        List<String> lamps = lamps(file);
        List<PlanAxis> axes = new ArrayList<>();
        for (AxisKind kind : AxisKind.all(lamps)) {
            if (file.has(kind.name())) {
                axes.add(PlanAxis.read(file, kind));
            }
        }
        Plan plan = Plan.of(design(file), seed(file));
        for (PlanAxis axis : axes) {
            plan = plan.axis(axis.axis());
        }
        plan = correlated(file, plan, lamps);
        Plan whole = plan;
        PairModel model = file.making(List.of(LAMPS), () -> PairModel.of(whole, lamps.toArray(String[]::new)));
        file.making(List.of(DESIGN), whole::size);
        file.refuseUnused(
                key -> key.startsWith(AxisKind.LATENCY) ? "its lamp is not among " + LAMPS : "there is no such axis");
        return new PlanFile(file, title, invented, lamps, axes, whole, model);
    }

    private static List<String> lamps(ScenarioFile file) {
        List<String> lamps = file.list(LAMPS);
        for (String lamp : lamps) {
            if (!LAMP.matcher(lamp).matches() || lamps.indexOf(lamp) != lamps.lastIndexOf(lamp)) {
                throw file.bad(
                        LAMPS,
                        String.join(", ", lamps),
                        "must be different names of lower-case letters, digits and _, got " + lamp);
            }
        }
        return lamps;
    }

    private static Design design(ScenarioFile file) {
        String word = file.word(DESIGN, "random", DESIGNS);
        Design.Kind kind = Design.Kind.valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_'));
        String text = file.text(SCENARIOS, kind == Design.Kind.GRID ? "1" : null);
        long count = whole(file, SCENARIOS, text);
        return file.making(List.of(DESIGN, SCENARIOS), () -> new Design(kind, count));
    }

    private static long seed(ScenarioFile file) {
        return whole(file, SEED, file.text(SEED, "1"));
    }

    private static long whole(ScenarioFile file, String key, String text) {
        try {
            return Long.parseLong(text);
        } catch (NumberFormatException e) {
            throw file.bad(key, text, "not a whole number; write it like 1000000");
        }
    }

    private static Plan correlated(ScenarioFile file, Plan plan, List<String> lamps) {
        Plan joined = plan;
        for (String entry : file.has(CORRELATIONS) ? file.list(CORRELATIONS) : List.<String>of()) {
            String[] words = entry.split("\\s+", -1);
            if (words.length != 3) {
                throw file.bad(CORRELATIONS, entry, "must be two axes and a number, as in: speed time_gap 0.3");
            }
            String first = column(file, words[0], lamps);
            String second = column(file, words[1], lamps);
            double rho = file.parse(Key.number(CORRELATIONS, null, -1, 1, ""), words[2]);
            Plan before = joined;
            joined = file.making(List.of(CORRELATIONS), () -> before.correlate(first, second, rho));
        }
        return joined;
    }

    private static String column(ScenarioFile file, String name, List<String> lamps) {
        return AxisKind.all(lamps).stream()
                .filter(kind -> kind.name().equals(name))
                .map(AxisKind::column)
                .findFirst()
                .orElseThrow(() -> file.bad(
                        CORRELATIONS,
                        name,
                        "must be one of "
                                + AxisKind.all(lamps).stream()
                                        .map(AxisKind::name)
                                        .toList()));
    }

    /**
     * Gives the plan with another number of scenarios.
     *
     * @param scenarios how many; in a grid, how many per combination of levels
     * @return the new plan
     * @throws IllegalArgumentException if the design cannot have so many
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
        return new PlanFile(file, title, invented, lamps, axes, newPlan, pairModel);
    }

    /**
     * Gives where the plan was read.
     *
     * @return the file's name
     */
    public String name() {
        return file.name();
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
        return lamps;
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
        return pairModel;
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
        return notes;
    }

    /**
     * Gives all that decides the values of the scenarios, in SI units with every digit, in a fixed order: two plans with the same text
     * have the same scenarios, on every JDK.
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
        text.append("lamps = ").append(String.join(", ", lamps)).append('\n');
        axes.forEach(axis -> text.append(axis.axis().column())
                .append(" = ")
                .append(axis.canonical())
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
