package io.github.stoplag.examples.sweep.run;

import java.nio.file.Path;

/** A process that starts a sweep, says when it has come far enough, and then stands still to be killed. */
final class CutOff {
    static final String REACHED = "reached";

    private CutOff() {}

    /**
     * Starts the sweep.
     *
     * @param args plan file, folder of the job, number of rows, chunks between checkpoints, scenarios after which to
     *     stand still
     */
    public static void main(String[] args) {
        long stand = Long.parseLong(args[4]);
        SweepJob.open(
                        Plans.read(Path.of(args[0])),
                        new SweepRows(RowFormat.CSV, Long.parseLong(args[2])),
                        Path.of(args[1]),
                        2,
                        Integer.parseInt(args[3]))
                .start(
                        (done, all) -> {
                            if (done >= stand) {
                                System.out.println(REACHED);
                                stand();
                            }
                        },
                        () -> false);
    }

    @SuppressWarnings("InfiniteLoopStatement") // until it is killed
    private static void stand() {
        while (true) {
            Thread.onSpinWait();
            try {
                Thread.sleep(1000);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
