package io.github.stoplag.worked;

import io.github.stoplag.worked.Expression.Symbol;
import java.util.Map;

/** Expressions as LaTeX mathematics, without the dollar signs. */
final class LatexNotation extends Notation {
    static final Notation INSTANCE = new LatexNotation();

    private static final Map<String, String> GREEK = Map.of(
            "μ",
            "\\mu ",
            "σ",
            "\\sigma ",
            "Δ",
            "\\Delta ",
            "τ",
            "\\tau ",
            "ρ",
            "\\rho ",
            "Ω",
            "\\Omega ",
            "φ",
            "\\varphi ",
            "β",
            "\\beta ");

    @Override
    String number(String digits, int exponent, Unit unit) {
        String plain = digits.replace('\u2212', '-');
        String power = exponent == 0 ? "" : "\\times 10^{" + exponent + "}";
        return plain + power + unit(unit);
    }

    private static String unit(Unit unit) {
        return switch (unit.symbol()) {
            case "" -> "";
            case "Ω" -> "\\,\\Omega ";
            case "%" -> "\\,\\%";
            case "°C", "°F" -> "\\,^{\\circ}\\mathrm{" + unit.symbol().substring(1) + "}";
            default ->
                "\\,\\mathrm{"
                        + unit.symbol()
                                .replace("²", "^{2}")
                                .replace("·", "\\cdot ")
                                .replace("µ", "\\mu ")
                                .replace("Ω", "\\Omega ")
                        + "}";
        };
    }

    @Override
    String symbol(Symbol symbol) {
        String letter = symbol.letter();
        StringBuilder text = new StringBuilder();
        letter.codePoints().mapToObj(Character::toString).forEach(each -> text.append(GREEK.getOrDefault(each, each)));
        String written = text.toString().strip();
        return symbol.index().isEmpty() ? written : written + "_{\\mathrm{" + symbol.index() + "}}";
    }

    @Override
    String sum(String left, String right) {
        return left + " + " + right;
    }

    @Override
    String difference(String left, String right) {
        return left + " - " + right;
    }

    @Override
    String product(String left, String right, boolean betweenNumbers) {
        return left + (betweenNumbers ? " \\times " : " \\cdot ") + right;
    }

    @Override
    String quotient(String top, String bottom) {
        return "\\frac{" + top + "}{" + bottom + "}";
    }

    @Override
    String power(String base, int exponent) {
        return "{" + base + "}^{" + exponent + "}";
    }

    @Override
    String root(String of) {
        return "\\sqrt{" + of + "}";
    }

    @Override
    String function(String name, String of) {
        return "\\" + name + "\\left(" + of + "\\right)";
    }

    @Override
    String group(String inner) {
        return "\\left(" + inner + "\\right)";
    }

    @Override
    String equation(String left, boolean exact, String right) {
        return left + (exact ? " = " : " \\approx ") + right;
    }

    @Override
    boolean stacksFractions() {
        return true;
    }
}
