package io.github.stoplag.examples.film;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.film.GreySeries;
import io.github.stoplag.quantity.Numbers;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The frames of the film around the decisive moments of each lamp, with the times written on, and one with the regions.
 */
final class FilmStills {
    private static final List<Double> SHOWN = List.of(0.01, 0.5, 0.9);

    private final FilmReading reading;
    private final FilmStudy study;
    private final FrameClock clock;
    private final Map<Boolean, TreeMap<Integer, List<String>>> wanted = new HashMap<>();

    private FilmStills(FilmReading reading, FilmStudy study) {
        this.reading = reading;
        this.study = study;
        this.clock = new FrameClock(reading.lamps().get(0).series(), study.camera());
    }

    /** Draws them; none for a table of grey values. */
    static List<Figure> of(FilmReading reading, FilmStudy study, String marked, FilmProgress progress) {
        return reading.source().isEmpty()
                ? List.of()
                : new FilmStills(reading, study).figures(reading.source().get(), marked, progress);
    }

    private List<Figure> figures(FilmSource source, String marked, FilmProgress progress) {
        study.changes().forEach(this::choose);
        List<LampRegion> regions = reading.lamps().stream()
                .map(LampSeries::region)
                .flatMap(Stream::ofNullable)
                .toList();
        LampRegion area = Still.around(regions, source.facts());
        int last = wanted.values().stream().mapToInt(TreeMap::lastKey).max().orElse(0);
        int lit = wanted.getOrDefault(true, new TreeMap<>(Map.of(last, List.of())))
                .lastKey();
        Map<Integer, Still> stills = new HashMap<>();
        List<Still> whole = new ArrayList<>();
        progress.start("taking stills");
        source.read(frame -> {
            if (wanted.values().stream().anyMatch(frames -> frames.containsKey(frame.number()))) {
                stills.put(frame.number(), Still.of(frame.number(), frame.raster(), area));
            }
            if (frame.number() == lit) {
                whole.add(Still.of(lit, frame.raster(), Still.whole(source.facts())));
            }
            progress.frame(frame.number());
            return frame.number() < last;
        });
        List<Figure> figures = new ArrayList<>(List.of(FilmPictures.regions(whole.get(0), regions, marked)));
        for (boolean rising : new boolean[] {true, false}) {
            TreeMap<Integer, List<String>> frames = wanted.get(rising);
            if (frames != null) {
                figures.add(strip(rising, frames, stills, marked));
            }
        }
        return figures;
    }

    private Figure strip(boolean rising, Map<Integer, List<String>> frames, Map<Integer, Still> stills, String marked) {
        List<FilmPictures.Titled> titled = frames.entrySet().stream()
                .map(entry -> new FilmPictures.Titled(
                        Objects.requireNonNull(stills.get(entry.getKey())),
                        lines(rising, entry.getKey(), entry.getValue())))
                .toList();
        return FilmPictures.strip(
                rising ? "stills_on" : "stills_off",
                rising ? "Frames in which the lamps come on" : "Frames in which the lamps go out",
                "time of the middle of each frame from " + study.reference().label() + marked,
                titled);
    }

    private List<String> lines(boolean rising, int frame, List<String> events) {
        List<String> lines = new ArrayList<>();
        lines.add(
                Numbers.fixed(1000 * (clock.middleS(frame) - study.zero(rising).valueS()), 1) + " ms, frame " + frame);
        lines.addAll(events);
        return lines;
    }

    /** Chooses the last frame before a moment and the first one after it. */
    private void choose(FilmStudy.Change change) {
        GreySeries series = change.filmed().switching().series();
        TreeMap<Integer, List<String>> frames =
                wanted.computeIfAbsent(change.filmed().rising(), rising -> new TreeMap<>());
        for (double share : SHOWN) {
            double level = change.filmed().rising() ? share : 1 - share;
            double momentS = change.filmed().level(level).valueS();
            int after = 0;
            while (after < series.size() - 1 && clock.middleS(series.frame(after)) < momentS) {
                after++;
            }
            String text = change.lamp() + " " + Numbers.text(100 * level) + " %";
            if (share == SHOWN.get(0)) {
                note(frames, series.frame(Math.max(0, after - 1)), "before " + text);
            }
            note(frames, series.frame(after), "after " + text);
        }
    }

    private static void note(Map<Integer, List<String>> frames, int frame, String text) {
        frames.computeIfAbsent(frame, f -> new ArrayList<>()).add(text);
    }
}
