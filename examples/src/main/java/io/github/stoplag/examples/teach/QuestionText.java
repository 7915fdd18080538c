package io.github.stoplag.examples.teach;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.quantity.Units;
import io.github.stoplag.worked.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The text of a question cut into numbers with units, phrases of the {@link Vocabulary}, words that mean nothing here,
 * and the places where one part ends and the next begins.
 */
final class QuestionText {
    /** One piece of a question. */
    sealed interface Token {}

    /**
     * A number, perhaps with a unit and an uncertainty.
     *
     * @param text as written, for messages
     * @param value number and unit without the uncertainty
     * @param spread the uncertainty with its unit, or empty
     * @param note what was made of it, or empty
     */
    record NumberWord(String text, String value, String spread, String note) implements Token {
        /** Whether it was said as a place in an order, as 85th. */
        boolean isOrdinal() {
            return ORDINAL.matcher(text).matches();
        }

        boolean isPlain() {
            return PLAIN.matcher(value).matches();
        }
    }

    /**
     * A phrase that means something.
     *
     * @param text as written
     * @param phrase its meanings
     */
    record Word(String text, Vocabulary.Phrase phrase) implements Token {}

    /**
     * A word that means nothing here.
     *
     * @param text as written
     */
    record Unknown(String text) implements Token {}

    /**
     * A word before this place was misspelt.
     *
     * @param note what was made of it
     */
    record Respelled(String note) implements Token {}

    /** The end of a part: a comma, or a word that joins. */
    record End() implements Token {}

    private static final Pattern PLAIN = Pattern.compile("[+-]?[0-9]*\\.?[0-9]+(?:[eE][+-]?[0-9]+)?");
    private static final Pattern SPACES = Pattern.compile("[\\s\\u00a0\\u2009\\u202f]+");
    private static final Pattern COMMA = Pattern.compile("([0-9]+),([0-9]+)");
    private static final Pattern RANGE =
            Pattern.compile("(?<![0-9a-zA-Z.])([0-9.]+) ?(?:-|–|to) ?([0-9.]+)(?= ?[\\p{L}%°])");
    private static final String SPEED = "(?:mph|km/h|kph|kmh|m/s)";
    private static final Pattern TO_REST =
            Pattern.compile("(?i)([0-9.]+ ?" + SPEED + ") ?(?:to|-|–) ?(?:0|zero)(?: ?" + SPEED + ")?(?![0-9.a-z])");
    private static final Pattern TO_REST_LATE =
            Pattern.compile("(?i)(?<![0-9.])([0-9.]+) ?(?:to|-|–) ?(?:0|zero) ?(" + SPEED + ")(?![0-9a-z])");
    private static final Pattern SPEEDING_UP =
            Pattern.compile("(?i)(?<![0-9.])(?:0|zero) ?(?:to|-|–) ?[0-9.]+ ?" + SPEED);
    private static final Pattern TO_REST_BARE =
            Pattern.compile("(?i)(?<![0-9.])([0-9.]+) ?(?:to|-|–) ?(?:0|zero)(?![0-9.])(?! ?" + SPEED + ")");
    private static final Pattern HYPHEN =
            Pattern.compile("(?<=[\\p{L}])(?<![0-9][eE])-(?=[\\p{L}0-9])|(?<=[0-9])-(?=\\p{L})");
    private static final Pattern ONE_IN = Pattern.compile("\\b1 ?(?:in|:) ?([0-9]+(?:\\.[0-9]+)?)(?=\\s|$|,|;|\\?)");
    private static final Pattern TIMES =
            Pattern.compile("\\b([2-9]) ?(?:x|×|\\*|times) ?([0-9]+(?:\\.[0-9]+)?) ?(W|w|watts?)\\b");
    private static final Pattern PLUS_MINUS = Pattern.compile(" ?(?:±|\\+/-|\\+-|plus or minus|plus/minus) ?");
    private static final Pattern ORDINAL = Pattern.compile("([0-9]{1,2}(?:\\.[0-9]+)?) ?(?:st|nd|rd|th)");
    private static final Pattern TWO_FILAMENTS = Pattern.compile("(?<![\\p{L}0-9])[0-9]+/[0-9]+ ?[wW](?:atts?)?");
    private static final Pattern BEGINS = Pattern.compile("[+-]?\\.?[0-9].*", Pattern.DOTALL);
    /** A number and what stands behind it. */
    static final Pattern GLUED = Pattern.compile("([+-]?[0-9]*\\.?[0-9]+(?:[eE][+-]?[0-9]+)?)(.*)");

