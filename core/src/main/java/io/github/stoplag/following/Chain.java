package io.github.stoplag.following;

import io.github.stoplag.braking.StopEvidence;
import io.github.stoplag.kernel.GapEvent;
import io.github.stoplag.kernel.GapKernel;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A chain of vehicles on one lane, each driver seeing only the stop lamp of the vehicle ahead.
 *
 * <pre>
 *   P₀ = 0      Pᵢ = Pᵢ₋₁ + Lᵢ₋₁ + Rᵢ
 * </pre>
 *
 * <p>Pᵢ the moment vehicle i's brake pedal is pressed, Lᵢ the latency of its lamp, Rᵢ its driver's reaction time [s].
 * The switch point: a lamp's circuit closes when the pedal is first pressed, before the brakes act; L runs from there
 * to the moment the driver behind can detect the light, so switch travel, wiring, light source and eye all belong to L.
 * Delays accumulate along the chain. Vehicle i's deceleration starts its brake dead time after Pᵢ; for the first
 * vehicle, as in {@link Pair}, its reaction time comes on top and delays its brakes, not its lamp.
 *
 * <p>A vehicle of deceleration 0 does not respond: its pedal is not pressed, its lamp stays dark, and the drivers
 * behind it see no cue and do not brake either.
 *
 * <p><b>What is not modelled.</b> All motions are prescribed, as if nobody touched anybody. The chain's earliest
 * contact is exact; motion after a contact is not modelled, see {@link ChainLink#undisturbed()}.
 *
 * <p>Range: 2 to 1e6 vehicles, gaps in [0, 1e5] m, latencies in [0, 30] s. Source: kinematics; see {@link GapKernel}.
 */
public final class Chain implements Evident {
    private final List<Member> members;
    private final double[] pedalS;

    private Chain(List<Member> members) {
        this.members = members;
        this.pedalS = pedals(members);
    }

    /**
     * One vehicle of a chain.
     *
     * @param vehicle its speed, driver and brakes
     * @param gap the gap to the vehicle ahead at time 0, in [0, 1e5] m; for the first vehicle it must be 0
     * @param lampLatency from its pedal being pressed to the moment its lamp can be detected, in [0, 30] s
     * @param lampEvidence what the lamp's latency rests on
     */
    public record Member(BrakingVehicle vehicle, Distance gap, TimeSpan lampLatency, Evidence lampEvidence) {
        /**
         * Checks the ranges.
         *
         * @param vehicle its speed, driver and brakes
         * @param gap the gap to the vehicle ahead at time 0, in [0, 1e5] m; for the first vehicle it must be 0
         * @param lampLatency from its pedal being pressed to the moment its lamp can be detected, in [0, 30] s
         * @param lampEvidence what the lamp's latency rests on
         * @throws IllegalArgumentException if gap or latency is out of range
         */
        public Member {
            Objects.requireNonNull(gap, "gap");
            Objects.requireNonNull(lampLatency, "lampLatency");
            Objects.requireNonNull(lampEvidence, "lampEvidence");
            Objects.requireNonNull(vehicle, "vehicle");
            Ranges.GAP.check(gap.inMetres());
            Ranges.LATENCY.check(lampLatency.inSeconds());
        }

        /**
         * Makes a vehicle whose lamp's latency is given without a source.
         *
         * @param vehicle its speed, driver and brakes
         * @param gap the gap to the vehicle ahead at time 0, in [0, 1e5] m; for the first vehicle it must be 0
         * @param lampLatency from its pedal being pressed to the moment its lamp can be detected, in [0, 30] s
         * @return the member
         * @throws IllegalArgumentException if gap or latency is out of range
         */
        public static Member of(BrakingVehicle vehicle, Distance gap, TimeSpan lampLatency) {
            Objects.requireNonNull(gap, "gap");
            Objects.requireNonNull(lampLatency, "lampLatency");
            Objects.requireNonNull(vehicle, "vehicle");
            return new Member(vehicle, gap, lampLatency, Evidence.none());
        }

        /**
         * Gives the same vehicle with a lamp that was asked when it is seen.
         *
         * @param lamp when the lamp is seen
         * @return the vehicle
         * @throws java.util.NoSuchElementException if the lamp is never seen
         * @throws IllegalArgumentException if it is seen later than after 30 s
         */
        public Member withLamp(Detection lamp) {
            Objects.requireNonNull(lamp, "lamp");
            return new Member(vehicle, gap, lamp.orElseThrow(), lamp.evidence());
        }

        boolean responds() {
            return vehicle.deceleration().inMps2() > 0;
        }
    }

    /**
     * Makes a chain.
     *
     * @param members the vehicles, the foremost first
     * @return the chain
     * @throws IllegalArgumentException if there are not 2 to 1e6 vehicles or the first has a gap ahead
     */
    public static Chain of(List<Member> members) {
        Objects.requireNonNull(members, "members");
        Check.inRange("number of vehicles in a chain", members.size(), 2, 1e6, "");
        Check.inRange("gap ahead of the first vehicle", members.get(0).gap().inMetres(), 0, 0, "m");
        return new Chain(List.copyOf(members));
    }

    /**
     * Makes a chain of equal vehicles, the first of which brakes without a reaction time.
     *
     * @param vehicles how many, in [2, 1e6]
     * @param each each vehicle
     * @param gap each gap
     * @param lampLatency each lamp's latency
     * @return the chain
     * @throws IllegalArgumentException if a value is out of range
     */
    public static Chain uniform(int vehicles, BrakingVehicle each, Distance gap, TimeSpan lampLatency) {
        Objects.requireNonNull(each, "each");
        Objects.requireNonNull(gap, "gap");
        Objects.requireNonNull(lampLatency, "lampLatency");
        Check.inRange("number of vehicles in a chain", vehicles, 2, 1e6, "");
        BrakingVehicle first = each.withReaction(TimeSpan.seconds(0));
        List<Member> members = new ArrayList<>(vehicles);
        members.add(Member.of(first, Distance.metres(0), lampLatency));
        members.addAll(Collections.nCopies(vehicles - 1, Member.of(each, gap, lampLatency)));
        return of(members);
    }

    /**
     * Gives the same chain with another lamp on one vehicle, such as one LED among filament lamps.
     *
     * @param index the vehicle, 0 for the first
     * @param latency its lamp's new latency
     * @return the chain
     * @throws IllegalArgumentException if there is no such vehicle or the latency is out of range
     */
    public Chain withLampLatency(int index, TimeSpan latency) {
        Objects.requireNonNull(latency, "latency");
        List<Member> changed = new ArrayList<>(members);
        Member old = changed.get(checked(index));
        changed.set(index, Member.of(old.vehicle(), old.gap(), latency));
        return new Chain(List.copyOf(changed));
    }

    private static double[] pedals(List<Member> members) {
        double[] pedalS = new double[members.size()];
        double seenS = members.get(0).responds() ? members.get(0).lampLatency().inSeconds() : Double.POSITIVE_INFINITY;
        pedalS[0] = members.get(0).responds() ? 0 : Double.POSITIVE_INFINITY;
        for (int i = 1; i < pedalS.length; i++) {
            Member member = members.get(i);
            double pressedS = seenS + member.vehicle().reaction().inSeconds();
            pedalS[i] = member.responds() ? pressedS : Double.POSITIVE_INFINITY;
            seenS = pedalS[i] + member.lampLatency().inSeconds();
        }
        return pedalS;
    }

    /**
     * Gives the vehicles.
     *
     * @return the vehicles, the foremost first
     */
    public List<Member> members() {
        return members;
    }

    /**
     * Gives the moment a vehicle's brake pedal is pressed, which is when its lamp's circuit closes.
     *
     * @param index the vehicle, 0 for the first
     * @return the moment, or nothing if its driver does not brake or sees no cue
     * @throws IllegalArgumentException if there is no such vehicle
     */
    public Optional<TimeSpan> pedalPressed(int index) {
        double atS = pedalS[checked(index)];
        return Double.isInfinite(atS) ? Optional.empty() : Optional.of(TimeSpan.seconds(atS));
    }

    /**
     * Gives a vehicle's prescribed motion, its position counted from its own start.
     *
     * @param index the vehicle, 0 for the first
     * @return the motion from time 0 on
     * @throws IllegalArgumentException if there is no such vehicle
     */
    public Trajectory trajectory(int index) {
        BrakingVehicle vehicle = members.get(checked(index)).vehicle();
        if (Double.isInfinite(pedalS[index])) {
            return Trajectory.startingAt(vehicle.speed().inMps()).build();
        }
        double onsetS = index == 0
                ? vehicle.onsetS()
                : pedalS[index] + vehicle.response().deadTime().inSeconds();
        return Trajectory.stop(
                vehicle.speed().inMps(),
                onsetS,
                vehicle.response().buildUp().inSeconds(),
                vehicle.deceleration().inMps2());
    }

    /**
     * Gives a vehicle and the one ahead as an encounter.
     *
     * @param index the vehicle behind, 1 for the second of the chain
     * @return the encounter
     * @throws IllegalArgumentException if there is no such vehicle or none ahead of it
     */
    public Encounter encounter(int index) {
        Check.inRange("index of a vehicle with one ahead", index, 1, members.size() - 1, "");
        return new Encounter(
                trajectory(index - 1), trajectory(index), members.get(index).gap(), this);
    }

    /**
     * Says what links, contacts and gaps needed rest on.
     *
     * @return model, inputs and reservations, equal vehicles named once; made anew by each call
     */
    @Override
    public Evidence evidence() {
        List<Evidence> parts = new ArrayList<>();
        parts.add(Evidence.of("chain of " + members.size()
                + " vehicles, each driver braking for the lamp ahead alone; prescribed motions,"
                + " nothing is said about the motion after a contact"));
        members.stream().distinct().forEach(member -> {
            BrakingVehicle car = member.vehicle();
            parts.add(StopEvidence.of(
                    "vehicle in the chain", car.speed(), car.reaction(), car.response(), car.deceleration()));
            parts.add(car.origin);
            parts.add(Evidence.of("gap " + member.gap() + " ahead, lamp latency " + member.lampLatency()));
            parts.add(member.lampEvidence());
        });
        return Evidence.joined(parts);
    }

    /**
     * Finds who touches whom, when and how hard, link by link from the front.
     *
     * @return one link for each vehicle that has another ahead
     * @throws IllegalArgumentException if a contact or a smallest gap comes later than 1e6 s
     */
    public List<ChainLink> links() {
        int count = members.size() - 1;
        PairOutcome[] outcomes = new PairOutcome[count];
        double[] contactS = new double[count + 2];
        Arrays.fill(contactS, Double.POSITIVE_INFINITY);
        GapEvent event = new GapEvent();
        Trajectory ahead = trajectory(0);
        for (int i = 1; i <= count; i++) {
            Trajectory behind = trajectory(i);
            GapKernel.event(ahead, behind, members.get(i).gap().inMetres(), event);
            outcomes[i - 1] = Encounter.outcomeOf(
                    event,
                    ahead.speedAtMps(0),
                    behind.speedAtMps(0),
                    members.get(i).gap().inMetres());
            contactS[i] = event.contact() ? event.timeS() : Double.POSITIVE_INFINITY;
            ahead = behind;
        }
        List<ChainLink> links = new ArrayList<>(count);
        for (int i = 1; i <= count; i++) {
            boolean first = contactS[i] <= contactS[i - 1] && contactS[i] <= contactS[i + 1];
            links.add(new ChainLink(i, outcomes[i - 1], first));
        }
        return links;
    }

    /**
     * Finds the chain's earliest contact, the one that nothing before it can have altered.
     *
     * @return the link of the earliest contact, or nothing if nobody touches anybody
     * @throws IllegalArgumentException as {@link #links}
     */
    public Optional<ChainLink> firstContact() {
        return ChainLink.earliest(links());
    }

    /**
     * Tells what changes from this chain to another one of the same length, for example with one LED among filament
     * lamps.
     *
     * @param after the other chain
     * @return the difference
     * @throws IllegalArgumentException if the chains differ in length, or as {@link #links}
     */
    public ChainDifference differenceTo(Chain after) {
        Objects.requireNonNull(after, "after");
        return ChainDifference.between(this, after);
    }

    private int checked(int index) {
        return (int) Check.inRange("index of a vehicle", index, 0, members.size() - 1, "");
    }
}
