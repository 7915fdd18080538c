package io.github.stoplag.examples.film;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.examples.lamps.Estimated;
import io.github.stoplag.film.Camera;
import io.github.stoplag.film.FilmedChange;
import io.github.stoplag.film.FilmedLamp;
import io.github.stoplag.film.FilmedMoment;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What a film says: the moments of each lamp from the first light of the reference, and the differences between lamps.
 */
final class FilmStudy {
    private static final String USUAL_REFERENCE = "led";
    static final List<Double> LEVELS = List.of(0.01, 0.1, 0.5, 0.9);

    private final Camera camera;
    private final Map<String, FilmedLamp> lamps = new LinkedHashMap<>();
    private final FilmedLamp reference;
    private final List<Row> rows = new ArrayList<>();
    private final List<Row> marked = new ArrayList<>();
    private final List<Difference> differences = new ArrayList<>();
    private final List<Change> changes = new ArrayList<>();
    private final Set<Reservation> caveats = new LinkedHashSet<>();

    /**
     * A moment of a lamp.
     *
     * @param lamp the lamp
     * @param rising whether it comes on
     * @param moment the moment's name in tables
     * @param estimate the time
     */
    record Row(String lamp, boolean rising, String moment, FilmedMoment estimate) {
        String direction() {
            return rising ? "on" : "off";
        }
    }

    /**
     * By how much later a lamp has a moment than the reference.
     *
     * @param lamp the lamp
     * @param rising whether both come on, not go out
     * @param moment the moment's name in tables
     * @param timeS the difference in seconds
     * @param uncertaintyS its standard uncertainty in seconds
     * @param loS lower end of the coverage interval in seconds
     * @param hiS upper end of the coverage interval in seconds
     */
    record Difference(
            String lamp, boolean rising, String moment, double timeS, double uncertaintyS, double loS, double hiS) {
        static Difference of(String lamp, boolean rising, String moment, FilmedMoment later) {
            return new Difference(
                    lamp, rising, moment, later.valueS(), later.standardUncertaintyS(), later.loS(), later.hiS());
        }
    }

    /**
     * What to keep in mind.
     *
     * @param lamp the lamp it concerns, empty for the whole film
     * @param text what it is
     */
    record Reservation(String lamp, String text) {}

    /**
     * A change of a lamp.
     *
     * @param lamp the lamp
     * @param filmed as the film's clock has it
     * @param counted the same from the reference light
     */
    record Change(String lamp, FilmedChange filmed, FilmedChange counted) {}

    private FilmStudy(Camera camera, List<FilmedLamp> filmed, FilmedLamp reference, List<String> caveats) {
        this.camera = camera;
        this.reference = reference;
        caveats.forEach(text -> keep("", text));
        filmed.forEach(lamp -> lamps.put(lamp.label(), lamp));
    }

    /**
     * Works it out.
     *
     * @throws InputException if a lamp never switches
     */
    static FilmStudy of(
            Camera camera,
            List<LampSeries> read,
            @Nullable String referenceName,
            LightOptions light,
            FilmProgress progress,
            boolean lossy,
            List<String> caveats) {
        List<String> names = read.stream().map(LampSeries::name).toList();
        if (referenceName != null && !names.contains(referenceName)) {
            throw new InputException("--reference: there is no lamp \"" + referenceName + "\"; the film has "
                    + String.join(", ", names));
        }
        Map<String, LuminousIntensity> intensities = light.intensities(names);
        List<FilmedLamp> filmed = new ArrayList<>();
        for (LampSeries lamp : read) {
            progress.start("working out lamp " + lamp.name());
            filmed.add(filmed(lamp, camera));
        }
        FilmStudy study = new FilmStudy(camera, filmed, reference(filmed, referenceName), caveats);
        for (FilmedLamp lamp : filmed) {
            Stream.of(lamp.on(), lamp.off())
                    .flatMap(Optional::stream)
                    .forEach(change ->
                            study.add(change, light.criteria(), Objects.requireNonNull(intensities.get(lamp.label()))));
        }
        camera.evidence().caveats().forEach(caveat -> study.keep("", caveat.text()));
        filmed.forEach(lamp -> lamp.caveats().forEach(caveat -> study.keep(lamp.label(), caveat.text())));
        filmed.forEach(lamp -> FilmReservations.of(lamp, camera).forEach(text -> study.keep(lamp.label(), text)));
        study.compare();
        if (lossy) {
            study.keep(
                    "",
                    "the film is coded with loss, which the intervals do not hold: in trials with good quality it stayed"
                            + " within them, a film coded hard can lose the slow end of a rise");
        }
        if (filmed.size() == 1) {
            study.keep(
                    "",
                    "the film has one lamp: times are from its own first light; film an LED of the same circuit"
                            + " beside it to know the time before");
        }
        if (filmed.size() > 1) {
            study.keep(
                    "",
                    "times are from the first light of " + study.reference.label()
                            + ": what it takes itself from the closing circuit on is not in them");
        }
        return study;
    }

    /** Keeps a reservation, of one lamp unless the whole film has it. */
    private void keep(String lamp, String text) {
        if (!caveats.contains(new Reservation("", text))) {
            caveats.add(new Reservation(lamp, text));
        }
    }

    private static FilmedLamp filmed(LampSeries lamp, Camera camera) {
        try {
            return FilmedLamp.of(lamp.series(), camera);
        } catch (IllegalArgumentException e) {
            throw new InputException("lamp " + lamp.name() + ": " + e.getMessage(), e);
        }
    }

