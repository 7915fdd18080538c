package io.github.stoplag.examples.lamps;

import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.Keys;
import io.github.stoplag.examples.file.MeasuredCsv;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.file.TextFile;
import io.github.stoplag.film.BandedOnset;
import io.github.stoplag.film.FilmedChange.BandPoint;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Evidence;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A filmed lamp: what the program {@code film} wrote, its folder or one of its tables, or a table of the user's own
 * with time and relative light.
 */
public final class FilmedInput {
    public static final Keys KEYS = new Keys();
    /** From the closing circuit to the first light of the film's reference lamp. */
    public static final Key<TimeSpan> ZERO_DELAY = KEYS.add(Key.time("film.zero-delay", "0 s", 0, 1));

    /** The heads of the columns of the curves that the program {@code film} writes. */
    public static final List<String> CURVES = List.of("lamp", "direction", "level", "time_s", "lo_s", "hi_s");

    /** The heads of the columns of its reservations; those without a lamp are about the film. */
    public static final List<String> CAVEATS = List.of("lamp", "caveat");

    public static final String CURVES_FILE = "curves.csv";
    public static final String CAVEATS_FILE = "caveats.csv";
    private static final List<String> TABLES = List.of(CURVES_FILE, "moments.csv", "differences.csv", CAVEATS_FILE);

    private static final int FEWEST_POINTS = 3;

    private final Path curves;
    private final Map<String, List<BandPoint>> on = new LinkedHashMap<>();
    private final Map<String, List<BandPoint>> off = new LinkedHashMap<>();
    private final List<Caveat> caveats = new ArrayList<>();

    private FilmedInput(Path curves) {
        this.curves = curves;
    }

    /**
     * Reads a lamp.
     *
     * @param path a folder or table of the program {@code film}, or a table of time and relative light
     * @param lamp which lamp of a film; may be left out if it has one alone
     * @param zeroDelay what is added to the times of a film
     * @throws InputException if it cannot be read or has no such lamp
     */
    public static FilmedCurves read(Path path, Optional<String> lamp, TimeSpan zeroDelay) {
        Optional<Path> curves = curves(path);
        if (curves.isPresent()) {
            return new FilmedInput(curves.get()).onset(lamp, zeroDelay);
        }
        if (lamp.isPresent() && Files.exists(path)) {
            throw new InputException(path + ": holds one lamp, which needs no name, got \"" + lamp.get() + "\"");
        }
        return new FilmedCurves(MeasuredCsv.read(path), Optional.empty());
    }

    /**
     * Reads a lamp by one text: a path, and behind a comma the lamp's name if it needs one.
     *
     * @param text the text
     * @param zeroDelay what is added to the times of a film
     * @throws InputException if it cannot be read or has no such lamp
     */
    public static FilmedCurves read(String text, TimeSpan zeroDelay) {
        return read(Path.of(""), text, zeroDelay);
    }

    /**
     * Reads a lamp by the text of a key, a path beside the file.
     *
     * @throws InputException if it cannot be read or has no such lamp
     */
    public static FilmedCurves beside(ScenarioFile file, String key) {
        return read(Path.of(file.name()).resolveSibling(""), file.text(key, null), file.get(ZERO_DELAY));
    }

    private static FilmedCurves read(Path from, String text, TimeSpan zeroDelay) {
        int comma = text.lastIndexOf(',');
        try {
            Path whole = from.resolve(text);
            if (comma < 0 || Files.exists(whole)) {
                return read(whole, Optional.empty(), zeroDelay);
            }
            String lamp = text.substring(comma + 1).strip();
            return read(from.resolve(text.substring(0, comma).strip()), Optional.of(lamp), zeroDelay);
        } catch (InvalidPathException e) {
            throw new InputException(text + ": not a file's name", e);
        }
    }

    private static Optional<Path> curves(Path path) {
        if (Files.isDirectory(path)) {
            return Optional.of(path.resolve(CURVES_FILE));
        }
        return TABLES.contains(String.valueOf(path.getFileName()))
                ? Optional.of(path.resolveSibling(CURVES_FILE))
                : Optional.empty();
    }

