package io.github.stoplag.examples.teach;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.teach.QuestionText.NumberWord;
import io.github.stoplag.examples.teach.QuestionText.Token;
import io.github.stoplag.examples.teach.Vocabulary.Sort;
import io.github.stoplag.worked.Document;
import io.github.stoplag.worked.Given;
import io.github.stoplag.worked.Solution;
import io.github.stoplag.worked.Style;
import io.github.stoplag.worked.UnitSystem;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A question as people write it: {@code How far to stop from 60 mph in the wet?}, {@code follow at 70 mph, 2 s, wet
 * asphalt}, {@code skid 85 ft, 0.7}.
 *
 * <p>The longest phrase of the {@link Vocabulary} that asks something decides the {@link QuestionKind}, together with
 * how well the numbers fit its places. Words that mean nothing here are refused, never passed over; the refusal names
 * the nearest question that works. What is read is said before the answer, and what is assumed stands among the
 * assumptions of the solution.
 */
final class Question {
    private final QuestionText text;
    private final Placed placed;
    private final Map<Slot, Given> values = new LinkedHashMap<>();
    private final Map<Slot, Given> spreads = new LinkedHashMap<>();
    private final Set<UnitSystem> systems = EnumSet.noneOf(UnitSystem.class);

    private Question(QuestionText text, Placed placed) {
        this.text = text;
        this.placed = placed;
    }

    /**
     * Reads a question.
     *
     * @throws InputException if a part is not understood, double or missing; the message names it and the nearest
     *     question that works
     */
    static Question of(String text) {
        try {
            return read(text);
        } catch (InputException e) {
            throw NearestQuestion.refusal(text, e);
        }
    }

    /** The kind that suits a text best. */
    static Placed place(QuestionText text) {
        return Arrays.stream(QuestionKind.values())
                .map(kind -> Placed.of(text, kind))
                .max(Comparator.comparingInt(Placed::score).thenComparing(Placed::kind, Comparator.reverseOrder()))
                .orElseThrow();
    }

    /** Reads a question without a look for the nearest one. */
    static Question read(String text) {
        QuestionText cut = QuestionText.of(text);
        Placed placed = place(cut);
        if (!placed.problems().isEmpty()) {
            throw new InputException(placed.problems().get(0));
        }
        if (!placed.isAsked()) {
            throw new InputException("\"" + cut.plain() + "\" does not say what is asked");
        }
        Question question = new Question(cut, placed);
        placed.texts().forEach(question::put);
        return question;
    }

    private void put(Slot slot, String value) {
        try {
            values.put(slot, slot.measure().read(value));
            placed.spread(slot)
                    .ifPresent(spread -> spreads.put(slot, slot.measure().read(spread)));
            slot.measure().system(value).ifPresent(systems::add);
        } catch (IllegalArgumentException e) {
            throw new InputException("\"" + value + "\": " + e.getMessage(), e);
        }
    }

    Placed placed() {
        return placed;
    }

    QuestionKind kind() {
        return placed.kind();
    }

    /** The same question in words that are sure to be understood. */
    String canonical() {
        return placed.canonical();
    }

    /**
     * The units to answer in if nothing else is asked: US customary where the question uses no others, those of the
     * United Kingdom where miles per hour stand beside metres or its words.
     */
    UnitSystem units() {
        boolean milesPerHour = text.tokens().stream().anyMatch(Question::isInMph);
        boolean kilometresPerHour = systems.contains(UnitSystem.METRIC) && !milesPerHour;
        if (kilometresPerHour || systems.isEmpty()) {
            return UnitSystem.METRIC;
        }
        boolean metres = systems.contains(UnitSystem.METRIC);
        boolean british = Vocabulary.isBritish(text.plain()) && milesPerHour && !saysFeet();
        return british || metres ? milesPerHour ? UnitSystem.BRITISH : UnitSystem.METRIC : UnitSystem.US_CUSTOMARY;
    }

    private static boolean isInMph(Token token) {
        return token instanceof NumberWord number && QuestionText.isInMph(number.value());
    }

    private boolean saysFeet() {
        return placed.texts().entrySet().stream()
                .filter(each -> each.getKey().measure() != Measure.SPEED)
                .anyMatch(each -> each.getKey()
                        .measure()
                        .system(each.getValue())
                        .filter(UnitSystem.US_CUSTOMARY::equals)
                        .isPresent());
    }

    /**
     * Works the question.
     *
     * @throws InputException if a part is missing or out of range; the message names the nearest question that works
     */
    Solution solution(UnitSystem units) {
        try {
            return work(units);
        } catch (InputException e) {
            throw NearestQuestion.refusal(text.plain(), e);
        }
    }

    /** Works the question without a look for the nearest one. */
    Solution work(UnitSystem units) {
        QuestionParts parts = new QuestionParts(
                placed.kind(),
                values,
                spreads,
                placed.road().flatMap(RoadWords::of).orElse(null),
                placed.name().orElse(null),
                placed.says(Sort.ALL));
        Solution worked;
        try {
            worked = placed.kind().work(parts, Style.in(units));
            // next to a tie the digits carried by default do not decide the last one of the answer
            worked = worked.answer().carriesEnough()
                    ? worked
                    : placed.kind().work(parts, Style.in(units).withDigits(12, 3));
        } catch (IllegalArgumentException e) {
            throw new InputException("\"" + text.plain() + "\": " + e.getMessage(), e);
        }
        List<String> assumptions = new ArrayList<>(placed.notes());
        assumptions.addAll(parts.assumptions());
        assumptions.addAll(worked.assumptions());
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
        blocks.add(1, new Document.Paragraph("Question: " + text.plain()));
        if (!canonical().equals(text.plain())) {
            blocks.add(2, new Document.Paragraph("Read as: " + canonical()));
        }
        return new Document(worked.title(), blocks);
    }
}
