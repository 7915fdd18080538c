package io.github.stoplag.worked;

import io.github.stoplag.worked.Exercise.Choice;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Sheets in formats that other programs read.
 *
 * <p>Source: RFC 4180, from memory; IMS Question and Test Interoperability 2.1, schema imsqti_v2p1.xsd of 31 July 2012:
 * order of the parts of an item, attributes of item, choice interaction and modal feedback, seen; a test in a manifest
 * with its file before its dependencies, and a text entry within a paragraph, as in packages of others, seen; the rest
 * from memory.
 */
final class SheetExport {
    private static final String XML = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
    private static final int CHOICES = 5;

    private SheetExport() {}

    static String csv(List<Exercise> exercises) {
        StringBuilder out = new StringBuilder("number,template,difficulty,question,answer,unit,tolerance,letter");
        for (int i = 0; i < CHOICES; i++) {
            String mark = Document.mark(i);
            out.append(",choice_").append(mark).append(",mistake_").append(mark);
        }
        out.append(",notice\r\n");
        for (int i = 0; i < exercises.size(); i++) {
            Exercise e = exercises.get(i);
            out.append(i + 1).append(',').append(e.template()).append(',').append(e.difficulty());
            out.append(',').append(quoted(e.question()));
            out.append(',').append(e.answer().number().toPlainString());
            out.append(',').append(e.answer().unit().symbol());
            out.append(',').append(tolerance(e)).append(',').append(e.letter());
            for (int k = 0; k < CHOICES; k++) {
                boolean there = k < e.choices().size();
                out.append(',')
                        .append(there ? quoted(e.choices().get(k).amount().toString()) : "");
                out.append(',').append(there ? quoted(e.choices().get(k).mistake()) : "");
            }
            out.append(',').append(quoted(ExerciseSheet.notice(e))).append("\r\n");
        }
        return out.toString();
    }

    private static String tolerance(Exercise exercise) {
        double answer = exercise.solution().answer().unrounded().number().doubleValue();
        double off = exercise.tolerance().withinRatio() * Math.abs(answer);
        return Rounding.digits(2).apply(off).toPlainString();
    }

    private static String quoted(String text) {
        return "\"" + Document.raised(text).replace("\"", "\"\"") + "\"";
    }

    static Map<String, String> qti(String name, List<Exercise> exercises) {
        Map<String, String> files = new LinkedHashMap<>();
        StringBuilder resources = new StringBuilder();
        for (Kind kind : Kind.values()) {
            StringBuilder references = new StringBuilder();
            StringBuilder dependencies = new StringBuilder();
            StringBuilder items = new StringBuilder();
            for (int i = 0; i < exercises.size(); i++) {
                String file = kind.file + "-" + (i + 1) + ".xml";
                // a store of items knows each by its identifier, so that two sheets must not share one
                String id = name + "-" + kind.file + "-" + (i + 1);
                files.put(file, kind.item(id, i + 1, exercises.get(i)));
                items.append("""
                            <resource identifier="%s" type="imsqti_item_xmlv2p1" href="%s"><file href="%s"/></resource>
                        """.formatted(id, file, file));
                dependencies.append("<dependency identifierref=\"%s\"/>".formatted(id));
                references.append("      <assessmentItemRef identifier=\"%s\" href=\"%s\"/>\n".formatted(id, file));
            }
            String test = "test-" + kind.files + ".xml";
            files.put(test, test(name + "-" + kind.files, kind.title, references));
            resources
                    .append("""
                        <resource identifier="%s" type="imsqti_test_xmlv2p1" href="%s"><file href="%s"/>%s</resource>
                    """.formatted(name + "-" + kind.files, test, test, dependencies))
                    .append(items);
        }
        files.put("imsmanifest.xml", XML + """
                <manifest xmlns="http://www.imsglobal.org/xsd/imscp_v1p1" identifier="%s">
                  <metadata><schema>QTIv2.1 Package</schema><schemaversion>1.0.0</schemaversion></metadata>
                  <organizations/>
                  <resources>
                %s  </resources>
                </manifest>
                """.formatted(name, resources));
        return files;
    }

    private static String test(String id, String title, StringBuilder references) {
        return XML + """
                <assessmentTest xmlns="http://www.imsglobal.org/xsd/imsqti_v2p1" identifier="%s" title="%s">
                  <outcomeDeclaration identifier="SCORE" cardinality="single" baseType="float">
                    <defaultValue><value>0</value></defaultValue>
                  </outcomeDeclaration>
                  <testPart identifier="part" navigationMode="nonlinear" submissionMode="individual">
                    <assessmentSection identifier="section" title="%s" visible="true">
                %s    </assessmentSection>
                  </testPart>
                  <outcomeProcessing>
                    <setOutcomeValue identifier="SCORE">
                      <sum><testVariables variableIdentifier="SCORE"/></sum>
                    </setOutcomeValue>
                  </outcomeProcessing>
                </assessmentTest>
                """.formatted(id, title, title, references);
    }

