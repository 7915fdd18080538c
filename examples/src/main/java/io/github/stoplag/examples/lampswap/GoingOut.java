package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.film.BandedOnset;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.Detector;
import io.github.stoplag.sight.LampFall;
import io.github.stoplag.sight.LateDarkness;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** When each lamp is seen to be dark after switch-off, by day and over a lit tail lamp, and what a late one costs. */
final class GoingOut {
    static final List<String> HEADER =
            List.of("after switch-off", "half gone", "seen dark by day", "at night, tail lit");
    private static final double HALF = 0.5;
    private static final double SAME_S = 5e-4;

    private final LampSwap swap;
    private final Detector eye;
    private final LuminousIntensity tail;

    GoingOut(LampSwap swap) {
        this.swap = swap;
        eye = Criterion.fallEye(swap.scenario().file());
        tail = Criterion.tailAtNight(swap.scenario().file());
    }

    /** Gives a row for each lamp. */
    Stream<List<String>> rows() {
        return swap.lamps().stream()
                .map(lamp ->
                        List.of(lamp.name(), half(lamp), dark(lamp, LuminousIntensity.candela(0)), dark(lamp, tail)));
    }

    /** Says how a loss of light is seen, and what a lamp costs that goes dark later than the one fitted now. */
    Stream<String> notes() {
        return Stream.concat(
                Stream.of("Seen dark means: " + eye.criterion()
                        + ", for the loss of light as for its gain (assumed); the tail" + " lamp at night has " + tail
                        + ". A set is dark when its last lamp is."
                        + (filmed() ? " Of a filmed lamp the 95 % interval of its film stands behind." : "")),
                IntStream.range(1, swap.lamps().size()).boxed().flatMap(lamp -> cost(lamp).stream()));
    }

    private boolean filmed() {
        return swap.lamps().stream().anyMatch(GoingOut::filmed);
    }

    private Optional<String> cost(int lamp) {
        Optional<TimeSpan> now = seenDark(swap.lamps().get(0), tail);
        Optional<TimeSpan> then = seenDark(swap.lamps().get(lamp), tail);
        if (now.isEmpty() || then.isEmpty()) {
            return Optional.empty();
        }
        double laterS = then.get().inSeconds() - now.get().inSeconds();
        String names = swap.lamps().get(lamp).called() + ": dark ";
        String fitted = "the " + swap.lamps().get(0).called();
        if (Math.abs(laterS) < SAME_S) {
            return Optional.of(names + "at night when " + fitted + " is.");
        }
        boolean later = laterS > 0;
        LateDarkness cost = LateDarkness.of(
                TimeSpan.seconds(Math.abs(laterS)),
                swap.scenario().follower().deceleration(),
                swap.scenario().follower().deceleration(),
                swap.scenario().firstLook().get(0).speed());
        return Optional.of(names + Text.milliseconds(Math.abs(laterS)) + (later ? " later" : " earlier")
                + " at night than " + fitted + "; a driver who brakes as hard as here and lets go then "
                + (later ? "loses " : "keeps ") + Text.digits(cost.speedLost().inKmh()) + " km/h ("
                + Text.digits(cost.speedLost().inMph()) + " mph) and "
                + Text.digits(100 * cost.gapGrown().inMetres()) + " cm ("
                + Text.digits(cost.gapGrown().inInches())
                + " in) of way" + (later ? " for nothing." : "."));
    }

    private Optional<TimeSpan> seenDark(LampSwap.Lamp lamp, LuminousIntensity beside) {
        return lamp.light().seenDark(eye, beside).flatMap(Detection::time);
    }

    private String dark(LampSwap.Lamp lamp, LuminousIntensity beside) {
        return lamp.light()
                .seenDark(eye, beside)
                .map(seen ->
                        seen.time().map(at -> Text.milliseconds(at.inSeconds())).orElse("never"))
                .map(text -> filmed(lamp)
                        ? text + " (" + end(lamp, beside, true) + " to " + end(lamp, beside, false) + ")"
                        : text)
                .orElse("not known");
    }

    private static boolean filmed(LampSwap.Lamp lamp) {
        return lamp.light().falls().stream().anyMatch(fall -> fall.darkening() instanceof BandedOnset);
    }

    /** When a lamp is seen dark at one end of what its film leaves possible. */
    private String end(LampSwap.Lamp lamp, LuminousIntensity beside, boolean early) {
        return lamp.light().falls().stream()
                .map(fall -> new LampFall(atEnd(fall.darkening(), early), fall.stop(), beside).seen(eye))
                .flatMap(seen -> seen.time().stream())
                .max(Comparator.naturalOrder())
                .map(at -> Text.milliseconds(at.inSeconds()))
                .orElse("never");
    }

    private static OnsetCurve atEnd(OnsetCurve darkening, boolean early) {
        return darkening instanceof BandedOnset band ? (early ? band.early() : band.late()) : darkening;
    }

    /** When half of the light is gone, of several lamps from the last. */
    private static String half(LampSwap.Lamp lamp) {
        OptionalDouble last = lamp.light().falls().stream()
                .mapToDouble(fall -> fall.darkening().timeToLevelS(HALF).orElse(Double.POSITIVE_INFINITY))
                .max();
        return last.isPresent() ? Text.milliseconds(last.getAsDouble()) : "not known";
    }
}
