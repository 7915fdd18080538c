package io.github.stoplag.kernel;

/**
 * A number as the unevaluated sum of two doubles, about 31 significant digits: Dekker's and Knuth's error-free sums,
 * products by fused multiply-add.
 *
 * @param hi the number rounded to a double
 * @param lo what is left
 */
record DoubleDouble(double hi, double lo) implements Comparable<DoubleDouble> {
    static final DoubleDouble ZERO = new DoubleDouble(0, 0);

    static DoubleDouble of(double value) {
        return new DoubleDouble(value, 0);
    }

    private static DoubleDouble quickSum(double large, double small) {
        double sum = large + small;
        return new DoubleDouble(sum, small - (sum - large));
    }

    DoubleDouble plus(DoubleDouble other) {
        double sum = hi + other.hi;
        double part = sum - hi;
        double error = (hi - (sum - part)) + (other.hi - part);
        double lowSum = lo + other.lo;
        double lowPart = lowSum - lo;
        double lowError = (lo - (lowSum - lowPart)) + (other.lo - lowPart);
        DoubleDouble first = quickSum(sum, error + lowSum);
        return quickSum(first.hi, first.lo + lowError);
    }

    DoubleDouble negated() {
        return new DoubleDouble(-hi, -lo);
    }

    DoubleDouble minus(DoubleDouble other) {
        return plus(other.negated());
    }

    DoubleDouble times(DoubleDouble other) {
        double product = hi * other.hi;
        double error = Math.fma(hi, other.hi, -product);
        return quickSum(product, error + (hi * other.lo + lo * other.hi));
    }

    DoubleDouble times(double factor) {
        return times(of(factor));
    }

    DoubleDouble over(DoubleDouble other) {
        double first = hi / other.hi;
        DoubleDouble rest = minus(other.times(first));
        double second = rest.hi / other.hi;
        double third = rest.minus(other.times(second)).hi / other.hi;
        return quickSum(first, second).plus(of(third));
    }

    /** One Newton step from the double's root doubles the digits. */
    DoubleDouble squareRoot() {
        if (hi <= 0) {
            return ZERO;
        }
        DoubleDouble root = of(Math.sqrt(hi));
        return root.plus(minus(root.times(root)).over(root.times(2)));
    }

    int sign() {
        return (int) Math.signum(hi);
    }

    @Override
    public int compareTo(DoubleDouble other) {
        return hi != other.hi ? Double.compare(hi, other.hi) : Double.compare(lo, other.lo);
    }
}
