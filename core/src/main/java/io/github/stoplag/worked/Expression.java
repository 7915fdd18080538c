package io.github.stoplag.worked;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * A formula as data: one object that is calculated and also written as text, LaTeX or MathML.
 *
 * <p>Formula, substitution and result of a step come from the same expression and so cannot disagree. Calculation
 * checks dimensions: metres and seconds cannot be added, and only a plain number has a logarithm.
 *
 * <p>Example: {@code v.times(t).plus(v.squared().over(number(2).times(a)))} is v·t + v² / (2·a).
 */
public sealed interface Expression {
    /**
     * A number with its unit.
     *
     * @param number the number
     * @param unit its unit
     */
    record Num(BigDecimal number, Unit unit) implements Expression {

        /**
         * Refuses nulls.
         *
         * @param number the number
         * @param unit its unit
         * @throws NullPointerException if one that is required is null
         */
        public Num {
            Objects.requireNonNull(number, "number");
            Objects.requireNonNull(unit, "unit");
        }
    }

    /**
     * A symbol of a quantity.
     *
     * @param letter the letter, Latin or Greek
     * @param index its subscript, possibly empty
     */
    record Symbol(String letter, String index) implements Expression {

        /**
         * Refuses nulls.
         *
         * @param letter the letter, Latin or Greek
         * @param index its subscript, possibly empty
         * @throws NullPointerException if one that is required is null
         */
        public Symbol {
            Objects.requireNonNull(index, "index");
            Objects.requireNonNull(letter, "letter");
        }

        /**
         * Reads a symbol such as {@code t_r}.
         *
         * @param text letter, or letter, underscore and subscript
         * @return the symbol
         */
        public static Symbol of(String text) {
            Objects.requireNonNull(text, "text");
            int low = text.indexOf('_');
            return low < 0 ? new Symbol(text, "") : new Symbol(text.substring(0, low), text.substring(low + 1));
        }
    }

    /**
     * A sum.
     *
     * @param left the first term
     * @param right the second term
     */
    record Sum(Expression left, Expression right) implements Expression {

        /**
         * Refuses nulls.
         *
         * @param left the first term
         * @param right the second term
         * @throws NullPointerException if one that is required is null
         */
        public Sum {
            Objects.requireNonNull(left, "left");
            Objects.requireNonNull(right, "right");
        }
    }

    /**
     * A difference.
     *
     * @param left what is subtracted from
     * @param right what is subtracted
     */
    record Difference(Expression left, Expression right) implements Expression {

        /**
         * Refuses nulls.
         *
         * @param left what is subtracted from
         * @param right what is subtracted
         * @throws NullPointerException if one that is required is null
         */
        public Difference {
            Objects.requireNonNull(left, "left");
            Objects.requireNonNull(right, "right");
        }
    }

    /**
     * A product.
     *
     * @param left the first factor
     * @param right the second factor
     */
    record Product(Expression left, Expression right) implements Expression {

        /**
         * Refuses nulls.
         *
         * @param left the first factor
         * @param right the second factor
         * @throws NullPointerException if one that is required is null
         */
        public Product {
            Objects.requireNonNull(left, "left");
            Objects.requireNonNull(right, "right");
        }
    }

    /**
     * A quotient.
     *
     * @param top the numerator
     * @param bottom the denominator
     */
    record Quotient(Expression top, Expression bottom) implements Expression {

        /**
         * Refuses nulls.
         *
         * @param top the numerator
         * @param bottom the denominator
         * @throws NullPointerException if one that is required is null
         */
        public Quotient {
            Objects.requireNonNull(bottom, "bottom");
            Objects.requireNonNull(top, "top");
        }
    }

    /**
     * A whole power.
     *
     * @param base the base
     * @param exponent the exponent, 2 to 9
     */
    record Power(Expression base, int exponent) implements Expression {
        /**
         * Checks the exponent.
         *
         * @param base the base
         * @param exponent the exponent, 2 to 9
         * @throws IllegalArgumentException if the exponent is not in 2 to 9
         */
        public Power {
            Objects.requireNonNull(base, "base");
            if (exponent < 2 || exponent > 9) {
                throw new IllegalArgumentException("exponent must be in [2, 9], got " + exponent);
            }
        }
    }

    /**
     * A square root.
     *
     * @param of what stands under it
     */
    record Root(Expression of) implements Expression {

        /**
         * Refuses nulls.
         *
         * @param of what stands under it
         * @throws NullPointerException if one that is required is null
         */
        public Root {
            Objects.requireNonNull(of, "of");
        }
    }

    /**
     * A natural logarithm.
     *
     * @param of its argument
     */
    record Ln(Expression of) implements Expression {

