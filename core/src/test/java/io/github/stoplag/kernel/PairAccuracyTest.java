package io.github.stoplag.kernel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * All four forms of the pair kernel against {@link PrecisePair} on 100,000 scenarios, half of them extreme: no wrong
 * outcome, and errors of rounding only.
 */
class PairAccuracyTest {
    private static final int HALF = 50_000;
    private static final double ROUNDING_M = 2e-13;
    private static final double STRONGEST_MPS2 = 9;

    /** One form of the kernel and the largest errors it has shown. */
    private static final class Form {
        private final String name;
        private int wrong;
        private double speedMps;
        private double relativeTime;
        private double gapM;
        private double minimumM;
        private double gapAtContactM;

        Form(String name) {
            this.name = name;
        }

        void compare(GapEvent event, PrecisePair exact) {
            if (event.contact() != exact.contact
                    || event.leaderStanding() != exact.leaderStanding
                    || (event.grazing() && exact.smallestGapM > 2 * GapKernel.GRAZING_M)) {
                wrong++;
            } else if (exact.contact) {
                note(event.timeS(), event.closingSpeedMps(), exact);
                speedMps = worse(speedMps, event.leaderSpeedMps() - exact.leaderMps);
                speedMps = worse(speedMps, event.followerSpeedMps() - exact.followerMps);
            } else {
                noteMinimum(event.timeS(), event.smallestGapM(), exact);
            }
        }

        void compare(double timeS, double smallestGapM, double closingMps, PrecisePair exact) {
            if (closingMps >= 0 != exact.contact) {
                wrong++;
            } else if (exact.contact) {
                note(timeS, closingMps, exact);
            } else {
                noteMinimum(timeS, smallestGapM, exact);
            }
        }

        private void note(double timeS, double closingMps, PrecisePair exact) {
            speedMps = worse(speedMps, closingMps - exact.closingMps);
            relativeTime = worse(relativeTime, (timeS - exact.timeS) / Math.max(1, exact.timeS));
            gapAtContactM = worse(gapAtContactM, exact.gapAtM(timeS));
        }

        private void noteMinimum(double timeS, double smallestGapM, PrecisePair exact) {
            gapM = worse(gapM, smallestGapM - exact.smallestGapM);
            // a moment is as good as the gap there: where the gap is flat many moments are equally good
            minimumM = worse(minimumM, exact.gapAtM(timeS) - exact.smallestGapM);
        }

