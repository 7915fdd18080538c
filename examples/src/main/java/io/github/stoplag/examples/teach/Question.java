package io.github.stoplag.examples.teach;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.worked.Document;
import io.github.stoplag.worked.Given;
import io.github.stoplag.worked.Solution;
import io.github.stoplag.worked.Style;
import io.github.stoplag.worked.UnitSystem;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A question put in words with units, such as {@code stop from 60 mph, 1.5 s, wet asphalt, 3 % down}.
 *
 * <pre>
 *   question = kind part { separator part }
 *   kind     = stop | brake | react | skid | lag | deceleration | follow | percentile | resistor | heat | diode | rule
 *   separator = "," | ";" | from | at | on | with | and     (words between spaces)
 *   part     = [ keyword ] number unit [ up | down ]
 *            | level | road | study NAME | rule NAME
 * </pre>
 *
 * <p>The kind decides which parts there can be; a part is told from the others by its unit and keyword, so their order
 * does not matter. A part that fits no place, or a place that is filled already, is an error, and so is a missing part
 * for which nothing can be assumed. What is assumed stands among the assumptions of the solution.
 */
final class Question {
    private static final int LONGEST = 300;
    private static final Pattern SPACES = Pattern.compile("[\\s\\u00a0\\u2009\\u202f]+");
    private static final Pattern SEPARATOR = Pattern.compile("\\s*[,;]\\s*|\\s+(?=(?:from|at|on|with|and)\\s)");
    private static final Pattern DECIMAL_COMMA = Pattern.compile("([0-9]+),([0-9]+)");
    private static final Pattern PLAIN_NUMBER = Pattern.compile("[+-]?[0-9.]+");
    private static final Pattern JOINT = Pattern.compile("(?:from|at|on|with|and)\\s+(.*)");

    private final String text;
    private final QuestionKind kind;
    private final Map<Slot, Given> values = new LinkedHashMap<>();
    private final Set<UnitSystem> systems = EnumSet.noneOf(UnitSystem.class);
    private @Nullable RoadWords road;
    private @Nullable String named;

    private Question(String text, QuestionKind kind) {
        this.text = text;
        this.kind = kind;
    }

    /**
     * Reads a question.
     *
     * @throws InputException if a part is not understood, double or missing; the message names it and says what is
     *     possible
     */
    static Question of(String text) {
        String plain = SPACES.matcher(text).replaceAll(" ").strip().replace('−', '-');
        if (plain.length() > LONGEST) {
            throw new InputException("a question must have at most " + LONGEST + " characters, got " + plain.length());
        }
        String[] first = plain.split("[ ,;]", 2);
        QuestionKind kind = QuestionKind.of(first[0].toLowerCase(Locale.ROOT))
                .orElseThrow(() -> new InputException("a question must begin with one of " + QuestionKind.words()
                        + ", got \"" + first[0] + "\"; e.g. \"" + QuestionKind.STOP.example() + "\""));
        Question question = new Question(plain, kind);
        String[] parts = SEPARATOR.split(first.length < 2 ? "" : first[1].strip(), -1);
        for (int i = 0; i < parts.length; i++) {
            Matcher joint = JOINT.matcher(parts[i]);
            String value = (joint.matches() ? joint.group(1) : parts[i]).strip();
            if (!value.isEmpty()) {
                question.accept(value);
            } else if (i > 0) {
                throw new InputException(
                        "an empty part stands in \"" + plain + "\": two separators, or one at the end");
            }
        }
        return question;
    }

    private void accept(String part) {
        if (named(part)) {
            return;
        }
        if (part.equals("level") && kind.slots().contains(Slot.GRADE)) {
            put(Slot.GRADE, part, "0 % up");
            return;
        }
        boolean found = false;
        for (Slot slot : kind.slots()) {
            Optional<String> value = value(slot, part);
            if (value.isPresent() && !found) {
                put(slot, part, value.get());
                found = true;
            }
        }
        if (!found) {
            throw new InputException("\"" + part + "\" is no part of a question that begins with " + kind.word() + ": "
                    + hint(part) + possible());
        }
    }

