package io.github.stoplag.kernel;

/**
 * Friction against speed, slip and side force, in SI doubles: pure functions without checks, for inner loops.
 *
 * <p>Ranges are the caller's duty here; the typed classes of the road package check them.
 */
public final class FrictionKernel {
    private static final double SERIES_BELOW = 0.25;
    private static final int SERIES_TERMS = 14;

    private FrictionKernel() {}

    /**
     * Gives friction at a slip speed by an exponential from a reference speed.
     *
     * <p>μ(v) = μ_r exp((v_r − v) / v_p)
     *
     * @param speedMps the slip speed v in m/s
     * @param referenceRatio the friction μ_r at the reference speed
     * @param referenceMps the reference speed v_r in m/s
     * @param scaleMps the speed constant v_p in m/s, above 0
     * @return the friction coefficient
     */
    public static double exponentialRatio(
            double speedMps, double referenceRatio, double referenceMps, double scaleMps) {
        return referenceRatio * Math.exp((referenceMps - speedMps) / scaleMps);
    }

    /**
     * Gives the length of a locked-wheel skid on a level road whose friction falls exponentially with speed.
     *
     * <p>s = v_p² / (g μ₀) · (h(v₀/v_p) − h(v₁/v_p)), h(x) = x e<sup>x</sup> − (e<sup>x</sup> − 1) = x²/2 + x³/3 + x⁴/8
     * + …, from s = ∫ v dv / (g μ₀ e<sup>−v/v_p</sup>)
     *
     * @param fromMps the speed v₀ at the start in m/s
     * @param toMps the speed v₁ at the end in m/s
     * @param restRatio the friction μ₀ extrapolated to rest
     * @param scaleMps the speed constant v_p in m/s, above 0
     * @param gravityMps2 the acceleration of free fall g in m/s²
     * @return the skid length in m
     */
    public static double exponentialSkidM(
            double fromMps, double toMps, double restRatio, double scaleMps, double gravityMps2) {
        double span = skidIntegral(fromMps / scaleMps) - skidIntegral(toMps / scaleMps);
        return scaleMps * scaleMps / (gravityMps2 * restRatio) * span;
    }

    private static double skidIntegral(double x) {
        if (x > SERIES_BELOW) {
            return x * Math.exp(x) - Math.expm1(x);
        }
        // the two terms cancel for small x; the series Σ xⁿ (n − 1) / n! keeps all digits
        double power = x;
        double sum = 0;
        for (int n = 2; n <= SERIES_TERMS; n++) {
            power *= x / n;
            sum += power * (n - 1);
        }
        return sum;
    }

    /**
     * Gives friction at a wheel slip by the three-coefficient slip curve.
     *
     * <p>μ(λ) = c₁ (1 − e<sup>−c₂ λ</sup>) − c₃ λ
     *
     * @param slipRatio the slip λ, 0 rolling to 1 locked
     * @param c1Ratio the coefficient c₁
     * @param c2Ratio the coefficient c₂
     * @param c3Ratio the coefficient c₃
     * @return the friction coefficient
     */
    public static double slipRatio(double slipRatio, double c1Ratio, double c2Ratio, double c3Ratio) {
        return -c1Ratio * Math.expm1(-c2Ratio * slipRatio) - c3Ratio * slipRatio;
    }

    /**
     * Gives the side friction that a curve and the crossfall ask for.
     *
     * <p>f = (v² κ / g − e) / (1 + e v² κ / g), signed: positive outward of the curve, negative down the crossfall
     *
     * @param speedMps the speed v in m/s
     * @param curvaturePerM the curvature κ = 1/R in 1/m, 0 on a straight
     * @param crossfallRatio the crossfall e, positive where it leans into the curve
     * @param gravityMps2 the acceleration of free fall g in m/s²
     * @return the side friction demanded, over the normal force
     */
    public static double sideDemandRatio(
            double speedMps, double curvaturePerM, double crossfallRatio, double gravityMps2) {
        double lateral = speedMps * speedMps * curvaturePerM / gravityMps2;
        return (lateral - crossfallRatio) / (1 + crossfallRatio * lateral);
    }
}
