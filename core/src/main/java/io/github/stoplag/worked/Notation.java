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
import io.github.stoplag.worked.Expression.Symbol;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/** One way to write an expression; the walk and the brackets are common, the signs are each notation's own. */
abstract class Notation {

    private static final int SUM = 1;
    private static final int PRODUCT = 2;
    private static final int POWER = 3;
    private static final int ATOM = 4;

    abstract String number(String digits, int exponent, Unit unit);

    abstract String symbol(Symbol symbol);

    abstract String sum(String left, String right);

    abstract String difference(String left, String right);

    abstract String product(String left, String right, boolean betweenNumbers);

    abstract String quotient(String top, String bottom);

    abstract String power(String base, int exponent);

    abstract String root(String of);

    abstract String function(String name, String of);

    abstract String group(String inner);

    abstract String equation(String left, boolean exact, String right);

    /** Whether a fraction is set in two lines, so that its parts need no brackets. */
    abstract boolean stacksFractions();

    final String render(Expression expression) {
        return render(expression, SUM);
    }

    /**
     * A term of a sum that is written apart.
     *
     * @param sign the sign before it, empty for the first
     * @param text the term
     */
    record Term(String sign, String text) {}

    /** The terms of the outermost sum in order; together they are what {@link #render(Expression)} writes. */
    final List<Term> terms(Expression expression) {
        List<Term> terms = new ArrayList<>();
        if (expression instanceof Sum e) {
            terms.addAll(terms(e.left()));
            terms.add(new Term("+", render(e.right(), startsNegative(e.right()) ? ATOM : SUM)));
        } else if (expression instanceof Difference e) {
            terms.addAll(terms(e.left()));
            terms.add(new Term("\u2212", render(e.right(), startsNegative(e.right()) ? ATOM : PRODUCT)));
        } else {
            terms.add(new Term("", render(expression)));
        }
        return terms;
    }

    private String render(Expression expression, int least) {
        String text = write(expression);
        return precedence(expression) < least ? group(text) : text;
    }

    private String write(Expression expression) {
        if (expression instanceof Num e) {
            return number(e);
        }
        if (expression instanceof Symbol e) {
            return symbol(e);
        }
        if (expression instanceof Sum e) {
            return sum(render(e.left(), SUM), render(e.right(), startsNegative(e.right()) ? ATOM : SUM));
        }
        if (expression instanceof Difference e) {
            return difference(render(e.left(), SUM), render(e.right(), startsNegative(e.right()) ? ATOM : PRODUCT));
        }
        if (expression instanceof Product e) {
            boolean grouped = e.right() instanceof Quotient && !stacksFractions();
            return product(
                    render(e.left(), e.left() instanceof Quotient && !stacksFractions() ? POWER : PRODUCT),
                    render(e.right(), grouped || startsNegative(e.right()) ? POWER : PRODUCT),
                    !hasSymbols(e.right()));
        }
        if (expression instanceof Quotient e) {
            return stacksFractions()
                    ? quotient(render(e.top()), render(e.bottom()))
                    : quotient(render(e.top(), PRODUCT), render(e.bottom(), bottomLeast(e.bottom())));
        }
        if (expression instanceof Power e) {
            return power(render(e.base(), powerLeast(e.base())), e.exponent());
        }
        if (expression instanceof Root e) {
            return root(render(e.of()));
        }
        return expression instanceof Ln e
                ? function("ln", render(e.of()))
                : function("exp", render(((Exp) expression).of()));
    }

    private static int precedence(Expression e) {
        if (e instanceof Sum || e instanceof Difference) {
            return SUM;
        }
        if (e instanceof Product || e instanceof Quotient) {
            return PRODUCT;
        }
        if (e instanceof Num n) {
            return n.number().signum() < 0 ? PRODUCT : POWER;
        }
        return e instanceof Power ? POWER : ATOM;
    }

    private static int bottomLeast(Expression bottom) {
        // 20 m / 3 s would leave the second unit in doubt
        return bottom instanceof Num n && n.unit() != Unit.NONE ? ATOM : POWER;
    }

    private static int powerLeast(Expression base) {
        return base instanceof Num n && n.unit() == Unit.NONE && n.number().signum() >= 0 ? POWER : ATOM;
    }

    private static boolean hasSymbols(Expression e) {
        return e instanceof Symbol || e.parts().stream().anyMatch(Notation::hasSymbols);
    }

    private static boolean startsNegative(Expression e) {
        return leading(e) instanceof Num n && n.number().signum() < 0;
    }

    private static Expression leading(Expression e) {
        if (e instanceof Product p) {
            return leading(p.left());
        }
        if (e instanceof Quotient q) {
            return leading(q.top());
        }
        if (e instanceof Sum s) {
            return leading(s.left());
        }
        if (e instanceof Difference d) {
            return leading(d.left());
        }
        return e;
    }

    private String number(Num e) {
        BigDecimal n = e.number();
        int exponent = n.signum() == 0 ? 0 : n.precision() - n.scale() - 1;
        if (exponent >= -4 && exponent < 7) {
            return number(n.toPlainString().replace('-', '\u2212'), 0, e.unit());
        }
        return number(n.movePointLeft(exponent).toPlainString().replace('-', '\u2212'), exponent, e.unit());
    }
}
