package io.github.stoplag.examples.teach;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.program.ProgramCommand;
import io.github.stoplag.examples.program.UnitChoice;
import io.github.stoplag.worked.Difficulty;
import io.github.stoplag.worked.ExerciseSheet;
import io.github.stoplag.worked.ExerciseTemplate;
import io.github.stoplag.worked.UnitSystem;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Option;

/** The program {@code worksheet}: exercise sheets with their keys, and the grading of answers. */
@Command(
        name = "worksheet",
        description = {
            "Makes a sheet of exercises for students and, in a file of its own, the key with",
            "the full working and the mistake behind every wrong choice. The same seed gives",
            "the same sheet. With --grade it grades a student's answers to that sheet."
        },
        footer = {
            "",
            "Writes, as --format asks, sheet and key as .html and .md; key.csv with questions,",
            "answers, choices; answers-blank.csv for --grade: copy it and fill in the copy,",
            "for the folder is replaced as a whole; key.qti.zip, a quiz package (IMS QTI 2.1)",
            "with a test of choices and one of numbers to enter.",
            "With --variants the names end in the number of the version, with --units both",
            "in the system of units.",
            "With --grade: graded.csv, for a class also class-summary.csv with the mistakes by",
            "frequency, in the folder beside it whose name ends in -graded; a line that cannot",
            "be used is listed and left out;",
            "give --seed, --questions, --units and the like as for the sheet.",
            "Exit code: 0 done; 1 failed; 2 an input cannot be used: one line says why,",
            "and nothing is written."
        })
public final class WorksheetCommand extends ProgramCommand {
    private static final String GRADED = "graded.csv";
    private static final String SUMMARY = "class-summary.csv";
    private static final int MOST_VARIANTS = 99;
    private static final int MOST_AT_ONCE = 5000;

    @Option(names = "--questions", paramLabel = "N", description = "how many questions, 1 to 200; default: 10")
    private int questions = 10;

    @Option(names = "--seed", paramLabel = "N", description = "chooses questions and numbers; default: 1")
    private long seed = 1;

    @Option(names = "--difficulty", paramLabel = "LEVEL", description = "basic, standard or advanced; default: all")
    private @Nullable Difficulty difficulty;

    @Option(
            names = "--topic",
            paramLabel = "TOPIC",
            description = "one part of the field: ${COMPLETION-CANDIDATES}; default: all",
            completionCandidates = Topics.class)
    private @Nullable String topic;

    @Option(
            names = "--units",
            paramLabel = "SYSTEM",
            description = "metric, us, or both for a sheet in each; default: metric")
    private UnitChoice units = UnitChoice.METRIC;

    @Option(
            names = "--variants",
            paramLabel = "N",
            description = "how many versions with other numbers, so that neighbours cannot copy, 1 to 99; default: 1")
    private int variants = 1;