    /** What is probably wrong with a part that fits nowhere, or nothing. */
    private String hint(String part) {
        Matcher comma = DECIMAL_COMMA.matcher(text);
        while (comma.find()) {
            if (part.endsWith(comma.group(1)) || part.startsWith(comma.group(2))) {
                return "if " + comma.group() + " is one number, write a decimal point, " + comma.group(1) + "."
                        + comma.group(2) + "; ";
            }
        }
        if (PLAIN_NUMBER.matcher(part).matches()) {
            return "its unit is missing; ";
        }
        for (int space = part.lastIndexOf(' '); space > 0; space = part.lastIndexOf(' ', space - 1)) {
            String first = part.substring(0, space);
            if (kind.slots().stream().anyMatch(slot -> value(slot, first).isPresent())) {
                return "parts are set apart by commas: " + first + ", " + part.substring(space + 1) + "; ";
            }
        }
        return "";
    }

    /** The text of the value if the part fits the slot by its keyword and unit. */
    private static Optional<String> value(Slot slot, String part) {
        for (String keyword : slot.keywords()) {
            if (part.regionMatches(true, 0, keyword + " ", 0, keyword.length() + 1)) {
                String value = part.substring(keyword.length() + 1);
                return slot.measure().fits(value) ? Optional.of(value) : Optional.empty();
            }
        }
        return slot.bare() && slot.measure().fits(part) ? Optional.of(part) : Optional.empty();
    }

    private void put(Slot slot, String part, String value) {
        Given before = values.get(slot);
        if (before != null) {
            throw new InputException(
                    "\"" + part + "\": a " + slot.name() + " stands there already, " + before.amount() + "; give one");
        }
        try {
            values.put(slot, slot.measure().read(value));
            slot.measure().system(value).ifPresent(systems::add);
        } catch (IllegalArgumentException e) {
            throw new InputException("\"" + part + "\": " + e.getMessage(), e);
        }
    }

    private boolean named(String part) {
        String lower = part.toLowerCase(Locale.ROOT);
        switch (kind.names()) {
            case ROAD -> {
                Optional<RoadWords> words = RoadWords.of(lower);
                if (words.isPresent() && road != null) {
                    throw new InputException("\"" + part + "\": a surface stands there already; give one");
                }
                road = words.orElse(road);
                return words.isPresent();
            }
            case STUDY -> {
                return lower.startsWith("study ") && name(part, lower.substring("study ".length()));
            }
            case RULE -> {
                return Character.isLetter(lower.charAt(0)) && !lower.startsWith("speed ") && name(part, lower);
            }
            case NONE -> {
                return false;
            }
        }
        return false;
    }

    private boolean name(String part, String name) {
        if (named != null) {
            throw new InputException("\"" + part + "\": a name stands there already, " + named + "; give one");
        }
        named = name;
        return true;
    }

    private String possible() {
        Stream<String> slots = kind.slots().stream().map(Slot::help);
        Stream<String> names = switch (kind.names()) {
            case ROAD ->
                Stream.of("surface: " + String.join(", ", RoadWords.words()) + " or a row of the surface table");
            case STUDY -> Stream.of("study: study with a row of the reaction table");
            case RULE -> Stream.of("rule: its key as stopping-tables prints it");
            case NONE -> Stream.of();
        };
        return "possible are " + String.join("; ", Stream.concat(slots, names).toList());
    }

    /** The units to answer in if nothing else is asked: US customary where the question uses no others. */
    UnitSystem units() {
        return systems.equals(Set.of(UnitSystem.US_CUSTOMARY)) ? UnitSystem.US_CUSTOMARY : UnitSystem.METRIC;
    }

    /**
     * Works the question.
     *
     * @throws InputException if a part is missing or out of range
     */
    Solution solution(UnitSystem units) {
        QuestionParts parts = new QuestionParts(kind, values, road, named);
        Solution worked;
        try {
            worked = kind.work(parts, Style.in(units));
        } catch (IllegalArgumentException e) {
            throw new InputException("\"" + text + "\": " + e.getMessage(), e);
        }
        List<String> assumptions = new ArrayList<>(worked.assumptions());
        assumptions.addAll(parts.assumptions());
        return new Solution(
                worked.title(),
                worked.units(),
                worked.givens(),
                worked.find(),
                assumptions,
                worked.steps(),
                worked.answer(),
                worked.checks(),
                worked.cautions());
    }

    /** Works the question in one system of units or in two side by side. */
    Document document(List<UnitSystem> systems) {
        Solution first = solution(systems.get(0));
        Document worked = systems.size() == 1 ? first.document() : first.beside(solution(systems.get(1)));
        List<Document.Block> blocks = new ArrayList<>(worked.blocks());
        blocks.add(1, new Document.Paragraph("Question: " + text));
        return new Document(worked.title(), blocks);
    }
}
