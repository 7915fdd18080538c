package io.github.stoplag.examples.sweep;

import io.github.stoplag.sweep.SweepListener;
import java.io.Console;
import java.io.PrintWriter;
import java.lang.reflect.InvocationTargetException;
import java.util.Locale;

/** Shows how far a sweep is: a bar that moves on a terminal, a plain line at each tenth otherwise. */
final class SweepProgress implements SweepListener {
    private static final int BAR = 40;
    private static final int STEPS = 10;

    private final PrintWriter out;
    private final boolean terminal;
    private long shown = -1;

    SweepProgress(PrintWriter out, boolean terminal) {
        this.out = out;
        this.terminal = terminal;
    }

    @Override
    public void progress(long done, long total) {
        long step = (terminal ? 100 : STEPS) * done / Math.max(1, total);
        if (step == shown) {
            return;
        }
        shown = step;
        if (!terminal) {
            out.println(line(done, total));
        } else {
            int full = (int) (BAR * done / Math.max(1, total));
            out.print("\r[" + "#".repeat(full) + ".".repeat(BAR - full) + "] " + line(done, total)
                    + (done == total ? System.lineSeparator() : ""));
            out.flush();
        }
    }

    private static String line(long done, long total) {
        return String.format(Locale.ROOT, "%3d %%: %,d of %,d scenarios", 100 * done / Math.max(1, total), done, total);
    }

    /** Says whether a person watches; from Java 22 on there is a console even where there is no terminal. */
    @SuppressWarnings("SystemConsoleNull") // what later versions give is asked below
    static boolean onTerminal() {
        Console console = System.console();
        if (console == null) {
            return false;
        }
        try {
            return (Boolean) Console.class.getMethod("isTerminal").invoke(console);
        } catch (NoSuchMethodException e) {
            return true;
        } catch (IllegalAccessException | InvocationTargetException e) {
            return false;
        }
    }
}
