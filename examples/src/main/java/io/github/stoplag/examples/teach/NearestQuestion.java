package io.github.stoplag.examples.teach;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.teach.QuestionKind.Names;
import io.github.stoplag.worked.UnitSystem;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** The nearest question that works, for a question that does not: as a line to paste. */
final class NearestQuestion {
    private static final Set<Slot> BRAKING = Set.of(Slot.DECELERATION, Slot.FRICTION, Slot.GRADE);

    private NearestQuestion() {}

    /** The refusal of a question with the nearest one that works behind the reason. */
    static InputException refusal(String asked, InputException reason) {
        String message = String.valueOf(reason.getMessage());
        if (message.contains("explain \"")) {
            return reason;
        }
        List<String> both = withUnits(asked);
        return both.size() == 2
                ? new InputException(
                        message + (message.endsWith("?") ? "" : ";") + " nearest that works: explain \"" + both.get(0)
                                + "\", or explain \"" + both.get(1) + "\"",
                        reason)
                : new InputException(message + "; nearest that works: explain \"" + to(asked) + "\"", reason);
    }

    /** A speed that lacks its unit, in both that it may mean; two speeds, one after the other. */
    private static List<String> withUnits(String asked) {
        try {
            Placed placed = Question.place(QuestionText.of(asked));
            if (placed.problems().size() > 1 || !placed.isAsked()) {
                return List.of();
            }
            return speeds(placed)
                    .map(speed -> {
                        Map<Slot, String> texts = new LinkedHashMap<>();
                        texts.put(Slot.SPEED, speed);
                        placed.texts().forEach(texts::putIfAbsent);
                        return Placed.canonical(placed.kind(), texts, placed::spread, placed.road(), placed.name());
                    })
                    .filter(NearestQuestion::works)
                    .toList();
        } catch (InputException e) {
            return List.of();
        }
    }

    private static Stream<String> speeds(Placed placed) {
        String number = placed.withoutUnit();
        Optional<String> other = Optional.ofNullable(placed.texts().get(Slot.SPEED));
        if (!placed.secondSpeed().isEmpty()) {
            return Stream.concat(other.stream(), Stream.of(placed.secondSpeed()));
        }
        return number.isEmpty()
                ? Stream.of()
                : other.map(speed -> Stream.of(number + " " + QuestionText.unit(speed), speed))
                        .orElseGet(() -> Stream.of(number + " km/h", number + " mph"));
    }

    private static String to(String asked) {
        for (String each : candidates(asked)) {
            if (works(each)) {
                return each;
            }
        }
        return QuestionKind.STOP.example();
    }

    static boolean works(String question) {
        try {
            Question.read(question).work(UnitSystem.METRIC);
            return true;
        } catch (InputException e) {
            return false;
        }
    }

    private static List<String> candidates(String asked) {
        QuestionText text;
        try {
            text = QuestionText.of(asked);
        } catch (InputException e) {
            String mended = asked.replaceAll("([0-9]),([0-9]{3})(?![0-9])", "$1$2")
                    .replaceAll("([0-9]),([0-9])", "$1.$2")
                    .replaceAll("([0-9.]+) ?(?:-|–|to) ?[0-9.]+(?= ?[\\p{L}%°])", "$1")
                    .replaceAll("([0-9]+)/[0-9]+( ?[wW])", "$1$2")
                    .replaceAll("[,;]\\s*([,;]|$)", "$1");
            return List.of(mended.length() > 300 ? "" : mended);
        }
        Placed placed = Question.place(text);
        QuestionKind kind = placed.kind();
        Question example = Question.read(kind.example());
        List<String> all = new ArrayList<>();
        all.add(placed.canonical());
        all.add(filled(placed, placed.texts(), example));
        for (Slot left : placed.texts().keySet()) {
            Map<Slot, String> fewer = new LinkedHashMap<>(placed.texts());
            fewer.remove(left);
            all.add(filled(placed, fewer, example));
        }
        Map<Slot, String> alone = new LinkedHashMap<>();
        placed.texts().forEach((slot, value) -> {
            if (slot.equals(Slot.SPEED)) {
                alone.put(slot, value);
            }
        });
        all.add(filled(placed, alone, example));
        all.add(kind.example());
        return all;
    }

    /** The parts understood, and those of the example in the places that are still empty. */
    private static String filled(Placed placed, Map<Slot, String> texts, Question example) {
        QuestionKind kind = placed.kind();
        Placed model = example.placed();
        Map<Slot, String> all = new LinkedHashMap<>(texts);
        boolean braking = placed.road().isPresent()
                || texts.containsKey(Slot.DECELERATION)
                || texts.containsKey(Slot.FRICTION)
                || (texts.containsKey(Slot.LEADER_DECELERATION) && texts.containsKey(Slot.FOLLOWER_DECELERATION));
        model.texts().forEach((slot, value) -> {
            boolean grade = slot.equals(Slot.GRADE) || slot.equals(Slot.LAMP);
            boolean filledElsewhere =
                    isFilledElsewhere(slot, texts, placed.name().isPresent());
            if (!grade && !filledElsewhere && !(braking && BRAKING.contains(slot))) {
                all.putIfAbsent(slot, value);
            }
        });
        Optional<String> road = placed.road().isPresent()
                ? placed.road()
                : braking || kind.names() != Names.ROAD ? Optional.empty() : Optional.of("wet asphalt");
        if (road.isPresent()) {
            all.remove(Slot.DECELERATION);
            all.remove(Slot.FRICTION);
        }
        Optional<String> name = placed.name().isPresent() ? placed.name() : model.name();
        return Placed.canonical(
                kind,
                all,
                slot -> placed.spread(slot)
                        .or(() -> Objects.equals(all.get(slot), model.texts().get(slot))
                                ? model.spread(slot)
                                : Optional.empty()),
                road,
                name);
    }

    private static boolean isFilledElsewhere(Slot slot, Map<Slot, String> texts, boolean named) {
        boolean gap = texts.containsKey(Slot.GAP) || texts.containsKey(Slot.TIME_GAP);
        boolean speed = texts.containsKey(Slot.CLOSING) || texts.containsKey(Slot.FOLLOWER_SPEED);
        return ((slot.equals(Slot.GAP) || slot.equals(Slot.TIME_GAP)) && gap)
                || (slot.equals(Slot.SPEED) && speed)
                || (slot.equals(Slot.LEADER_SPEED) && texts.containsKey(Slot.CLOSING))
                || (named && (slot.equals(Slot.BULB) || slot.equals(Slot.RATED)))
                || (slot.equals(Slot.BRAKING_DISTANCE) && texts.containsKey(Slot.BRAKING_TIME));
    }
}