        /**
         * Refuses nulls.
         *
         * @param of its argument
         * @throws NullPointerException if one that is required is null
         */
        public Ln {
            Objects.requireNonNull(of, "of");
        }
    }

    /**
     * An exponential to the base e.
     *
     * @param of its argument
     */
    record Exp(Expression of) implements Expression {

        /**
         * Refuses nulls.
         *
         * @param of its argument
         * @throws NullPointerException if one that is required is null
         */
        public Exp {
            Objects.requireNonNull(of, "of");
        }
    }

    /**
     * A plain number.
     *
     * @param decimal the number as written, for example {@code 25.92}
     * @return the expression
     */
    static Num number(String decimal) {
        Objects.requireNonNull(decimal, "decimal");
        return new Num(new BigDecimal(decimal), Unit.NONE);
    }

    /**
     * A plain whole number.
     *
     * @param whole the number
     * @return the expression
     */
    static Num number(int whole) {
        return new Num(BigDecimal.valueOf(whole), Unit.NONE);
    }

    /**
     * Adds.
     *
     * @param other the second term
     * @return the sum
     */
    default Expression plus(Expression other) {
        Objects.requireNonNull(other, "other");
        return new Sum(this, other);
    }

    /**
     * Subtracts.
     *
     * @param other what is subtracted
     * @return the difference
     */
    default Expression minus(Expression other) {
        Objects.requireNonNull(other, "other");
        return new Difference(this, other);
    }

    /**
     * Multiplies.
     *
     * @param other the second factor
     * @return the product
     */
    default Expression times(Expression other) {
        Objects.requireNonNull(other, "other");
        return new Product(this, other);
    }

    /**
     * Divides.
     *
     * @param other the denominator
     * @return the quotient
     */
    default Expression over(Expression other) {
        Objects.requireNonNull(other, "other");
        return new Quotient(this, other);
    }

    /**
     * Squares.
     *
     * @return the square
     */
    default Expression squared() {
        return new Power(this, 2);
    }

    /**
     * Takes the square root.
     *
     * @return the root
     */
    default Expression root() {
        return new Root(this);
    }

    /**
     * Puts numbers for symbols.
     *
     * @param numbers the number of every symbol
     * @return the same expression in numbers
     * @throws IllegalArgumentException if a symbol has no number
     */
    default Expression with(Map<Symbol, Num> numbers) {
        Objects.requireNonNull(numbers, "numbers");
        if (this instanceof Symbol symbol) {
            Num known = numbers.get(symbol);
            if (known == null) {
                throw new IllegalArgumentException(
                        "symbol " + TextNotation.INSTANCE.render(symbol) + " has no number yet");
            }
            return known;
        }
        if (this instanceof Sum e) {
            return new Sum(e.left.with(numbers), e.right.with(numbers));
        }
        if (this instanceof Difference e) {
            return new Difference(e.left.with(numbers), e.right.with(numbers));
        }
        if (this instanceof Product e) {
            return new Product(e.left.with(numbers), e.right.with(numbers));
        }
        if (this instanceof Quotient e) {
            return new Quotient(e.top.with(numbers), e.bottom.with(numbers));
        }
        if (this instanceof Power e) {
            return new Power(e.base.with(numbers), e.exponent);
        }
        if (this instanceof Root e) {
            return new Root(e.of.with(numbers));
        }
        if (this instanceof Ln e) {
            return new Ln(e.of.with(numbers));
        }
        return this instanceof Exp e ? new Exp(e.of.with(numbers)) : this;
    }

    /**
     * Gives the expressions this one is made of.
     *
     * @return its parts, left to right; none for a number or a symbol
     */
    default List<Expression> parts() {
        if (this instanceof Sum e) {
            return List.of(e.left, e.right);
        }
        if (this instanceof Difference e) {
            return List.of(e.left, e.right);
        }
        if (this instanceof Product e) {
            return List.of(e.left, e.right);
        }
        if (this instanceof Quotient e) {
            return List.of(e.top, e.bottom);
        }
        if (this instanceof Power e) {
            return List.of(e.base);
        }
        if (this instanceof Root e) {
            return List.of(e.of);
        }
        if (this instanceof Ln e) {
            return List.of(e.of);
        }
        return this instanceof Exp e ? List.of(e.of) : List.of();
    }

    /**
     * Calculates, taking every number as it is written in its unit.
     *
     * @return the number, in the units the numbers are in
     * @throws IllegalArgumentException if a symbol is left, unlike quantities are added, or the result is not finite
     */
    default double value() {
        return Calculation.of(this).number();
    }
}