    @Option(names = "--multiple-choice", description = "print choices on the sheet in place of room for the answer")
    private boolean choices;

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            split = ",",
            description = "html, markdown, csv, qti, between commas; default: html,csv")
    private List<SheetFiles.Format> formats = List.of(SheetFiles.Format.HTML, SheetFiles.Format.CSV);

    @Option(
            names = "--grade",
            paramLabel = "FILE",
            description = "grade the answers in this CSV file: question,answer; for a class name,question,answer"
                    + " or name,1,2,3 with one row a student")
    private @Nullable Path answers;

    @Option(
            names = "--variant",
            paramLabel = "N",
            description = "for --grade: which version was answered; default: the sheet without versions")
    private int variant;

    @Option(
            names = "--accept-missing-units",
            description = "for --grade: count a right number without its unit; default: do not")
    private boolean missingUnits;

    /** The topics, for the help text. */
    static final class Topics implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return ExerciseTemplate.all().stream()
                    .map(ExerciseTemplate::topic)
                    .distinct()
                    .iterator();
        }
    }

    @Override
    protected Path folder(Path out) {
        return answers == null ? out : out.resolveSibling(out.getFileName() + "-graded");
    }

    @Override
    protected List<String> fileNames() {
        if (answers != null) {
            return List.of(GRADED, SUMMARY);
        }
        return Stream.concat(
                        Stream.of(""), IntStream.rangeClosed(1, MOST_VARIANTS).mapToObj(each -> "-" + each))
                .flatMap(each -> Stream.of(each, "-metric" + each, "-us" + each))
                .flatMap(SheetFiles::names)
                .toList();
    }

    @Override
    protected Results results() {
        return answers == null ? sheets() : graded(answers);
    }

    private ExerciseSheet sheet(UnitSystem system) {
        try {
            ExerciseSheet sheet = ExerciseSheet.of(seed, questions).in(system);
            sheet = difficulty == null ? sheet : sheet.ofDifficulty(difficulty);
            return topic == null ? sheet : sheet.onTopic(topic);
        } catch (IllegalArgumentException e) {
            throw new InputException(String.valueOf(e.getMessage()), e);
        }
    }

    private Results sheets() {
        if (variant != 0) {
            throw new InputException("--variant goes with --grade; --variants says how many versions to make");
        }
        if (missingUnits) {
            throw new InputException("--accept-missing-units goes with --grade");
        }
        number("--variants", variants, 1);
        int made = variants * questions * units.systems().size();
        if (made > MOST_AT_ONCE) {
            throw new InputException("--variants " + variants + " of --questions " + questions + " are " + made
                    + " questions; at most " + MOST_AT_ONCE + " in one go: make fewer, or the rest with another seed");
        }
        Map<String, byte[]> files = new LinkedHashMap<>();
        List<String> lines = new ArrayList<>();
        for (UnitSystem system : units.systems()) {
            ExerciseSheet sheet = sheet(system);
            String name = units != UnitChoice.BOTH ? "" : "-" + system.id();
            if (variants == 1) {
                files.putAll(SheetFiles.of(sheet, name, choices, formats, made(system, 0)));
            }
            for (int each = 1; variants > 1 && each <= variants; each++) {
                files.putAll(
                        SheetFiles.of(sheet.variant(each), name + "-" + each, choices, formats, made(system, each)));
            }
            if (lines.isEmpty()) {
                ExerciseSheet first = variants == 1 ? sheet : sheet.variant(1);
                lines.add(questions + (questions == 1 ? " question" : " questions") + ", seed " + seed + ", "
                        + (variants == 1 ? "one version" : variants + " versions") + ". The first question:");
                lines.add("  " + first.exercises().get(0).question());
                lines.add(
                        "Drivers, vehicles and roads in the questions are invented. Hand out the files that begin with sheet; those that"
                                + " begin with key hold the answers.");
            }
        }
        return new Results(lines, files, ExitCode.OK);
    }

    /** The words that make the same sheet again, for its key. */
    private String made(UnitSystem system, int version) {
        return "For the teacher. Made by: worksheet --seed " + seed + " --questions " + questions + " --units "
                + system.id()
                + (difficulty == null
                        ? ""
                        : " --difficulty " + difficulty.name().toLowerCase(Locale.ROOT))
                + (topic == null ? "" : " --topic " + topic)
                + (choices ? " --multiple-choice" : "")
                + (version == 0 ? "" : " --variants " + variants)
                + ". To grade answers add --grade FILE"
                + (version == 0 ? "" : " --variant " + version + " in place of --variants " + variants) + ".";
    }

    private Results graded(Path file) {
        if (units == UnitChoice.BOTH) {
            throw new InputException("--grade needs the units of the sheet that was answered: --units metric or us");
        }
        number("--variant", variant, 0);
        ExerciseSheet sheet = sheet(units.systems().get(0));
        GradedClass graded = GradedClass.of(
                variant == 0 ? sheet : sheet.variant(variant), AnswerFile.read(file, questions), missingUnits);
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put(GRADED, SheetFiles.csv(graded.csv()));
        if (graded.isNamed()) {
            files.put(SUMMARY, SheetFiles.csv(graded.summary()));
        }
        return new Results(graded.text(), files, ExitCode.OK);
    }

    private static void number(String option, int value, int least) {
        if (value < least || value > MOST_VARIANTS) {
            throw new InputException(String.format(
                    Locale.ROOT, "%s must be a whole number in [%d, %d], got %d", option, least, MOST_VARIANTS, value));
        }
    }
}
