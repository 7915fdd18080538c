package io.github.stoplag.quantity;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/** Cuts a text into its number and its unit, and says what is wrong with one that cannot be cut. */
final class UnitText {
    private static final int LONGEST = 200;
    private static final int LONGEST_SHOWN = 80;
    private static final BigDecimal INCHES_PER_FOOT = new BigDecimal(12);

    private final Units units;
    private final String written;
    private final String text;

    private UnitText(Units units, String written) {
        this.units = units;
        this.written = written;
        this.text = plain(written);
    }

    static Units.Reading read(Units units, String text) {
        if (text.length() > LONGEST) {
            throw new UnitText(units, text.substring(0, LONGEST))
                    .numberFailure("longer than " + LONGEST + " characters");
        }
        return new UnitText(units, text).read();
    }

    private Units.Reading read() {
        if (text.isEmpty()) {
            throw numberFailure("no value given");
        }
        if (text.indexOf(',') >= 0) {
            throw numberFailure("a comma is not allowed; write a decimal point, and no mark between thousands");
        }
        int end = numberEnd(text);
        String unit = text.substring(end).strip();
        if (end == 0 || (!unit.isEmpty() && beginsNumber(unit.charAt(0)))) {
            boolean plain = units.list().stream().allMatch(each -> each.symbol().isEmpty());
            throw numberFailure(
                    "not a number" + (plain ? "" : " followed by a unit") + "; write it like 1.5 or 1.5e-3");
        }
        NamedUnit found = units.lookUp(unit);
        if (found != null) {
            return new Units.Reading(Double.parseDouble(text.substring(0, end)), found);
        }
        // ft2/s2 is a unit and no two inches
        int inches = Units.having(unit).isPresent() ? 0 : inchesBegin(unit);
        if (inches > 0) {
            return feetAndInches(text.substring(0, end), unit.substring(inches));
        }
        throw failure(unitComplaint(units, unit));
    }

    /** Where the inches begin in "ft 10 in", or 0 if no number stands behind feet. */
    private static int inchesBegin(String unit) {
        for (int i = 0; i < unit.length(); i++) {
            if (beginsNumber(unit.charAt(i))) {
                NamedUnit first = Units.DISTANCE.lookUp(unit.substring(0, i).strip());
                return first != null && first.symbol().equals("ft") ? i : 0;
            }
        }
        return 0;
    }

    private Units.Reading feetAndInches(String feet, String rest) {
        if (units != Units.DISTANCE) {
            throw failure("feet and inches are a distance; " + advice(units));
        }
        int end = numberEnd(rest);
        NamedUnit unit = Units.DISTANCE.lookUp(rest.substring(end).strip());
        if (unit == null || !unit.symbol().equals("in")) {
            throw failure("inches beside feet need their unit; write it like 8 ft 10 in or 8' 10\"");
        }
        String inchText = rest.substring(0, end);
        String feetText = feet.startsWith("+") || feet.startsWith("-") ? feet.substring(1) : feet;
        if (!isDigits(feetText) || !isDigits(inchText.replaceFirst("\\.", ""))) {
            throw failure("feet beside inches must be a whole number, and inches like 10 or 10.5");
        }
        BigDecimal inches = new BigDecimal(inchText);
        if (inches.compareTo(INCHES_PER_FOOT) >= 0) {
            throw failure("inches beside feet must be in [0, 12), got " + inchText);
        }
        double magnitude =
                new BigDecimal(feetText).multiply(INCHES_PER_FOOT).add(inches).doubleValue();
        return new Units.Reading(feet.startsWith("-") ? -magnitude : magnitude, unit);
    }

    /**
     * Where the longest number at the beginning ends: sign, digits with a point between or before some, exponent; 0 if
     * none.
     */
    private static int numberEnd(String text) {
        int sign = signEnd(text, 0);
        int whole = digitsEnd(text, sign);
        int end = whole;
        if (end < text.length() && text.charAt(end) == '.') {
            int decimals = digitsEnd(text, end + 1);
            end = decimals > end + 1 ? decimals : end;
        }
        if (end == sign) {
            return 0;
        }
        if (end < text.length() && (text.charAt(end) == 'e' || text.charAt(end) == 'E')) {
            int begin = signEnd(text, end + 1);
            int exponent = digitsEnd(text, begin);
            end = exponent > begin ? exponent : end;
        }
        return end;
    }

