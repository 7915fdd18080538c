package io.github.stoplag.worked;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.source.Caution;
import io.github.stoplag.worked.Exercise.Choice;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * A sheet of exercises and its key.
 *
 * <p>The same seed gives the same sheet; a variant has the same kinds of questions with other numbers. No question
 * stands twice on a sheet; the basic ones come first, the advanced ones last.
 *
 * <p>Example:
 *
 * <pre>{@code
 * ExerciseSheet sheet = ExerciseSheet.of(2024, 10);
 * String forStudents = sheet.questions().toMarkdown();
 * String forTheTeacher = sheet.key().toMarkdown();
 * }</pre>
 */
public final class ExerciseSheet {
    private static final int MOST = 200;
    private static final int TRIES = 1000;
    private static final int MOST_AT_ONCE = 10_000;
    private static final String TITLE = "Exercises on stopping and stop lamps";
    private static final String PREAMBLE = "Data are invented. An answer is that of a model and no proof of safety.";
    private static final Pattern NUMBER_AND_UNIT = Pattern.compile("(\\d) (?=("
            + Unit.all().stream()
                    .map(Unit::symbol)
                    .filter(symbol -> !symbol.isEmpty())
                    .map(Pattern::quote)
                    .collect(Collectors.joining("|"))
            + ")(?![\\p{L}\\d]))");
    private static final String CIRCUITS =
            "Caution: the questions on circuits are arithmetic and no instruction to alter a vehicle. Load resistors,"
                    + " diodes and lamps get hot enough to burn skin and start a fire, a larger fuse does not protect the"
                    + " wire, and a changed light source can make a lamp unlawful. Local codes go first; leave work on a"
                    + " vehicle to someone licensed to do it.";
    private static final String KEY = "Key to exercises on stopping and stop lamps";

    private final long seed;
    private final int count;
    private final UnitSystem units;
    private final Optional<Difficulty> difficulty;
    private final Optional<String> topic;
    private final int variant;
    private final List<Exercise> exercises;

    private ExerciseSheet(
            long seed,
            int count,
            UnitSystem units,
            Optional<Difficulty> difficulty,
            Optional<String> topic,
            int variant) {
        this.seed = seed;
        this.count = count;
        this.units = units;
        this.difficulty = difficulty;
        this.topic = topic;
        this.variant = variant;
        this.exercises = drawn();
    }

    /**
     * Makes a sheet in metric units over the whole field.
     *
     * @param seed chooses questions and numbers
     * @param count how many questions, in [1, 200]
     * @return the sheet
     * @throws IllegalArgumentException if the count is out of range
     */
    public static ExerciseSheet of(long seed, int count) {
        Check.inRange("number of questions", count, 1, MOST, "");
        return new ExerciseSheet(seed, count, UnitSystem.METRIC, Optional.empty(), Optional.empty(), 0);
    }

    /**
     * The same in a system of units.
     *
     * @param system the system
     * @return the sheet
     */
    public ExerciseSheet in(UnitSystem system) {
        return new ExerciseSheet(seed, count, system, difficulty, topic, variant);
    }

    /**
     * Only questions of one difficulty.
     *
     * @param wanted the difficulty
     * @return the sheet
     * @throws IllegalArgumentException if no template has it together with the topic, or the sheet has more questions
     *     than there are different ones of it
     */
    public ExerciseSheet ofDifficulty(Difficulty wanted) {
        Objects.requireNonNull(wanted, "wanted");
        return new ExerciseSheet(seed, count, units, Optional.of(wanted), topic, variant);
    }

    /**
     * Only questions of one topic.
     *
     * @param wanted the topic, one of {@link ExerciseTemplate#topic()}
     * @return the sheet
     * @throws IllegalArgumentException if no template has it together with the difficulty, or the sheet has more
     *     questions than there are different ones of it
     */
    public ExerciseSheet onTopic(String wanted) {
        Objects.requireNonNull(wanted, "wanted");
        return new ExerciseSheet(seed, count, units, difficulty, Optional.of(wanted), variant);
    }

