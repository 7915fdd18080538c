package io.github.stoplag.worked;

import io.github.stoplag.source.Caution;
import io.github.stoplag.worked.Expression.Num;
import io.github.stoplag.worked.Expression.Symbol;
import io.github.stoplag.worked.Solution.Answer;
import io.github.stoplag.worked.Solution.GivenLine;
import io.github.stoplag.worked.Solution.Verification;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Writes a solution down step by step, calculating as it goes.
 *
 * <p>Every number is rounded to the carried digits as soon as it appears, and every later step prints with the rounded
 * number, so that what is printed can be recalculated from what is printed. Beside it the unrounded number is carried:
 * the answer is that one rounded once, and checks compare with it.
 *
 * <p>One thread at a time; {@link #answer} ends it.
 */
public final class Working {
    private static final double APPROXIMATION = 0.05;
    private static final double AGREEMENT = 1e-4;
    private static final double ROUNDING_ERROR = 1e-12;

    private final Style style;
    private final String title;
    private final String find;
    private final List<GivenLine> givens = new ArrayList<>();
    private final List<String> assumptions = new ArrayList<>();
    private final List<Step> steps = new ArrayList<>();
    private final List<Verification> checks = new ArrayList<>();
    private final List<Caution> cautions = new ArrayList<>();
    private final Map<Symbol, Num> numbers = new HashMap<>();
    private final Map<Symbol, Num> unrounded = new HashMap<>();

    private Working(Style style, String title, String find) {
        this.style = style;
        this.title = title;
        this.find = find;
    }

    /**
     * Starts a solution.
     *
     * @param style units and digits
     * @param title what the problem is about
     * @param find what is asked for
     * @return the empty working
     */
    public static Working of(Style style, String title, String find) {
        Objects.requireNonNull(find, "find");
        Objects.requireNonNull(style, "style");
        Objects.requireNonNull(title, "title");
        return new Working(style, title, find);
    }

    /**
     * Notes a given quantity and converts it into the unit the style calculates in, in a step of its own if need be.
     *
     * @param symbol its symbol, for example {@code t_r}
     * @param name what it is
     * @param given number, unit and where from
     * @return the symbol to use in formulas
     */
    public Symbol given(String symbol, String name, Given given) {
        Objects.requireNonNull(symbol, "symbol");
        Objects.requireNonNull(name, "name");
        return given(
                symbol,
                name,
                given,
                style.units().coherent(given.amount().unit().dimension()));
    }

    /**
     * Notes a given quantity and converts it into a unit that a published formula asks for.
     *
     * @param symbol its symbol
     * @param name what it is
     * @param given number, unit and where from
     * @param unit the unit to calculate in
     * @return the symbol to use in formulas
     * @throws IllegalArgumentException if the units measure different things
     */
    public Symbol given(String symbol, String name, Given given, Unit unit) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(symbol, "symbol");
        Objects.requireNonNull(unit, "unit");
        Amount amount = given.amount();
        if (!amount.unit().measuresTheSameAs(unit)) {
            throw new IllegalArgumentException(name + " must be in "
                    + (unit == Unit.NONE ? "plain numbers" : unit.symbol()) + " or a unit of the same kind, got "
                    + amount);
        }
        Symbol known = Symbol.of(symbol);
        givens.add(new GivenLine(name, known, given));
        numbers.put(known, new Num(amount.number(), amount.unit()));
        unrounded.put(known, new Num(amount.number(), amount.unit()));
        if (amount.unit() != unit) {
            convert(known, name + (unit == Unit.NONE ? " as a plain number" : " in " + unit.symbol()), unit);
        }
        return known;
    }

    /**
     * States an assumption.
     *
     * @param text the assumption
     */
    public void assume(String text) {
        Objects.requireNonNull(text, "text");
        assumptions.add(text);
    }

    /**
     * Adds a caution.
     *
     * @param caution the caution
     */
    public void caution(Caution caution) {
        Objects.requireNonNull(caution, "caution");
        cautions.add(caution);
    }

    /**
     * Calculates a step between quantities.
     *
     * @param symbol the symbol of the result
     * @param label what is calculated
     * @param formula the formula
     * @return the symbol to use in later formulas
     * @throws IllegalArgumentException if the formula adds unlike quantities or has no finite value
     */
    public Symbol step(String symbol, String label, Expression formula) {
        Objects.requireNonNull(formula, "formula");
        Objects.requireNonNull(symbol, "symbol");
        Objects.requireNonNull(label, "label");
        Step step = coherentStep(Symbol.of(symbol), label, formula, "");
        keep(step, formula.with(unrounded).value());
        return step.symbol();
    }

    /**
     * Calculates a step by a published formula between numbers in stated units, which puts its constants without units.
     *
     * @param symbol the symbol of the result
     * @param label what is calculated
     * @param formula the formula
     * @param unit the unit the formula gives its result in
     * @param rounding how the rule rounds it
     * @return the symbol to use in later formulas
     * @throws IllegalArgumentException if the formula has no finite value
     */
    public Symbol numericalStep(String symbol, String label, Expression formula, Unit unit, Rounding rounding) {
        Objects.requireNonNull(formula, "formula");
        Objects.requireNonNull(symbol, "symbol");
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(unit, "unit");
        Expression substitution = formula.with(withoutUnits(numbers));
        double exact = formula.with(withoutUnits(unrounded)).value();
        keep(
                step(Symbol.of(symbol), label, formula, substitution, unit, rounding, rounding.note()),
                // what a rule rounds is exact as rounded
                rounding.mode() == Rounding.Mode.DIGITS
                        ? exact
                        : rounding.apply(exact).doubleValue());
        return Symbol.of(symbol);
    }

    private static Map<Symbol, Num> withoutUnits(Map<Symbol, Num> numbers) {
        Map<Symbol, Num> plain = new HashMap<>();
        numbers.forEach((each, number) -> plain.put(each, new Num(number.number(), Unit.NONE)));
        return plain;
    }

    /**
     * Goes on with another number than the one calculated: the next of a series, the next cable size.
     *
     * @param symbol the symbol of the number chosen
     * @param label why this one
     * @param amount the number, in a unit that can be calculated with
     * @return the symbol to use in later formulas
     */
    public Symbol choose(String symbol, String label, Amount amount) {
        Objects.requireNonNull(symbol, "symbol");
        Objects.requireNonNull(label, "label");
        Num number = new Num(amount.number(), amount.unit());
        keep(
                new Step(label, Symbol.of(symbol), number, number, number, true, "chosen"),
                number.number().doubleValue());
        return Symbol.of(symbol);
    }

    /** Goes on with a number calculated before, chosen among several. */
    Symbol choose(String symbol, String label, Symbol among) {
        Symbol chosen = choose(symbol, label, amount(among));
        unrounded.put(chosen, exact(among));
        return chosen;
    }

    private Num exact(Symbol symbol) {
        return (Num) symbol.with(unrounded);
    }

    /**
     * Gives the number a symbol stands for at present.
     *
     * @param symbol a symbol of this working
     * @return the rounded number
     * @throws IllegalArgumentException if the symbol has none
     */
    public Amount amount(Symbol symbol) {
        Num number = (Num) symbol.with(numbers);
        return new Amount(number.number(), number.unit());
    }

    /** The unrounded number in a unit. */
    double in(Symbol symbol, Unit unit) {
        Num exact = exact(symbol);
        return exact.unit().convert(exact.number().doubleValue(), unit);
    }

    /**
     * Checks a number by a second way.
     *
     * @param checked the symbol of the number to check
     * @param label what the second way is
     * @param formula its formula
     */
    public void checkBy(Symbol checked, String label, Expression formula) {
        Objects.requireNonNull(checked, "checked");
        Objects.requireNonNull(formula, "formula");
        Objects.requireNonNull(label, "label");
        judge(
                checked,
                coherentStep(checked, label, formula, ""),
                formula.with(unrounded).value());
    }

    /**
     * Checks a number against a model that calculates it without rounding.
     *
     * @param checked the symbol of the number to check
     * @param label the model
     * @param modelled the model's number
     */
    public void checkAgainst(Symbol checked, String label, Amount modelled) {
        Objects.requireNonNull(checked, "checked");
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(modelled, "modelled");
        Unit unit = amount(checked).unit();
        double number = modelled.in(unit);
        Num rounded = new Num(carry().apply(number).stripTrailingZeros(), unit);
        judge(checked, new Step(label, checked, rounded, rounded, rounded, true, ""), number);
    }

    /**
     * Compares an approximation with the number of a model, which need not agree in every digit that is printed.
     *
     * @param checked the symbol of the number to compare
     * @param label the model
     * @param modelled the model's number
     * @param reason why the two differ, in words
     */
    void compare(Symbol checked, String label, Amount modelled, String reason) {
        Unit unit = amount(checked).unit();
        double number = modelled.in(unit);
        double off = in(checked, unit) / number - 1;
        Num rounded = new Num(carry().apply(number).stripTrailingZeros(), unit);
        Step step = new Step(label, checked, rounded, rounded, rounded, true, "");
        String percent = Rounding.digits(2).apply(100 * Math.abs(off)).toPlainString();
        String verdict = "the working is " + percent + " % " + (off < 0 ? "below" : "above") + " it: " + reason;
        checks.add(new Verification(step, verdict, Math.abs(off) <= APPROXIMATION));
    }

    /**
     * Ends the working.
     *
     * @param symbol the symbol of the answer
     * @param unit the unit to answer in; a conversion is a step of its own
     * @return the solution
     * @throws IllegalArgumentException if the symbol has no number or the units measure different things
     */
    public Solution answer(Symbol symbol, Unit unit) {
        Objects.requireNonNull(unit, "unit");
        return answer(symbol, unit, Rounding.digits(style.answerDigits()));
    }

    /**
     * Ends the working with the rounding that a published rule prescribes.
     *
     * @param symbol the symbol of the answer
     * @param unit the unit to answer in
     * @param rounding how the answer is rounded
     * @return the solution
     * @throws IllegalArgumentException if the symbol has no number or the units measure different things
     */
    public Solution answer(Symbol symbol, Unit unit, Rounding rounding) {
        Objects.requireNonNull(rounding, "rounding");
        Objects.requireNonNull(unit, "unit");
        if (amount(symbol).unit() != unit) {
            convert(symbol, unit == Unit.NONE ? "as a plain number" : "in " + unit.symbol(), unit);
        }
        Answer answer = new Answer(symbol, amount(symbol), exact(symbol).number(), rounding);
        Plausible.deceleration(style.units(), numbers).ifPresent(cautions::add);
        cautions.addAll(Plausible.givens(givens));
        Plausible.fast("The answer of " + answer.printed(), answer.carried()).ifPresent(cautions::add);
        return new Solution(title, style.units(), givens, find, assumptions, steps, answer, checks, cautions);
    }

    private void convert(Symbol symbol, String label, Unit unit) {
        Amount old = amount(symbol);
        Expression conversion = old.unit().conversion(old.number(), unit);
        double exact = in(symbol, unit);
        keep(step(symbol, label, new Num(old.number(), old.unit()), conversion, unit, carry(), ""), exact);
    }

    private Step coherentStep(Symbol symbol, String label, Expression formula, String note) {
        Expression substitution = formula.with(numbers);
        Unit unit = style.units()
                .coherent(Calculation.of(style.units(), substitution).dimension());
        return step(symbol, label, formula, substitution, unit, carry(), note);
    }

    private static Step step(
            Symbol symbol,
            String label,
            Expression formula,
            Expression substitution,
            Unit unit,
            Rounding rounding,
            String note) {
        double value = substitution.value();
        BigDecimal rounded = rounding.apply(value).stripTrailingZeros();
        boolean exact = Math.abs(rounded.doubleValue() - value) <= 1e-11 * Math.abs(value);
        return new Step(label, symbol, formula, substitution, new Num(rounded, unit), exact, note);
    }

    private Rounding carry() {
        return Rounding.digits(style.carriedDigits());
    }

    private void keep(Step step, double exact) {
        steps.add(step);
        numbers.put(step.symbol(), step.result());
        unrounded.put(
                step.symbol(), new Num(BigDecimal.valueOf(exact), step.result().unit()));
    }

    private void judge(Symbol checked, Step step, double second) {
        double number = exact(checked).number().doubleValue();
        // far within the digits that an answer prints, and beyond what a table of four decimals gives
        boolean agrees = Math.abs(number - second) <= Math.max(AGREEMENT * Math.abs(number), ROUNDING_ERROR);
        checks.add(new Verification(step, agrees ? "agrees" : "differs from " + amount(checked), agrees));
    }
}