    private static final String FRACTIONS = "½¼¾⅓⅔⅛⅜⅝⅞";
    private static final String[] PARTS = {"0.5", "0.25", "0.75", "0.3333", "0.6667", "0.125", "0.375", "0.625", "0.875"
    };
    private static final Pattern FRACTION = Pattern.compile("([0-9]*) ?([" + FRACTIONS + "])");
    private static final Pattern SMALL =
            Pattern.compile("(?<![0-9/.,])(?:([0-9]+) )?([1-7])/([2-8])(?= ?\\p{L})(?! ?[wW])");
    private static final Pattern SYMBOL = Pattern.compile("(?<![\\p{L}])([vatsd])(?:_?[0r])? ?= ?(?=[0-9.])");
    private static final Pattern BARE_SPEED = Pattern.compile("(?<=[0-9]) v (?=[0-9])|^v (?=[0-9])");
    private static final Map<String, String> SYMBOLS =
            Map.of("v", "speed ", "a", "deceleration ", "t", "reaction ", "s", "distance ", "d", "distance ");
    private static final Set<String> COUNTED = Set.of("car", "vehicle", "driver", "lorry", "truck", "bus", "one");
    private static final String PRODUCT = "⊗";
    private static final int LONGEST = 300;
    private static final int UNIT_WORDS = 6;
    private static final Map<String, String> SPOKEN = spoken();

    private final String plain;
    private final List<Token> tokens = new ArrayList<>();

    private QuestionText(String plain) {
        this.plain = plain;
    }

    private static Map<String, String> spoken() {
        Map<String, String> words = new LinkedHashMap<>();
        String seconds = "(?= seconds?\\b)";
        words.put("(?i)\\b(\\d+|one|two|three|a) (?:and a )?half seconds?\\b", "$1.5 s");
        words.put("(?i)\\ba second and a half\\b", "1.5 s");
        words.put("(?i)\\bhalf a second\\b", "0.5 s");
        words.put("(?i)\\b(?:a )?quarter of a second\\b", "0.25 s");
        words.put("(?i)\\b(?:a|one|1) tenth of a second\\b", "0.1 s");
        words.put("(?i)\\b(?:two|2) tenths of a second\\b", "0.2 s");
        words.put("(?i)\\b(?:three|3) tenths of a second\\b", "0.3 s");
        words.put("(?i)\\bin a second\\b", "in 1 s");
        words.put("(?i)\\bmedian\\b", "50th percentile");
        words.put("(?i)(?<=[0-9]) ?mhp\\b", " mph");
        words.put("(?i)(?<=mph|km/h|kph|kmh) behind (?=[0-9])", " leader ");
        words.put("(?i)\\bone\\.5 s", "1.5 s");
        words.put("(?i)\\btwo\\.5 s", "2.5 s");
        words.put("(?i)\\bthree\\.5 s", "3.5 s");
        words.put("(?i)\\bminus (?=[0-9])", "-");
        words.put("(?i)\\bg's\\b", "g");
        words.put("(?i)(?<=[0-9]) ?k/h\\b", " km/h");
        words.put("(?i)(?<=[0-9]) ?km/u\\b", " km/h");
        words.put("(?i)\\bper cent\\b", "percent");
        words.put("(?i)\\bthe wet\\b", "wet");
        String[] numbers = {
            "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"
        };
        String units =
                "(?= ?-?(?:second|metre|meter|feet|foot|car|cars|vehicle|vehicles|lorries|trucks|bulbs|percent|g\\b))";
        for (int i = 0; i < numbers.length; i++) {
            words.put("(?i)\\b" + numbers[i] + units, String.valueOf(i + 1));
        }
        String[] tens = {"twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"};
        for (int i = 0; i < tens.length; i++) {
            words.put("(?i)\\b" + tens[i] + "(?= ?-?(?:mile|km|kilomet|mph|metre|meter|feet|percent))", (i + 2) + "0");
        }
        words.put("(?i)\\b(?:a|one) hundred(?= (?:mile|km|kilomet|mph|metre|meter|feet))", "100");
        words.put("(?i)\\ba" + seconds, "1");
        words.put("(?i)(?<=[0-9]) ?(?:s|secs?|seconds?) rule\\b", " s time gap rule");
        return words;
    }

