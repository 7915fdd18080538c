package io.github.stoplag.examples.film;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.film.GreyScale;
import io.github.stoplag.film.GreySeries;
import io.github.stoplag.film.TransferCurve;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * Takes the grey value of each lamp from the frames of a film.
 *
 * <p>The mean is taken over the light, not over the grey values: each pixel's transfer curve is undone, the light
 * averaged, and the curve put on again, so that the grey value handed on is that of an even region that sends as much
 * light. It is taken over those pixels that never reach the end of the scale in the whole film and that follow the
 * lamp; the same pixels in all frames. If hardly any is left, all count, and each frame tells how many of them are
 * clipped.
 */
final class LampReader {
    private static final long KEPT_BYTES = 192L << 20;
    /** A pixel follows the lamp if it changes by this share of what the most lively unclipped ones change by. */
    private static final double FOLLOWS = 0.25;
    /** So few pixels are not enough for a mean. */
    private static final int FEWEST = 4;

    private static final double FEWEST_SHARE = 0.02;
    /** Told from this share of clipped pixels on. */
    private static final double TOLD = 0.005;

    private final FilmSource source;
    private final Channel channel;
    private final GreyScale scale;
    private final TransferCurve curve;
    private final FilmProgress progress;
    private final List<Integer> numbers = new ArrayList<>();
    private final List<Double> stampsS = new ArrayList<>();

    LampReader(FilmSource source, Channel channel, TransferCurve curve, FilmProgress progress) {
        this.source = source;
        this.channel = channel;
        this.scale = scale(source.facts().coding(), channel);
        this.curve = curve;
        this.progress = progress;
    }

    /** Gives the scale of the grey values handed on. */
    static GreyScale scale(Coding coding, Channel channel) {
        return coding.full() || channel != Channel.LUMA
                ? GreyScale.full(coding.bits())
                : GreyScale.limited(coding.bits());
    }

    GreyScale scale() {
        return scale;
    }

    /** Looks for lamps. */
    List<LampRegion> find() {
        RegionFinder finder = new RegionFinder(source.facts());
        progress.start("looking for lamps");
        source.read(frame -> {
            finder.add(frame.raster(), channel);
            progress.frame(frame.number());
            return true;
        });
        return finder.regions();
    }

    /**
     * Reads the lamps.
     *
     * @throws InputException if a region is outside the picture or the film too short
     */
    List<LampSeries> read(List<LampRegion> regions) {
        List<LampPixels> lamps = regions.stream()
                .map(region -> new LampPixels(region.within(source.facts())))
                .toList();
        long frameBytes =
                regions.stream().mapToLong(region -> 2L * region.pixels() + 32).sum();
        numbers.clear();
        stampsS.clear();
        progress.start("reading");
        source.read(frame -> {
            boolean keep = (numbers.size() + 1) * frameBytes <= KEPT_BYTES;
            if (!keep && numbers.size() * frameBytes <= KEPT_BYTES) {
                lamps.forEach(LampPixels::forget);
            }
            lamps.forEach(lamp -> lamp.add(frame.raster(), channel, keep));
            numbers.add(frame.number());
            stampsS.add(source.facts().stamped() ? frame.stampS() : Double.NaN);
            progress.frame(frame.number());
            return true;
        });
        List<Averaging> averages = lamps.stream().map(Averaging::new).toList();
        if (numbers.size() * frameBytes <= KEPT_BYTES) {
            for (int i = 0; i < numbers.size(); i++) {
                for (Averaging average : averages) {
                    average.add(i, average.pixels.kept(i));
                }
            }
        } else {
            readAgain(averages);
        }
        return averages.stream().map(Averaging::lamp).toList();
    }

    private void readAgain(List<Averaging> averages) {
        progress.start("reading again");
        int[] next = {0};
        source.read(frame -> {
            for (Averaging average : averages) {
                average.add(next[0], average.pixels.levels(frame.raster(), channel));
            }
            next[0]++;
            progress.frame(frame.number());
            return next[0] < numbers.size();
        });
    }

    /** The means of one lamp. */
    private final class Averaging {
        private final LampPixels pixels;
        private final double clipLevel;
        private final int[] used;
        private final boolean allClipped;
        private final double everClipped;
        private final GreySeries.Builder series;

        Averaging(LampPixels pixels) {
            this.pixels = pixels;
            clipLevel = clipLevel(pixels.greatest());
            int count = pixels.region().pixels();
            int[] unclipped = indices(i -> pixels.greatest(i) < clipLevel, count);
            everClipped = 1 - unclipped.length / (double) count;
            double[] changes = new double[unclipped.length];
            for (int i = 0; i < changes.length; i++) {
                changes[i] = pixels.change(unclipped[i]);
            }
            Arrays.sort(changes);
            double lively = changes.length == 0 ? 0 : changes[(int) (0.9 * (changes.length - 1))];
            int[] following =
                    indices(i -> pixels.greatest(i) < clipLevel && pixels.change(i) >= FOLLOWS * lively, count);
            allClipped = following.length < Math.min(count, Math.max(FEWEST, FEWEST_SHARE * count));
            used = allClipped ? indices(i -> true, count) : following;
            series = GreySeries.of(pixels.region().name()).region(pixels.middleRow(), pixels.rows());
        }

        private int[] indices(IntPredicate wanted, int count) {
            return IntStream.range(0, count).filter(wanted).toArray();
        }

        void add(int index, short[] levels) {
            double light = 0;
            int clipped = 0;
            for (int pixel : used) {
                double level = LampPixels.level(levels[pixel]);
                light += curve.light(level);
                clipped += level >= clipLevel ? 1 : 0;
            }
            series.add(
                    numbers.get(index),
                    stampsS.get(index),
                    scale.grey(curve.signal(light / used.length)),
                    clipped / (double) used.length);
        }

        LampSeries lamp() {
            List<String> caveats = new ArrayList<>();
            String share = Math.round(100 * everClipped) + " % of the pixels of lamp "
                    + pixels.region().name() + " are clipped in some frame";
            if (allClipped) {
                caveats.add(share
                        + ": too few are left, so all are used and clipped frames are only bounds; film it darker");
            } else if (everClipped > TOLD) {
                caveats.add(share + " and are left out; " + used.length + " of "
                        + pixels.region().pixels() + " pixels are used");
            }
            return new LampSeries(pixels.region().name(), pixels.region(), built(series), caveats);
        }
    }

    static GreySeries built(GreySeries.Builder series) {
        try {
            return series.build();
        } catch (IllegalArgumentException e) {
            throw new InputException(String.valueOf(e.getMessage()), e);
        }
    }

    /**
     * Gives the level from which on a pixel counts as clipped: the end of the scale, or white where a film stops there.
     */
    private double clipLevel(double greatest) {
        double step = 1 / (scale.white() - scale.black());
        double margin = 2 * Math.max(1, (scale.white() - scale.black()) / 256) * step;
        double end = scale.signal(scale.top());
        return greatest > 1 + 3 * margin ? end - margin : 1 - margin;
    }
}
