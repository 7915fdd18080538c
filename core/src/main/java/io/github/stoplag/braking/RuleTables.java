package io.github.stoplag.braking;

import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Units;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.stream.Stream;

/** Reads the catalogue of published rules and their printed rows from the tables, once. */
final class RuleTables {
    static final Catalogue<PublishedRule> RULES = Catalogue.of("stopping rule", rules(), PublishedRule::key);
    private static final Map<String, List<PublishedRow>> ROWS = printedRows();
    private static final Map<String, TimeSpan> QUADRATIC_REACTIONS = quadraticReactions();

    private RuleTables() {}

    private static List<PublishedRule> rules() {
        return Stream.of(
                        rules("rules_quadratic.csv", RuleTables::quadratic),
                        rules("rules_kinematic.csv", RuleTables::kinematic),
                        rules("rules_friction.csv", RuleTables::friction))
                .flatMap(rules -> rules)
                .toList();
    }

    private static Stream<PublishedRule> rules(
            String resource, BiFunction<Table, Map<String, String>, StoppingRule> reader) {
        Table table = Table.read(PublishedRule.class, resource);
        return table.rows().stream()
                .map(row -> new PublishedRule(
                        table.text(row, "key"),
                        reader.apply(table, row),
                        rounding(table, row),
                        table.text(row, "note")));
    }

    private static StoppingRule quadratic(Table table, Map<String, String> row) {
        return QuadraticRule.of(
                        table.text(row, "name"),
                        units(table, row),
                        fraction(table.text(row, "k1")),
                        fraction(table.text(row, "k2")),
                        table.source(row))
                .plus(fraction(table.text(row, "k0")));
    }

    /** The reaction time that k1 v of a quadratic rule stands for, if it stands for one. */
    static Optional<TimeSpan> reactionOfQuadratic(String key) {
        return Optional.ofNullable(QUADRATIC_REACTIONS.get(key));
    }

    private static Map<String, TimeSpan> quadraticReactions() {
        Table table = Table.read(PublishedRule.class, "rules_quadratic.csv");
        Map<String, TimeSpan> reactions = new HashMap<>();
        for (Map<String, String> row : table.rows()) {
            String text = table.text(row, "reaction_s");
            if (!text.isEmpty()) {
                reactions.put(
                        table.text(row, "key"), TimeSpan.seconds(fraction(text).doubleValue()));
            }
        }
        return reactions;
    }

    private static StoppingRule kinematic(Table table, Map<String, String> row) {
        String name = table.text(row, "name");
        TimeSpan reaction = TimeSpan.seconds(table.number(row, "reaction_s"));
        BrakeResponse response = new BrakeResponse(
                TimeSpan.seconds(table.number(row, "dead_s")), TimeSpan.seconds(table.number(row, "build_up_s")));
        double number = table.number(row, "deceleration");
        String unit = table.text(row, "deceleration_unit");
        Source source = table.source(row);
        if (unit.endsWith(" from")) {
            Distance limit = distance(number, unit.substring(0, unit.length() - " from".length()));
            Speed from = units(table, row).speed(table.number(row, "from_speed"));
            return KinematicRule.stoppingWithin(name, from, limit, reaction, response, source);
        }
        return new KinematicRule(name, reaction, response, deceleration(number, unit), source);
    }

    private static StoppingRule friction(Table table, Map<String, String> row) {
        Map<Double, Double> frictionBySpeed = new TreeMap<>();
        for (String entry : table.text(row, "friction_by_speed").split(" ", -1)) {
            int colon = entry.indexOf(':');
            frictionBySpeed.put(
                    Double.valueOf(entry.substring(0, colon)),
                    fraction(entry.substring(colon + 1)).doubleValue());
        }
        FrictionRule exact = FrictionRule.exact(
                table.text(row, "name"),
                units(table, row),
                TimeSpan.seconds(table.number(row, "reaction_s")),
                frictionBySpeed,
                table.source(row));
        return table.text(row, "c").isEmpty()
                ? exact
                : exact.withFactors(fraction(table.text(row, "c")).doubleValue(), table.number(row, "k"));
    }

    private static TableRounding rounding(Table table, Map<String, String> row) {
        String unit = table.text(row, "step_unit");
        RoundingMode mode = switch (table.text(row, "total_mode")) {
            case "up" -> RoundingMode.CEILING;
            case "down" -> RoundingMode.FLOOR;
            default -> RoundingMode.HALF_UP;
        };
        return TableRounding.ofParts(distance(table.number(row, "part_step"), unit))
                .withTotal(distance(table.number(row, "total_step"), unit), mode);
    }

    static List<PublishedRow> rows(PublishedRule rule) {
        return ROWS.getOrDefault(rule.key(), List.of());
    }

    private static Map<String, List<PublishedRow>> printedRows() {
        Table table = Table.read(PublishedRule.class, "rules_rows.csv");
        Map<String, List<PublishedRow>> rows = new HashMap<>();
        table.groups("rule").forEach((key, group) -> {
            Source source = RULES.get(key).rule().source();
            rows.put(key, group.stream().map(row -> row(table, row, source)).toList());
        });
        return rows;
    }

    private static PublishedRow row(Table table, Map<String, String> row, Source ofRule) {
        String speedUnit = table.text(row, "speed_unit");
        String grade = table.text(row, "grade_percent");
        String place = table.text(row, "place_m");
        String detail = table.text(row, "detail");
        PublishedRow.Quantity quantity =
                PublishedRow.Quantity.valueOf(table.text(row, "quantity").toUpperCase(Locale.ROOT));
        BigDecimal published = new BigDecimal(table.text(row, "published"));
        String condition = table.text(row, "speed") + " " + speedUnit
                + (grade.equals("0") ? "" : ", " + (grade.startsWith("-") ? "" : "+") + grade + " %") + ", " + quantity
                + (detail.isEmpty() ? "" : ", " + detail);
        return new PublishedRow(
                condition,
                speed(table.number(row, "speed"), speedUnit),
                Grade.percent(table.number(row, "grade_percent")),
                Distance.metres(place.isEmpty() ? 0 : table.number(row, "place_m")),
                quantity,
                published.doubleValue(),
                0.5 * published.ulp().doubleValue(),
                table.text(row, "unit"),
                new Source(ofRule.document(), ofRule.place(), Standing.of(table.text(row, "standing"))),
                table.text(row, "note"));
    }

    private static RuleUnits units(Table table, Map<String, String> row) {
        return RuleUnits.of(table.text(row, "speed_unit"));
    }

    static Speed speed(double number, String unit) {
        return new Speed(Units.SPEED.unit(unit).toSi(number));
    }

    static Deceleration deceleration(double number, String unit) {
        return new Deceleration(Units.DECELERATION.unit(unit).toSi(number));
    }

    static Distance distance(double number, String unit) {
        return new Distance(Units.DISTANCE.unit(unit).toSi(number));
    }

    /** A number or a quotient of two: a fraction keeps a published coefficient such as 1/130 exact. */
    private static BigDecimal fraction(String text) {
        int slash = text.indexOf('/');
        return slash < 0
                ? new BigDecimal(text)
                : new BigDecimal(text.substring(0, slash))
                        .divide(new BigDecimal(text.substring(slash + 1)), MathContext.DECIMAL64);
    }
}