    /** Cuts a text. */
    static QuestionText of(String text) {
        String plain = SPACES.matcher(text).replaceAll(" ").strip().replace('−', '-');
        if (plain.length() > LONGEST) {
            throw new InputException("a question must have at most " + LONGEST + " characters, got " + plain.length());
        }
        QuestionText cut = new QuestionText(plain);
        String whole =
                TO_REST.matcher(TO_REST_LATE.matcher(plain).replaceAll("$1 $2")).replaceAll("$1");
        whole = TO_REST_BARE.matcher(whole).replaceAll("from $1");
        Matcher comma = COMMA.matcher(whole);
        Matcher range = RANGE.matcher(whole);
        Matcher filaments = TWO_FILAMENTS.matcher(whole);
        if (comma.find()) {
            throw new InputException("if " + comma.group() + " is one number, write a decimal point, " + comma.group(1)
                    + "." + comma.group(2) + ", and no mark between thousands; if it is two, a space behind the comma");
        }
        if (filaments.find()) {
            throw new InputException("\"" + filaments.group()
                    + "\" is a bulb with two filaments: give the watts of the one that is meant, the first for stop");
        }
        if (SPEEDING_UP.matcher(whole).find()) {
            throw new InputException("speeding up from rest is not worked here, only braking");
        }
        if (range.find() && !whole.substring(range.start()).matches("1 ?to ?[0-9.]+ ?(?:up|down).*")) {
            throw new InputException("\"" + range.group() + "\" is a range: ask with one number, then with the other");
        }
        cut.cut(fractions(whole));
        return cut;
    }

    /** Fractions as decimals: 1½ s, 8 6/7 m. */
    private static String fractions(String text) {
        String decimal = FRACTION.matcher(text)
                .replaceAll(match -> sum(match.group(1), new BigDecimal(PARTS[FRACTIONS.indexOf(match.group(2))])));
        return SMALL.matcher(decimal)
                .replaceAll(match -> sum(
                        match.group(1),
                        new BigDecimal(match.group(2)).divide(new BigDecimal(match.group(3)), MathContext.DECIMAL32)));
    }

    private static String sum(@Nullable String whole, BigDecimal part) {
        BigDecimal all = whole == null || whole.isEmpty() ? part : part.add(new BigDecimal(whole));
        return all.toPlainString();
    }

    /** The words of a phrase without hyphens between letters. */
    static String split(String text) {
        return HYPHEN.matcher(text).replaceAll(" ");
    }

    /** The text as asked, in plain spaces. */
    String plain() {
        return plain;
    }

    List<Token> tokens() {
        return tokens;
    }

    private void cut(String whole) {
        String worded = SYMBOL.matcher(whole).replaceAll(match -> String.valueOf(SYMBOLS.get(match.group(1))));
        worded = BARE_SPEED.matcher(worded).replaceAll(", speed ");
        String text =
                split(worded.replace('’', '\'').replaceAll("[?!()\"“”=]", " ").replace("~", ""));
        for (Map.Entry<String, String> each : SPOKEN.entrySet()) {
            text = text.replaceAll(each.getKey(), each.getValue());
        }
        text = ONE_IN.matcher(text)
                .replaceAll(match -> new BigDecimal(100)
                                .divide(new BigDecimal(match.group(1)), MathContext.DECIMAL32)
                                .toPlainString()
                        + " %");
        text = TIMES.matcher(text).replaceAll(match -> PRODUCT + match.group(1) + PRODUCT + match.group(2) + " W");
        text = PLUS_MINUS.matcher(text).replaceAll(" ± ");
        boolean comma = false;
        for (String part : text.split("[,;:](?=\\s|$)|,", -1)) {
            if (comma && part.isBlank()) {
                throw new InputException(
                        "an empty part stands in \"" + plain + "\": two separators, or one at the end");
            }
            part(new ArrayList<>(
                    List.of(SPACES.matcher(part).replaceAll(" ").strip().split(" "))));
            comma = true;
        }
    }

    private void part(List<String> words) {
        tokens.add(new End());
        words.removeIf(String::isEmpty);
        int i = 0;
        while (i < words.size()) {
            i += next(words, i);
        }
    }

