package io.github.stoplag.examples.teach;

import io.github.stoplag.examples.teach.QuestionKind.Names;
import io.github.stoplag.examples.teach.QuestionText.End;
import io.github.stoplag.examples.teach.QuestionText.NumberWord;
import io.github.stoplag.examples.teach.QuestionText.Respelled;
import io.github.stoplag.examples.teach.QuestionText.Token;
import io.github.stoplag.examples.teach.QuestionText.Unknown;
import io.github.stoplag.examples.teach.QuestionText.Word;
import io.github.stoplag.examples.teach.Vocabulary.Sort;
import io.github.stoplag.quantity.Units;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The numbers and names of a question put into the places of one kind of question, and what could not be placed.
 *
 * <p>A number goes to the word that stands beside it in its part, before or behind it, if a place of that word takes
 * its unit; what is left goes to the places that need no word, in order.
 */
final class Placed {
    private static final int ASKED = 4;
    private static final int WORDED = 12;
    private static final int NAMED_RULE = 25;
    private static final int PROBLEM = 10;
    private static final int UNASKED = 30;

    private final QuestionKind kind;
    private final Map<Slot, NumberWord> values = new LinkedHashMap<>();
    private final Map<Slot, String> texts = new LinkedHashMap<>();
    private final AskedRoad road = new AskedRoad();
    private final Set<String> names = new LinkedHashSet<>();
    private final List<String> notes = new ArrayList<>();
    private final List<String> problems = new ArrayList<>();
    private final Set<Sort> said = new LinkedHashSet<>();
    private final List<String> ways = new ArrayList<>();
    private String withoutUnit = "";
    private String secondSpeed = "";
    private boolean hits;
    private int asked;

    private Placed(QuestionKind kind) {
        this.kind = kind;
    }

    static Placed of(QuestionText text, QuestionKind kind) {
        Placed placed = new Placed(kind);
        placed.read(text);
        return placed;
    }

