package io.github.stoplag.benchmarks;

import io.github.stoplag.kernel.GapEvent;
import java.util.Locale;

/**
 * How right the rivals are: wrong outcomes and largest errors against the exact kernel on the first pairs of the set.
 * Says how often the integrator has to look for events to be worth comparing with.
 */
public final class RivalAccuracy {
    private static final double[] CHECKS_S = {0.1, 0.02, 0.01, 0.005};

    private final PairSet set;
    private final GapEvent event = new GapEvent();
    private int wrong;
    private double timeS;
    private double closingMps;
    private double gapM;

    private RivalAccuracy(PairSet set) {
        this.set = set;
    }

    /**
     * Compares and prints.
     *
     * @param args how many pairs, 65536 if left out
     */
    public static void main(String[] args) {
        int count = args.length > 0 ? Integer.parseInt(args[0]) : 1 << 16;
        PairSet set = new PairSet(7, count);
        SteppingRival stepping = new SteppingRival();
        RivalAccuracy steps = new RivalAccuracy(set);
        for (int i = 0; i < count; i++) {
            stepping.run(set, i);
            steps.compare(i, stepping.contact, stepping.timeS, stepping.closingMps, stepping.smallestGapM);
        }
        steps.print("1 ms stepping", count);
        for (double checkS : CHECKS_S) {
            IntegratorRival integrator = new IntegratorRival(checkS);
            RivalAccuracy accuracy = new RivalAccuracy(set);
            for (int i = 0; i < count; i++) {
                integrator.run(set, i);
                accuracy.compare(
                        i, integrator.contact, integrator.timeS, integrator.closingMps, integrator.smallestGapM);
            }
            accuracy.print("integrator, check every " + checkS + " s", count);
        }
    }

    private void compare(int i, boolean contact, double atS, double rivalMps, double smallestM) {
        set.pairEvent(i, event);
        if (contact != event.contact()) {
            wrong++;
        } else if (contact) {
            timeS = Math.max(timeS, Math.abs(atS - event.timeS()));
            closingMps = Math.max(closingMps, Math.abs(rivalMps - event.closingSpeedMps()));
        } else {
            gapM = Math.max(gapM, Math.abs(smallestM - event.smallestGapM()));
        }
    }

    private void print(String name, int count) {
        System.out.printf(
                Locale.ROOT,
                "%-32s %d of %d outcomes wrong; errors up to %.1e s, %.1e m/s, %.1e m%n",
                name,
                wrong,
                count,
                timeS,
                closingMps,
                gapM);
    }
}
