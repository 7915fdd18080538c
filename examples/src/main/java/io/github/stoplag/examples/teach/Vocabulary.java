package io.github.stoplag.examples.teach;

import io.github.stoplag.braking.PublishedRule;
import io.github.stoplag.driver.ReactionStudy;
import io.github.stoplag.examples.file.Resource;
import io.github.stoplag.lamp.BulbCatalogue;
import io.github.stoplag.road.Surface;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The words of questions and what they mean: those of {@code vocabulary.txt} beside this class, and the names of
 * published rules, studies, surfaces and bulbs.
 *
 * <p>A phrase can have several meanings; the kind of question decides which of them counts.
 */
final class Vocabulary {
    /** What a phrase is good for. */
    enum Sort {
        ASK,
        SLOT,
        SURFACE,
        MATERIAL,
        ROW,
        WAY,
        RULE,
        STUDY,
        BULB,
        ALL,
        STILL,
        ELSEWHERE,
        BRITISH,
        NOTE,
        JOINT,
        IGNORE
    }

    /**
     * One meaning of a phrase.
     *
     * @param sort what it is good for
     * @param value which one: the kind, the word of the slot, the name, the note
     */
    record Meaning(Sort sort, String value) {}

    /**
     * A phrase found in a question.
     *
     * @param words how many words it takes
     * @param meanings its meanings, at least one
     */
    record Phrase(int words, List<Meaning> meanings) {
        boolean is(Sort sort) {
            return meanings.stream().anyMatch(each -> each.sort == sort);
        }

        List<String> values(Sort sort) {
            return meanings.stream()
                    .filter(each -> each.sort == sort)
                    .map(Meaning::value)
                    .toList();
        }
    }

    private static final int LONGEST = 10;
    private static final Map<String, List<Meaning>> PHRASES = phrases();
    private static final List<String> BRITISH = PHRASES.entrySet().stream()
            .filter(each -> each.getValue().contains(new Meaning(Sort.BRITISH, "")))
            .map(Map.Entry::getKey)
            .toList();

    private static final int SPELLED = 6;
    private static final Set<String> WORDS = PHRASES.keySet().stream()
            .flatMap(phrase -> Arrays.stream(phrase.split(" ")))
            .filter(word -> word.length() >= SPELLED - 1)
            .collect(Collectors.toUnmodifiableSet());

    private Vocabulary() {}

    private static Map<String, List<Meaning>> phrases() {
        Map<String, List<Meaning>> all = new HashMap<>();
        Resource.text(Vocabulary.class, "/io/github/stoplag/examples/teach/vocabulary.txt")
                .lines()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .forEach(line -> add(all, line));
        PublishedRule.published().forEach(rule -> put(all, rule.key(), Sort.RULE, rule.key()));
        ReactionStudy.published().forEach(study -> put(all, study.id(), Sort.STUDY, study.id()));
        Surface.published().forEach(surface -> put(all, surface.id(), Sort.ROW, surface.id()));
        BulbCatalogue.published().forEach(bulb -> {
            String name = bulb.category();
            put(all, name + " bulb", Sort.BULB, name);
            put(all, "bulb " + name, Sort.BULB, name);
            // a bare number of the trade is a number first
            if (!name.chars().allMatch(Character::isDigit)) {
                put(all, name, Sort.BULB, name);
            }
        });
        return all;
    }

    private static void add(Map<String, List<Meaning>> all, String line) {
        String[] sides = line.split(" = ", 2);
        String[] head = sides[0].split(" ", 2);
        Sort sort = Sort.valueOf(head[0].toUpperCase(Locale.ROOT));
        for (String phrase : sides[1].split("\\|", -1)) {
            put(all, phrase, sort, head.length > 1 ? head[1] : "");
        }
    }

    private static void put(Map<String, List<Meaning>> all, String phrase, Sort sort, String value) {
        String plain = QuestionText.split(phrase.strip()).toLowerCase(Locale.ROOT);
        List<Meaning> meanings = all.computeIfAbsent(plain, each -> new ArrayList<>());
        Meaning meaning = new Meaning(sort, value);
        if (!meanings.contains(meaning)) {
            meanings.add(meaning);
        }
    }

    /** Whether a text has words that are used in the United Kingdom, or asks for metres. */
    static boolean isBritish(String text) {
        String words =
                " " + QuestionText.split(text).toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", " ") + " ";
        return BRITISH.stream().anyMatch(each -> words.contains(" " + each + " "));
    }

    /**
     * The one word of the vocabulary that a misspelt one is nearest to: one letter left out, put in, changed or
     * swapped; empty if there is none or more than one.
     */
    static String respelled(String word) {
        String plain = word.toLowerCase(Locale.ROOT);
        if (plain.length() < SPELLED || !plain.chars().allMatch(Character::isLetter)) {
            return "";
        }
        List<String> near = WORDS.stream()
                .filter(each -> each.charAt(0) == plain.charAt(0) && isNear(plain, each))
                .toList();
        return near.size() == 1 ? near.get(0) : "";
    }

    private static boolean isNear(String a, String b) {
        if (a.length() == b.length()) {
            int i = 0;
            while (i < a.length() && a.charAt(i) == b.charAt(i)) {
                i++;
            }
            String rest = a.substring(Math.min(a.length(), i + 1));
            boolean changed = i < b.length() && rest.equals(b.substring(i + 1));
            boolean swapped = i + 1 < a.length()
                    && a.charAt(i) == b.charAt(i + 1)
                    && a.charAt(i + 1) == b.charAt(i)
                    && a.substring(i + 2).equals(b.substring(i + 2));
            return changed || swapped;
        }
        String longer = a.length() > b.length() ? a : b;
        String shorter = a.length() > b.length() ? b : a;
        if (longer.length() - shorter.length() != 1) {
            return false;
        }
        int i = 0;
        while (i < shorter.length() && longer.charAt(i) == shorter.charAt(i)) {
            i++;
        }
        return longer.substring(i + 1).equals(shorter.substring(i));
    }

    /** Finds the longest phrase that begins with a word of a question, and what the shorter ones within it ask. */
    static Optional<Phrase> at(List<String> words, int index) {
        int taken = 0;
        List<Meaning> found = new ArrayList<>();
        for (int count = Math.min(LONGEST, words.size() - index); count > 0; count--) {
            String text = String.join(" ", words.subList(index, index + count)).toLowerCase(Locale.ROOT);
            boolean first = taken == 0;
            // "braking distance of" stands beside a number and asks for a braking distance; "brake light" asks nothing
            boolean slot = found.stream().anyMatch(each -> each.sort == Sort.SLOT);
            for (Meaning each : PHRASES.getOrDefault(text, List.of())) {
                taken = Math.max(taken, count);
                if ((first || (slot && each.sort == Sort.ASK)) && !found.contains(each)) {
                    found.add(each);
                }
            }
        }
        return taken == 0 ? Optional.empty() : Optional.of(new Phrase(taken, found));
    }
}
