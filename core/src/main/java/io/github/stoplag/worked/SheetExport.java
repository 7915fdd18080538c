package io.github.stoplag.worked;

import io.github.stoplag.worked.Exercise.Choice;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Sheets in formats that other programs read.
 *
 * <p>Source: RFC 4180, from memory; IMS Question and Test Interoperability 2.1, schema imsqti_v2p1.xsd of 31 July 2012:
 * order of the parts of an item, attributes of item, choice interaction and modal feedback, seen; the rest from memory.
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
        return "\"" + text.replace("\"", "\"\"") + "\"";
    }

    static Map<String, String> qti(String name, List<Exercise> exercises) {
        Map<String, String> files = new LinkedHashMap<>();
        StringBuilder resources = new StringBuilder();
        for (int i = 0; i < exercises.size(); i++) {
            String file = "item-" + (i + 1) + ".xml";
            // a store of items knows each by its identifier, so that two sheets must not share one
            String id = name + "-item-" + (i + 1);
            files.put(file, item(id, i + 1, exercises.get(i)));
            resources.append("""
                        <resource identifier="%s" type="imsqti_item_xmlv2p1" href="%s"><file href="%s"/></resource>
                    """.formatted(id, file, file));
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

    private static String item(String id, int number, Exercise exercise) {
        StringBuilder choices = new StringBuilder();
        StringBuilder feedback = new StringBuilder();
        for (int i = 0; i < exercise.choices().size(); i++) {
            Choice choice = exercise.choices().get(i);
            String mark = Document.mark(i);
            choices.append("      <simpleChoice identifier=\"%s\">%s</simpleChoice>\n"
                    .formatted(mark, Document.escape(choice.amount().toString())));
            feedback.append("""
                      <modalFeedback outcomeIdentifier="FEEDBACK" showHide="show" identifier="%s">%s</modalFeedback>
                    """.formatted(mark, Document.escape(choice.isRight() ? "right" : choice.mistake())));
        }
        return XML
                + """
                <assessmentItem xmlns="http://www.imsglobal.org/xsd/imsqti_v2p1" identifier="%s" title="Question %d: %s" \
                adaptive="false" timeDependent="false">
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
                                id,
                                number,
                                Document.escape(exercise.solution().title()),
                                exercise.letter(),
                                Document.escape(ExerciseSheet.notice(exercise)),
                                Document.escape(exercise.question()),
                                choices,
                                feedback);
    }
}