    /** The two ways to ask the same question. */
    private enum Kind {
        ITEM("item", "items", "Exercises on stopping and stop lamps, multiple choice") {
            @Override
            String item(String id, int number, Exercise exercise) {
                return choice(id, number, exercise);
            }
        },
        ENTRY("entry", "entries", "Exercises on stopping and stop lamps, numbers to enter") {
            @Override
            String item(String id, int number, Exercise exercise) {
                return entry(id, number, exercise);
            }
        };

        private final String file;
        private final String files;
        private final String title;

        Kind(String file, String files, String title) {
            this.file = file;
            this.files = files;
            this.title = title;
        }

        abstract String item(String id, int number, Exercise exercise);
    }

    private static String head(String id, int number, Exercise exercise) {
        return XML
                + """
                <assessmentItem xmlns="http://www.imsglobal.org/xsd/imsqti_v2p1" identifier="%s" title="Question %d: %s" \
                adaptive="false" timeDependent="false">
                """.formatted(id, number, Document.escape(exercise.solution().title()));
    }

    /** An item that asks for the number in the unit named behind the gap. */
    private static String entry(String id, int number, Exercise exercise) {
        String right = exercise.answer().number().toPlainString();
        return head(id, number, exercise)
                + """
                  <responseDeclaration identifier="RESPONSE" cardinality="single" baseType="float">
                    <correctResponse><value>%s</value></correctResponse>
                  </responseDeclaration>
                  <outcomeDeclaration identifier="SCORE" cardinality="single" baseType="float">
                    <defaultValue><value>0</value></defaultValue>
                  </outcomeDeclaration>
                  <itemBody>
                    <rubricBlock view="candidate"><p>%s</p></rubricBlock>
                    <p>%s</p>
                    <p>Answer in %s%s: <textEntryInteraction responseIdentifier="RESPONSE" expectedLength="12"/></p>
                  </itemBody>
                  <responseProcessing>
                    <responseCondition>
                      <responseIf>
                        <equal %s>\
                <variable identifier="RESPONSE"/><correct identifier="RESPONSE"/></equal>
                        <setOutcomeValue identifier="SCORE"><baseValue baseType="float">1</baseValue></setOutcomeValue>
                      </responseIf>
                    </responseCondition>
                  </responseProcessing>
                </assessmentItem>
                """.formatted(
                                right,
                                Document.prose(ExerciseSheet.notice(exercise)),
                                Document.prose(exercise.question()),
                                Document.escape(exercise.answer().unit().symbol()),
                                exercise.digitsAsked(),
                                equality(exercise));
    }

    /** How near a number must come; exactly where a rule or a series sets the answer in steps. */
    private static String equality(Exercise exercise) {
        String off = tolerance(exercise);
        return exercise.tolerance().withinRatio() == 0
                ? "toleranceMode=\"exact\""
                : "toleranceMode=\"absolute\" tolerance=\"" + off + " " + off + "\"";
    }

    private static String choice(String id, int number, Exercise exercise) {
        StringBuilder choices = new StringBuilder();
        StringBuilder feedback = new StringBuilder();
        for (int i = 0; i < exercise.choices().size(); i++) {
            Choice choice = exercise.choices().get(i);
            String mark = Document.mark(i);
            choices.append("      <simpleChoice identifier=\"%s\">%s</simpleChoice>\n"
                    .formatted(mark, Document.prose(choice.amount().toString())));
            feedback.append("""
                      <modalFeedback outcomeIdentifier="FEEDBACK" showHide="show" identifier="%s">%s</modalFeedback>
                    """.formatted(mark, Document.prose(choice.isRight() ? "right" : choice.mistake())));
        }
        return head(id, number, exercise)
                + """
                  <responseDeclaration identifier="RESPONSE" cardinality="single" baseType="identifier">
                    <correctResponse><value>%s</value></correctResponse>
                  </responseDeclaration>
                  <outcomeDeclaration identifier="SCORE" cardinality="single" baseType="float">
                    <defaultValue><value>0</value></defaultValue>
                  </outcomeDeclaration>
                  <outcomeDeclaration identifier="FEEDBACK" cardinality="single" baseType="identifier"/>
                  <itemBody>
                    <rubricBlock view="candidate"><p>%s</p></rubricBlock>
                    <choiceInteraction responseIdentifier="RESPONSE" shuffle="false" maxChoices="1">
                      <prompt>%s</prompt>
                %s    </choiceInteraction>
                  </itemBody>
                  <responseProcessing>
                    <responseCondition>
                      <responseIf>
                        <match><variable identifier="RESPONSE"/><correct identifier="RESPONSE"/></match>
                        <setOutcomeValue identifier="SCORE"><baseValue baseType="float">1</baseValue></setOutcomeValue>
                      </responseIf>
                    </responseCondition>
                    <setOutcomeValue identifier="FEEDBACK"><variable identifier="RESPONSE"/></setOutcomeValue>
                  </responseProcessing>
                %s</assessmentItem>
                """.formatted(
                                exercise.letter(),
                                Document.prose(ExerciseSheet.notice(exercise)),
                                Document.prose(exercise.question()),
                                choices,
                                feedback);
    }
}
