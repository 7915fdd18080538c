package io.github.stoplag.quantity;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * One unit of the table {@link Units}: its symbol, every spelling that is read, and its exact size.
 *
 * <p>Value in the coherent SI unit = (number + zero) × numerator / denominator; zero is other than 0 for °C and °F
 * alone.
 */
public class NamedUnit {
    /** Who states a distance, a speed or a deceleration in a unit. */
    public enum Use {
        /** People who think in metres. */
        METRIC,
        /** People who think in feet and miles. */
        US_CUSTOMARY,
        /** Both, as knots and multiples of gravity. */
        BOTH
    }

    private final String symbol;
    private final BigDecimal numerator;
    private final BigDecimal denominator;
    private final BigDecimal zero;
    // the same three as doubles: a reading costs no decimal arithmetic
    private final double times;
    private final double over;
    private final double plus;
    private Use use = Use.METRIC;
    private List<String> typed = List.of();
    private List<String> said = List.of();

    NamedUnit(String symbol, String factor, String zero) {
        int slash = factor.indexOf('/');
        this.symbol = symbol;
        this.numerator = new BigDecimal(slash < 0 ? factor : factor.substring(0, slash));
        this.denominator = slash < 0 ? BigDecimal.ONE : new BigDecimal(factor.substring(slash + 1));
        this.zero = new BigDecimal(zero);
        this.times = numerator.doubleValue();
        this.over = denominator.doubleValue();
        this.plus = this.zero.doubleValue();
    }

    /** Adds spellings whose capitals matter. */
    NamedUnit typed(String... spellings) {
        typed = List.of(spellings);
        return this;
    }

    /** Adds spellings in any case; (s) stands for a plural, and metre for meter too. */
    NamedUnit said(String... spellings) {
        List<String> all = new ArrayList<>();
        for (String spelling : spellings) {
            addNumbers(all, spelling);
            if (spelling.contains("metre")) {
                addNumbers(all, spelling.replace("metre", "meter"));
            }
        }
        said = List.copyOf(all);
        return this;
    }

    private static void addNumbers(List<String> all, String spelling) {
        all.add(spelling.replace("(s)", ""));
        if (spelling.contains("(s)")) {
            all.add(spelling.replace("(s)", "s"));
        }
    }

    NamedUnit in(Use newUse) {
        use = newUse;
        return this;
    }

    /**
     * Gives the symbol, which is also how the unit is written.
     *
     * @return the symbol, for example {@code km/h}; empty for a plain number
     */
    public String symbol() {
        return symbol;
    }

    /**
     * Gives the spellings that are read with capital and small letters just so, the symbol first.
     *
     * @return the spellings, for example {@code m/s²}, {@code m/s2}, {@code m/s^2}
     */
    public List<String> exactSpellings() {
        List<String> all = new ArrayList<>(List.of(symbol));
        all.addAll(typed);
        return List.copyOf(all);
    }

    /**
     * Gives the spellings that are read in capital or small letters, written here in small ones.
     *
     * @return the spellings, for example {@code mph}, {@code mile per hour}, {@code miles per hour}
     */
    public List<String> looseSpellings() {
        return said;
    }

    /**
     * Gives the top of the fraction that turns a number in this unit into one in the SI unit.
     *
     * @return the numerator, exact
     */
    public BigDecimal numerator() {
        return numerator;
    }

    /**
     * Gives the bottom of the fraction that turns a number in this unit into one in the SI unit.
     *
     * @return the denominator, exact
     */
    public BigDecimal denominator() {
        return denominator;
    }

    /**
     * Gives what is added to a number before it is multiplied: a thermometer's distance from absolute zero.
     *
     * @return 273.15 for °C, 459.67 for °F, 0 for all others
     */
    public BigDecimal zero() {
        return zero;
    }

    /**
     * Says whether the fraction is the whole truth; it is not for a slope in degrees, whose ratio is a tangent.
     *
     * @return true if numbers in this unit are proportional to the quantity, but for a shifted zero
     */
    public boolean isLinear() {
        return true;
    }

    /**
     * Says who uses the unit.
     *
     * @return the use
     */
    public Use use() {
        return use;
    }

    /**
     * Turns a number in this unit into one in the SI unit.
     *
     * @param number the number
     * @return the value in the SI unit of the quantity
     */
    public double toSi(double number) {
        return (number + plus) * times / over;
    }

    /**
     * Turns a number in the SI unit into one in this unit.
     *
     * @param si the value in the SI unit of the quantity
     * @return the number
     */
    public double fromSi(double si) {
        return si * over / times - plus;
    }

    /** The symbol, and beside it what a keyboard has if the symbol needs more. */
    String shown() {
        if (isAscii(symbol)) {
            return symbol;
        }
        for (List<String> spellings : List.of(typed, said)) {
            for (String spelling : spellings) {
                if (isAscii(spelling)) {
                    return symbol + " (" + spelling + ")";
                }
            }
        }
        return symbol;
    }

    private static boolean isAscii(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) > 127) {
                return false;
            }
        }
        return true;
    }

    @Override
    public String toString() {
        return symbol.isEmpty() ? "a plain number" : symbol;
    }
}
