package io.github.stoplag.worked;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class ExerciseSheetTest {
    private final ExerciseSheet sheet = ExerciseSheet.of(2024, 10);

    @Test
    void aTeacherGetsTenQuestionsAndAKey() {
        assertThat(sheet.exercises()).hasSize(10);
        assertThat(sheet.questions().toMarkdown())
                .contains("## Question 10", "Answer in ", "Data are invented.")
                .doesNotContain("right");
        assertThat(sheet.key().toMarkdown()).contains("## Question 10: ", ": right", "### Working", "$");
        Html.checkPage(sheet.questions().toHtml());
        Html.checkPage(sheet.multipleChoice().toHtml());
        Html.checkPage(sheet.key().toHtml());
        assertThat(Html.read(sheet.key().toHtml()).getElementsByTagName("math").getLength())
                .isGreaterThan(50);
        assertThat(sheet.multipleChoice().toText()).contains("  A) ").doesNotContain("forgotten");
    }

    @Test
    void aSheetCanBeNarrowed() {
        assertThat(sheet.ofDifficulty(Difficulty.BASIC).exercises())
                .hasSize(10)
                .allMatch(each -> each.difficulty() == Difficulty.BASIC);
        assertThat(sheet.onTopic("following").exercises())
                .allMatch(each -> each.solution().title().contains("vehicle"));
        assertThat(sheet.variants(3))
                .extracting(each -> each.questions().toText())
                .doesNotHaveDuplicates();
        assertThat(sheet.in(UnitSystem.US_CUSTOMARY).exercises())
                .allMatch(each -> each.solution().units() == UnitSystem.US_CUSTOMARY);
        assertThatThrownBy(() -> sheet.onTopic("aviation"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith(
                        "no exercise has topic aviation and difficulty (any); there are stopping (basic,");
        assertThatThrownBy(() -> ExerciseSheet.of(1, 0)).hasMessage("number of questions must be in [1, 200], got 0");
        assertThatThrownBy(() -> sheet.variant(-1)).hasMessage("variant must be in [0, 999], got -1");
    }

    @Test
    void thereAreEnoughTemplatesOverTheWholeField() {
        List<ExerciseTemplate> all = ExerciseTemplate.all();
        assertThat(all)
                .hasSizeGreaterThanOrEqualTo(20)
                .extracting(ExerciseTemplate::id)
                .doesNotHaveDuplicates();
        assertThat(all)
                .extracting(ExerciseTemplate::topic)
                .contains("stopping", "rules", "following", "chain", "driver", "circuit", "lamp");
    }

    @Test
    void theTableHasOneLineAQuestion() {
        String[] lines = sheet.toCsv().split("\r\n", -1);
        assertThat(lines).hasSize(12);
        assertThat(lines[0])
                .startsWith("number,template,difficulty,question,answer,unit,tolerance,letter,choice_A,mistake_A");
        for (int i = 1; i <= 10; i++) {
            List<String> fields = fields(lines[i]);
            Exercise exercise = sheet.exercises().get(i - 1);
            assertThat(fields).hasSize(19);
            assertThat(fields.get(18)).startsWith("Data are invented. ");
            assertThat(fields.get(3)).isEqualTo(Document.raised(exercise.question()));
            assertThat(fields.get(4) + " " + fields.get(5))
                    .isEqualTo(exercise.answer().toString());
            double answer = Double.parseDouble(fields.get(4));
            double within = exercise.tolerance().withinRatio();
            assertThat(Double.parseDouble(fields.get(6)) / answer)
                    .as("2 % or nothing, to two digits")
                    .isBetween(0.925 * within, 1.075 * within);
            assertThat(fields.get(8 + 2 * (fields.get(7).charAt(0) - 'A')))
                    .isEqualTo(exercise.answer().toString());
        }
    }

    private static List<String> fields(String line) {
        List<String> fields = new ArrayList<>();
        StringBuilder field = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                fields.add(field.toString());
                field.setLength(0);
            } else {
                field.append(c);
            }
        }
        fields.add(field.toString());
        return fields;
    }

    @Test
    void theQuizPackageNamesItsItemsAndTheirRightChoices() {
        Map<String, String> files = sheet.toQti();
        assertThat(files).hasSize(23).containsKey("imsmanifest.xml");
        NodeList resources = Html.read(file(files, "imsmanifest.xml")).getElementsByTagName("resource");
        assertThat(resources.getLength()).isEqualTo(22);
        for (int i = 0; i < 10; i++) {
            String name = ((Element) resources.item(i + 1)).getAttribute("href");
            Exercise exercise = sheet.exercises().get(i);
            Element item = Html.read(file(files, name)).getDocumentElement();
            QtiModel.check(item);
            assertThat(item.getElementsByTagName("rubricBlock").item(0).getTextContent())
                    .startsWith("Data are invented. ");
            assertThat(item.getAttribute("identifier"))
                    .isEqualTo("stoplag-2024-0-metric-item-" + (i + 1))
                    .isEqualTo(((Element) resources.item(i + 1)).getAttribute("identifier"));
            assertThat(item.getNamespaceURI()).isEqualTo("http://www.imsglobal.org/xsd/imsqti_v2p1");
            String right = item.getElementsByTagName("correctResponse").item(0).getTextContent();
            NodeList choices = item.getElementsByTagName("simpleChoice");
            assertThat(choices.getLength()).isEqualTo(exercise.choices().size());
            for (int k = 0; k < choices.getLength(); k++) {
                Element choice = (Element) choices.item(k);
                boolean isRight = choice.getAttribute("identifier").equals(right);
                assertThat(choice.getTextContent().equals(exercise.answer().toString()))
                        .isEqualTo(isRight);
            }
            assertThat(item.getElementsByTagName("modalFeedback").getLength()).isEqualTo(choices.getLength());
        }
    }

    /** Every file of the manifest is there, every item of a test a dependency, every number accepted the key's own. */
    @Test
    void theQuizPackageHasTestsAndItemsThatAskForTheNumber() {
        Map<String, String> files = sheet.toQti();
        Element manifest = Html.read(file(files, "imsmanifest.xml")).getDocumentElement();
        NodeList resources = manifest.getElementsByTagName("resource");
        for (int i = 0; i < resources.getLength(); i++) {
            assertThat(files).containsKey(((Element) resources.item(i)).getAttribute("href"));
        }
        for (String test : List.of("test-items.xml", "test-entries.xml")) {
            Element root = Html.read(file(files, test)).getDocumentElement();
            QtiModel.check(root);
            NodeList references = root.getElementsByTagName("assessmentItemRef");
            assertThat(references.getLength()).isEqualTo(10);
            assertThat(file(files, "imsmanifest.xml"))
                    .contains("identifierref=\"" + ((Element) references.item(9)).getAttribute("identifier") + "\"");
        }
        for (int i = 0; i < 10; i++) {
            Exercise exercise = sheet.exercises().get(i);
            Element item = Html.read(file(files, "entry-" + (i + 1) + ".xml")).getDocumentElement();
            QtiModel.check(item);
            double right = Double.parseDouble(
                    item.getElementsByTagName("correctResponse").item(0).getTextContent());
            String tolerance = ((Element) item.getElementsByTagName("equal").item(0)).getAttribute("tolerance");
            double off = tolerance.isEmpty() ? 0 : Double.parseDouble(tolerance.split(" ", -1)[0]);
            assertThat(right).isEqualTo(exercise.answer().number().doubleValue());
            assertThat(exercise.choices())
                    .allMatch(choice -> choice.isRight()
                            || Math.abs(choice.amount().number().doubleValue() - right) > off);
        }
    }

    @Test
    void powersOfTenAreRaisedInEveryFormat() {
        assertThat(Document.raised("1.42×10^\u221214 m and 10^3")).isEqualTo("1.42×10⁻¹⁴ m and 10³");
        assertThat(Document.prose("1.42×10^\u221214 m")).isEqualTo("1.42×10<sup>\u221214</sup> m");
        ExerciseSheet lamps = ExerciseSheet.of(3, 20).onTopic("lamp");
        for (String text : List.of(
                lamps.toCsv(),
                lamps.multipleChoice().toMarkdown(),
                String.join("", lamps.toQti().values()))) {
            assertThat(text).doesNotContain("10^");
        }
        assertThat(lamps.toCsv()).contains("×10⁻");
    }

    @Test
    void anEmptyCombinationNamesThoseThatExistAndTooManyVariantsAreRefusedAtOnce() {
        assertThatThrownBy(() -> sheet.onTopic("lamp").ofDifficulty(Difficulty.STANDARD))
                .hasMessageStartingWith("no exercise has topic lamp and difficulty standard; there are stopping (basic,"
                        + " standard, advanced), ")
                .hasMessageContaining("lamp (basic, advanced)");
        assertThatThrownBy(() -> ExerciseSheet.of(1, 200).variants(1000))
                .hasMessage("number of variants must be in [1, 50], got 1000");
    }

    @Test
    void aSheetAsksForTheDigitsOfItsKey() {
        assertThat(ExerciseSheet.of(2024, 30).questions().toText())
                .contains(
                        ", to 3 significant digits: ____", "Answer in Ω: ____", "Answer in °C, to a whole number: ____")
                .doesNotContainPattern("brakes? with [0-9]")
                .doesNotContainPattern("\\n[0-9]+ cars");
    }

    @Test
    void itemsOfTwoSheetsDoNotShareTheirIdentifiers() {
        Set<String> names = new HashSet<>();
        List<ExerciseSheet> sheets = List.of(
                sheet,
                ExerciseSheet.of(2025, 10),
                sheet.variant(1),
                sheet.in(UnitSystem.US_CUSTOMARY),
                sheet.onTopic("lamp"),
                sheet.ofDifficulty(Difficulty.BASIC));
        for (ExerciseSheet each : sheets) {
            Element item = Html.read(file(each.toQti(), "item-1.xml")).getDocumentElement();
            names.add(item.getAttribute("identifier"));
        }
        assertThat(names).hasSize(sheets.size()).allMatch(name -> name.matches("[A-Za-z_][A-Za-z0-9_.-]*"));
    }

    @Test
    void theModelOfTheFormatNoticesWhatDoesNotFit() {
        String item = file(sheet.toQti(), "item-1.xml");
        for (String[] change : new String[][] {
            {"adaptive=\"false\" ", ""},
            {"<prompt>", "<p>"},
            {"cardinality=\"single\" baseType=\"identifier\"/>", "cardinality=\"one\"/>"},
            {"<correct identifier=\"RESPONSE\"/>", ""},
        }) {
            String changed = item.replace(change[0], change[1])
                    .replace("</prompt>", change[1].equals("<p>") ? "</p>" : "</prompt>");
            assertThat(changed).isNotEqualTo(item);
            assertThatThrownBy(() -> QtiModel.check(Html.read(changed).getDocumentElement()))
                    .as(change[0])
                    .isInstanceOf(AssertionError.class);
        }
    }

    @Test
    void theDefaultLocaleDoesNotShowInTheTable() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertThat(ExerciseSheet.of(2024, 10).toCsv()).isEqualTo(sheet.toCsv());
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void aQuestionThatNeedsGravityStatesIt() {
        Set<String> needing = new HashSet<>();
        for (UnitSystem units : UnitSystem.values()) {
            for (int seed = 0; seed < 50; seed++) {
                for (ExerciseTemplate template : ExerciseTemplate.all()) {
                    Exercise exercise = template.draw(seed, units);
                    for (Solution.GivenLine line : exercise.solution().givens()) {
                        if (line.symbol().equals(Expression.Symbol.of("g"))
                                && line.given().amount().unit().measuresTheSameAs(Unit.MPS2)) {
                            assertThat(exercise.question())
                                    .contains("(g = " + line.given().amount() + ")");
                            needing.add(template.id());
                        }
                    }
                }
            }
        }
        assertThat(needing)
                .containsExactlyInAnyOrder("stopping-friction", "stopping-downgrade", "skid-speed", "skid-speed-grade");
    }

    @Test
    void aSheetOpensWithTheEasyQuestions() {
        for (int seed = 0; seed < 30; seed++) {
            assertThat(ExerciseSheet.of(seed, 12).exercises())
                    .extracting(Exercise::difficulty)
                    .isSorted();
        }
    }

    @Test
    void aLineDoesNotEndBetweenANumberAndItsUnit() {
        String html = sheet.questions().toHtml() + sheet.key().toMarkdown();
        assertThat(html).contains("\u00a0km/h", "\u00a0s").doesNotContainPattern("question\\W.*\\d (km/h|m/s²|s) ");
        String text = sheet.questions().toText().replace('\u00a0', ' ').replaceAll("\\s+", " ");
        assertThat(sheet.exercises())
                .allSatisfy(each -> assertThat(text).contains(each.question().replaceAll("\\s+", " ")));
    }

    @Test
    void anAnswerInStepsHasNoTolerance() {
        int unraised = 0;
        for (ExerciseTemplate template : ExerciseTemplate.all()) {
            if (!template.id().equals("aashto-design") && !template.id().equals("load-resistor")) {
                assertThat(template.draw(1, UnitSystem.METRIC).tolerance()).isEqualTo(Grading.Tolerance.ASSUMED);
                continue;
            }
            for (int seed = 0; seed < 100; seed++) {
                Exercise exercise = template.draw(seed, UnitSystem.US_CUSTOMARY);
                double near = exercise.answer().number().doubleValue() * 0.99;
                assertThat(exercise.grade(Amount.of(near, exercise.answer().unit())))
                        .as("%s: %s", exercise.question(), near)
                        .isNotInstanceOf(Grading.Right.class)
                        .isNotInstanceOf(Grading.WithinTolerance.class);
                unraised += exercise.choices().stream()
                                .anyMatch(choice -> choice.mistake().contains("not raised"))
                        ? 1
                        : 0;
            }
        }
        assertThat(unraised)
                .as("questions that offer the sum before it is raised")
                .isGreaterThan(30);
    }

    @Test
    void aNarrowTopicEndsInsteadOfRepeating() {
        // the AASHTO rule is the only standard question on rules: 12 design speeds from 20 to 130 km/h
        ExerciseSheet narrow = sheet.onTopic("rules").ofDifficulty(Difficulty.STANDARD);
        assertThat(narrow.exercises()).hasSize(10);
        assertThatThrownBy(() -> ExerciseSheet.of(1, 200).onTopic("rules").ofDifficulty(Difficulty.STANDARD))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageMatching(
                        "number of questions must be at most 12 for this topic and difficulty, which have no"
                                + " more different ones, got 200");
    }

    private static String file(Map<String, String> files, String name) {
        return Objects.requireNonNull(files.get(name), name);
    }
}
