package io.github.stoplag.examples.film;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.examples.program.ProgramCommand;
import io.github.stoplag.quantity.Speed;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * The program {@code film}: from a film of lamps to the moments at which each is seen, with their uncertainty, and to
 * metres.
 */
@Command(
        name = "film",
        description = {
            "Reads a film of lamps and says when each comes on, is seen and goes out, with",
            "the uncertainty, and how far a vehicle travels between two of them."
        },
        footer = {
            "",
            "Writes",
            "  moments.csv      moments of each lamp from the reference light's first light",
            "  differences.csv  how much later than the reference, in seconds and metres",
            "  marks.csv        marks set by eye, from the same time zero",
            "  curves.csv       light over time with its band",
            "  caveats.csv      what to keep in mind; lamp-swap reads it with the curves",
            "  grey.csv         grey values as read, which --film takes too",
            "film.html and pictures: regions.svg, on.svg, off.svg, stills_on.svg,",
            "stills_off.svg.",
            "Exit code: 0 done; 1 failed; 2 an input cannot be used: one line says why,",
            "and nothing is written."
        })
public final class FilmCommand extends ProgramCommand {
    private static final List<String> FILES = List.of(
            "moments.csv",
            "differences.csv",
            "marks.csv",
            "curves.csv",
            "caveats.csv",
            "grey.csv",
            "film.html",
            "regions.svg",
            "on.svg",
            "off.svg",
            "stills_on.svg",
            "stills_off.svg");

    @Option(
            names = "--film",
            paramLabel = "FILE",
            description =
                    "an MP4 or MOV film, any film that ffmpeg reads if it is there, a folder of PNG or JPEG pictures, or"
                            + " a CSV file with the column frame or time_s and a column of grey values for each lamp; default:"
                            + " a shipped film, invented")
    private @Nullable Path film;

    @Option(
            names = "--lamp",
            paramLabel = "NAME=X,Y,W,H",
            description = "a lamp and its region in pixels from the upper left corner; once for each; default: found")
    private List<String> lamps = new ArrayList<>();

    @Option(
            names = "--reference",
            paramLabel = "NAME",
            description = "whose first light is time zero; default: led, else the first to come on")
    private @Nullable String reference;

    @Option(
            names = "--marks",
            paramLabel = "FILE",
            description = "marks set by eye: CSV with the header lamp,direction,mark,judge,frame_before,frame; the last"
                    + " frame without, the first with it; direction on or off; frames counted from 0")
    private @Nullable Path marks;

    @Option(
            names = "--channel",
            paramLabel = "NAME",
            defaultValue = "luma",
            description = "what is taken for brightness: luma, red, green or blue; default: ${DEFAULT-VALUE}")
    private Channel channel = Channel.LUMA;

    @Option(
            names = "--decoder",
            paramLabel = "NAME",
            defaultValue = "auto",
            description = "auto, java or ffmpeg; default: ${DEFAULT-VALUE}: Java for short H.264 films, else ffmpeg")
    private FilmFile.Decoding decoder = FilmFile.Decoding.AUTO;

    @Option(
            names = "--speed",
            paramLabel = "SPEED",
            split = ",",
            defaultValue = "30 mph,60 mph",
            description = "speeds of the vehicle behind; default: ${DEFAULT-VALUE}")
    private List<Speed> speeds = new ArrayList<>();

    @Mixin
    private CameraOptions camera = new CameraOptions();

    @Mixin
    private LightOptions light = new LightOptions();

    @Override
    protected List<String> fileNames() {
        return FILES;
    }

    @Override
    protected Results results() {
        List<Criterion> seenBy = light.criteria();
        return film == null
                ? ShippedFilm.with(shipped -> results(shipped.read(), true, speeds, seenBy))
                : results(
                        FilmReading.of(
                                film, decoder, channel, lamps, camera, frames -> new FilmProgress(errors(), frames)),
                        false,
                        speeds,
                        seenBy);
    }

    private Results results(FilmReading reading, boolean invented, List<Speed> speeds, List<Criterion> seenBy) {
        Optional<FilmMarks> set = Optional.ofNullable(marks).map(FilmMarks::read);
        FilmProgress progress = new FilmProgress(errors(), 0);
        FilmStudy study = FilmStudy.of(
                reading.camera(), reading.lamps(), reference, light, progress, reading.coded(), reading.caveats());
        set.ifPresent(
                found -> study.add(found.moments(study, reading.lamps().get(0).series())));
        String marked = invented ? "; " + Heading.INVENTED_DATA : "";
        List<Figure> figures = new ArrayList<>(FilmCharts.of(study, marked));
        figures.addAll(FilmStills.of(reading, study, marked, progress));
        Map<String, String> files = new LinkedHashMap<>();
        files.put("moments.csv", FilmTables.moments(study.rows()));
        files.put("differences.csv", FilmTables.differences(study, speeds));
        if (!study.marked().isEmpty()) {
            files.put("marks.csv", FilmTables.moments(study.marked()));
        }
        files.put("curves.csv", FilmTables.curves(study));
        files.put("caveats.csv", FilmTables.caveats(study));
        files.put("grey.csv", FilmTables.grey(reading.lamps()));
        files.put("film.html", FilmPage.of(reading, study, seenBy, speeds, figures, invented));
        figures.forEach(figure -> files.put(figure.fileName(), figure.svg()));
        return new Results(FilmText.of(reading, study, seenBy, speeds, invented), files);
    }
}