    /**
     * The same kinds of questions with other numbers.
     *
     * @param number which variant, in [0, 999]; 0 is the sheet as first made
     * @return the sheet
     * @throws IllegalArgumentException if the number is out of range
     */
    public ExerciseSheet variant(int number) {
        Check.inRange("variant", number, 0, 999, "");
        return new ExerciseSheet(seed, count, units, difficulty, topic, number);
    }

    /**
     * Makes several variants.
     *
     * @param number how many, in [1, 1000], and no more than make 10,000 exercises
     * @return the sheets
     * @throws IllegalArgumentException if the number is out of range
     */
    public List<ExerciseSheet> variants(int number) {
        Check.inRange("number of variants", number, 1, Math.min(1000, MOST_AT_ONCE / count), "");
        return IntStream.range(0, number).mapToObj(this::variant).toList();
    }

    private static String word(Difficulty each) {
        return each.name().toLowerCase(Locale.ROOT);
    }

    /** The topics, each with the difficulties it has. */
    private static String combinations() {
        Map<String, Set<String>> all = new LinkedHashMap<>();
        ExerciseTemplate.all().stream()
                .sorted(Comparator.comparing(ExerciseTemplate::difficulty))
                .forEach(each -> all.computeIfAbsent(each.topic(), topic -> new LinkedHashSet<>())
                        .add(word(each.difficulty())));
        return all.entrySet().stream()
                .map(each -> each.getKey() + " (" + String.join(", ", each.getValue()) + ")")
                .collect(Collectors.joining(", "));
    }

    private List<Exercise> drawn() {
        List<ExerciseTemplate> templates = new ArrayList<>(ExerciseTemplate.all().stream()
                .filter(each -> difficulty.isEmpty() || difficulty.get() == each.difficulty())
                .filter(each -> topic.isEmpty() || topic.get().equals(each.topic()))
                .toList());
        if (templates.isEmpty()) {
            throw new IllegalArgumentException("no exercise has topic " + topic.orElse("(any)") + " and difficulty "
                    + difficulty.map(ExerciseSheet::word).orElse("(any)") + "; there are " + combinations());
        }
        Collections.shuffle(templates, new Random(ExerciseTemplate.mixed(seed, -1)));
        List<Exercise> drawn = new ArrayList<>();
        Set<String> questions = new HashSet<>();
        long index = (long) TRIES * 2 * MOST * variant;
        int turn = 0;
        while (drawn.size() < count) {
            if (templates.isEmpty()) {
                throw new IllegalArgumentException("number of questions must be at most " + drawn.size()
                        + " for this topic and difficulty, which have no more different ones, got " + count);
            }
            ExerciseTemplate template = templates.get(turn % templates.size());
            Optional<Exercise> next = Optional.empty();
            for (int i = 0; i < TRIES && next.isEmpty(); i++) {
                next = Optional.of(template.draw(ExerciseTemplate.mixed(seed, index++), units))
                        .filter(exercise -> questions.add(exercise.question()));
            }
            next.ifPresentOrElse(drawn::add, () -> templates.remove(template));
            turn += next.isPresent() ? 1 : 0;
        }
        // the stable sort keeps the order of kinds, so that variants match question by question
        drawn.sort(Comparator.comparing(Exercise::difficulty));
        return List.copyOf(drawn);
    }

    /**
     * Gives the exercises.
     *
     * @return the exercises in order
     */
    public List<Exercise> exercises() {
        return exercises;
    }

    /**
     * Writes the sheet for students, with room for free answers.
     *
     * @return the document
     */
    public Document questions() {
        return sheet(false);
    }

    /**
     * Writes the sheet for students as multiple choice.
     *
     * @return the document
     */
    public Document multipleChoice() {
        return sheet(true);
    }

