package io.github.stoplag.examples.following;

import io.github.stoplag.following.ChainLink;
import io.github.stoplag.following.PairOutcome;
import io.github.stoplag.kernel.Trajectory;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * A chain with its prescribed motions and contacts, positions counted from the first vehicle's front at time 0.
 *
 * @param scenario the chain and what belongs to it
 * @param motions each vehicle's motion
 * @param links each vehicle with the one ahead
 * @param startM each vehicle's front at time 0
 * @param touchedS each vehicle's first contact, infinite without one
 * @param endS the end of the pictures
 */
public record ChainRun(
        FollowingScenario scenario,
        List<Trajectory> motions,
        List<ChainLink> links,
        List<Double> startM,
        List<Double> touchedS,
        double endS) {
    /** How many vehicles the pictures show at most, from the front. */
    static final int SHOWN = 12;

    private static final double AFTER_S = 0.5;
    private static final double LONGEST_S = 600;
    private static final double WITHOUT_EVENT_S = 5;

    public static ChainRun of(FollowingScenario scenario) {
        int count = scenario.chain().members().size();
        List<Trajectory> motions =
                IntStream.range(0, count).mapToObj(scenario.chain()::trajectory).toList();
        List<ChainLink> links = scenario.chain().links();
        double[] startM = new double[count];
        double[] touchedS = new double[count];
        Arrays.fill(touchedS, Double.POSITIVE_INFINITY);
        for (ChainLink link : links) {
            int i = link.follower();
            startM[i] = startM[i - 1]
                    - scenario.lengths().get(i - 1).inMetres()
                    - scenario.chain().members().get(i).gap().inMetres();
            double atS = link.contact().map(contact -> contact.at().inSeconds()).orElse(Double.POSITIVE_INFINITY);
            touchedS[i - 1] = Math.min(touchedS[i - 1], atS);
            touchedS[i] = Math.min(touchedS[i], atS);
        }
        return new ChainRun(
                scenario,
                motions,
                links,
                DoubleStream.of(startM).boxed().toList(),
                DoubleStream.of(touchedS).boxed().toList(),
                endS(motions.subList(0, Math.min(count, SHOWN)), links.subList(0, Math.min(count, SHOWN) - 1)));
    }

    private static double endS(List<Trajectory> motions, List<ChainLink> links) {
        DoubleStream rests = motions.stream().flatMapToDouble(motion -> motion.restS().stream());
        DoubleStream ends = links.stream().mapToDouble(link -> atS(link.outcome()));
        double last = DoubleStream.concat(rests, ends).max().orElse(0);
        return Math.min(LONGEST_S, last > 0 ? last + AFTER_S : WITHOUT_EVENT_S);
    }

    /** When the contact or the smallest gap comes. */
    static double atS(PairOutcome outcome) {
        return outcome instanceof PairOutcome.Contact contact
                ? contact.at().inSeconds()
                : ((PairOutcome.NoContact) outcome).at().inSeconds();
    }

    int count() {
        return motions.size();
    }

    double frontM(int index, double timeS) {
        return startM.get(index) + motions.get(index).positionAtM(timeS);
    }

    double rearM(int index, double timeS) {
        return frontM(index, timeS) - scenario.lengths().get(index).inMetres();
    }

    /** The gap to the vehicle ahead, nothing for the first. */
    Optional<Double> gapM(int index, double timeS) {
        return index == 0 ? Optional.empty() : Optional.of(rearM(index - 1, timeS) - frontM(index, timeS));
    }

    /** When a vehicle's brake pedal is pressed, if it is. */
    Optional<Double> pedalS(int index) {
        return scenario.chain().pedalPressed(index).map(pressed -> pressed.inSeconds());
    }

    /** Names a vehicle as the reader counts them. */
    static String name(int index) {
        return String.valueOf(index + 1);
    }
}
