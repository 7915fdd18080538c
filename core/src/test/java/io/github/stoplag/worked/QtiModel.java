package io.github.stoplag.worked;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * The part of IMS Question and Test Interoperability 2.1 that the sheets use, element by element: which attributes an
 * element must have, which values they take, and which children in which order.
 *
 * <p>Seen: the content models and attributes of assessmentItem, choiceInteraction and modalFeedback as the schema
 * (imsqti_v2p1.xsd, final release, 31 July 2012) and quotations of it have them. From memory: the other elements, after
 * the specification's information model (31 August 2012). The schema itself is not shipped, as its licence asks a
 * distributor to register.
 */
final class QtiModel {
    private static final String NAMESPACE = "http://www.imsglobal.org/xsd/imsqti_v2p1";
    private static final String NAME = "[A-Za-z_][A-Za-z0-9_.-]*";
    private static final String BASE =
            "identifier|boolean|integer|float|string|point|pair|directedPair|duration|file|uri";

    /** What an element may hold: its children in order as a regular expression over "name,", and its attributes. */
    private record Form(String children, Map<String, String> required, boolean text) {}

    private static final Map<String, Form> FORMS = Map.ofEntries(
            Map.entry(
                    "assessmentItem",
                    new Form(
                            "(responseDeclaration,)*(outcomeDeclaration,)*(itemBody,)?(responseProcessing,)?(modalFeedback,)*",
                            Map.of(
                                    "identifier",
                                    ".+",
                                    "title",
                                    ".+",
                                    "adaptive",
                                    "true|false",
                                    "timeDependent",
                                    "true|false"),
                            false)),
            Map.entry(
                    "responseDeclaration",
                    new Form(
                            "(correctResponse,)?",
                            Map.of(
                                    "identifier",
                                    NAME,
                                    "cardinality",
                                    "single|multiple|ordered|record",
                                    "baseType",
                                    BASE),
                            false)),
            Map.entry("correctResponse", new Form("(value,)+", Map.of(), false)),
            Map.entry("value", new Form("", Map.of(), true)),
            Map.entry(
                    "outcomeDeclaration",
                    new Form(
                            "(defaultValue,)?",
                            Map.of(
                                    "identifier",
                                    NAME,
                                    "cardinality",
                                    "single|multiple|ordered|record",
                                    "baseType",
                                    BASE),
                            false)),
            Map.entry("defaultValue", new Form("(value,)+", Map.of(), false)),
            Map.entry("itemBody", new Form("(rubricBlock,)?(choiceInteraction,|(p,)+)", Map.of(), false)),
            Map.entry("rubricBlock", new Form("(p,)+", Map.of("view", "candidate"), false)),
            Map.entry("p", new Form("(sup,)*(textEntryInteraction,)?", Map.of(), true)),
            Map.entry("sup", new Form("", Map.of(), true)),
            Map.entry(
                    "textEntryInteraction",
                    new Form("", Map.of("responseIdentifier", NAME, "expectedLength", "\\d+"), false)),
            Map.entry(
                    "equal",
                    new Form(
                            "variable,correct,",
                            Map.of("toleranceMode", "exact|absolute", "tolerance", "([0-9.]+ [0-9.]+)?"),
                            false)),
            Map.entry(
                    "assessmentTest",
                    new Form(
                            "(outcomeDeclaration,)*(testPart,)+(outcomeProcessing,)?",
                            Map.of("identifier", NAME, "title", ".+"),
                            false)),
            Map.entry(
                    "testPart",
                    new Form(
                            "(assessmentSection,)+",
                            Map.of(
                                    "identifier",
                                    NAME,
                                    "navigationMode",
                                    "linear|nonlinear",
                                    "submissionMode",
                                    "individual|simultaneous"),
                            false)),
            Map.entry(
                    "assessmentSection",
                    new Form(
                            "(assessmentItemRef,)+",
                            Map.of("identifier", NAME, "title", ".+", "visible", "true|false"),
                            false)),
            Map.entry("assessmentItemRef", new Form("", Map.of("identifier", NAME, "href", ".+\\.xml"), false)),
            Map.entry("outcomeProcessing", new Form("(setOutcomeValue,)+", Map.of(), false)),
            Map.entry("sum", new Form("(testVariables,)+", Map.of(), false)),
            Map.entry("testVariables", new Form("", Map.of("variableIdentifier", NAME), false)),
            Map.entry(
                    "choiceInteraction",
                    new Form(
                            "(prompt,)?(simpleChoice,)+",
                            Map.of("responseIdentifier", NAME, "shuffle", "true|false", "maxChoices", "\\d+"),
                            false)),
            Map.entry("prompt", new Form("(sup,)*", Map.of(), true)),
            Map.entry("simpleChoice", new Form("(sup,)*", Map.of("identifier", NAME), true)),
            Map.entry("responseProcessing", new Form("(responseCondition,|setOutcomeValue,)*", Map.of(), false)),
            Map.entry("responseCondition", new Form("responseIf,(responseElseIf,)*(responseElse,)?", Map.of(), false)),
            Map.entry("responseIf", new Form("(match|equal),(setOutcomeValue,)*", Map.of(), false)),
            Map.entry("match", new Form("variable,correct,", Map.of(), false)),
            Map.entry("variable", new Form("", Map.of("identifier", NAME), false)),
            Map.entry("correct", new Form("", Map.of("identifier", NAME), false)),
            Map.entry("setOutcomeValue", new Form("(baseValue,|variable,|sum,)", Map.of("identifier", NAME), false)),
            Map.entry("baseValue", new Form("", Map.of("baseType", BASE), true)),
            Map.entry(
                    "modalFeedback",
                    new Form(
                            "", Map.of("outcomeIdentifier", NAME, "showHide", "show|hide", "identifier", NAME), true)));

