package io.github.stoplag.worked;

import io.github.stoplag.worked.Expression.Difference;
import io.github.stoplag.worked.Expression.Exp;
import io.github.stoplag.worked.Expression.Ln;
import io.github.stoplag.worked.Expression.Num;
import io.github.stoplag.worked.Expression.Power;
import io.github.stoplag.worked.Expression.Product;
import io.github.stoplag.worked.Expression.Quotient;
import io.github.stoplag.worked.Expression.Root;
import io.github.stoplag.worked.Expression.Sum;

/** Works out an expression of numbers, dimensions alongside. */
final class Calculation {
    /**
     * What a calculation gives.
     *
     * @param number the number in coherent units
     * @param dimension what it measures
     */
    record Value(double number, Dimension dimension) {}

    private Calculation() {}

    static Value of(Expression expression) {
        Value value = calculate(expression);
        if (!(Math.abs(value.number) <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException(
                    TextNotation.INSTANCE.render(expression) + " has no finite value, got " + value.number);
        }
        return value;
    }

    /** Calculates after making sure that every number is in a unit that needs no factor. */
    static Value of(UnitSystem units, Expression expression) {
        requireCoherent(units, expression);
        return of(expression);
    }

    private static void requireCoherent(UnitSystem units, Expression expression) {
        if (expression instanceof Num e && !units.isCoherent(e.unit())) {
            throw new IllegalArgumentException("a formula in " + units + " units needs "
                    + units.coherent(e.unit().dimension()).symbol() + ", got " + TextNotation.INSTANCE.render(e));
        }
        expression.parts().forEach(part -> requireCoherent(units, part));
    }

    private static Value calculate(Expression expression) {
        if (expression instanceof Num e) {
            return new Value(e.number().doubleValue(), e.unit().dimension());
        }
        if (expression instanceof Sum e) {
            return sum(expression, calculate(e.left()), calculate(e.right()), 1);
        }
        if (expression instanceof Difference e) {
            return sum(expression, calculate(e.left()), calculate(e.right()), -1);
        }
        if (expression instanceof Product e) {
            Value left = calculate(e.left());
            Value right = calculate(e.right());
            return new Value(left.number * right.number, left.dimension.times(right.dimension));
        }
        if (expression instanceof Quotient e) {
            Value top = calculate(e.top());
            Value bottom = calculate(e.bottom());
            return new Value(top.number / bottom.number, top.dimension.over(bottom.dimension));
        }
        if (expression instanceof Power e) {
            Value base = calculate(e.base());
            return new Value(Math.pow(base.number, e.exponent()), base.dimension.power(e.exponent()));
        }
        if (expression instanceof Root e) {
            Value of = calculate(e.of());
            return new Value(Math.sqrt(of.number), of.dimension.root());
        }
        if (expression instanceof Ln e) {
            return new Value(Math.log(plain(expression, e.of())), Dimension.NONE);
        }
        if (expression instanceof Exp e) {
            return new Value(Math.exp(plain(expression, e.of())), Dimension.NONE);
        }
        throw new IllegalArgumentException("symbol " + TextNotation.INSTANCE.render(expression) + " has no number yet");
    }

    private static Value sum(Expression whole, Value left, Value right, int sign) {
        if (!left.dimension.equals(right.dimension)) {
            throw new IllegalArgumentException("only like quantities can be added or subtracted, got " + left.dimension
                    + " and " + right.dimension + " in " + TextNotation.INSTANCE.render(whole));
        }
        return new Value(left.number + sign * right.number, left.dimension);
    }

    private static double plain(Expression whole, Expression argument) {
        Value value = calculate(argument);
        if (!value.dimension.equals(Dimension.NONE)) {
            throw new IllegalArgumentException("a logarithm or exponential needs a plain number, got " + value.dimension
                    + " in " + TextNotation.INSTANCE.render(whole));
        }
        return value.number;
    }
}
