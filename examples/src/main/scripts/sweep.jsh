// A sweep in the Java shell: how often a follower touches a braking leader with each of two stop lamps, on the same draws.
// Data are invented. The probability is conditional on the plan and is not a crash rate.
//
// From the folder of the project, after   mvn -q -pl core -am compile   :
//   CP=core/target/classes:$(mvn -q -pl core dependency:build-classpath -Dmdep.outputFile=/dev/stdout)
//   jshell -s --class-path "$CP" - < examples/src/main/scripts/sweep.jsh
// A statement that goes over several lines ends each of them where it cannot end, such as at a dot.

import io.github.stoplag.driver.*;
import io.github.stoplag.chance.*;
import io.github.stoplag.sweep.*;

LogNormalReaction reaction = (LogNormalReaction) ReactionStudy.published("koppa-1997-surprise").
    response().orElseThrow().reaction();
Plan plan = Plan.of(Design.random(200_000), 42).
    axis(Axis.constant("speed", "mps", 30)).
    axis(Axis.drawn("time_gap", "s", new Distribution.LogNormal(0.2, 0.4))).
    axis(Axis.drawn("reaction", "s", reaction.distribution())).
    axis(Axis.drawn("leader_decel", "mps2", new Distribution.TruncatedNormal(6, 1, 3, 9))).
    axis(Axis.drawn("follower_decel", "mps2", new Distribution.TruncatedNormal(6, 1, 3, 9))).
    axis(Axis.constant("lamp_latency_filament", "s", 0.114)).
    axis(Axis.constant("lamp_latency_led", "s", 0.008));
PairModel model = PairModel.of(plan, "filament", "led");
PairTally tally = Sweep.of(plan, model).run(() -> new PairTally(model)).tally();

for (String lamp : model.lamps()) {
    System.out.println(lamp + ": " + tally.lamp(lamp).contactProbability());
}
System.out.println("filament less led: " + tally.compare("filament", "led"));

StringBuilder csv = new StringBuilder("lamp,scenarios,contacts\n");
for (String lamp : model.lamps()) {
    Proportion p = tally.lamp(lamp).contactProbability();
    csv.append(lamp).append(',').append(p.count()).append(',').append(p.hits()).append('\n');
}
java.nio.file.Path file = java.nio.file.Path.of(System.getProperty("stoplag.output", "."), "contacts.csv");
java.nio.file.Files.writeString(file, csv);
System.out.println(PairModel.STATEMENT);
