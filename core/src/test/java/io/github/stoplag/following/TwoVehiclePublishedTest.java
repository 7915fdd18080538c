package io.github.stoplag.following;

import io.github.stoplag.PublishedTableTest;
import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.following.PairOutcome.Contact;
import io.github.stoplag.following.PairOutcome.NoContact;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.List;

/** Two braking vehicles: published and derived cases, the trap of the stopping-distance difference included. */
class TwoVehiclePublishedTest extends PublishedTableTest {
    @Override
    protected List<String> tables() {
        return List.of("two_vehicle.csv");
    }

    @Override
    protected double compute(Row row) {
        BrakingVehicle leader = vehicle(row.number("leader_mps"), row.number("leader_mps2"), 0);
        BrakingVehicle follower =
                vehicle(row.number("follower_mps"), row.number("follower_mps2"), row.number("delay_s"));
        Pair pair = Pair.of(leader, follower, Distance.metres(row.numberOr("gap_m", 100)), TimeSpan.seconds(0));
        String quantity = row.text("quantity");
        if (quantity.equals("gap needed")) {
            return pair.gapNeeded().orElseThrow().inMetres();
        }
        if (quantity.equals("stopping distance difference")) {
            return pair.followerTrajectory().restPositionM().orElseThrow()
                    - pair.leaderTrajectory().restPositionM().orElseThrow();
        }
        if (pair.outcome() instanceof NoContact apart) {
            return switch (quantity) {
                case "smallest gap" -> apart.smallestGap().inMetres();
                case "time" -> apart.at().inSeconds();
                default -> throw new AssertionError("no contact, asked for " + quantity);
            };
        }
        Contact contact = (Contact) pair.outcome();
        return switch (quantity) {
            case "time" -> contact.at().inSeconds();
            case "closing speed" -> contact.closingSpeed().inMps();
            case "follower speed" -> contact.followerSpeed().inMps();
            default -> throw new AssertionError("contact, asked for " + quantity);
        };
    }

    private static BrakingVehicle vehicle(double speedMps, double decelMps2, double reactionS) {
        return BrakingVehicle.of(
                Speed.mps(speedMps), TimeSpan.seconds(reactionS), BrakeResponse.INSTANT, Deceleration.mps2(decelMps2));
    }
}
