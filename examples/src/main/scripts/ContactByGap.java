import io.github.stoplag.chance.Distribution;
import io.github.stoplag.sweep.Axis;
import io.github.stoplag.sweep.Design;
import io.github.stoplag.sweep.Interval;
import io.github.stoplag.sweep.PairModel;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.Plan;
import io.github.stoplag.sweep.Proportion;
import io.github.stoplag.sweep.Sweep;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Contact probability against the gap for one lamp, as one file to copy and change. Data are invented; the probability
 * is conditional on the plan and is not a crash rate.
 *
 * <p>From the folder of the project, after {@code mvn -q -pl core -am compile}:
 *
 * <pre>
 *   CP=core/target/classes:$(mvn -q -pl core dependency:build-classpath -Dmdep.outputFile=/dev/stdout)
 *   java -cp "$CP" examples/src/main/scripts/ContactByGap.java contact_by_gap.csv
 * </pre>
 */
final class ContactByGap {
    public static void main(String[] args) throws IOException {
        List<String> lines =
                new ArrayList<>(List.of("gap_m,scenarios,contacts,contact_probability,interval_lo,interval_hi"));
        for (double gapM = 10; gapM <= 50; gapM += 10) {
            Plan plan = Plan.of(Design.random(100_000), 42)
                    .axis(Axis.drawn("speed", "mps", new Distribution.Uniform(20, 35)))
                    .axis(Axis.constant("gap", "m", gapM))
                    .axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(0.17, 0.44)))
                    .axis(Axis.drawn("follower_decel", "mps2", new Distribution.TruncatedNormal(6, 1, 3, 9)))
                    .axis(Axis.constant("lamp_latency_lamp", "s", 0.1));
            PairModel model = PairModel.of(plan, "lamp");
            Proportion p = Sweep.of(plan, model)
                    .run(() -> new PairTally(model))
                    .tally()
                    .lamp("lamp")
                    .contactProbability();
            Interval wilson = p.wilson(0.95);
            System.out.printf(
                    Locale.ROOT, "gap %2.0f m: %.4f (95 %% %.4f to %.4f)%n", gapM, p.value(), wilson.lo(), wilson.hi());
            lines.add(
                    gapM + "," + p.count() + "," + p.hits() + "," + p.value() + "," + wilson.lo() + "," + wilson.hi());
        }
        if (args.length > 0) {
            Files.write(Path.of(args[0]), lines);
        }
        System.out.println(PairModel.STATEMENT);
    }
}
