package io.github.stoplag.examples.teach;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.github.stoplag.examples.Pictures;
import io.github.stoplag.examples.Program;
import io.github.stoplag.worked.Exercise;
import io.github.stoplag.worked.ExerciseSheet;
import io.github.stoplag.worked.UnitSystem;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Sheets as a teacher makes them, and the grading of answers. */
class WorksheetRunTest {
    private static final String ALL = "--format=html,markdown,csv,qti";

    @TempDir
    Path folder;

    private static List<String> names(Path out) throws IOException {
        try (Stream<Path> files = Files.list(out)) {
            return files.map(file -> String.valueOf(file.getFileName()))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void sameSeedGivesTheSameBytesAndAnotherSeedOthers() throws IOException {
        Path first = folder.resolve("a");
        Path second = folder.resolve("b");
        Path other = folder.resolve("c");
        assertThat(Program.into(first, "worksheet", "--seed", "5", ALL).exitCode())
                .isZero();
        assertThat(Program.into(second, "worksheet", "--seed", "5", ALL).exitCode())
                .isZero();
        assertThat(Program.into(other, "worksheet", "--seed", "6", ALL).exitCode())
                .isZero();
        assertThat(names(first))
                .containsExactly(
                        "answers-blank.csv", "key.csv", "key.html", "key.md", "key.qti.zip", "sheet.html", "sheet.md");
        for (String name : names(first)) {
            assertThat(first.resolve(name)).hasSameBinaryContentAs(second.resolve(name));
        }
        assertThat(Files.readString(first.resolve("sheet.md")))
                .isNotEqualTo(Files.readString(other.resolve("sheet.md")));
    }

    @Test
    void sheetHoldsNoAnswerAndTheKeyHoldsTheWorking() throws Exception {
        Path out = folder.resolve("sheet");
        Program program = Program.into(out, "worksheet", "--seed", "5", "--questions", "4", ALL, "--multiple-choice");
        ExerciseSheet sheet = ExerciseSheet.of(5, 4);
        assertThat(program.out())
                .contains(
                        "4 questions, seed 5, one version",
                        sheet.exercises().get(0).question(),
                        "invented")
                .contains("Written to " + out + ": sheet.html, key.html, sheet.md, key.md, answers-blank.csv");
        String students = Files.readString(out.resolve("sheet.html"));
        String key = Files.readString(out.resolve("key.html"));
        Pictures.assertSelfContained(students);
        ExplainRunTest.assertPage(key);
        assertThat(students)
                .contains("no proof of safety", "Data are invented.", "Name: ")
                .doesNotContain(": right", "Working");
        assertThat(key).contains("Made by: worksheet --seed 5 --questions 4 --units metric --multiple-choice");
        for (Exercise exercise : sheet.exercises()) {
            assertThat(key).contains(": right</li>");
            exercise.choices().stream()
                    .filter(choice -> !choice.isRight())
                    .forEach(choice -> assertThat(students).doesNotContain(choice.mistake()));
        }
        assertThat(key.split("<h3>Working</h3>", -1)).hasSize(5);
        try (ZipFile zip = new ZipFile(out.resolve("key.qti.zip").toFile())) {
            assertThat(zip.stream().map(Object::toString))
                    .containsExactlyInAnyOrder(
                            "imsmanifest.xml",
                            "item-1.xml",
                            "item-2.xml",
                            "item-3.xml",
                            "item-4.xml",
                            "test-items.xml",
                            "entry-1.xml",
                            "entry-2.xml",
                            "entry-3.xml",
                            "entry-4.xml",
                            "test-entries.xml");
        }
        assertThat(Program.csv(out.resolve("key.csv")))
                .extracting(row -> row.getField("question"))
                .isEqualTo(sheet.exercises().stream().map(Exercise::question).toList());
    }

    @Test
    void versionsAndUnitsGetFilesOfTheirOwn() throws IOException {
        Path out = folder.resolve("many");
        assertThat(Program.into(out, "worksheet", "--variants", "2", "--units", "both", "--format", "markdown")
                        .exitCode())
                .isZero();
        assertThat(names(out))
                .containsExactly(
                        "key-metric-1.md",
                        "key-metric-2.md",
                        "key-us-1.md",
                        "key-us-2.md",
                        "sheet-metric-1.md",
                        "sheet-metric-2.md",
                        "sheet-us-1.md",
                        "sheet-us-2.md");
        assertThat(Files.readString(out.resolve("sheet-us-2.md"))).contains("mph", "variant 2");
        assertThat(Program.into(out, "worksheet", "--format", "csv").exitCode()).isZero();
        assertThat(names(out)).containsExactly("answers-blank.csv", "key.csv");
    }

    @Test
    void gradesAnswersAndNamesTheMistake() throws IOException {
        List<Exercise> exercises = ExerciseSheet.of(5, 8).variant(2).exercises();
        Exercise second = exercises.get(1);
        Exercise.Choice mistake = second.choices().stream()
                .filter(choice -> !choice.isRight())
                .findFirst()
                .orElseThrow();
        Exercise third = exercises.get(2);
        Path answers = Program.write(
                folder.resolve("answers.csv"),
                "question,answer\n# a comment\n1," + exercises.get(0).answer() + "\n2," + mistake.amount() + "\n3,"
                        + third.letter() + "\n4,about right\n5,\n6,"
                        + exercises.get(5).answer().number().toPlainString()
                        + "\n7,-1e9 s\n");
        Path out = folder.resolve("sheet");
        Program program = Program.into(
                out, "worksheet", "--seed", "5", "--questions", "8", "--variant", "2", "--grade", answers.toString());
        assertThat(program.err()).isEmpty();
        List<NamedCsvRecord> rows = Program.csv(folder.resolve("sheet-graded").resolve("graded.csv"));
        assertThat(rows)
                .extracting(row -> row.getField("verdict"))
                .containsExactly(
                        "right",
                        "common mistake",
                        "right",
                        "unreadable",
                        "no answer",
                        "missing unit",
                        "wrong",
                        "no answer");
        assertThat(rows.get(1).getField("remark")).isEqualTo(mistake.mistake());
        assertThat(program.out())
                .contains("Question 2: " + mistake.amount() + ": common mistake: " + mistake.mistake() + "; right is "
                        + second.answer())
                .contains(
                        "2 of 8 right",
                        "Not counted: 1 with the right number and no unit; --accept-missing-units counts them.");
        assertThat(out).doesNotExist();
        Program forgiving = Program.into(
                out,
                "worksheet",
                "--seed",
                "5",
                "--questions",
                "8",
                "--variant",
                "2",
                "--accept-missing-units",
                "--grade",
                answers.toString());
        assertThat(forgiving.out()).contains("3 of 8 right", "missing unit").doesNotContain("Not counted");
    }

    /** A spreadsheet of a country with a decimal comma saves semicolons, a byte order mark and capital letters. */
    @Test
    void readsWhatASpreadsheetSaves() {
        String answer = ExerciseSheet.of(5, 3).exercises().get(1).answer().toString();
        String letter = ExerciseSheet.of(5, 3).exercises().get(0).letter();
        String comma = answer.contains(".") ? answer.replace('.', ',') : answer.replaceFirst(" ", ",0 ");
        Path answers = Program.write(
                folder.resolve("answers.csv"),
                "\uFEFFQuestion;Answer\r\n1;" + letter + "\r\n2;" + comma + "\r\n3;\r\n");
        Program program = Program.into(
                folder.resolve("sheet"), "worksheet", "--seed", "5", "--questions", "3", "--grade", answers.toString());
        assertThat(program.err()).isEmpty();
        assertThat(Program.csv(folder.resolve("sheet-graded").resolve("graded.csv")))
                .extracting(row -> row.getField("verdict"))
                .containsExactly("right", "right", "no answer");
        assertThat(program.out()).contains("Question 2: " + comma + ": right");
    }

    @Test
    void tablesBeginWithAByteOrderMarkAndTheBlankOneIsReadBack() throws IOException {
        Path out = folder.resolve("sheet");
        assertThat(Program.into(out, "worksheet", "--questions", "3").exitCode())
                .isZero();
        for (String name : List.of("key.csv", "answers-blank.csv")) {
            assertThat(Files.readString(out.resolve(name))).startsWith("\uFEFF");
        }
        Path blank = out.resolve("answers-blank.csv");
        Program graded =
                Program.into(folder.resolve("other"), "worksheet", "--questions", "3", "--grade", blank.toString());
        assertThat(graded.out()).contains("0 of 3 right");
        assertThat(Files.readString(folder.resolve("other-graded").resolve("graded.csv")))
                .startsWith("\uFEFFquestion,answer");
    }

    /** Every right answer of every sheet drawn is graded right, every distractor by its mistake. */
    @Test
    void theKeyGradesItself() {
        for (UnitSystem system : UnitSystem.values()) {
            ExerciseSheet sheet = ExerciseSheet.of(11, 60).in(system);
            Map<Integer, String> right = new HashMap<>();
            Map<Integer, String> letters = new HashMap<>();
            for (int i = 0; i < 60; i++) {
                right.put(i + 1, sheet.exercises().get(i).answer().toString());
                letters.put(i + 1, sheet.exercises().get(i).letter());
            }
            assertThat(GradedSheet.of(sheet, letters).points()).isEqualTo(60);
            assertThat(GradedSheet.of(sheet, right).lines().stream().filter(line -> line.points() == 0))
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "question:answer | line 1: header must be \"question,answer\", for a class",
                "name,size | line 1: header must be",
                "name,1,4 | line 1: header must be",
                "'' | got nothing"
            })
    void namesTheLineOfABadAnswerFile(String lines, String reason) {
        Path file = Program.write(folder.resolve("answers.csv"), lines.replace("/", "\n"));
        Program program =
                Program.into(folder.resolve("out"), "worksheet", "--questions", "3", "--grade", file.toString());
        assertThat(program.exitCode()).isEqualTo(2);
        assertThat(program.err())
                .isEqualTo(file + ": " + program.err().substring(file.toString().length() + 2));
        assertThat(program.err()).contains(reason);
        assertThat(program.err().lines()).hasSize(1);
    }

    /** A line that cannot be used costs that line alone. */
    @Test
    void badLinesAreListedAndLeftOut() {
        List<Exercise> exercises = ExerciseSheet.of(1, 3).exercises();
        Path file = Program.write(
                folder.resolve("answers.csv"),
                "question,answer\n9,5 m\n1," + exercises.get(0).letter() + ")\n1,6 m\n2,5,5 m\n3,\""
                        + exercises.get(2).answer() + " (rounded)\"\n");
        Program program =
                Program.into(folder.resolve("out"), "worksheet", "--questions", "3", "--grade", file.toString());
        assertThat(program.exitCode()).isZero();
        assertThat(program.out())
                .contains("2 of 3 right")
                .contains("Left out: line 2: question must be a whole number in [1, 3], got \"9\".")
                .contains("Left out: line 4: question 1 is answered already further up; the first answer counts.")
                .contains("Left out: line 5: must have 2 fields (question, answer), got 3");
    }

    /** Both layouts of a class, and what it got wrong by frequency: two gave the same mistake, one nothing. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void gradesAClassAndCountsItsMistakes(boolean wide) {
        Exercise first = ExerciseSheet.of(1, 2).exercises().get(0);
        Exercise.Choice mistake = first.choices().stream()
                .filter(choice -> !choice.isRight())
                .findFirst()
                .orElseThrow();
        List<String> answers = List.of(
                mistake.amount().toString(),
                mistake.amount().toString(),
                "",
                first.answer().toString());
        List<String> names = List.of("Zoë", "Ben", "Cleo", "Dan");
        StringBuilder text = new StringBuilder(wide ? "Name;1;2\n" : "name;question;answer\n");
        for (int i = 0; i < names.size(); i++) {
            text.append(names.get(i)).append(wide ? ";" : ";1;").append(answers.get(i));
            text.append(wide ? ";\n" : "\n");
        }
        Path file = Program.write(folder.resolve("class.csv"), text.toString());
        Program program =
                Program.into(folder.resolve("out"), "worksheet", "--questions", "2", "--grade", file.toString());
        assertThat(program.err()).isEmpty();
        assertThat(program.out())
                .contains("Zoë: 0 of 2 right", "Dan: 1 of 2 right", "4 students, on average 0.3 of 2 right")
                .contains("Question 1: 1 of 4 right; 2 × " + mistake.mistake() + "; 1 × no answer")
                .contains("Question 2: 0 of 4 right; 4 × no answer");
        Path graded = folder.resolve("out-graded");
        assertThat(Program.csv(graded.resolve("graded.csv"))).hasSize(8);
        List<NamedCsvRecord> summary = Program.csv(graded.resolve("class-summary.csv"));
        assertThat(summary.get(0).getFields())
                .containsExactly(
                        "1",
                        first.answer() + " (" + first.letter() + ")",
                        "4",
                        "1",
                        "common mistake",
                        mistake.mistake(),
                        "2");
    }

    /** UTF-8 with and without a mark, UTF-16 with and without one in both orders, and the Latin-1 of spreadsheets. */
    @Test
    void encodingsAreRecognisedOrNamed() throws IOException {
        String text = "name,question,answer\nJürgen,1,"
                + ExerciseSheet.of(1, 1).exercises().get(0).letter() + "\n";
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("UTF-8", text.getBytes(StandardCharsets.UTF_8));
        files.put("UTF-8 with a mark", ("\uFEFF" + text).getBytes(StandardCharsets.UTF_8));
        files.put("UTF-16", text.getBytes(StandardCharsets.UTF_16));
        files.put("UTF-16 little", ("\uFEFF" + text).getBytes(StandardCharsets.UTF_16LE));
        files.put("UTF-16 without a mark", text.getBytes(StandardCharsets.UTF_16LE));
        files.put("Windows-1252 (Latin-1)", text.getBytes(StandardCharsets.ISO_8859_1));
        for (Map.Entry<String, byte[]> each : files.entrySet()) {
            Path file = Files.write(folder.resolve("class.csv"), each.getValue());
            Program program =
                    Program.into(folder.resolve("out"), "worksheet", "--questions", "1", "--grade", file.toString());
            assertThat(program.out()).as(each.getKey()).contains("Jürgen: 1 of 1 right");
            if (each.getKey().startsWith("UTF-8")) {
                assertThat(program.out()).doesNotContain("The file is read as");
            } else {
                assertThat(program.out())
                        .contains("The file is read as " + each.getKey().replaceFirst("(UTF-16).*", "$1") + ".");
            }
        }
    }

    @Test
    void refusesOptionsThatDoNotFit() {
        List<List<String>> bad = new ArrayList<>();
        bad.add(List.of("--questions", "0", "number of questions must be in [1, 200], got 0"));
        bad.add(List.of("--variants", "100", "--variants must be a whole number in [1, 99], got 100"));
        bad.add(List.of("--variant", "2", "--variant goes with --grade"));
        bad.add(List.of("--accept-missing-units", "--multiple-choice", "--accept-missing-units goes with --grade"));
        bad.add(List.of(
                "--topic",
                "cooking",
                "no exercise has topic cooking and difficulty (any); there are stopping (basic,"));
        bad.add(List.of("--difficulty", "hard", "Invalid value for option '--difficulty'"));
        bad.add(List.of("--format", "doc", "Invalid value for option '--format'"));
        bad.add(List.of("--grade", "nowhere.csv", "nowhere.csv: cannot be read: no such file"));
        for (List<String> each : bad) {
            Program program = Program.into(folder.resolve("out"), "worksheet", each.get(0), each.get(1));
            assertThat(program.exitCode()).as("%s", each).isEqualTo(2);
            assertThat(program.err()).contains(each.get(2));
            assertThat(program.err().lines()).hasSize(1);
        }
        assertThat(folder.resolve("out")).doesNotExist();
    }
}
