package io.github.stoplag.following;

import io.github.stoplag.PublishedTableTest;
import io.github.stoplag.kernel.GapEvent;
import io.github.stoplag.kernel.GapKernel;
import io.github.stoplag.kernel.ImpactKernel;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.List;

/** Encounters, impacts, string stability and headways against published rows, unit traps included. */
class FollowingPublishedTest extends PublishedTableTest {
    @Override
    protected List<String> tables() {
        return List.of("two_vehicle_more.csv", "impacts.csv", "string_stability.csv", "headways.csv");
    }

    @Override
    protected double compute(Row row) {
        if (row.fields().containsKey("restitution")) {
            return impact(row);
        }
        if (row.fields().containsKey("sensitivity_per_s")) {
            return stability(row);
        }
        return row.fields().containsKey("rule") ? headway(row) : encounter(row);
    }

    private static double encounter(Row row) {
        double unitM = row.text("length_unit").equals("ft") ? Distance.METRES_PER_FOOT : 1;
        double leaderMps = row.number("leader") * unitM;
        double leaderMps2 = row.number("leader_decel") * unitM;
        double followerMps = row.number("follower") * unitM;
        if (row.text("quantity").equals("deceleration to avoid crash")) {
            return SurrogateMeasures.decelerationToAvoidCrash(
                            Distance.metres(row.number("gap") * unitM),
                            Speed.mps(followerMps),
                            Speed.mps(leaderMps),
                            Deceleration.mps2(leaderMps2))
                    .inMps2();
        }
        Trajectory leader = Trajectory.stop(leaderMps, 0, 0, leaderMps2);
        Trajectory follower =
                Trajectory.stop(followerMps, row.number("delay_s"), 0, row.number("follower_decel") * unitM);
        Encounter encounter = Encounter.of(leader, follower, Distance.metres(row.numberOr("gap", 500) * unitM));
        return switch (row.text("quantity")) {
            case "gap needed" -> encounter.gapNeeded().orElseThrow().inMetres() / unitM;
            case "stopping distance difference" ->
                (follower.restPositionM().orElseThrow() - leader.restPositionM().orElseThrow()) / unitM;
            case "contact" -> {
                GapEvent event = new GapEvent();
                GapKernel.event(leader, follower, encounter.gap().inMetres(), event);
                yield event.contact() && !event.leaderStanding() ? 1 : 0;
            }
            default -> throw new AssertionError(row.text("quantity"));
        };
    }

    private static double impact(Row row) {
        double leaderKg = row.number("leader_kg");
        double leader = row.number("leader_mps");
        double followerKg = row.number("follower_kg");
        double follower = row.number("follower_mps");
        double e = row.number("restitution");
        double leaderAfter = ImpactKernel.leaderAfterMps(leaderKg, leader, followerKg, follower, e);
        double followerAfter = ImpactKernel.followerAfterMps(leaderKg, leader, followerKg, follower, e);
        return switch (row.text("quantity")) {
            case "leader after" -> leaderAfter;
            case "follower after" -> followerAfter;
            case "energy before" -> 0.5 * (leaderKg * leader * leader + followerKg * follower * follower);
            case "energy after" ->
                0.5 * (leaderKg * leaderAfter * leaderAfter + followerKg * followerAfter * followerAfter);
            case "energy lost" -> ImpactKernel.energyLostJ(leaderKg, leader, followerKg, follower, e);
            default -> throw new AssertionError(row.text("quantity"));
        };
    }

    private static double stability(Row row) {
        LinearFollowing model =
                new LinearFollowing(row.number("sensitivity_per_s"), TimeSpan.seconds(row.number("delay_s")));
        return switch (row.text("quantity")) {
            case "product" -> model.productRatio();
            case "largest gain" -> model.largestGain().ratio();
            case "at frequency" -> model.largestGain().atRadPerS();
            case "string stable" -> model.stringStable() ? 1 : 0;
            default -> throw new AssertionError(row.text("quantity"));
        };
    }

    private static double headway(Row row) {
        Speed speed = Speed.kmh(row.number("speed_kmh"));
        boolean regulation = row.text("rule").equals("un-r157");
        double metres = (regulation
                        ? UnR157Gap.distance(speed)
                        : HeadwayRule.published(row.text("rule"))
                                .minimumGap(speed)
                                .orElseThrow())
                .inMetres();
        if (row.text("quantity").equals("distance")) {
            return metres;
        }
        return regulation ? UnR157Gap.timeGap(speed).inSeconds() : metres / speed.inMps();
    }
}