    private void read(QuestionText text) {
        List<List<Token>> parts = parts(text.tokens());
        text.tokens().forEach(this::note);
        if (text.tokens().stream()
                .filter(token -> !(token instanceof End))
                .findFirst()
                .filter(kind::isWordedBy)
                .isPresent()) {
            asked += WORDED;
        }
        boolean spread = text.tokens().stream()
                .anyMatch(token ->
                        token instanceof NumberWord number && !number.spread().isEmpty());
        asked += spread && kind.isUncertain() ? WORDED : 0;
        List<NumberWord> open = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            bind(parts.get(i));
        }
        for (int i = 0; i + 1 < parts.size(); i++) {
            bindAcross(parts.get(i), parts.get(i + 1));
        }
        text.tokens().stream()
                .filter(NumberWord.class::isInstance)
                .map(NumberWord.class::cast)
                .filter(number -> !isPlaced(number))
                .forEach(open::add);
        gapInSeconds(open);
        open.forEach(this::bare);
        road.settle().ifPresent(problems::add);
        names();
        grade();
    }

    /** Tells whether this very number has its place; the same value may be written twice. */
    @SuppressWarnings("ReferenceEquality")
    private boolean isPlaced(NumberWord number) {
        return values.values().stream().anyMatch(each -> each == number);
    }

    private static List<List<Token>> parts(List<Token> tokens) {
        List<List<Token>> parts = new ArrayList<>();
        parts.add(new ArrayList<>());
        for (Token token : tokens) {
            if (token instanceof End) {
                parts.add(new ArrayList<>());
            } else {
                parts.get(parts.size() - 1).add(token);
            }
        }
        return parts;
    }

    private void note(Token token) {
        if (token instanceof End) {
            road.end();
        } else if (token instanceof Respelled respelled) {
            notes.add(respelled.note());
        } else if (token instanceof Unknown unknown) {
            problems.add("\"" + unknown.text() + "\" is not understood");
        } else if (token instanceof NumberWord number && !number.note().isEmpty()) {
            notes.add(number.note());
        } else if (token instanceof Word word) {
            Vocabulary.Phrase phrase = word.phrase();
            phrase.meanings().forEach(meaning -> said.add(meaning.sort()));
            road.add(phrase);
            notes.addAll(phrase.values(Sort.NOTE));
            problems.addAll(phrase.values(Sort.ELSEWHERE));
            hits |= phrase.values(Sort.ASK).contains(QuestionKind.FOLLOW.name())
                    && word.text().toLowerCase(Locale.ROOT).contains("hit");
            ways.addAll(phrase.values(Sort.WAY));
            named().ifPresent(sort -> names.addAll(phrase.values(sort)));
            if (phrase.values(Sort.ASK).contains(kind.name())) {
                // what may be the word beside a number asks less clearly
                asked = Math.max(asked, phrase.is(Sort.SLOT) ? ASKED : ASKED + 2 * phrase.words());
            }
        }
    }

    private Optional<Sort> named() {
        return switch (kind.names()) {
            case RULE -> Optional.of(Sort.RULE);
            case STUDY -> Optional.of(Sort.STUDY);
            case BULB -> Optional.of(Sort.BULB);
            case ROAD, STILL, NONE -> Optional.empty();
        };
    }

    private List<Slot> slots(Token token) {
        if (!(token instanceof Word word)) {
            return List.of();
        }
        List<String> keywords = word.phrase().values(Sort.SLOT);
        return kind.slots().stream()
                .filter(slot -> keywords.contains(slot.word()))
                .toList();
    }

    /** Binds numbers to the words beside them within one part. */
    private void bind(List<Token> part) {
        List<Token> items = part.stream()
                .filter(token -> token instanceof NumberWord || !slots(token).isEmpty())
                .toList();
        boolean behind = !items.isEmpty()
                && items.get(0) instanceof NumberWord
                && !(items.get(items.size() - 1) instanceof NumberWord);
        for (int i = 0; i < items.size(); i++) {
            List<Slot> slots = slots(items.get(i));
            if (!slots.isEmpty()) {
                @Nullable Token before = i > 0 ? items.get(i - 1) : null;
                @Nullable Token after = i + 1 < items.size() ? items.get(i + 1) : null;
                if (!bound(slots, behind ? before : after)) {
                    bound(slots, behind ? after : before);
                }
            }
        }
    }

    /** Binds the first number of a part to the last word of the part before that has no number of its own. */
    private void bindAcross(List<Token> part, List<Token> next) {
        List<Token> words =
                part.stream().filter(token -> !slots(token).isEmpty()).toList();
        boolean numbers = part.stream().anyMatch(NumberWord.class::isInstance);
        if (!numbers
                && !words.isEmpty()
                && next.stream().noneMatch(token -> !slots(token).isEmpty())) {
            next.stream()
                    .filter(NumberWord.class::isInstance)
                    .findFirst()
                    .ifPresent(number -> bound(slots(words.get(words.size() - 1)), number));
        }
    }

    private boolean bound(List<Slot> slots, @Nullable Token token) {
        if (!(token instanceof NumberWord number) || isPlaced(number)) {
            return false;
        }
        for (Slot slot : slots) {
            if (!values.containsKey(slot) && fits(slot, number)) {
                put(slot, number);
                return true;
            }
        }
        return false;
    }

    private static boolean fits(Slot slot, NumberWord number) {
        return slot.measure().fits(text(slot, number))
                && (!number.isOrdinal() || slot.equals(Slot.PERCENTILE) || slot.equals(Slot.VEHICLES));
    }

    private static String text(Slot slot, NumberWord number) {
        return slot.equals(Slot.PERCENTILE) && number.isPlain() ? number.value() + " %" : number.value();
    }

    private void put(Slot slot, NumberWord number) {
        values.put(slot, number);
        texts.put(slot, text(slot, number));
        if (number.spread().isEmpty() == kind.isUncertain() && !slot.equals(Slot.GRADE)) {
            if (!kind.isUncertain()) {
                problems.add("\"" + number.text() + "\": only uncertainty takes a number with ±");
            }
        } else if (kind.isUncertain() && !slot.measure().fits(number.spread())) {
            problems.add("\"" + number.text() + "\": the uncertainty needs the unit of the number");
        }
    }

    /** What drivers call two seconds behind a car: the time gap, unless a gap or the question says otherwise. */
    private void gapInSeconds(List<NumberWord> open) {
        boolean gap = values.containsKey(Slot.GAP)
                || values.containsKey(Slot.TIME_GAP)
                || open.stream().anyMatch(number -> fits(Slot.GAP, number));
        List<NumberWord> times =
                open.stream().filter(number -> fits(Slot.TIME_GAP, number)).toList();
        if (kind != QuestionKind.FOLLOW || gap || times.isEmpty()) {
            return;
        }
        if (times.size() > 1 || values.containsKey(Slot.REACTION)) {
            if (times.size() > 1) {
                problems.add("\"" + times.get(0).text() + "\" and \""
                        + times.get(1).text()
                        + "\": which is the gap and which the reaction? write gap "
                        + times.get(0).value() + ", reaction " + times.get(1).value());
            }
        }
        NumberWord time = times.get(0);
        open.remove(time);
        put(Slot.TIME_GAP, time);
        notes.add(time.text() + " is read as the time gap, as drivers speak of it: write reaction " + time.value()
                + " if the driver's reaction is meant");
    }

    /** Puts a number without a word where the first free place takes its unit. */
    private void bare(NumberWord number) {
        @Nullable Slot taken = null;
        for (Slot slot : kind.slots()) {
            // what is asked decides whether a bare number is a percentile
            if (slot.bare()
                    && fits(slot, number)
                    && !(number.isPlain() && slot.equals(Slot.PERCENTILE) && asked == 0)) {
                if (!values.containsKey(slot)) {
                    put(slot, number);
                    return;
                }
                taken = taken == null ? slot : taken;
            }
        }
        if (taken != null) {
            secondSpeed = taken.equals(Slot.SPEED) ? number.value() : secondSpeed;
            problems.add("\"" + number.text() + "\": a " + taken.name() + " stands there already, " + texts.get(taken)
                    + "; give one, or say which is which");
        } else if (Units.MASS.find(QuestionText.unit(number.value())).isPresent()) {
            notes.add("the mass of " + number.value()
                    + " does not enter: friction is a share of the weight, whatever it is");
        } else if (number.isOrdinal() && kind.slots().contains(Slot.REACTION)) {
            problems.add("\"" + number.text() + "\": ask percentile " + number.value()
                    + " for the time of that driver, then give it as the reaction");
        } else if (number.isPlain() && isSpeed(number)) {
            withoutUnit = number.value();
            problems.add("\"" + number.text() + "\" has no unit: km/h or mph?");
        } else if (number.isPlain() && isFriction(number)) {
            put(Slot.FRICTION, number);
            notes.add(number.value() + " is read as the friction coefficient");
        } else {
            problems.add(
                    number.isPlain()
                            ? "\"" + number.text() + "\": its unit is missing"
                            : "\"" + number.text() + "\" is no part of a question on the " + kind.answers());
        }
    }

    private boolean isSpeed(NumberWord number) {
        return kind.slots().contains(Slot.SPEED)
                && !values.containsKey(Slot.SPEED)
                && withoutUnit.isEmpty()
                && Double.parseDouble(number.value()) >= 5;
    }

    private boolean isFriction(NumberWord number) {
        double value = Double.parseDouble(number.value());
        return kind.slots().contains(Slot.FRICTION)
                && !values.containsKey(Slot.FRICTION)
                && number.value().contains(".")
                && value > 0
                && value <= 1.5;
    }

    private void names() {
        if (said.contains(Sort.RULE) && kind == QuestionKind.RULE) {
            asked += NAMED_RULE;
        }
        boolean foreign = (said.contains(Sort.RULE) && kind != QuestionKind.RULE)
                || (said.contains(Sort.STUDY) && kind.names() != Names.STUDY)
                || (said.contains(Sort.BULB) && kind.names() != Names.BULB);
        if (foreign) {
            problems.add("a question on the " + kind.answers() + " takes no name of a rule, study or bulb");
        }
        if (names.size() > 1) {
            problems.add("two names stand there, " + String.join(" and ", names) + "; give one");
        }
        if (road.words().isPresent() && kind.names() != Names.ROAD) {
            asked -= Math.min(asked, 1);
            notes.add("the road does not enter this answer");
        }
        if (said.contains(Sort.STILL) && hits && kind == QuestionKind.STOP) {
            // what stands is hit or not by the stopping distance alone
            asked = Math.max(asked, ASKED + 2);
        }
        if (said.contains(Sort.STILL) && kind.slots().contains(Slot.LEADER_DECELERATION)) {
            problems.add("what stands does not brake: ask stop or impact speed in place of follow");
        }
        if (said.contains(Sort.STILL)
                && kind == QuestionKind.COLLISION
                && !values.containsKey(Slot.LEADER_SPEED)
                && !values.containsKey(Slot.CLOSING)) {
            texts.put(Slot.LEADER_SPEED, "0 m/s");
        }
    }

    private void grade() {
        if (!kind.slots().contains(Slot.GRADE)) {
            return;
        }
        Set<String> directions = new LinkedHashSet<>(ways);
        if (directions.size() > 1) {
            problems.add("the road goes " + String.join(" and ", directions) + "; give one");
            return;
        }
        String way = directions.stream().findFirst().orElse("");
        @Nullable String number = texts.get(Slot.GRADE);
        if (number == null && way.equals("level")) {
            texts.put(Slot.GRADE, "0 % up");
        } else if (number == null && !way.isEmpty()) {
            problems.add("how steep is the hill? write it like 3 % " + way);
        } else if (number != null && way.equals("level")) {
            problems.add("a level road has no grade of " + number);
        } else if (number != null) {
            texts.put(Slot.GRADE, (number + " " + way).strip());
        }
    }

    QuestionKind kind() {
        return kind;
    }

    /** The values by place, each as text with its unit. */
    Map<Slot, String> texts() {
        return texts;
    }

    /** The uncertainty of a place, as text with its unit. */
    Optional<String> spread(Slot slot) {
        return Optional.ofNullable(values.get(slot)).map(NumberWord::spread).filter(text -> !text.isEmpty());
    }

    Optional<String> road() {
        return kind.names() == Names.ROAD ? road.words() : Optional.empty();
    }

    Optional<String> name() {
        return names.stream().findFirst();
    }

    /** The number that stands for a speed and lacks its unit, or empty. */
    String withoutUnit() {
        return withoutUnit;
    }

    /** A second speed in the place of one, with its unit, or empty. */
    String secondSpeed() {
        return secondSpeed;
    }

    boolean says(Sort sort) {
        return said.contains(sort);
    }

    List<String> notes() {
        return Stream.concat(notes.stream(), road().stream().flatMap(each -> road.notes().stream()))
                .distinct()
                .toList();
    }

    List<String> problems() {
        return problems;
    }

    boolean isAsked() {
        return asked > 0;
    }

    /** How well the kind suits the question: what is asked, what fits, what does not. */
    int score() {
        return (asked > 0 ? asked : -UNASKED)
                + values.size()
                + names.size()
                + (road().isPresent() ? 2 : 0)
                - PROBLEM * problems.size();
    }

    /** The same question in words that are sure to be understood. */
    String canonical() {
        return canonical(kind, texts, this::spread, road(), name())
                + (kind.names() == Names.STUDY && says(Sort.ALL) ? ", of all drivers" : "");
    }

    static String canonical(
            QuestionKind kind,
            Map<Slot, String> texts,
            Function<Slot, Optional<String>> spread,
            Optional<String> road,
            Optional<String> name) {
        List<String> parts = new ArrayList<>();
        name.map(each -> switch (kind.names()) {
                    case STUDY -> "study " + each;
                    case BULB -> "bulb " + each;
                    default -> each;
                })
                .ifPresent(parts::add);
        texts.forEach((slot, text) -> parts.add(
                text.equals("0 % up")
                        ? "level"
                        : slot.written(text)
                                + spread.apply(slot).map(each -> " ± " + each).orElse("")));
        road.ifPresent(parts::add);
        return kind.word() + " " + String.join(", ", parts);
    }
}