    private List<Document.Block> preamble() {
        return exercises.stream().anyMatch(ExerciseSheet::isOnCircuit)
                ? List.of(new Document.Paragraph(PREAMBLE), new Document.Paragraph(CIRCUITS))
                : List.of(new Document.Paragraph(PREAMBLE));
    }

    /** What goes with one question where it stands alone, outside its sheet. */
    static String notice(Exercise exercise) {
        return isOnCircuit(exercise) ? PREAMBLE + " " + CIRCUITS : PREAMBLE;
    }

    private static boolean isOnCircuit(Exercise exercise) {
        return exercise.solution().cautions().contains(Caution.INSULATION);
    }

    private Document sheet(boolean choices) {
        List<Document.Block> blocks = new ArrayList<>();
        blocks.add(new Document.Heading(1, TITLE + name()));
        blocks.addAll(preamble());
        for (int i = 0; i < exercises.size(); i++) {
            Exercise exercise = exercises.get(i);
            blocks.add(new Document.Heading(2, "Question " + (i + 1)));
            blocks.add(new Document.Paragraph(unbroken(exercise.question())));
            blocks.add(
                    choices
                            ? new Document.Choices(exercise.choices().stream()
                                    .map(choice -> choice.amount().toString())
                                    .toList())
                            : new Document.Paragraph("Answer in "
                                    + exercise.answer().unit().symbol() + exercise.digitsAsked() + ": ________"));
        }
        return new Document(TITLE + name(), blocks);
    }

    /**
     * Writes the key: answer, the mistake behind every wrong choice, full working.
     *
     * @return the document
     */
    public Document key() {
        List<Document.Block> blocks = new ArrayList<>();
        blocks.add(new Document.Heading(1, KEY + name()));
        blocks.addAll(preamble());
        for (int i = 0; i < exercises.size(); i++) {
            Exercise exercise = exercises.get(i);
            blocks.add(new Document.Heading(
                    2, "Question " + (i + 1) + ": " + exercise.answer() + " (" + exercise.letter() + ")"));
            blocks.add(new Document.Paragraph(unbroken(exercise.question())));
            List<String> lines = new ArrayList<>();
            for (int k = 0; k < exercise.choices().size(); k++) {
                Choice choice = exercise.choices().get(k);
                lines.add(choice.amount() + (choice.isRight() ? ": right" : ": " + choice.mistake()));
            }
            blocks.add(new Document.Choices(lines));
            blocks.addAll(exercise.solution().body(3));
        }
        return new Document(KEY + name(), blocks);
    }

    /** Holds each number to its unit, where a line must not end. */
    private static String unbroken(String question) {
        return NUMBER_AND_UNIT.matcher(question).replaceAll("$1\u00a0");
    }

    private String name() {
        return " (sheet " + seed + (variant == 0 ? "" : ", variant " + variant) + ")";
    }

    /**
     * Writes questions and answers as comma-separated values (RFC 4180), one question a line, a header line first.
     *
     * <p>Numbers have a decimal point whatever the locale; {@code tolerance} is how far an answer may be off, in the
     * unit of the answer, by {@link Exercise#tolerance()}; {@code notice} is what to say beside the question: invented
     * data, and cautions.
     *
     * @return the text with CRLF line ends
     */
    public String toCsv() {
        return SheetExport.csv(exercises);
    }

    /**
     * Writes the sheet as a content package of IMS Question and Test Interoperability 2.1: the manifest; one
     * multiple-choice item a question, with the mistakes as feedback, and a test of them; one item a question that asks
     * for the number, and a test of those; each with a note on invented data and cautions. Put the files into a zip to
     * import them.
     *
     * @return the text of each file by its name
     */
    public Map<String, String> toQti() {
        String name = "stoplag-" + Long.toUnsignedString(seed) + "-" + variant + "-"
                + units.id()
                + topic.map(each -> "-" + each).orElse("")
                + difficulty
                        .map(each -> "-" + each.name().toLowerCase(Locale.ROOT))
                        .orElse("");
        return SheetExport.qti(name, exercises);
    }
}
