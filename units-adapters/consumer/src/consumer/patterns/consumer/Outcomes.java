package consumer;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.braking.NeverStops;
import io.github.stoplag.braking.Stop;
import io.github.stoplag.braking.StopOutcome;
import io.github.stoplag.following.BrakingVehicle;
import io.github.stoplag.following.GapNeeded;
import io.github.stoplag.following.Pair;
import io.github.stoplag.following.PairOutcome;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.Detection;

/** Outcomes in switches by their type: complete without a default branch, the same way for each of them. */
public final class Outcomes {
    private Outcomes() {}

    static String tell(PairOutcome outcome) {
        return switch (outcome) {
            case PairOutcome.Contact contact -> "runs into the leader at " + contact.closingSpeed();
            case PairOutcome.NoContact none -> "stays clear by " + none.smallestGap();
        };
    }

    static String tell(StopOutcome outcome) {
        return switch (outcome) {
            case Stop stop -> "stops after " + stop.stoppingDistance();
            case NeverStops never -> "never stops";
        };
    }

    static String tell(Detection detection) {
        return switch (detection) {
            case Detection.Seen seen -> "seen after " + seen.at();
            case Detection.NeverSeen never -> "never seen";
        };
    }

    static String tell(GapNeeded needed) {
        return switch (needed) {
            case GapNeeded.Finite finite -> "needs " + finite.border();
            case GapNeeded.Unbounded unbounded -> "no gap is enough";
        };
    }

    public static void main(String[] args) {
        BrakingVehicle leader =
                BrakingVehicle.of(Speed.mps(20), TimeSpan.seconds(0), BrakeResponse.INSTANT, Deceleration.mps2(5));
        BrakingVehicle follower =
                BrakingVehicle.of(Speed.mps(20), TimeSpan.seconds(1), BrakeResponse.INSTANT, Deceleration.mps2(5));
        Pair pair = Pair.of(leader, follower, Distance.metres(30), TimeSpan.seconds(0));
        System.out.println(tell(pair.outcome()));
        System.out.println(tell(pair.gapNeeded()));
    }
}