    private static FilmedLamp reference(List<FilmedLamp> lamps, @Nullable String asked) {
        String wanted = asked != null ? asked : USUAL_REFERENCE;
        return lamps.stream()
                .filter(lamp -> lamp.label().equals(wanted))
                .findFirst()
                .orElseGet(() -> lamps.stream()
                        .min(Comparator.comparingDouble(FilmStudy::earliestS))
                        .orElseThrow());
    }

    private static double earliestS(FilmedLamp lamp) {
        return lamp.on().map(change -> change.firstLight().valueS()).orElse(Double.MAX_VALUE);
    }

    private void add(FilmedChange filmed, List<Criterion> criteria, LuminousIntensity intensity) {
        FilmedChange change = counted(filmed);
        changes.add(new Change(filmed.label(), filmed, change));
        for (double level : LEVELS) {
            rows.add(new Row(filmed.label(), filmed.rising(), levelName(level), change.level(level)));
        }
        if (filmed.rising()) {
            for (Criterion criterion : criteria) {
                Optional<FilmedMoment> seen = change.seen(criterion.detector(), intensity, criterion.tail());
                seen.ifPresent(moment -> rows.add(new Row(filmed.label(), true, "seen_" + criterion.word(), moment)));
                if (seen.isEmpty()) {
                    keep(
                            filmed.label(),
                            "lamp " + filmed.label() + " is not seen by \"" + criterion.word() + "\" ("
                                    + criterion.meaning() + ") at " + intensity);
                }
            }
        }
    }

    private static String levelName(double level) {
        return "level_" + Math.round(100 * level) + "pct";
    }

    private FilmedChange counted(FilmedChange change) {
        Optional<FilmedChange> same = change.rising() ? reference.on() : reference.off();
        if (same.isPresent()) {
            return change.since(same.get());
        }
        FilmedMoment zero = zero(change.rising());
        keep(
                change.label(),
                reference.label() + " does not go " + (change.rising() ? "on" : "out") + " in the film: times of "
                        + change.label() + " " + (change.rising() ? "coming on" : "going out")
                        + " are from the other change of " + reference.label());
        return change.sinceTime(TimeSpan.seconds(zero.valueS()), TimeSpan.seconds(zero.standardUncertaintyS()));
    }

    private void compare() {
        for (Change change : changes) {
            Optional<Change> other = changes.stream()
                    .filter(c -> c.lamp.equals(reference.label()) && c.filmed.rising() == change.filmed.rising())
                    .findFirst();
            if (other.isEmpty() || change.lamp.equals(reference.label())) {
                continue;
            }
            for (double level : LEVELS) {
                differences.add(Difference.of(
                        change.lamp,
                        change.filmed.rising(),
                        levelName(level),
                        change.counted.levelAfter(other.get().counted, level)));
            }
            rows.stream()
                    .filter(row ->
                            change.filmed.rising() && row.lamp.equals(change.lamp) && row.moment.startsWith("seen_"))
                    .forEach(row -> rows.stream()
                            .filter(r -> r.lamp.equals(reference.label()) && r.rising && r.moment.equals(row.moment))
                            .findFirst()
                            .ifPresent(r -> differences.add(independent(row, r.estimate))));
        }
    }

    private static Difference independent(Row row, FilmedMoment other) {
        Estimated later = estimated(row.estimate).minus(estimated(other));
        return new Difference(
                row.lamp,
                true,
                row.moment,
                later.value(),
                Math.hypot(row.estimate.standardUncertaintyS(), other.standardUncertaintyS()),
                later.lo(),
                later.hi());
    }

    private static Estimated estimated(FilmedMoment moment) {
        return new Estimated(moment.valueS(), moment.loS(), moment.hiS());
    }

    /** Gives the time zero on the film's clock, from the beginning of frame 0. */
    FilmedMoment zero(boolean rising) {
        return (rising ? reference.on().or(reference::off) : reference.off().or(reference::on))
                .orElseThrow()
                .firstLight();
    }

    /** Takes marks set by eye: from the same time zero, and after the same mark of the reference lamp. */
    void add(List<FilmMarks.Marked> marks) {
        for (FilmMarks.Marked mark : marks) {
            FilmedMoment since = mark.marked().since(zero(mark.rising()));
            marked.add(new Row(mark.lamp(), mark.rising(), mark.moment(), since));
            mark.marked().evidence().caveats().forEach(caveat -> keep(mark.lamp(), caveat.text()));
            marks.stream()
                    .filter(other -> mark.rising() == other.rising())
                    .filter(other -> other.lamp().equals(reference.label())
                            && !mark.lamp().equals(other.lamp()))
                    .filter(other -> other.moment().equals(mark.moment()))
                    .map(other -> mark.marked().after(other.marked()))
                    .forEach(later -> differences.add(Difference.of(mark.lamp(), mark.rising(), mark.moment(), later)));
        }
    }

    /** Gives the moments of the marks. */
    List<Row> marked() {
        return marked;
    }

    Camera camera() {
        return camera;
    }

    FilmedLamp reference() {
        return reference;
    }

    List<FilmedLamp> lamps() {
        return List.copyOf(lamps.values());
    }

    List<Row> rows() {
        return rows;
    }

    List<Difference> differences() {
        return differences;
    }

    List<Change> changes() {
        return changes;
    }

    List<Reservation> reservations() {
        return List.copyOf(caveats);
    }

    List<String> caveats() {
        return caveats.stream().map(Reservation::text).distinct().toList();
    }
}
