package io.github.stoplag.road;

import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.Units;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import io.github.stoplag.source.Validity;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Friction read from a published table of design values by speed, linear between its rows.
 *
 * <p>Outside the table the nearest row holds, with a caveat. If any row is remembered the whole table counts as
 * remembered.
 */
public final class TabulatedFriction implements FrictionAtSpeed {
    private static final Catalogue<TabulatedFriction> PUBLISHED =
            Catalogue.of("friction table", read(), TabulatedFriction::name);

    private final String name;
    private final double[] speedMps;
    private final double[] frictionRatio;
    private final Source source;

    private TabulatedFriction(String name, double[] speedMps, double[] frictionRatio, Source source) {
        this.name = name;
        this.speedMps = speedMps;
        this.frictionRatio = frictionRatio;
        this.source = source;
    }

    /**
     * Finds a published table.
     *
     * @param name {@code AASHTO 1990} (the older design factors, 0.40 at 20 mph to 0.28 at 70 mph), {@code IRC 66} or
     *     {@code RRL LR 131}
     * @return the table
     * @throws IllegalArgumentException if there is no such table; the message offers the nearest
     */
    public static TabulatedFriction published(String name) {
        Objects.requireNonNull(name, "name");
        return PUBLISHED.get(name);
    }

    /**
     * Lists the published tables.
     *
     * @return all of them
     */
    public static List<TabulatedFriction> published() {
        return PUBLISHED.list();
    }

    private static List<TabulatedFriction> read() {
        Table table = Table.read(TabulatedFriction.class, "friction_by_speed.csv");
        return table.groups("table").entrySet().stream()
                .map(group -> read(group.getKey(), table, group.getValue()))
                .toList();
    }

    private static TabulatedFriction read(String name, Table table, List<Map<String, String>> rows) {
        double[] speedMps =
                rows.stream().mapToDouble(row -> speed(table, row).inMps()).toArray();
        double[] ratio =
                rows.stream().mapToDouble(row -> table.number(row, "friction")).toArray();
        Source source = rows.stream()
                .map(table::source)
                .filter(each -> each.standing() != Standing.SEEN)
                .findFirst()
                .orElse(table.source(rows.get(0)));
        return new TabulatedFriction(name, speedMps, ratio, source);
    }

    private static Speed speed(Table table, Map<String, String> row) {
        return new Speed(Units.SPEED.unit(table.text(row, "speed_unit")).toSi(table.number(row, "speed")));
    }

    @Override
    public SourcedFriction at(Speed speed) {
        int last = speedMps.length - 1;
        Validity validity = new Validity(
                "speed for friction table " + name, speedMps[0] * 3.6, speedMps[last] * 3.6, "km/h", source);
        double v = Math.min(Math.max(speed.inMps(), speedMps[0]), speedMps[last]);
        int i = 1;
        while (i < last && speedMps[i] < v) {
            i++;
        }
        double x = (v - speedMps[i - 1]) / (speedMps[i] - speedMps[i - 1]);
        double ratio = frictionRatio[i - 1] + x * (frictionRatio[i] - frictionRatio[i - 1]);
        boolean inside = v == speed.inMps();
        return new SourcedFriction(
                FrictionCoefficient.of(ratio),
                source,
                inside ? List.of() : validity.check(speed.inKmh()).stream().toList());
    }

    /**
     * Gives the table's name.
     *
     * @return the name by which {@link #published(String)} finds it
     */
    public String name() {
        return name;
    }

    /**
     * Gives where the table comes from.
     *
     * @return the source, with the weakest standing of its rows
     */
    public Source source() {
        return source;
    }
}