    /** Reads one token and tells how many words it took. */
    private int next(List<String> words, int i) {
        String word = words.get(i);
        if (word.startsWith(PRODUCT)) {
            String[] sides = word.substring(1).split(PRODUCT, 2);
            BigDecimal sum = new BigDecimal(sides[0]).multiply(new BigDecimal(sides[1]));
            String written = sides[0] + " × " + sides[1] + " W";
            tokens.add(
                    new NumberWord(written, sum.toPlainString() + " W", "", written + " are " + sum + " W together"));
            return 2;
        }
        if (BEGINS.matcher(word).matches()) {
            Optional<Vocabulary.Phrase> named = Vocabulary.at(words, i).filter(found -> found.is(Vocabulary.Sort.BULB));
            return named.isPresent() ? phrase(words, i, named.get()) : number(words, i);
        }
        List<String> undotted = new ArrayList<>(words);
        undotted.replaceAll(
                each -> each.length() > 2 && each.endsWith(".") ? each.substring(0, each.length() - 1) : each);
        Optional<Vocabulary.Phrase> found = Vocabulary.at(undotted, i);
        if (found.isPresent()) {
            return phrase(words, i, found.get());
        }
        if (!word.chars().allMatch(c -> c == '.' || c == '-' || c == '±' || c == '…')) {
            String meant = Vocabulary.respelled(word);
            Optional<Vocabulary.Phrase> mended = meant.isEmpty() ? Optional.empty() : respelled(words, i, meant);
            if (mended.isPresent()) {
                tokens.add(new Respelled("\"" + word + "\" is read as \"" + meant + "\""));
                return phrase(words, i, mended.get());
            }
            tokens.add(new Unknown(word));
        }
        return 1;
    }

    private static Optional<Vocabulary.Phrase> respelled(List<String> words, int i, String meant) {
        words.set(i, meant);
        return Vocabulary.at(words, i);
    }

    private int phrase(List<String> words, int i, Vocabulary.Phrase found) {
        if (found.is(Vocabulary.Sort.JOINT)) {
            tokens.add(new End());
        }
        tokens.add(new Word(String.join(" ", words.subList(i, i + found.words())), found));
        return found.words();
    }

    private int number(List<String> words, int i) {
        Matcher ordinal = ORDINAL.matcher(words.get(i));
        if (ordinal.matches()
                && i + 1 < words.size()
                && COUNTED.contains(words.get(i + 1).toLowerCase(Locale.ROOT))) {
            tokens.add(new NumberWord(words.get(i), ordinal.group(1), "", ""));
            return 1;
        }
        if (ordinal.matches()) {
            tokens.add(new NumberWord(words.get(i), ordinal.group(1) + " %", "", ""));
            return 1;
        }
        int taken = amount(words, i);
        String value = value(words, i, taken);
        int at = i + taken;
        if (at + 1 < words.size()
                && words.get(at).equals("±")
                && BEGINS.matcher(words.get(at + 1)).matches()) {
            int more = amount(words, at + 1);
            String spread = value(words, at + 1, more);
            // 50 ± 2 km/h: the unit stands behind both
            String whole = PLAIN.matcher(value).matches() ? value + " " + unit(spread) : value;
            String half = PLAIN.matcher(spread).matches() ? spread + " " + unit(value) : spread;
            tokens.add(new NumberWord(whole + " ± " + half, whole.strip(), half.strip(), ""));
            return taken + 1 + more;
        }
        tokens.add(new NumberWord(value, value, "", ""));
        return taken;
    }

    static String unit(String value) {
        Matcher glued = GLUED.matcher(value);
        return glued.matches() ? glued.group(2).strip() : "";
    }

    private static String value(List<String> words, int i, int count) {
        String text = String.join(" ", words.subList(i, i + count));
        return count == 1 && isNumber(text.replaceFirst("\\.$", "")) ? text.replaceFirst("\\.$", "") : text;
    }

    /** How many words make the longest number with a unit from here. */
    private static int amount(List<String> words, int i) {
        for (int count = Math.min(UNIT_WORDS, words.size() - i); count > 0; count--) {
            String text = String.join(" ", words.subList(i, i + count));
            if (isNumber(text) && !(count == 2 && isPreposition(words, i + 1))) {
                return count;
            }
        }
        return 1;
    }

    /** Whether "in" begins another part, as in "60 in the rain", and is no inch. */
    private static boolean isPreposition(List<String> words, int i) {
        return words.get(i).equalsIgnoreCase("in")
                && i + 1 < words.size()
                && (BEGINS.matcher(words.get(i + 1)).matches() || isKnown(words, i + 1));
    }

    private static boolean isKnown(List<String> words, int i) {
        return Vocabulary.at(words, i)
                .filter(found -> !found.is(Vocabulary.Sort.JOINT))
                .isPresent();
    }

    private static boolean isNumber(String text) {
        Matcher glued = GLUED.matcher(text);
        if (!glued.matches() || text.endsWith(" a")) {
            return false;
        }
        String unit = glued.group(2).strip();
        if (unit.isEmpty() || Units.having(unit).isPresent()) {
            return true;
        }
        try {
            Units.DISTANCE.read(text);
            return true;
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    /** Whether a number is in miles per hour. */
    static boolean isInMph(String value) {
        String unit = unit(value);
        return Units.having(unit).isPresent() && Unit.of(unit).equals(Unit.MPH);
    }
}