    private QtiModel() {}

    static void check(Element element) {
        String name = element.getLocalName();
        assertThat(element.getNamespaceURI()).as(name).isEqualTo(NAMESPACE);
        assertThat(FORMS).containsKey(name);
        Form form = Objects.requireNonNull(FORMS.get(name));
        List<Element> children = children(element);
        assertThat(children.stream().map(child -> child.getLocalName() + ",").collect(Collectors.joining()))
                .as("children of " + name)
                .matches(form.children);
        form.required.forEach((attribute, values) -> assertThat(element.getAttribute(attribute))
                .as(name + " " + attribute)
                .matches(values));
        assertThat(element.getAttributes().getLength())
                .as("attributes of " + name)
                .isLessThanOrEqualTo(form.required.size() + (element.hasAttribute("xmlns") ? 1 : 0));
        if (!form.text) {
            assertThat(children.isEmpty() ? element.getTextContent() : "")
                    .as("text in " + name)
                    .isBlank();
        }
        children.forEach(QtiModel::check);
        if (name.equals("assessmentItem")) {
            checkReferences(element);
        }
    }

    /** Every variable that is used must be declared, and a value that is set must have the declared type. */
    private static void checkReferences(Element item) {
        List<String> responses = identifiers(item, "responseDeclaration", "identifier");
        List<String> outcomes = identifiers(item, "outcomeDeclaration", "identifier");
        assertThat(responses).containsAll(identifiers(item, "choiceInteraction", "responseIdentifier"));
        assertThat(responses).containsAll(identifiers(item, "correct", "identifier"));
        assertThat(responses).containsAll(identifiers(item, "variable", "identifier"));
        assertThat(outcomes).containsAll(identifiers(item, "setOutcomeValue", "identifier"));
        assertThat(outcomes).containsAll(identifiers(item, "modalFeedback", "outcomeIdentifier"));
        assertThat(responses).containsAll(identifiers(item, "textEntryInteraction", "responseIdentifier"));
        if (identifiers(item, "choiceInteraction", "responseIdentifier").isEmpty()) {
            return;
        }
        assertThat(identifiers(item, "simpleChoice", "identifier"))
                .doesNotHaveDuplicates()
                .containsExactlyElementsOf(identifiers(item, "modalFeedback", "identifier"))
                .contains(item.getElementsByTagName("correctResponse")
                        .item(0)
                        .getTextContent()
                        .strip());
    }

    private static List<String> identifiers(Element item, String element, String attribute) {
        var nodes = item.getElementsByTagNameNS(NAMESPACE, element);
        return IntStream.range(0, nodes.getLength())
                .mapToObj(i -> ((Element) nodes.item(i)).getAttribute(attribute))
                .toList();
    }

    private static List<Element> children(Element element) {
        var nodes = element.getChildNodes();
        return IntStream.range(0, nodes.getLength())
                .mapToObj(nodes::item)
                .filter(node -> node.getNodeType() == Node.ELEMENT_NODE)
                .map(Element.class::cast)
                .toList();
    }
}
