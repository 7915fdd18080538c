package io.github.stoplag.film;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * How often the 95 % intervals of a film's moments hold the truth, over simulated films of every class.
 *
 * <p>A few films by default. The long trial: {@code -Dstoplag.film.films=50}, films of each class, if wanted with
 * {@code -Dstoplag.film.rates=120,960} and {@code -Dstoplag.film.faults=PLAIN,CUT}; it prints a table.
 */
class FilmCoverageTest {
    private static final int FILMS = Integer.getInteger("stoplag.film.films", 0);
    private static final String RATES = System.getProperty("stoplag.film.rates", "30,60,120,240,960");
    private static final String FAULTS = System.getProperty("stoplag.film.faults", "");

    /** Counts of one column: asked, held, truth before the interval, sums of u. */
    private static final class Count {
        int asked;
        int held;
        int early;
        double sumU;
        final List<FilmTrial.Outcome> missed = new ArrayList<>();

        void add(FilmTrial.Outcome outcome) {
            asked++;
            held += outcome.holds() ? 1 : 0;
            early += outcome.truthS() < outcome.loS() ? 1 : 0;
            sumU += outcome.u();
            if (!outcome.holds()) {
                missed.add(outcome);
            }
        }
    }

    @Test
    void intervalsHoldTheTruthInAFewFilms() {
        Count all = new Count();
        List<FilmTrial.Fault> faults = List.of(FilmTrial.Fault.PLAIN, FilmTrial.Fault.CLIPPED, FilmTrial.Fault.CRUSHED);
        for (FilmTrial.Fault fault : faults) {
            FilmTrial.run(60, fault, fault != FilmTrial.Fault.CLIPPED, 3).stream()
                    .filter(outcome -> !outcome.refused())
                    .forEach(all::add);
        }
        // moments of a film go together, three films' worth: by no more than half a standard uncertainty outside
        long near =
                all.missed.stream().filter(outcome -> outcome.holdsWithin(0.5)).count();
        assertThat(all.asked).isGreaterThan(40);
        assertThat((double) (all.held + near) / all.asked)
                .as(all.missed.toString())
                .isGreaterThan(0.9);
    }

    @Test
    void longTrial() {
        if (FILMS == 0) {
            return;
        }
        Count all = new Count();
        System.out.println(
                "| film | lamp | moment | films | held | truth early | mean u / ms |\n|---|---|---|---|---|---|---|");
        for (FilmTrial.Fault fault : FilmTrial.Fault.values()) {
            if (FAULTS.isEmpty() || Arrays.asList(FAULTS.split(",", -1)).contains(fault.name())) {
                for (String rate : RATES.split(",", -1)) {
                    for (boolean rising : new boolean[] {true, false}) {
                        trial(fault, Double.parseDouble(rate), rising, all);
                    }
                }
            }
        }
        System.out.println("all: " + all.held + " of " + all.asked + " intervals hold");
        assertThat((double) all.held / all.asked).isBetween(0.9, 1.0);
    }

    private static void trial(FilmTrial.Fault fault, double rateHz, boolean rising, Count all) {
        Map<String, Count> counts = new LinkedHashMap<>();
        Map<String, Integer> refused = new TreeMap<>();
        long begun = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        for (int i = 0; i < FILMS; i++) {
            for (FilmTrial.Outcome outcome : FilmTrial.run(rateHz, fault, rising, i)) {
                if (outcome.refused()) {
                    refused.merge(outcome.moment(), 1, Integer::sum);
                } else {
                    counts.computeIfAbsent(outcome.kind() + " | " + outcome.moment(), k -> new Count())
                            .add(outcome);
                    all.add(outcome);
                }
            }
        }
        double cpuS = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - begun) / 1e9 / FILMS;
        counts.forEach((name, count) -> System.out.printf(
                Locale.ROOT,
                "| %s %.0f | %s | %d | %.1f %% | %d | %.3f |%n",
                fault,
                rateHz,
                name,
                count.asked,
                100.0 * count.held / count.asked,
                count.early,
                1000 * count.sumU / count.asked));
        System.out.printf(Locale.ROOT, "| | %.2f s of CPU a film, refused %s |%n", cpuS, refused);
    }
}
