package io.github.stoplag.film;

import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What a film says of one lamp: each time it came on or went out, with the moments of each as estimates.
 *
 * <p>Grey values become light by the camera's transfer curve; the light before and after, the noise and the course
 * between are inferred together, so that none of them is taken as known. Differences between lamps of one film are
 * worked out on joint draws: {@link FilmedChange#since}.
 *
 * <pre>{@code
 * FilmedLamp led = FilmedLamp.of(ledSeries, camera);
 * FilmedLamp filament = FilmedLamp.of(filamentSeries, camera);
 * FilmedChange on = filament.on().orElseThrow().since(led.on().orElseThrow());
 * FilmedMoment tenth = on.level(0.1);
 * }</pre>
 *
 * <p>Immutable. The result depends on the series and the camera alone: the same bits on every run.
 */
public final class FilmedLamp implements Evident {
    private final GreySeries series;
    private final Camera camera;
    private final List<FilmedChange> changes;

    private FilmedLamp(GreySeries series, Camera camera, List<FilmedChange> changes) {
        this.series = series;
        this.camera = camera;
        this.changes = changes;
    }

    /**
     * Works out what a film says of a lamp.
     *
     * @param series the lamp's grey values
     * @param camera the camera that took them
     * @return the lamp as filmed
     * @throws IllegalArgumentException if its light never changes by more than its scatter allows to tell, or never
     *     leaves the end of the scale
     */
    public static FilmedLamp of(GreySeries series, Camera camera) {
        Objects.requireNonNull(camera, "camera");
        return new FilmedLamp(
                series,
                camera,
                Switching.all(series, camera).stream()
                        .map(switching -> FilmedChange.of(switching, camera))
                        .toList());
    }

    /** {@return the lamp's name} */
    public String label() {
        return series.label();
    }

    /** {@return every change of its light in order} */
    public List<FilmedChange> changes() {
        return changes;
    }

    /** {@return the first time it comes on; nothing if the film shows none, which {@link #caveats} then tell} */
    public Optional<FilmedChange> on() {
        return changes.stream().filter(FilmedChange::rising).findFirst();
    }

    /** {@return the first time it goes out; nothing if the film shows none, which {@link #caveats} then tell} */
    public Optional<FilmedChange> off() {
        return changes.stream().filter(change -> !change.rising()).findFirst();
    }

    @Override
    public Evidence evidence() {
        Evidence evidence = camera.evidence()
                .withCaveatIf(on().isEmpty(), label() + " does not come on in the film: it is lit from the first frame")
                .withCaveatIf(off().isEmpty(), label() + " does not go out in the film: it is lit to the last frame");
        for (FilmedChange change : changes) {
            evidence = evidence.with(change.evidence());
        }
        return evidence;
    }

    @Override
    public String toString() {
        return label() + ", " + changes.size() + (changes.size() == 1 ? " change" : " changes");
    }
}
