package io.github.stoplag.worked;

import static io.github.stoplag.worked.Expression.number;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.following.BrakingVehicle;
import io.github.stoplag.following.Chain;
import io.github.stoplag.following.ChainLink;
import io.github.stoplag.following.GapNeeded;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caution;
import io.github.stoplag.worked.Expression.Symbol;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Worked solutions on a chain of equally fast vehicles whose drivers each see only the stop lamp ahead: when who
 * brakes, the gap needed down the line, who touches whom.
 *
 * <pre>
 *   P₁ = 0      Pᵢ = Pᵢ₋₁ + Lᵢ₋₁ + Rᵢ      gᵢ = v Tᵢ + v²/(2aᵢ) − v²/(2aᵢ₋₁),  Tᵢ = Lᵢ₋₁ + Rᵢ
 *   where aᵢ &gt; aᵢ₋₁ and the speeds become equal while both move: gᵢ = aᵢ aᵢ₋₁ Tᵢ²/(2(aᵢ − aᵢ₋₁))
 * </pre>
 *
 * <p>Symbols: P moment of the pedal, L latency of a lamp, R reaction time, T delay behind the vehicle ahead [s]; v
 * speed [m/s]; a deceleration [m/s²]; g gap needed [m]. Vehicle 1 is the first. Brakes act at once with the pedal.
 *
 * <p>Source: kinematics; see {@link Chain}.
 *
 * @param speed the speed v of all, above 0
 * @param vehicles the vehicles, the first in front, 2 to 20
 */
public record WorkedChain(Given speed, List<Vehicle> vehicles) {
    private static final Caution PRESCRIBED = new Caution(
            "chain",
            "The motions are those of vehicles that nobody touches. From the first contact on the others move"
                    + " otherwise.");

    /**
     * One vehicle of the chain.
     *
     * @param deceleration its deceleration, above 0
     * @param reaction its driver's reaction time to the lamp ahead, in [0, 30] s; the first driver's is not used
     * @param lampLatency from its pedal to the moment its lamp can be seen, in [0, 30] s; the last one's is not used
     * @param gap the gap to the vehicle ahead at first, in [0, 1e5] m; the first one's is not used
     */
    public record Vehicle(Given deceleration, Given reaction, Given lampLatency, Given gap) {
        /**
         * Checks the ranges.
         *
         * @param deceleration its deceleration, above 0
         * @param reaction its driver's reaction time to the lamp ahead, in [0, 30] s; the first driver's is not used
         * @param lampLatency from its pedal to the moment its lamp can be seen, in [0, 30] s; the last one's is not
         *     used
         * @param gap the gap to the vehicle ahead at first, in [0, 1e5] m; the first one's is not used
         * @throws IllegalArgumentException if a quantity is out of range
         */
        public Vehicle {
            Objects.requireNonNull(deceleration, "deceleration");
            Objects.requireNonNull(gap, "gap");
            Objects.requireNonNull(lampLatency, "lampLatency");
            Objects.requireNonNull(reaction, "reaction");
            Ranges.BRAKING.check(deceleration.in(Unit.MPS2));
            Ranges.REACTION.check(reaction.in(Unit.SECOND));
            Ranges.LATENCY.check(lampLatency.in(Unit.SECOND));
            Ranges.GAP.check(gap.in(Unit.METRE));
        }
    }

    /**
     * Checks the ranges.
     *
     * @param speed the speed v of all, above 0
     * @param vehicles the vehicles, the first in front, 2 to 20
     * @throws IllegalArgumentException if speed or number of vehicles is out of range
     */
    public WorkedChain {
        Objects.requireNonNull(speed, "speed");
        Ranges.MOVING.check(speed.in(Unit.MPS));
        Check.inRange("number of vehicles in a chain", vehicles.size(), 2, 20, "");
        vehicles = Check.copyOf("vehicles", vehicles);
    }

