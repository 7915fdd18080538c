package io.github.stoplag.worked;

import io.github.stoplag.worked.Expression.Symbol;

/** Expressions in one line of plain Unicode text. */
final class TextNotation extends Notation {
    static final Notation INSTANCE = new TextNotation();

    private static final String SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    @Override
    String number(String digits, int exponent, Unit unit) {
        String power = exponent == 0 ? "" : "×10^" + String.valueOf(exponent).replace('-', '\u2212');
        return digits + power + (unit == Unit.NONE ? "" : " " + unit.symbol());
    }

    @Override
    String symbol(Symbol symbol) {
        return symbol.index().isEmpty() ? symbol.letter() : symbol.letter() + "_" + symbol.index();
    }

    @Override
    String sum(String left, String right) {
        return left + " + " + right;
    }

    @Override
    String difference(String left, String right) {
        return left + " \u2212 " + right;
    }

    @Override
    String product(String left, String right, boolean betweenNumbers) {
        return left + (betweenNumbers ? " × " : "·") + right;
    }

    @Override
    String quotient(String top, String bottom) {
        return top + " / " + bottom;
    }

    @Override
    String power(String base, int exponent) {
        return base + SUPERSCRIPTS.charAt(exponent);
    }

    @Override
    String root(String of) {
        return "√(" + of + ")";
    }

    @Override
    String function(String name, String of) {
        return name + "(" + of + ")";
    }

    @Override
    String group(String inner) {
        return "(" + inner + ")";
    }

    @Override
    String equation(String left, boolean exact, String right) {
        return left + (exact ? " = " : " ≈ ") + right;
    }

    @Override
    boolean stacksFractions() {
        return false;
    }
}
