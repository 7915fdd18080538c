package io.github.stoplag.driver;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A published set of perception-reaction times.
 *
 * <p>What drivers expect changes their time more than anything else here: compare studies of like expectancy. Where a
 * source gives only mean and SD or one or two percentiles, the log-normal through them is our reading of it, and a
 * caveat says so.
 *
 * @param id the name of the row
 * @param situation what happened to the drivers
 * @param expectancy how far they expected it
 * @param setting where they were observed
 * @param n how many, as the source counts them; empty if not stated
 * @param central the mean, or the median where the note says so, or the mean of the fitted distribution
 * @param response the distribution and the responding share; empty where the source gives a single figure only
 * @param source who published it
 * @param caveats what to know before using it
 */
public record ReactionStudy(
        String id,
        String situation,
        Expectancy expectancy,
        String setting,
        String n,
        TimeSpan central,
        Optional<DriverResponse> response,
        Source source,
        List<Caveat> caveats)
        implements Evident {
    private static final Catalogue<ReactionStudy> PUBLISHED = Catalogue.read(
            "reaction study", ReactionStudy.class, "reaction_studies.csv", ReactionStudy::of, ReactionStudy::id);

    /** How far drivers expect the signal. */
    public enum Expectancy {
        /** They wait for it. */
        EXPECTED,
        /** It is common but comes without notice, such as brake lamps ahead. */
        UNEXPECTED,
        /** It takes them by surprise. */
        SURPRISE
    }

    /**
     * Copies the caveats.
     *
     * @param id the name of the row
     * @param situation what happened to the drivers
     * @param expectancy how far they expected it
     * @param setting where they were observed
     * @param n how many, as the source counts them; empty if not stated
     * @param central the mean, or the median where the note says so, or the mean of the fitted distribution
     * @param response the distribution and the responding share; empty where the source gives a single figure only
     * @param source who published it
     * @param caveats what to know before using it
     */
    public ReactionStudy {
        Objects.requireNonNull(central, "central");
        Objects.requireNonNull(expectancy, "expectancy");
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(n, "n");
        Objects.requireNonNull(response, "response");
        Objects.requireNonNull(setting, "setting");
        Objects.requireNonNull(situation, "situation");
        Objects.requireNonNull(source, "source");
        caveats = Check.copyOf("caveats", caveats);
    }

    @Override
    public Evidence evidence() {
        return Evidence.of("reaction times of drivers: " + situation, source).withCaveats(caveats);
    }

    /**
     * Lists all published sets.
     *
     * @return the rows of the table in order
     */
    public static List<ReactionStudy> published() {
        return PUBLISHED.list();
    }

    /**
     * Lists the published sets of one expectancy.
     *
     * @param expectancy how far drivers expected the signal
     * @return the rows in order
     */
    public static List<ReactionStudy> published(Expectancy expectancy) {
        Objects.requireNonNull(expectancy, "expectancy");
        return PUBLISHED.list(study -> study.expectancy == expectancy);
    }

    /**
     * Finds a published set by its row name.
     *
     * @param id the row name, for example {@code sivak-1982}
     * @return the set
     * @throws IllegalArgumentException if no row has this name; the message offers the nearest
     */
    public static ReactionStudy published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
    }

    private static ReactionStudy of(Table table, Map<String, String> row) {
        Optional<DriverResponse> response = reaction(table, row).map(reaction -> respond(table, row, reaction));
        return new ReactionStudy(
                table.text(row, "id"),
                table.text(row, "situation"),
                Expectancy.valueOf(table.text(row, "expectancy").toUpperCase(Locale.ROOT)),
                table.text(row, "setting"),
                table.text(row, "n"),
                response.map(r -> r.reaction().mean()).orElseGet(() -> seconds(table, row, "mean_s")),
                response,
                table.source(row),
                caveats(table, row));
    }

    private static DriverResponse respond(Table table, Map<String, String> row, ReactionDistribution reaction) {
        double silent = has(table, row, "no_response") ? table.number(row, "no_response") : 0;
        return new DriverResponse(reaction, 1 - silent);
    }

    private static Optional<ReactionDistribution> reaction(Table table, Map<String, String> row) {
        return switch (table.text(row, "form")) {
            case "lognormal" -> Optional.of(logNormal(table, row));
            case "normal" ->
                Optional.of(NormalReaction.ofMeanAndSd(seconds(table, row, "mean_s"), seconds(table, row, "sd_s")));
            case "constant" -> Optional.empty();
            default ->
                throw new IllegalArgumentException(
                        "form of a reaction study must be lognormal, normal or constant, got \""
                                + table.text(row, "form") + "\"");
        };
    }

    private static LogNormalReaction logNormal(Table table, Map<String, String> row) {
        if (has(table, row, "mu_ln_s")) {
            return LogNormalReaction.ofLogParameters(table.number(row, "mu_ln_s"), table.number(row, "sigma_ln"));
        }
        if (has(table, row, "sd_s")) {
            return LogNormalReaction.ofMeanAndSd(seconds(table, row, "mean_s"), seconds(table, row, "sd_s"));
        }
        double p1 = table.number(row, "p1");
        TimeSpan q1 = seconds(table, row, "q1_s");
        if (has(table, row, "mean_s")) {
            return LogNormalReaction.ofMeanAndQuantile(seconds(table, row, "mean_s"), p1, q1);
        }
        return LogNormalReaction.ofQuantiles(p1, q1, table.number(row, "p2"), seconds(table, row, "q2_s"));
    }

    private static List<Caveat> caveats(Table table, Map<String, String> row) {
        List<Caveat> caveats = new ArrayList<>();
        if (has(table, row, "note")) {
            caveats.add(new Caveat(table.text(row, "note")));
        }
        if (has(table, row, "within_s")) {
            caveats.add(new Caveat("a share of " + Numbers.text(table.number(row, "no_response"))
                    + " did not respond within " + Numbers.text(table.number(row, "within_s"))
                    + " s; some of them may have responded later"));
        }
        if (table.text(row, "form").equals("lognormal") && !has(table, row, "mu_ln_s")) {
            caveats.add(new Caveat("the log-normal form is fitted here to the published figures"));
        }
        if (table.source(row).standing() != Standing.SEEN) {
            caveats.add(new Caveat("the figures are known " + table.source(row).standing()));
        }
        return caveats;
    }

    private static boolean has(Table table, Map<String, String> row, String column) {
        return !table.text(row, column).isEmpty();
    }

    private static TimeSpan seconds(Table table, Map<String, String> row, String column) {
        return TimeSpan.seconds(table.number(row, column));
    }
}