    /**
     * Works when a driver presses the pedal, counted from the pedal of the first.
     *
     * @param style units and digits
     * @param vehicle which vehicle, 2 for the second
     * @return the solution
     * @throws IllegalArgumentException if there is no such vehicle
     */
    public Solution pedalTime(Style style, int vehicle) {
        Check.inRange("vehicle of the chain", vehicle, 2, vehicles.size(), "");
        Working w =
                Working.of(style, "Braking down a chain of vehicles", "time at which vehicle " + vehicle + " brakes");
        assume(w);
        Expression all = latency(w, 1).plus(reaction(w, 2));
        Symbol pressed = w.step("P_2", "pedal of vehicle 2 after that of vehicle 1", all);
        for (int i = 3; i <= vehicle; i++) {
            Expression later = latency(w, i - 1).plus(reaction(w, i));
            all = all.plus(later);
            pressed = w.step("P_" + i, "pedal of vehicle " + i + " after that of vehicle 1", pressed.plus(later));
        }
        w.checkBy(pressed, "all latencies and reaction times at once", all);
        w.checkAgainst(
                pressed,
                "chain of the model",
                Amount.of(chain().pedalPressed(vehicle - 1).orElseThrow().inSeconds(), Unit.SECOND));
        w.caution(WorkedStop.NO_PROOF);
        return w.answer(pressed, Unit.SECOND);
    }

    /**
     * Works the gap a vehicle needs behind the one ahead so that the two just do not touch.
     *
     * @param style units and digits
     * @param vehicle which vehicle, 2 for the second
     * @return the solution
     * @throws IllegalArgumentException if there is no such vehicle
     */
    public Solution gapNeeded(Style style, int vehicle) {
        Check.inRange("vehicle of the chain", vehicle, 2, vehicles.size(), "");
        Working w = Working.of(style, "Gap needed in a chain of vehicles", "gap that vehicle " + vehicle + " needs");
        Symbol v = w.given("v", "speed of every vehicle", speed);
        assume(w);
        w.assume("all go equally fast until they brake, so that only the delay behind the one ahead counts");
        deceleration(w, vehicle - 1);
        Symbol needed = needed(w, v, vehicle);
        w.checkAgainst(needed, "chain of the model", neededByModel(vehicle));
        w.caution(WorkedStop.NO_PROOF);
        return w.answer(needed, style.units().length());
    }

    /**
     * Works what is left of every gap and who touches whom: each gap less the gap needed.
     *
     * @param style units and digits
     * @return the solution; it answers the smallest gap left, negative by what is missing where two touch
     */
    public Solution tightest(Style style) {
        Working w = Working.of(style, "Tightest place in a chain of vehicles", "smallest gap left in the chain");
        Symbol v = w.given("v", "speed of every vehicle", speed);
        assume(w);
        deceleration(w, 1);
        List<Symbol> left = new ArrayList<>();
        for (int i = 2; i <= vehicles.size(); i++) {
            Symbol gap = w.given("G_" + i, "gap ahead of vehicle " + i, vehicles.get(i - 1).gap);
            left.add(w.step("r_" + i, "left of the gap ahead of vehicle " + i, gap.minus(needed(w, v, i))));
        }
        Symbol least = Collections.min(left, Comparator.comparingDouble(each -> w.in(each, Unit.METRE)));
        int at = left.indexOf(least) + 2;
        boolean touch = w.in(least, Unit.METRE) < 0;
        Symbol chosen = w.choose(
                "r",
                touch
                        ? "vehicle " + at + " lacks most: it touches vehicle " + (at - 1)
                        : "vehicle " + at + " comes closest to the one ahead, nobody touches",
                least);
        w.checkAgainst(chosen, "chain of the model", leftByModel(at));
        w.caution(WorkedStop.NO_PROOF);
        if (touch) {
            w.caution(PRESCRIBED);
        }
        return w.answer(chosen, style.units().length());
    }

    private static void assume(Working w) {
        w.assume("every driver sees only the lamp of the vehicle ahead, and the brakes act with the pedal");
        w.assume("one straight lane, constant decelerations; vehicle 1 brakes at time 0");
    }

