package io.github.stoplag.worked;

import java.util.Comparator;
import java.util.List;

/**
 * A calculator for rendered text, written apart from the library's own expressions: a recursive-descent reader of
 * numbers, unit symbols, signs, brackets, powers, roots, ln and exp.
 */
final class Arithmetic {
    private static final String SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";
    private static final List<String> UNITS = Unit.all().stream()
            .map(Unit::symbol)
            .filter(symbol -> !symbol.isEmpty())
            .sorted(Comparator.comparingInt(String::length).reversed())
            .toList();

    private final String text;
    private int at;

    private Arithmetic(String text) {
        this.text = text;
    }

    static double of(String text) {
        Arithmetic reader = new Arithmetic(text.strip());
        double value = reader.sum();
        if (reader.at != reader.text.length()) {
            throw new AssertionError("cannot read \"" + reader.text.substring(reader.at) + "\" of \"" + text + "\"");
        }
        return value;
    }

    private double sum() {
        double value = product();
        while (true) {
            if (take(" + ")) {
                value += product();
            } else if (take(" − ")) {
                value -= product();
            } else {
                return value;
            }
        }
    }

    private double product() {
        double value = power();
        while (true) {
            if (take(" × ")) {
                value *= power();
            } else if (take(" / ")) {
                value /= power();
            } else {
                return value;
            }
        }
    }

    private double power() {
        double base = atom();
        int digit = at < text.length() ? SUPERSCRIPTS.indexOf(text.charAt(at)) : -1;
        if (digit < 0) {
            return base;
        }
        at++;
        return Math.pow(base, digit);
    }

    private double atom() {
        if (take("√(")) {
            return Math.sqrt(closed());
        }
        if (take("ln(")) {
            return Math.log(closed());
        }
        if (take("exp(")) {
            return Math.exp(closed());
        }
        if (take("(")) {
            return closed();
        }
        double sign = take("−") ? -1 : 1;
        int start = at;
        while (at < text.length() && (Character.isDigit(text.charAt(at)) || text.charAt(at) == '.')) {
            at++;
        }
        if (start == at) {
            throw new AssertionError("a number is wanted at \"" + text.substring(at) + "\" of \"" + text + "\"");
        }
        double number = Double.parseDouble(text.substring(start, at));
        if (take("×10^")) {
            int from = at;
            take("−");
            while (at < text.length() && Character.isDigit(text.charAt(at))) {
                at++;
            }
            number *= Math.pow(10, Integer.parseInt(text.substring(from, at).replace('−', '-')));
        }
        unit();
        return sign * number;
    }

    private void unit() {
        if (at < text.length() && text.charAt(at) == ' ') {
            for (String unit : UNITS) {
                if (text.startsWith(unit, at + 1)) {
                    at += 1 + unit.length();
                    return;
                }
            }
        }
    }

    private double closed() {
        double value = sum();
        if (!take(")")) {
            throw new AssertionError("a bracket is not closed in \"" + text + "\"");
        }
        return value;
    }

    private boolean take(String token) {
        if (text.startsWith(token, at)) {
            at += token.length();
            return true;
        }
        return false;
    }
}
