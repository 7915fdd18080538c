package io.github.stoplag.chance;

/**
 * The standard normal distribution from {@code StrictMath} and plain arithmetic, so that a plan's values have the same
 * bits on every JDK; a library that calls {@code Math.exp} gives no such promise.
 *
 * <p>Internal: it is public for the library's other packages, not for users.
 */
// the coefficients stand as published, with more digits than a double holds
@SuppressWarnings("FloatingPointLiteralPrecision")
public final class StandardNormal {
    private static final double[] A = {
        3.3871328727963666080, 1.3314166789178437745e2, 1.9715909503065514427e3, 1.3731693765509461125e4,
        4.5921953931549871457e4, 6.7265770927008700853e4, 3.3430575583588128105e4, 2.5090809287301226727e3
    };
    private static final double[] B = {
        1,
        4.2313330701600911252e1,
        6.8718700749205790830e2,
        5.3941960214247511077e3,
        2.1213794301586595867e4,
        3.9307895800092710610e4,
        2.8729085735721942674e4,
        5.2264952788528545610e3
    };
    private static final double[] C = {
        1.42343711074968357734, 4.63033784615654529590, 5.76949722146069140550, 3.64784832476320460504,
        1.27045825245236838258, 2.41780725177450611770e-1, 2.27238449892691845833e-2, 7.74545014278341407640e-4
    };
    private static final double[] D = {
        1,
        2.05319162663775882187,
        1.67638483018380384940,
        6.89767334985100004550e-1,
        1.48103976427480074590e-1,
        1.51986665636164571966e-2,
        5.47593808499534494600e-4,
        1.05075007164441684324e-9
    };
    private static final double[] E = {
        6.65790464350110377720, 5.46378491116411436990, 1.78482653991729133580, 2.96560571828504891230e-1,
        2.65321895265761230930e-2, 1.24266094738807843860e-3, 2.71155556874348757815e-5, 2.01033439929228813265e-7
    };
    private static final double[] F = {
        1,
        5.99832206555887937690e-1,
        1.36929880922735805310e-1,
        1.48753612908506148525e-2,
        7.86869131145613259100e-4,
        1.84631831751005468180e-5,
        1.42151175831644588870e-7,
        2.04426310338993978564e-15
    };
    private static final double SQRT_TWO_PI = 2.5066282746310002;

    private StandardNormal() {}

    /**
     * The quantile z with Φ(z) = p: Wichura's algorithm AS 241, PPND16, Applied Statistics 37, 1988 (coefficients from
     * memory, tested against an independent implementation). Infinite at 0 and 1.
     *
     * @param probability the share below, [0, 1]
     * @return the quantile z
     */
    public static double quantile(double probability) {
        double q = probability - 0.5;
        if (Math.abs(q) <= 0.425) {
            double r = 0.180625 - q * q;
            return q * polynomial(A, r) / polynomial(B, r);
        }
        double z = lowerTail(Math.min(probability, 1 - probability));
        return q < 0 ? z : -z;
    }

    /** The quantile of 1 − q, without forming the difference. */
    static double upperQuantile(double q) {
        return -quantile(q);
    }

    private static double lowerTail(double p) {
        // rounding alone can lead below 0
        if (p <= 0) {
            return Double.NEGATIVE_INFINITY;
        }
        double r = StrictMath.sqrt(-StrictMath.log(p));
        if (r <= 5) {
            return -polynomial(C, r - 1.6) / polynomial(D, r - 1.6);
        }
        return -polynomial(E, r - 5) / polynomial(F, r - 5);
    }

    private static double polynomial(double[] coefficients, double x) {
        double sum = 0;
        for (int i = coefficients.length - 1; i >= 0; i--) {
            sum = sum * x + coefficients[i];
        }
        return sum;
    }

    /**
     * Φ(x): ½ + φ(x) (x + x³/3 + x⁵/15 + …) in the middle, Laplace's continued fraction for Mills' ratio in the tails.
     *
     * @param value the value x
     * @return the share below it
     */
    public static double cdf(double value) {
        double x = value;
        double density = StrictMath.exp(-0.5 * x * x) / SQRT_TWO_PI;
        if (Math.abs(x) > 3) {
            double fraction = 0;
            for (int k = 120; k >= 1; k--) {
                fraction = k / (Math.abs(x) + fraction);
            }
            double tail = density / (Math.abs(x) + fraction);
            return x < 0 ? tail : 1 - tail;
        }
        double term = x;
        double sum = x;
        for (int k = 3; Math.abs(term) > 1e-17 * Math.abs(sum); k += 2) {
            term *= x * x / k;
            sum += term;
        }
        return 0.5 + density * sum;
    }
}