        private static double worse(double most, double error) {
            // NaN must not pass for small
            return Math.abs(error) <= most ? most : Math.abs(error);
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%s: %d wrong outcomes; errors: speeds %.1e m/s, time of contact %.1e of max(1 s, t), gap there %.1e m,"
                            + " smallest gap %.1e m, gap at its moment %.1e m",
                    name,
                    wrong,
                    speedMps,
                    relativeTime,
                    gapAtContactM,
                    gapM,
                    minimumM);
        }
    }

    private final GapEvent event = new GapEvent();
    private int contacts;
    private int standing;
    private int inBuildUp;
    private int beforeBraking;
    private int followerFirst;

    private List<Form> compare(List<Scenario> scenarios) {
        Form fast = new Form("pairEvent");
        Form byPhases = new Form("pairEventByPhases");
        Form general = new Form("event");
        Form batch = new Form("PairBatch");
        double[][] in = new double[9][scenarios.size()];
        double[][] out = new double[3][scenarios.size()];
        for (int i = 0; i < scenarios.size(); i++) {
            scenarios.get(i).put(in, i);
        }
        new PairBatch()
                .outcomes(
                        scenarios.size(),
                        in[0],
                        in[1],
                        in[2],
                        in[3],
                        in[4],
                        in[5],
                        in[6],
                        in[7],
                        in[8],
                        out[0],
                        out[1],
                        out[2]);
        for (int i = 0; i < scenarios.size(); i++) {
            Scenario scenario = scenarios.get(i);
            PrecisePair exact = new PrecisePair(scenario);
            count(scenario, exact);
            scenario.event(event);
            fast.compare(event, exact);
            scenario.eventByPhases(event);
            byPhases.compare(event, exact);
            GapKernel.event(scenario.leader(), scenario.follower(), scenario.gapM(), event);
            general.compare(event, exact);
            batch.compare(out[0][i], out[1][i], out[2][i], exact);
        }
        return List.of(fast, byPhases, general, batch);
    }

    private void count(Scenario s, PrecisePair exact) {
        contacts += exact.contact ? 1 : 0;
        standing += exact.leaderStanding ? 1 : 0;
        beforeBraking += exact.contact && exact.timeS < s.followerOnsetS() ? 1 : 0;
        inBuildUp += exact.contact
                        && exact.timeS > s.followerOnsetS()
                        && exact.timeS < s.followerOnsetS() + s.followerBuildUpS()
                ? 1
                : 0;
        followerFirst += s.followerOnsetS() < s.leaderOnsetS() + s.leaderBuildUpS() ? 1 : 0;
    }

    @Test
    void typicalScenariosAreExactToRounding() {
        SplittableRandom random = new SplittableRandom(51);
        List<Scenario> scenarios = new ArrayList<>(HALF);
        for (int i = 0; i < HALF; i++) {
            scenarios.add(Scenario.typical(random));
        }
        List<Form> forms = compare(scenarios);
        assertThat(contacts).isBetween(15_000, 35_000);
        assertThat(standing).isBetween(5_000, 20_000);
        assertRounding(forms);
    }

    /**
     * Zero speeds, gaps and build-ups, missing and violent brakes, followers that brake first, contact in any phase.
     */
    @Test
    void extremeScenariosAreExactToRounding() {
        SplittableRandom random = new SplittableRandom(52);
        List<Scenario> scenarios = new ArrayList<>(HALF);
        for (int i = 0; i < HALF; i++) {
            scenarios.add(Scenario.extreme(random));
        }
        List<Form> forms = compare(scenarios);
        assertThat(contacts).isBetween(15_000, 35_000);
        assertThat(standing).isGreaterThan(1_000);
        assertThat(beforeBraking).isGreaterThan(1_000);
        assertThat(inBuildUp).isGreaterThan(1_000);
        assertThat(followerFirst).isGreaterThan(10_000);
        assertRounding(forms);
    }

    private static void assertRounding(List<Form> forms) {
        for (Form form : forms) {
            assertThat(form.wrong).as("%s", form).isZero();
            assertThat(form.speedMps).as("%s", form).isLessThanOrEqualTo(1e-11);
            assertThat(form.relativeTime).as("%s", form).isLessThanOrEqualTo(1e-11);
            assertThat(form.gapAtContactM).as("%s", form).isLessThanOrEqualTo(1e-11);
            assertThat(form.gapM).as("%s", form).isLessThanOrEqualTo(1e-11);
            // two moments whose gaps differ by no more than the kernel's tie of 1e-12 m count as equally small
            assertThat(form.minimumM).as("%s", form).isLessThanOrEqualTo(1e-11);
        }
    }

    /**
     * Gaps a hair below the one needed. A contact d deep under a relative deceleration a has the closing speed √(2 a
     * d), so that a rounding dx of the distances run makes an error of a dx/√(2 a d): above 1e-11 m/s where d is below
     * about 0.1 mm, in any formula on doubles.
     */
    @Test
    void nearTheBorderOnlyTheRoundingOfPositionsShows() {
        SplittableRandom random = new SplittableRandom(53);
        for (double depthM : new double[] {1e-1, 1e-2, 1e-3, 1e-4, 1e-6, 1e-8}) {
            List<Scenario> scenarios = new ArrayList<>();
            while (scenarios.size() < 2_000) {
                Scenario scenario = Scenario.typical(random);
                double gapM = scenario.gapNeededM(event) - depthM;
                if (gapM > 0) {
                    scenarios.add(scenario.withGap(gapM));
                }
            }
            contacts = 0;
            List<Form> forms = compare(scenarios);
            assertThat(contacts).isEqualTo(scenarios.size());
            for (Form form : forms) {
                assertThat(form.wrong).as("%s", form).isZero();
                assertThat(form.gapAtContactM).as("%s", form).isLessThanOrEqualTo(1e-12);
                assertThat(form.speedMps)
                        .as("%s m deep, %s", depthM, form)
                        .isLessThanOrEqualTo(5e-13 + ROUNDING_M * Math.sqrt(STRONGEST_MPS2 / (2 * depthM)));
            }
        }
    }
}
