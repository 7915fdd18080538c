package io.github.stoplag.examples.film;

import io.github.stoplag.film.Camera;
import io.github.stoplag.film.FilmedChange;
import io.github.stoplag.film.FilmedLamp;
import io.github.stoplag.film.GreySeries;
import io.github.stoplag.film.Switching;
import io.github.stoplag.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;

/** What a film does not show of a lamp: the time before and after a change, and that it switches more than once. */
final class FilmReservations {
    private static final int FEWEST_BEFORE = 5;
    /** A filament lamp that stands at its level for so long is not still rising. */
    private static final double LEAST_AFTER_S = 0.1;

    private static final double NEARLY_ALL = 0.9;

    private FilmReservations() {}

    static List<String> of(FilmedLamp lamp, Camera camera) {
        List<String> told = new ArrayList<>();
        lamp.on().ifPresent(change -> told.addAll(of(change, camera)));
        lamp.off().ifPresent(change -> told.addAll(of(change, camera)));
        long ons = lamp.changes().stream().filter(FilmedChange::rising).count();
        long offs = lamp.changes().size() - ons;
        if (ons > 1 || offs > 1) {
            told.add(lamp.label() + " comes on " + ons + " times and goes out " + offs
                    + " times in the film: the first of each is used");
        }
        return told;
    }

    private static List<String> of(FilmedChange change, Camera camera) {
        Switching switching = change.switching();
        GreySeries series = switching.series();
        String goes = change.label() + (change.rising() ? " comes on" : " goes out");
        double beginS = change.firstLight().valueS();
        long before = 0;
        for (int i = switching.from(); i < switching.to() && timeS(series, i, camera) < beginS; i++) {
            before++;
        }
        List<String> told = new ArrayList<>();
        if (before < FEWEST_BEFORE) {
            told.add("the film shows " + before + (before == 1 ? " frame" : " frames") + " before " + goes
                    + ": it may have begun earlier, and the level before is uncertain");
        }
        double nearlyS =
                change.level(change.rising() ? NEARLY_ALL : 1 - NEARLY_ALL).valueS();
        double afterS = timeS(series, switching.to() - 1, camera) - nearlyS;
        if (!(afterS >= LEAST_AFTER_S)) {
            told.add("after " + goes + " the film shows it for " + Numbers.text(1000 * Math.max(0, afterS), 2)
                    + " ms at its level: if it goes on changing, all levels and moments come too early");
        }
        return told;
    }

    private static double timeS(GreySeries series, int index, Camera camera) {
        return camera.frameTimeS(series.frame(index), series.stampS(index));
    }
}
