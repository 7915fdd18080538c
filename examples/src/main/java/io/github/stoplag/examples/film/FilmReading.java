package io.github.stoplag.examples.film;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.film.Camera;
import io.github.stoplag.film.GreyScale;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;

/**
 * The lamps of a film, a folder of pictures or a table of grey values.
 *
 * @param name what was read
 * @param source the frames; nothing for a table
 * @param lamps what it shows of each lamp
 * @param camera the camera
 * @param caveats what to keep in mind
 */
record FilmReading(
        String name, Optional<FilmSource> source, List<LampSeries> lamps, Camera camera, List<String> caveats) {

    /** Says whether the frames come from a film, which is always coded with loss as far as a camera makes it. */
    boolean coded() {
        return source.isPresent() && source.get().facts().stamped();
    }

    /** Reads one. */
    static FilmReading of(
            Path path,
            FilmFile.Decoding decoding,
            Channel channel,
            List<String> lamps,
            CameraOptions options,
            IntFunction<FilmProgress> progress) {
        return !Files.isDirectory(path) && FilmFile.kind(path) == Magic.TEXT
                ? table(path, lamps, options)
                : film(path, FilmFile.open(path, decoding), channel, lamps, options, progress);
    }

    private static FilmReading table(Path path, List<String> wanted, CameraOptions options) {
        GreyTable table =
                GreyTable.read(path, wanted.stream().map(String::strip).toList());
        List<LampSeries> lamps = table.lamps();
        List<String> caveats = new ArrayList<>();
        GreyScale scale = options.scale(table.scale());
        FrameTimes.missing(lamps.get(0).series()).ifPresent(caveats::add);
        Camera camera = options.camera(FrameTimes.of(lamps.get(0).series()), scale, !options.hasScale(), caveats);
        return new FilmReading(path.toString(), Optional.empty(), lamps, camera, caveats);
    }

    private static FilmReading film(
            Path path,
            FilmSource source,
            Channel channel,
            List<String> wanted,
            CameraOptions options,
            IntFunction<FilmProgress> progress) {
        if (options.hasScale()) {
            throw new InputException("--black and --white are for a table of grey values; a film says them itself");
        }
        FilmSource.Facts facts = source.facts();
        List<LampRegion> regions = wanted.stream().map(LampRegion::parse).toList();
        if (new LinkedHashSet<>(regions.stream().map(LampRegion::name).toList()).size() < regions.size()) {
            throw new InputException("--lamp: two lamps have the same name");
        }
        regions.forEach(region -> region.within(facts));
        List<String> caveats = new ArrayList<>(facts.caveats());
        caveats.addAll(LampRegion.overlaps(regions));
        LampReader reader = new LampReader(source, channel, options.curve(), progress.apply(facts.frames()));
        try {
            if (regions.isEmpty()) {
                regions = reader.find();
                caveats.add(
                        "the regions of the lamps were found, not given: look at regions.svg, then name them yourself"
                                + " by "
                                + String.join(
                                        " ",
                                        regions.stream()
                                                .map(region -> "--lamp " + region.text())
                                                .toList()));
            }
            List<LampSeries> lamps = reader.read(regions);
            lamps.forEach(lamp -> caveats.addAll(lamp.caveats()));
            caveats.addAll(source.met());
            if (!facts.coding().stated() && !facts.coding().full()) {
                caveats.add(
                        "the film does not say whether its grey values are in limited range: taken as limited, 16 to"
                                + " 235 of 255");
            }
            Camera camera = options.camera(FrameTimes.of(lamps.get(0).series()), reader.scale(), false, caveats);
            return new FilmReading(path.toString(), Optional.of(source), lamps, camera, caveats);
        } catch (InputException e) {
            String message = String.valueOf(e.getMessage());
            throw message.startsWith(path.toString()) || message.startsWith("--")
                    ? e
                    : new InputException(path + ": " + message, e);
        }
    }
}
