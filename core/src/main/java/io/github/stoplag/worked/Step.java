package io.github.stoplag.worked;

import io.github.stoplag.worked.Expression.Num;
import io.github.stoplag.worked.Expression.Symbol;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * One line of working: symbol = formula = substitution = result.
 *
 * @param label what is calculated, in words
 * @param symbol its symbol
 * @param formula the formula in symbols, or for a conversion the number in its old unit
 * @param substitution the formula with numbers put in
 * @param result the result, rounded
 * @param exact false if rounding changed the result
 * @param note what else to say, possibly empty
 */
public record Step(
        String label,
        Symbol symbol,
        Expression formula,
        Expression substitution,
        Num result,
        boolean exact,
        String note) {

    /**
     * Refuses nulls.
     *
     * @param label what is calculated, in words
     * @param symbol its symbol
     * @param formula the formula in symbols, or for a conversion the number in its old unit
     * @param substitution the formula with numbers put in
     * @param result the result, rounded
     * @param exact false if rounding changed the result
     * @param note what else to say, possibly empty
     * @throws NullPointerException if one that is required is null
     */
    public Step {
        Objects.requireNonNull(formula, "formula");
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(note, "note");
        Objects.requireNonNull(result, "result");
        Objects.requireNonNull(substitution, "substitution");
        Objects.requireNonNull(symbol, "symbol");
    }

    Document.Equation equation() {
        List<Expression> sides = new ArrayList<>(List.of(symbol, formula));
        if (!substitution.equals(formula)) {
            sides.add(substitution);
        }
        if (!substitution.equals(result)) {
            sides.add(result);
        }
        return new Document.Equation(label, sides, exact, note);
    }
}
