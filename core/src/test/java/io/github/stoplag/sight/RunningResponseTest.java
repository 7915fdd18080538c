package io.github.stoplag.sight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The response carried along a flash against the direct sum over all its nodes, which needs no approximation. */
class RunningResponseTest {
    private static final LuminousIntensity PEAK = LuminousIntensity.candela(100);

    /** A restless flash with jumps and dark stretches. */
    private static Flash restless(long seed, int samples, double scaleS) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] times = new double[samples];
        double[] cd = new double[samples];
        double t = 0;
        for (int i = 0; i < samples; i++) {
            if (i % 5 != 4) {
                t += scaleS * (0.1 + random.nextDouble());
            }
            times[i] = t;
            cd[i] = random.nextInt(4) == 0 ? 0 : 1000 * random.nextDouble();
        }
        return Flash.samples(times, cd);
    }

    @ParameterizedTest
    @CsvSource({
        "EXPONENTIAL, 0.2, 0.01",
        "EXPONENTIAL, 0.01, 1",
        "EXPONENTIAL, 10, 1e-5",
        "HYPERBOLIC, 0.2, 0.01",
        "HYPERBOLIC, 0.2, 1",
        "HYPERBOLIC, 0.001, 1",
        "HYPERBOLIC, 10, 1e-4"
    })
    void followsTheDirectSumWithinItsStatedError(SummationKernel kernel, double aS, double scaleS) {
        Flash flash = restless(42, 60, scaleS);
        RunningResponse running = kernel.running(aS, flash.duration().inSeconds());
        double greatest = 0;
        for (int node = 1; node < flash.nodes(); node++) {
            double cd = running.after(
                    flash.timeS(node) - flash.timeS(node - 1), flash.rightCd(node - 1), flash.leftCd(node));
            double direct = kernel.responseCd(flash, flash.timeS(node), aS);
            greatest = Math.max(greatest, direct);
            // the direct sum adds slopes of up to 1e4 cd a stretch, which cancel: it rounds to about 1e-10 cd itself
            assertThat(cd).as("node %s", node).isCloseTo(direct, within(1e-11 * direct + 1e-10));
        }
        assertThat(kernel.greatestCd(flash, aS)).isGreaterThanOrEqualTo(greatest * (1 - 1e-11));
    }

    @ParameterizedTest
    @CsvSource({"0.3, 0.2", "2, 0.5", "0.05, 1"})
    void cuttingAFlashIntoFinePanelsChangesNothing(double durationS, double riseRatio) {
        TimeSpan duration = TimeSpan.seconds(durationS);
        Flash coarse = Flash.triangle(PEAK, duration, riseRatio);
        Flash fine = Flash.of(t -> coarse.intensityAt(TimeSpan.seconds(t)).inCandela(), duration, 20_000);
        TimeSpan a = TimeSpan.seconds(0.2);
        double top = ModifiedAllard.of(a).of(coarse).intensity().inCandela();
        assertThat(ModifiedAllard.of(a).of(fine).intensity().inCandela()).isCloseTo(top, within(1e-8 * top));
        double original = OriginalAllard.of(a).of(coarse).intensity().inCandela();
        assertThat(OriginalAllard.of(a).of(fine).intensity().inCandela()).isCloseTo(original, within(1e-8 * original));
    }

    @Test
    void theGreatestIsTheGreatestOfTheDirectSum() {
        Flash flash = Flash.of(
                t -> 60 * Math.exp(-Math.pow((t - 0.3) / 0.05, 2)) + 50 * Math.exp(-Math.pow((t - 0.8) / 0.1, 2)),
                TimeSpan.seconds(1.5),
                2000);
        for (SummationKernel kernel : SummationKernel.values()) {
            double direct = 0;
            for (int node = 1; node < flash.nodes(); node++) {
                direct = Math.max(direct, kernel.responseCd(flash, flash.timeS(node), 0.1));
            }
            double greatest = kernel.greatestCd(flash, 0.1);
            assertThat(greatest).isBetween(direct, direct * (1 + 1e-5));
        }
    }
}
