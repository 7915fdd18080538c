package io.github.stoplag.road;

import io.github.stoplag.kernel.DragKernel;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Mass;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.PublishedRange;
import java.util.List;
import java.util.Objects;

/**
 * Rolling resistance and aerodynamic drag that help the brakes.
 *
 * <p>dv/dt = −(a + g C_rr + k v²), k = ρ C_d A / (2 m); s = ln((a₀ + k v₀²) / (a₀ + k v₁²)) / (2 k) with a₀ = a + g
 * C_rr
 *
 * <p>a braking deceleration; C_rr rolling resistance coefficient; ρ air density in kg/m³; C_d A drag area in m²; m
 * mass. Range: C_rr [0, 0.5], ρ [0, 2] kg/m³, C_d A [0, 20] m². Still air, level road: put a grade into the braking
 * deceleration. Without drag ({@link #NONE}) every result equals constant deceleration. Whether a skidding tyre also
 * has rolling resistance is a matter of definition: measured sliding friction already holds it.
 */
public final class RoadLoad {
    /** Neither rolling resistance nor drag. */
    public static final RoadLoad NONE = new RoadLoad(0, 0);

    private static final Catalogue<PublishedRange> PUBLISHED =
            Catalogue.readRanges("road load coefficient", RoadLoad.class, "road_load.csv");

    private final double rollingMps2;
    private final double dragPerM;

    private RoadLoad(double rollingMps2, double dragPerM) {
        this.rollingMps2 = rollingMps2;
        this.dragPerM = dragPerM;
    }

    /**
     * Makes the road load of a vehicle.
     *
     * @param mass the vehicle's mass m
     * @param dragAreaM2 the drag coefficient times the frontal area C_d A in m²
     * @param airDensityKgPerM3 the air density ρ in kg/m³; 1.225 in the standard atmosphere at sea level
     * @param rollingResistanceRatio the rolling resistance coefficient C_rr
     * @return the road load
     * @throws IllegalArgumentException if an input is out of range or the mass is 0
     */
    public static RoadLoad of(Mass mass, double dragAreaM2, double airDensityKgPerM3, double rollingResistanceRatio) {
        Check.inRange("drag area", dragAreaM2, 0, 20, "m²");
        Check.inRange("air density", airDensityKgPerM3, 0, 2, "kg/m³");
        Check.inRange("rolling resistance coefficient", rollingResistanceRatio, 0, 0.5, "");
        return new RoadLoad(
                rollingResistanceRatio * Deceleration.STANDARD_GRAVITY_MPS2,
                airDensityKgPerM3 * dragAreaM2 / (2 * mass.inKg()));
    }

    /**
     * Lists published rolling resistance and drag coefficients.
     *
     * @return the rows of the table in order
     */
    public static List<PublishedRange> published() {
        return PUBLISHED.list();
    }

    /**
     * Finds a published rolling resistance or drag coefficient.
     *
     * @param id the name of the row
     * @return the coefficient
     * @throws IllegalArgumentException if no row has this name; the message offers the nearest
     */
    public static PublishedRange published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
    }

    /**
     * Gives the drag coefficient of the equation of motion.
     *
     * @return k in 1/m
     */
    public double dragPerM() {
        return dragPerM;
    }

    /**
     * Gives the deceleration by rolling resistance.
     *
     * @return g C_rr
     */
    public Deceleration rolling() {
        return Deceleration.mps2(rollingMps2);
    }

    /**
     * Gives the whole deceleration at a speed.
     *
     * @param braking the braking deceleration a
     * @param speed the speed v
     * @return a + g C_rr + k v²
     */
    public Deceleration decelerationAt(Deceleration braking, Speed speed) {
        Objects.requireNonNull(braking, "braking");
        return Deceleration.mps2(atRest(braking) + dragPerM * speed.inMps() * speed.inMps());
    }

    /**
     * Gives the distance from one speed down to another.
     *
     * @param from the speed v₀ at the start
     * @param to the speed v₁ at the end, not above v₀
     * @param braking the braking deceleration a; zero for coasting
     * @return the distance
     * @throws IllegalArgumentException if v₁ exceeds v₀, or the vehicle does not slow at v₁
     */
    public Distance brakingDistance(Speed from, Speed to, Deceleration braking) {
        Objects.requireNonNull(braking, "braking");
        Objects.requireNonNull(from, "from");
        return Distance.metres(DragKernel.distanceM(from.inMps(), to.inMps(), atRest(braking), dragPerM));
    }

    /**
     * Gives the time from one speed down to another.
     *
     * @param from the speed v₀ at the start
     * @param to the speed v₁ at the end, not above v₀
     * @param braking the braking deceleration a; zero for coasting
     * @return the time
     * @throws IllegalArgumentException if v₁ exceeds v₀, or the vehicle does not slow at v₁
     */
    public TimeSpan brakingTime(Speed from, Speed to, Deceleration braking) {
        Objects.requireNonNull(braking, "braking");
        Objects.requireNonNull(from, "from");
        return TimeSpan.seconds(DragKernel.timeS(from.inMps(), to.inMps(), atRest(braking), dragPerM));
    }

    @Override
    public String toString() {
        return "rolling resistance " + rolling() + ", drag " + Numbers.text(dragPerM) + " 1/m";
    }

    private double atRest(Deceleration braking) {
        return braking.inMps2() + rollingMps2;
    }
}