    private FilmedCurves onset(Optional<String> asked, TimeSpan zeroDelay) {
        TextFile.table(curves, CURVES, this::accept);
        String names = String.join(", ", on.keySet());
        if (on.isEmpty()) {
            throw new InputException(curves + ": no lamp of the film comes on");
        }
        String lamp = asked.orElse(on.keySet().iterator().next());
        if (asked.isEmpty() && on.size() > 1) {
            throw new InputException(curves + ": which lamp must be said behind the file, one of " + names);
        }
        if (!on.containsKey(lamp)) {
            throw new InputException(curves + ": the film has no lamp \"" + lamp + "\" that comes on; it has " + names);
        }
        // too few points make no course of going out
        off.values().removeIf(points -> points.size() < FEWEST_POINTS);
        readCaveats(lamp);
        double shiftS = Math.max(zeroDelay.inSeconds(), -earliestS(on));
        return new FilmedCurves(
                banded(on, lamp, "", evidence(lamp, shiftS)).delayed(TimeSpan.seconds(shiftS)),
                off.containsKey(lamp) ? Optional.of(fall(lamp)) : Optional.empty());
    }

    private OnsetCurve fall(String lamp) {
        Evidence evidence = Evidence.of(
                        "lamp " + lamp + " of a film going out: " + curves,
                        "time 0, the opening circuit, is taken as the film's own, no later than any of its lamps dims")
                .withCaveats(caveats);
        return banded(off, lamp, " going out", evidence).delayed(TimeSpan.seconds(Math.max(0, -earliestS(off))));
    }

    private double earliestS(Map<String, List<BandPoint>> direction) {
        return direction.keySet().stream()
                .mapToDouble(
                        name -> banded(direction, name, "", Evidence.none()).beginS())
                .min()
                .orElseThrow();
    }

    private Evidence evidence(String lamp, double shiftS) {
        return Evidence.of(
                        "lamp " + lamp + " of a film, with the interval of each level: " + curves,
                        "time 0, the closing circuit, is taken as " + TimeSpan.seconds(shiftS)
                                + " before the film's own: " + ZERO_DELAY.name()
                                + ", and no less than it takes for no lamp of the film to begin before it")
                .withCaveats(caveats);
    }

    private void readCaveats(String lamp) {
        Path file = curves.resolveSibling(CAVEATS_FILE);
        if (!Files.exists(file)) {
            caveats.add(new Caveat("the film's own reservations, " + CAVEATS_FILE + ", are not beside " + CURVES_FILE));
            return;
        }
        TextFile.table(file, CAVEATS, row -> {
            if (row.getField(0).isEmpty() || row.getField(0).equals(lamp)) {
                caveats.add(new Caveat("the film: "
                        + row.getField(1).replaceAll("\\p{Cntrl}", " ").replaceFirst("^the film ", "it ")));
            }
        });
    }

    private BandedOnset banded(Map<String, List<BandPoint>> direction, String lamp, String how, Evidence evidence) {
        try {
            return BandedOnset.of(lamp + ", filmed" + how, direction.getOrDefault(lamp, List.of()), evidence);
        } catch (IllegalArgumentException e) {
            throw new InputException(curves + ": lamp " + lamp + ": " + e.getMessage(), e);
        }
    }

    private void accept(CsvRecord row) {
        String direction = row.getField(1);
        if (!direction.equals("on") && !direction.equals("off")) {
            throw bad(row, "direction must be on or off, got \"" + direction + "\"");
        }
        double[] numbers = new double[CURVES.size() - 2];
        for (int i = 0; i < numbers.length; i++) {
            String text = row.getField(i + 2).strip();
            try {
                numbers[i] = Double.parseDouble(text);
            } catch (NumberFormatException e) {
                throw bad(row, CURVES.get(i + 2) + " must be a number, got \"" + text + "\"");
            }
        }
        boolean rising = direction.equals("on");
        (rising ? on : off)
                .computeIfAbsent(row.getField(0), name -> new ArrayList<>())
                .add(new BandPoint(rising ? numbers[0] : 1 - numbers[0], numbers[1], numbers[2], numbers[3]));
    }

    private InputException bad(CsvRecord row, String what) {
        return new InputException(curves + ": line " + row.getStartingLineNumber() + ": " + what);
    }
}
