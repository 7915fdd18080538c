package io.github.stoplag.road;

import io.github.stoplag.kernel.FrictionKernel;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Friction against wheel slip: rising to a peak, then falling to the value of the locked wheel.
 *
 * <p>μ(λ) = c₁ (1 − e<sup>−c₂ λ</sup>) − c₃ λ; peak at λ_p = ln(c₁ c₂ / c₃) / c₂, μ_p = c₁ − (c₃ / c₂) (1 + ln(c₁ c₂ /
 * c₃)); locked μ_b = c₁ (1 − e<sup>−c₂</sup>) − c₃
 *
 * <p>λ slip, 0 rolling to 1 locked. Range: c₁ (0, 2], c₂ (0, 1000], c₃ [0, c₁ (1 − e<sup>−c₂</sup>)]. If the formula's
 * peak lies beyond λ = 1, the locked wheel is the peak. The fall with speed and wetness, exp(−c₄ λ v), is left out: its
 * coefficient was seen only as a range.
 *
 * <p>Source: M. Burckhardt, Fahrwerktechnik: Radschlupf-Regelsysteme, Vogel 1993, through copies.
 *
 * <pre>{@code
 * SlipCurve.published("dry asphalt").peak(); // 1.17002
 * SlipCurve.published("dry asphalt").locked(); // 0.7601
 * }</pre>
 */
public final class SlipCurve {
    private static final Catalogue<SlipCurve> PUBLISHED =
            Catalogue.read("slip curve", SlipCurve.class, "slip_curves.csv", SlipCurve::read, SlipCurve::surface);

    private final String surface;
    private final double c1;
    private final double c2;
    private final double c3;
    private final Source source;

    private SlipCurve(String surface, double c1, double c2, double c3, Source source) {
        this.surface = surface;
        this.c1 = Check.above("slip curve coefficient c1", c1, 0, 2, "");
        this.c2 = Check.above("slip curve coefficient c2", c2, 0, 1000, "");
        this.c3 = Check.inRange("slip curve coefficient c3", c3, 0, -c1 * Math.expm1(-c2), "");
        this.source = source;
    }

    /**
     * Makes a slip curve from its coefficients.
     *
     * @param surface the surface in words
     * @param c1 the height c₁ the curve would reach without its fall
     * @param c2 the steepness c₂ of its rise
     * @param c3 the fall c₃ over the whole slip
     * @param source where the coefficients come from
     * @return the curve
     * @throws IllegalArgumentException if a coefficient is out of range, or the locked friction would be below 0
     */
    public static SlipCurve of(String surface, double c1, double c2, double c3, Source source) {
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(surface, "surface");
        return new SlipCurve(surface, c1, c2, c3, source);
    }

    /**
     * Finds a published slip curve.
     *
     * @param surface the surface, for example {@code wet asphalt}
     * @return the curve
     * @throws IllegalArgumentException if no curve is published here for it; the message offers the nearest
     */
    public static SlipCurve published(String surface) {
        Objects.requireNonNull(surface, "surface");
        return PUBLISHED.get(surface);
    }

    /**
     * Lists the published slip curves.
     *
     * @return the rows of the table in order
     */
    public static List<SlipCurve> published() {
        return PUBLISHED.list();
    }

    private static SlipCurve read(Table table, Map<String, String> row) {
        return new SlipCurve(
                table.text(row, "surface"),
                table.number(row, "c1"),
                table.number(row, "c2"),
                table.number(row, "c3"),
                table.source(row));
    }

    /**
     * Gives the surface in words.
     *
     * @return the surface
     */
    public String surface() {
        return surface;
    }

    /**
     * Gives the friction at a slip.
     *
     * @param slip the slip λ, 0 rolling to 1 locked
     * @return the friction coefficient
     * @throws IllegalArgumentException if the slip is not in [0, 1]
     */
    public FrictionCoefficient at(double slip) {
        Check.inRange("slip", slip, 0, 1, "");
        return FrictionCoefficient.of(FrictionKernel.slipRatio(slip, c1, c2, c3));
    }

    /**
     * Gives the slip at which friction is largest.
     *
     * @return the slip λ_p
     */
    public double slipAtPeak() {
        if (c1 * c2 * Math.exp(-c2) >= c3) {
            return 1;
        }
        return Math.max(0, Math.log(c1 * c2 / c3) / c2);
    }

    /**
     * Gives the largest friction, which anti-lock brakes seek.
     *
     * @return the friction coefficient at the peak
     */
    public FrictionCoefficient peak() {
        return at(slipAtPeak());
    }

    /**
     * Gives the friction of the locked wheel.
     *
     * @return the friction coefficient at λ = 1
     */
    public FrictionCoefficient locked() {
        return at(1);
    }

    /**
     * Gives the mean friction that an anti-lock system draws from this road.
     *
     * <p>μ = ε μ_p
     *
     * @param adhesionUtilization the share ε of the peak that the system uses, (0, 1]; UN R13-H asks for at least 0.75
     *     (from memory)
     * @return the friction coefficient
     * @throws IllegalArgumentException if the share is not in (0, 1]
     */
    public FrictionCoefficient antiLock(double adhesionUtilization) {
        Check.above("adhesion utilization", adhesionUtilization, 0, 1, "");
        return FrictionCoefficient.of(adhesionUtilization * peak().inRatio());
    }

    /**
     * Gives where the coefficients come from.
     *
     * @return the source
     */
    public Source source() {
        return source;
    }
}