    private Symbol latency(Working w, int i) {
        return w.given("L_" + i, "latency of the lamp of vehicle " + i, vehicles.get(i - 1).lampLatency, Unit.SECOND);
    }

    private Symbol reaction(Working w, int i) {
        return w.given("R_" + i, "reaction time of driver " + i, vehicles.get(i - 1).reaction, Unit.SECOND);
    }

    private Symbol deceleration(Working w, int i) {
        return w.given("a_" + i, "deceleration of vehicle " + i, vehicles.get(i - 1).deceleration);
    }

    /** The gap that vehicle i needs; the deceleration of the one ahead is given before. */
    private Symbol needed(Working w, Symbol v, int i) {
        Symbol ahead = Symbol.of("a_" + (i - 1));
        Symbol own = deceleration(w, i);
        Symbol delay =
                w.step("T_" + i, "delay of vehicle " + i, latency(w, i - 1).plus(reaction(w, i)));
        Symbol standing = w.step(
                "g_" + i,
                "gap vehicle " + i + " needs when both stand",
                v.times(delay)
                        .plus(v.squared().over(number(2).times(own)))
                        .minus(v.squared().over(number(2).times(ahead))));
        if (closestWhileMoving(i)) {
            return w.step(
                    "h_" + i,
                    "gap it needs while both move, which is more",
                    own.times(ahead).times(delay.squared()).over(number(2).times(own.minus(ahead))));
        }
        return w.in(standing, Unit.METRE) < 0
                ? w.choose(
                        "h_" + i,
                        "vehicle " + i + " never gains on the one ahead: any gap is enough",
                        Amount.of(0, w.amount(standing).unit()))
                : standing;
    }

    /** Whether the speeds become equal before the vehicle ahead stands: a T/(a − a₁) below v/a₁. */
    private boolean closestWhileMoving(int i) {
        double ahead = vehicles.get(i - 2).deceleration.in(Unit.MPS2);
        double own = vehicles.get(i - 1).deceleration.in(Unit.MPS2);
        double delayS = vehicles.get(i - 2).lampLatency.in(Unit.SECOND)
                + vehicles.get(i - 1).reaction.in(Unit.SECOND);
        return own > ahead && delayS > 0 && own * delayS / (own - ahead) < speed.in(Unit.MPS) / ahead;
    }

    private Chain chain() {
        return Chain.of(
                IntStream.range(0, vehicles.size()).mapToObj(this::member).toList());
    }

    private Chain.Member member(int index) {
        Vehicle vehicle = vehicles.get(index);
        return Chain.Member.of(
                BrakingVehicle.of(
                        Speed.mps(speed.in(Unit.MPS)),
                        TimeSpan.seconds(index == 0 ? 0 : vehicle.reaction.in(Unit.SECOND)),
                        BrakeResponse.INSTANT,
                        Deceleration.mps2(vehicle.deceleration.in(Unit.MPS2))),
                Distance.metres(index == 0 ? 0 : vehicle.gap.in(Unit.METRE)),
                TimeSpan.seconds(vehicle.lampLatency.in(Unit.SECOND)));
    }

    private Amount neededByModel(int vehicle) {
        return chain().encounter(vehicle - 1).gapNeeded() instanceof GapNeeded.Finite finite
                ? Amount.of(finite.border().inMetres(), Unit.METRE)
                : Amount.of(0, Unit.METRE);
    }

    private Amount leftByModel(int vehicle) {
        return Amount.of(
                vehicles.get(vehicle - 1).gap.in(Unit.METRE)
                        - neededByModel(vehicle).in(Unit.METRE),
                Unit.METRE);
    }

    /**
     * Says which contact comes first, if any, by the model of the chain.
     *
     * @return the number of the vehicle that runs into the one ahead
     */
    public Optional<Integer> firstContact() {
        return chain().firstContact().map(ChainLink::follower).map(index -> index + 1);
    }
}
