package io.github.stoplag.following;

import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * How fast a vehicle that brakes by itself may at most hit its target in a test of a regulation.
 *
 * <p>The regulation also sets road, light, load, warning, repeats and which runs may fail: meeting a figure is no
 * approval. Confirm each figure in the current text; see its source's standing.
 *
 * @param id the name of the row
 * @param vehicles which vehicles, with their load
 * @param target what stands or drives ahead
 * @param speed the speed of the vehicle under test
 * @param targetSpeed the speed of what is ahead
 * @param mostImpact the greatest relative speed at the contact; 0 where there must be none
 * @param source who published it
 */
public record AutomaticBrakingRequirement(
        String id, String vehicles, String target, Speed speed, Speed targetSpeed, Speed mostImpact, Source source)
        implements Evident {
    private static final Catalogue<AutomaticBrakingRequirement> PUBLISHED = Catalogue.read(
            "automatic braking requirement",
            AutomaticBrakingRequirement.class,
            "automatic_braking.csv",
            AutomaticBrakingRequirement::read,
            AutomaticBrakingRequirement::id);

    /**
     * Checks that the figure asks for something.
     *
     * @param id the name of the row
     * @param vehicles which vehicles, with their load
     * @param target what stands or drives ahead
     * @param speed the speed of the vehicle under test
     * @param targetSpeed the speed of what is ahead
     * @param mostImpact the greatest relative speed at the contact
     * @param source who published it
     * @throws IllegalArgumentException if the greatest impact speed is not below the closing speed
     */
    public AutomaticBrakingRequirement {
        Objects.requireNonNull(mostImpact, "mostImpact");
        Objects.requireNonNull(targetSpeed, "targetSpeed");
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(target, "target");
        Objects.requireNonNull(vehicles, "vehicles");
        if (!(mostImpact.inMps() < speed.inMps() - targetSpeed.inMps())) {
            throw new IllegalArgumentException(
                    "impact speed of automatic braking requirement " + id + " must be below the closing speed of "
                            + speed + " towards " + targetSpeed + ", got " + mostImpact);
        }
    }

    private static AutomaticBrakingRequirement read(Table table, Map<String, String> row) {
        return new AutomaticBrakingRequirement(
                table.text(row, "id"),
                table.text(row, "vehicles"),
                table.text(row, "target"),
                Speed.kmh(table.number(row, "speed_kmh")),
                Speed.kmh(table.number(row, "target_kmh")),
                Speed.kmh(table.number(row, "most_impact_kmh")),
                table.source(row));
    }

    /**
     * Lists the published requirements.
     *
     * @return the rows of the table in order
     */
    public static List<AutomaticBrakingRequirement> published() {
        return PUBLISHED.list();
    }

    /**
     * Finds a published requirement by its name.
     *
     * @param id the name, for example {@code un-r152-m1-laden-60}
     * @return the requirement
     * @throws IllegalArgumentException if there is no such row; the message offers the nearest
     */
    public static AutomaticBrakingRequirement published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
    }

    /**
     * Says whether a system as modelled meets the figure.
     *
     * @param system the system
     * @return true if its impact speed is not above the greatest allowed
     */
    public boolean metBy(AutomaticBraking system) {
        Objects.requireNonNull(system, "system");
        return system.impactSpeed(speed, targetSpeed).compareTo(mostImpact) <= 0;
    }

    @Override
    public Evidence evidence() {
        return Evidence.of(
                vehicles + ", " + target + ", " + speed + ": at most " + mostImpact + " at the contact", source);
    }
}
