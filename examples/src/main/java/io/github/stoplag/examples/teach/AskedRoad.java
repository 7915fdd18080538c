package io.github.stoplag.examples.teach;

import io.github.stoplag.examples.teach.Vocabulary.Sort;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The road in the words of a question, gathered from its parts: {@code wet tarmac}, {@code icy}, {@code in the rain},
 * {@code the road is concrete and dry}, or the row of a published surface.
 */
final class AskedRoad {
    private record Stated(Set<String> conditions, Set<String> materials, Set<String> rows) {
        boolean isWhole() {
            return !conditions.isEmpty() || !rows.isEmpty();
        }

        String text() {
            List<String> words = new ArrayList<>(conditions);
            words.addAll(materials);
            words.addAll(rows);
            return String.join(" ", words);
        }
    }

    private final List<Stated> parts = new ArrayList<>();
    private Stated open = empty();
    private final List<String> notes = new ArrayList<>();
    private @Nullable String words;

    private static Stated empty() {
        return new Stated(new LinkedHashSet<>(), new LinkedHashSet<>(), new LinkedHashSet<>());
    }

    void add(Vocabulary.Phrase phrase) {
        open.conditions.addAll(phrase.values(Sort.SURFACE));
        open.materials.addAll(phrase.values(Sort.MATERIAL));
        open.rows.addAll(phrase.values(Sort.ROW));
    }

    /** Closes a part: what one part says belongs together. */
    void end() {
        if (!open.text().isEmpty()) {
            parts.add(open);
        }
        open = empty();
    }

    /**
     * Puts the parts together.
     *
     * @return what is wrong with them, if anything
     */
    Optional<String> settle() {
        end();
        List<Stated> whole = parts.stream().filter(Stated::isWhole).toList();
        if (whole.size() > 1) {
            return Optional.of("two surfaces stand there, " + whole.get(0).text() + " and "
                    + whole.get(1).text() + "; give one");
        }
        Stated all = empty();
        parts.forEach(part -> {
            all.conditions.addAll(part.conditions);
            all.materials.addAll(part.materials);
            all.rows.addAll(part.rows);
        });
        if (!all.rows.isEmpty()) {
            words = all.rows.iterator().next();
            return all.rows.size() == 1 && all.conditions.isEmpty()
                    ? Optional.empty()
                    : Optional.of("two surfaces stand there: " + all.text() + "; give one");
        }
        all.materials.remove("road");
        if (all.materials.size() > 1) {
            return Optional.of("two surfaces stand there: " + all.text() + "; give one");
        }
        return name(all.conditions, all.materials.stream().findFirst().orElse(""));
    }

    private Optional<String> name(Set<String> conditions, String material) {
        if (conditions.equals(Set.of("wet", "ice"))) {
            words = "ice-wet-1990";
        } else if (conditions.size() > 1) {
            return Optional.of("a road is one of " + String.join(" and ", conditions) + "; give one");
        } else if (conditions.contains("ice") || conditions.contains("snow")) {
            words = conditions.iterator().next();
        } else if (material.equals("gravel")) {
            words = "gravel";
            noteIf(!conditions.isEmpty(), "the published figure for gravel tells dry and wet not apart");
        } else if (material.equals("grass")) {
            words = "wet grass";
            noteIf(!conditions.contains("wet"), "there is no published figure for dry grass here: wet grass is taken");
        } else if (!material.isEmpty() || !conditions.isEmpty()) {
            String condition = conditions.stream().findFirst().orElse("dry");
            words = condition + " " + (material.isEmpty() ? "asphalt" : material);
            noteIf(
                    conditions.isEmpty(),
                    "the " + material + " is taken to be dry: write wet " + material
                            + " if it is wet, which takes longer");
            noteIf(material.isEmpty(), "\"" + condition + "\" is read as " + words + ": concrete has its own figure");
        }
        return Optional.empty();
    }

    private void noteIf(boolean so, String note) {
        if (so) {
            notes.add(note);
        }
    }

    /** The short words of the road, or the row, if there is one. */
    Optional<String> words() {
        return Optional.ofNullable(words);
    }

    List<String> notes() {
        return notes;
    }
}
