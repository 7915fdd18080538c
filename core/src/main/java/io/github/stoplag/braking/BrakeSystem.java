package io.github.stoplag.braking;

import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/**
 * The response of a kind of brake system as one source gives it.
 *
 * <p>Sources speak of different things: a time to a chamber pressure, a lag seen by the driver, an upper limit, or the
 * time that the linear term of a stopping distance stands for. The description and the note say which; a lag that is
 * already the sum of dead time and half the build-up stands here as dead time alone.
 *
 * <pre>{@code
 * BrakeSystem.published("fmvss121-truck").response(); // BrakeResponse[deadTime=0 s, buildUp=0.45 s]
 * }</pre>
 *
 * @param id the name of the row
 * @param kind how the pedal reaches the brakes
 * @param what what the source times
 * @param response the response to calculate with
 * @param source who published it
 * @param note how the response was read from the source, possibly empty
 */
public record BrakeSystem(String id, Kind kind, String what, BrakeResponse response, Source source, String note) {
    private static final Catalogue<BrakeSystem> PUBLISHED =
            Catalogue.read("brake system", BrakeSystem.class, "brake_systems.csv", BrakeSystem::of, BrakeSystem::id);

    /**
     * Refuses nulls.
     *
     * @param id the name of the row
     * @param kind how the pedal reaches the brakes
     * @param what what the source times
     * @param response the response to calculate with
     * @param source who published it
     * @param note how the response was read from the source, possibly empty
     * @throws NullPointerException if one that is required is null
     */
    public BrakeSystem {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(note, "note");
        Objects.requireNonNull(response, "response");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(what, "what");
    }

    /** How the pedal reaches the brakes. */
    public enum Kind {
        /** Through brake fluid: cars, vans. */
        HYDRAULIC,
        /** Through compressed air: trucks, buses, their trailers. */
        PNEUMATIC,
        /** The source does not say. */
        UNSTATED
    }

    /**
     * Lists the published responses.
     *
     * @return the rows of the table in order
     */
    public static List<BrakeSystem> published() {
        return PUBLISHED.list();
    }

    /**
     * Lists the published responses of one kind, so that their spread can be seen.
     *
     * @param kind how the pedal reaches the brakes
     * @return the rows in order
     */
    public static List<BrakeSystem> published(Kind kind) {
        Objects.requireNonNull(kind, "kind");
        return PUBLISHED.list(system -> system.kind == kind);
    }

    /**
     * Finds a published response.
     *
     * @param id the name of the row, for example {@code fmvss121-truck}
     * @return the response
     * @throws IllegalArgumentException if no row has this name; the message offers the nearest
     */
    public static BrakeSystem published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
    }

    private static BrakeSystem of(Table table, Map<String, String> row) {
        return new BrakeSystem(
                table.text(row, "id"),
                Kind.valueOf(table.text(row, "kind").toUpperCase(Locale.ROOT)),
                table.text(row, "what"),
                new BrakeResponse(
                        TimeSpan.seconds(table.number(row, "dead_s")),
                        TimeSpan.seconds(table.number(row, "build_up_s"))),
                table.source(row),
                table.text(row, "note"));
    }
}
