package io.github.stoplag.braking;

import static io.github.stoplag.Refusals.assertMessage;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assumptions.assumeThat;

import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class RecordedStopTest {
    private static final Speed NO_NOISE = Speed.mps(0);

    /** From 0.8 v0 on the run brakes constantly, so the mean is that deceleration, however coarse the sampling. */
    @Property(seed = "42")
    void meanOfAnAnalyticRunIsItsConstantDeceleration(
            @ForAll @DoubleRange(min = 15, max = 60) double speedMps,
            @ForAll @DoubleRange(min = 0, max = 0.5) double deadS,
            @ForAll @DoubleRange(min = 0, max = 0.4) double buildUpS,
            @ForAll @DoubleRange(min = 2, max = 10) double decelMps2,
            @ForAll @IntRange(min = 20, max = 500) int n) {
        Trajectory motion = Trajectory.stop(speedMps, deadS, buildUpS, decelMps2);
        double fullS = deadS + buildUpS;
        double restS = motion.restS().orElseThrow();
        assumeThat(motion.speedAtMps(fullS)).isGreaterThan(0.8 * speedMps);
        // one sample at the start, one at the end of the build-up, n over the constant braking to rest
        double[] timeS = IntStream.rangeClosed(-1, n)
                .mapToDouble(i -> i < 0 ? 0 : fullS + (restS - fullS) * i / n)
                .toArray();
        double[] distanceM = Arrays.stream(timeS).map(motion::positionAtM).toArray();
        double[] sampleMps = Arrays.stream(timeS).map(motion::speedAtMps).toArray();
        sampleMps[n + 1] = 0;
        RecordedStop stop = RecordedStop.of(distanceM, sampleMps);
        MeanDeceleration mean = stop.meanFullyDevelopedDeceleration();
        assertThat(mean.deceleration().inMps2()).isCloseTo(decelMps2, within(1e-7 * decelMps2));
        assertThat(stop.stoppingDistance().orElseThrow().inMetres())
                .isCloseTo(StopKernel.stoppingDistanceM(speedMps, deadS, buildUpS, decelMps2), within(1e-9));
    }

    /** v = v0 exp(-t/T): v falls linearly with distance, s = T (v0 - v), so d_m = (v_b + v_e)/(2 T). */
    @Test
    void meanOverDistanceOfAnExponentialRun() {
        double initialMps = 30;
        double timeConstantS = 4;
        double[] timeS =
                IntStream.rangeClosed(0, 1200).mapToDouble(i -> i * 0.01).toArray();
        double[] speedMps = IntStream.range(0, timeS.length)
                .mapToDouble(i -> initialMps * Math.exp(-timeS[i] / timeConstantS))
                .toArray();
        MeanDeceleration mean = RecordedStop.ofTimes(timeS, speedMps, NO_NOISE).meanFullyDevelopedDeceleration();
        assertThat(mean.deceleration().inMps2()).isCloseTo(0.9 * initialMps / (2 * timeConstantS), within(2e-5));
        assertThat(mean.fromAt().inMetres()).isCloseTo(timeConstantS * 0.2 * initialMps, within(1e-3));
        assertThat(mean.toAt().inMetres()).isCloseTo(timeConstantS * 0.9 * initialMps, within(1e-3));
        assertThat(mean.caveats()).isEmpty();
    }

    /** In km/h and m the divisor is 25.92: 80 to 10 km/h over 37.8 m. */
    @Test
    void fourFiguresOfATestSheet() {
        MeanDeceleration mean =
                MeanDeceleration.between(Speed.kmh(80), Speed.kmh(10), Distance.metres(12), Distance.metres(49.8));
        assertThat(mean.deceleration().inMps2()).isCloseTo((6400 - 100) / (25.92 * 37.8), within(1e-12));
        // and back: the rule of UN R13-H, 0.1 v + v²/(25.92 d_m)
        KinematicRule rule = mean.rule("measured", TimeSpan.seconds(0.36));
        assertThat(rule.at(Speed.kmh(100)).total().inMetres())
                .isCloseTo(10 + 1e4 / (25.92 * mean.deceleration().inMps2()), within(1e-9));
        assertThat(mean.caveats().get(0).text())
                .isEqualTo("only 2 samples lie between 22.2222 m/s and 2.77778 m/s: the mean leans on their"
                        + " interpolation");
        assertThat(mean).hasToString("mean deceleration 6.43004 m/s² from 22.2222 m/s to 2.77778 m/s");
    }

    @Test
    void noiseMovesTheMeanLittle() {
        SplittableRandom random = new SplittableRandom(7);
        Trajectory motion = Trajectory.stop(28, 0.2, 0.3, 6);
        double[] timeS = IntStream.range(0, 520).mapToDouble(i -> i * 0.01).toArray();
        double[] speedMps = new double[timeS.length];
        for (int i = 0; i < timeS.length; i++) {
            speedMps[i] = Math.max(0, motion.speedAtMps(timeS[i]) + (i == 0 ? 0 : 0.1 * (random.nextDouble() - 0.5)));
        }
        MeanDeceleration mean =
                RecordedStop.ofTimes(timeS, speedMps, Speed.mps(0.11)).meanFullyDevelopedDeceleration();
        // a level is found to within the noise: 0.05 m/s of 22.4 and 2.8 m/s
        assertThat(mean.deceleration().inMps2()).isCloseTo(6, within(0.03));
    }

    @Test
    void runThatDoesNotReachRestHasNoStoppingDistance() {
        RecordedStop stop = RecordedStop.of(new double[] {0, 30, 40}, new double[] {20, 10, 1});
        assertThat(stop.stoppingDistance()).isEmpty();
        assertThat(stop.initialSpeed()).isEqualTo(Speed.mps(20));
        assertMessage(
                () -> stop.meanDeceleration(Speed.mps(10), Speed.mps(0.5)),
                "recording must cover 10 m/s down to 0.5 m/s, it runs from 20 m/s to 1 m/s");
        assertMessage(
                () -> stop.meanDeceleration(Speed.mps(5), Speed.mps(10)),
                "mean deceleration needs a higher speed first, got 5 m/s and 10 m/s");
        assertMessage(
                () -> RecordedStop.of(new double[] {0, 30}, new double[] {20, 10})
                        .meanFullyDevelopedDeceleration(),
                "recording must cover 16 m/s down to 2 m/s, it runs from 20 m/s to 10 m/s");
        assertMessage(
                () -> RecordedStop.of(new double[] {5, 5}, new double[] {20, 0}).meanFullyDevelopedDeceleration(),
                "recording must move between 16 m/s and 2 m/s, both are at 5 m");
    }

    @Test
    void badSamplesAreNamed() {
        assertMessage(
                () -> RecordedStop.of(new double[] {0}, new double[] {20}),
                "a recorded stop needs at least 2 samples, got 1");
        assertMessage(
                () -> RecordedStop.of(new double[] {0, 1}, new double[] {20}),
                "distance and speed must have one sample each, got 2 and 1");
        assertMessage(
                () -> RecordedStop.of(new double[] {0, 10, 9}, new double[] {20, 10, 5}),
                "sample 2: distance must not fall, got 9 m after 10 m");
        assertMessage(
                () -> RecordedStop.of(new double[] {0, 10, 20}, new double[] {20, 10, 11}),
                "sample 2: speed must not rise by more than 0 m/s, got 11 m/s after 10 m/s");
        assertMessage(
                () -> RecordedStop.of(new double[] {0, Double.NaN}, new double[] {20, 10}),
                "distance of sample 1 must be in [-1000000, 1000000] m, got NaN m");
        assertMessage(
                () -> RecordedStop.of(new double[] {0, 1}, new double[] {20, -1}),
                "speed of sample 1 must be in [0, 150] m/s, got -1 m/s");
        assertMessage(
                () -> RecordedStop.of(new double[] {0, 1}, new double[] {0, 0}),
                "initial speed must be in (0, 150] m/s, got 0 m/s");
        assertMessage(
                () -> RecordedStop.ofTimes(new double[] {0, 1, 1}, new double[] {20, 10, 5}, NO_NOISE),
                "sample 2: time must rise, got 1 s after 1 s");
        assertMessage(
                () -> RecordedStop.ofTimes(new double[] {0, 1}, new double[] {20, Double.NaN}, NO_NOISE),
                "speed of sample 1 must be in [0, 150] m/s, got NaN m/s");
        assertMessage(
                () -> RecordedStop.ofTimes(new double[] {0, 1}, new double[] {20}, NO_NOISE),
                "time and speed must have one sample each, got 2 and 1");
        assertMessage(
                () -> MeanDeceleration.between(Speed.mps(2), Speed.mps(16), Distance.metres(0), Distance.metres(10)),
                "mean deceleration needs a falling speed over a distance, got 2 m/s at 0 m and 16 m/s at 10 m");
    }
}
