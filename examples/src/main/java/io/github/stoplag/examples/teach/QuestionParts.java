package io.github.stoplag.examples.teach;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.worked.Given;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** The parts of a question sorted into their places, and what had to be assumed for want of a part. */
final class QuestionParts {
    private final QuestionKind kind;
    private final Map<Slot, Given> values;
    private final Map<Slot, Given> spreads;
    private final @Nullable RoadWords road;
    private final @Nullable String named;
    private final boolean ofAll;
    private final List<String> assumptions = new ArrayList<>();

    QuestionParts(
            QuestionKind kind,
            Map<Slot, Given> values,
            Map<Slot, Given> spreads,
            @Nullable RoadWords road,
            @Nullable String named,
            boolean ofAll) {
        this.kind = kind;
        this.spreads = new LinkedHashMap<>(spreads);
        this.ofAll = ofAll;
        this.values = new LinkedHashMap<>(values);
        this.road = road;
        this.named = named;
    }

    Optional<Given> find(Slot slot) {
        return Optional.ofNullable(values.get(slot));
    }

    /**
     * Gives a part that the question cannot do without.
     *
     * @throws InputException if it is missing
     */
    Given need(Slot slot) {
        return find(slot).orElseThrow(() -> missing(slot.name() + " (" + slot.help() + ")"));
    }

    /** Gives a part, or a value assumed for it and said so. */
    Given orAssume(Slot slot, Given value, String because) {
        return find(slot).orElseGet(() -> {
            assume(slot.name() + " not given, assumed " + value.amount() + ": " + because);
            return new Given(value.amount(), "assumed");
        });
    }

    Optional<RoadWords> road() {
        return Optional.ofNullable(road);
    }

    /** The uncertainty of a part. */
    Optional<Given> spread(Slot slot) {
        return Optional.ofNullable(spreads.get(slot));
    }

    /** Whether a share is one of all drivers, those who never respond too. */
    boolean isOfAll() {
        return ofAll;
    }

    /** The name of a study, rule or bulb. */
    Optional<String> named() {
        return Optional.ofNullable(named);
    }

    /** Whether an answer on an assumed road is of use; a speed from marks is not. */
    boolean mayAssumeRoad() {
        return kind != QuestionKind.SKID && kind != QuestionKind.SPEED_LEFT;
    }

    /** States what was assumed before all else. */
    void assumeFirst(String text) {
        if (!assumptions.contains(text)) {
            assumptions.add(0, text);
        }
    }

    void assume(String text) {
        if (!assumptions.contains(text)) {
            assumptions.add(text);
        }
    }

    List<String> assumptions() {
        return assumptions;
    }

    InputException missing(String what) {
        return new InputException(kind.word() + " needs " + what);
    }

    boolean takes(Slot slot) {
        return kind.slots().contains(slot);
    }

    /** Refuses parts that cannot stand beside each other. */
    void onlyOne(String what, Slot... slots) {
        TreeSet<String> given = new TreeSet<>();
        for (Slot slot : slots) {
            find(slot).ifPresent(value -> given.add(slot.name() + " " + value.amount()));
        }
        road().ifPresent(each -> given.add("surface " + each.surface().id()));
        if (given.size() > 1) {
            throw new InputException(kind.word() + " takes one " + what + ", got " + String.join(" and ", given));
        }
    }
}