    private static int signEnd(String text, int from) {
        boolean sign = from < text.length() && (text.charAt(from) == '+' || text.charAt(from) == '-');
        return sign ? from + 1 : from;
    }

    private static int digitsEnd(String text, int from) {
        int end = from;
        while (end < text.length() && isDigit(text.charAt(end))) {
            end++;
        }
        return end;
    }

    private static boolean isDigits(String text) {
        return !text.isEmpty() && digitsEnd(text, 0) == text.length();
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private static boolean beginsNumber(char c) {
        return isDigit(c) || c == '.' || c == '+' || c == '-';
    }

    /** Makes every run of spaces one, typeset text carries no-break and thin ones, and the minus sign a hyphen. */
    private static String plain(String text) {
        StringBuilder plain = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean space = Character.isWhitespace(c) || Character.isSpaceChar(c);
            if (!space) {
                plain.append(c == '\u2212' ? '-' : c);
            } else if (plain.length() > 0 && plain.charAt(plain.length() - 1) != ' ') {
                plain.append(' ');
            }
        }
        return plain.toString().stripTrailing();
    }

    /**
     * Makes the capitals A to Z small, and no others: elsewhere a sign that only looks like a letter would become one.
     */
    static String small(String text) {
        StringBuilder small = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            small.append(c >= 'A' && c <= 'Z' ? (char) (c + 32) : c);
        }
        return small.toString();
    }

    private IllegalArgumentException failure(String reason) {
        return new IllegalArgumentException(units.quantity() + " \"" + shown(written) + "\": " + reason);
    }

    private IllegalArgumentException numberFailure(String reason) {
        return failure(reason + "; " + advice(units));
    }

    /** What is wrong with a unit, and which units there are. */
    static String unitComplaint(Units units, String spelling) {
        if (spelling.isEmpty()) {
            return "missing unit; " + advice(units);
        }
        String shown = "\"" + shown(spelling) + "\"";
        return Units.having(spelling)
                        .map(other -> shown + " is a unit of " + other.quantity())
                        .orElseGet(() -> "unknown unit " + shown + inOtherCase(units, spelling))
                + "; " + advice(units);
    }

    private static String inOtherCase(Units units, String spelling) {
        for (NamedUnit unit : units.list()) {
            for (String each : unit.exactSpellings()) {
                if (small(each).equals(small(spelling))) {
                    return ", capitals matter in " + each;
                }
            }
        }
        return "";
    }

    private static String advice(Units units) {
        List<String> names = new ArrayList<>();
        boolean plain = false;
        for (NamedUnit unit : units.list()) {
            plain |= unit.symbol().isEmpty();
            if (!unit.symbol().isEmpty()) {
                names.add(unit.shown());
            }
        }
        return "use " + (names.size() > 1 ? "one of " : "") + String.join(", ", names)
                + (plain && !names.isEmpty() ? " or " : "") + (plain ? "a plain number" : "");
    }

    /** The text in one line of printable signs, cut where it gets long. */
    private static String shown(String text) {
        StringBuilder shown = new StringBuilder();
        for (int i = 0; i < Math.min(text.length(), LONGEST_SHOWN); i++) {
            char c = text.charAt(i);
            int type = Character.getType(c);
            if (Character.isWhitespace(c)) {
                if (shown.length() == 0 || shown.charAt(shown.length() - 1) != ' ') {
                    shown.append(' ');
                }
            } else if (type == Character.CONTROL || type == Character.FORMAT) {
                shown.append(String.format(java.util.Locale.ROOT, "\\u%04x", (int) c));
            } else {
                shown.append(c);
            }
        }
        return shown + (text.length() > LONGEST_SHOWN ? "…" : "");
    }
}
