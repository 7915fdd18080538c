package io.github.stoplag.worked;

import io.github.stoplag.worked.Expression.Symbol;

/** Expressions as presentation MathML, without the outer math element. */
final class MathmlNotation extends Notation {
    static final Notation INSTANCE = new MathmlNotation();

    @Override
    String number(String digits, int exponent, Unit unit) {
        String sign = digits.startsWith("\u2212") ? "<mo form=\"prefix\">\u2212</mo>" : "";
        String number = sign + "<mn>" + (sign.isEmpty() ? digits : digits.substring(1)) + "</mn>";
        if (exponent != 0) {
            number += operator("×") + "<msup><mn>10</mn><mn>"
                    + String.valueOf(exponent).replace('-', '\u2212') + "</mn></msup>";
        }
        String unitText = unit == Unit.NONE ? "" : "<mtext>\u00a0" + Document.escape(unit.symbol()) + "</mtext>";
        return row(number + unitText);
    }

    @Override
    String symbol(Symbol symbol) {
        String letter = "<mi>" + Document.escape(symbol.letter()) + "</mi>";
        return symbol.index().isEmpty()
                ? letter
                : "<msub>" + letter + "<mtext>" + Document.escape(symbol.index()) + "</mtext></msub>";
    }

    @Override
    String sum(String left, String right) {
        return row(left + operator("+") + right);
    }

    @Override
    String difference(String left, String right) {
        return row(left + operator("\u2212") + right);
    }

    @Override
    String product(String left, String right, boolean betweenNumbers) {
        return row(left + operator(betweenNumbers ? "×" : "⋅") + right);
    }

    @Override
    String quotient(String top, String bottom) {
        // a fraction within a fraction would shrink
        return "<mfrac displaystyle=\"true\">" + row(top) + row(bottom) + "</mfrac>";
    }

    @Override
    String power(String base, int exponent) {
        return "<msup>" + row(base) + "<mn>" + exponent + "</mn></msup>";
    }

    @Override
    String root(String of) {
        return "<msqrt>" + of + "</msqrt>";
    }

    @Override
    String function(String name, String of) {
        return row("<mi>" + name + "</mi>" + group(of));
    }

    @Override
    String group(String inner) {
        return row(operator("(") + inner + operator(")"));
    }

    @Override
    String equation(String left, boolean exact, String right) {
        return left + operator(exact ? "=" : "≈") + right;
    }

    @Override
    boolean stacksFractions() {
        return true;
    }

    private static String operator(String sign) {
        return "<mo>" + sign + "</mo>";
    }

    private static String row(String inner) {
        return "<mrow>" + inner + "</mrow>";
    }
}
