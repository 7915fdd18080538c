package io.github.stoplag.examples.film;

import io.github.stoplag.film.Camera;
import io.github.stoplag.film.GreyScale;
import io.github.stoplag.film.GreySeries;
import io.github.stoplag.film.LightCourse;
import io.github.stoplag.film.Sensor;
import io.github.stoplag.film.SimulatedCamera;
import io.github.stoplag.film.TransferCurve;
import io.github.stoplag.lamp.FilamentDecay;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * Makes the shipped film: a modelled camera films two modelled lamps pixel by pixel, and the frames are coded as an MP4
 * film.
 */
final class InventedFilm {
    static final double BEGIN_S = -0.25;
    static final double OFF_S = 0.9;
    static final int FRAMES = 216;
    /** The finest with which the film stays below 300 kB. */
    static final int QUALITY = 16;

    static final FilamentLamp BULB =
            FilamentLamp.builder(Voltage.volts(13.5), Power.watts(21)).build();
    static final SupplyConditions SUPPLY = SupplyConditions.of(Voltage.volts(13.2));
    static final FilamentOnset FILAMENT = BULB.switchOn(SUPPLY);
    static final OnsetCurve LED = LedLamp.of(TimeSpan.millis(4), TimeSpan.millis(1));
    static final FilamentDecay COOLING = FILAMENT.switchOffAfter(TimeSpan.seconds(OFF_S));
    private static final double LED_FALL_S = 0.0005;
    private static final double STRAY = 0.01;

    private static final Camera CAMERA = Camera.takenAt(ShippedFilm.TAKEN_HZ)
            .exposure(TimeSpan.seconds(1 / 240.0))
            .rowTime(TimeSpan.seconds(0))
            .transfer(TransferCurve.BT709)
            .scale(GreyScale.limited(8))
            .build();
    private static final SimulatedCamera PIXEL = SimulatedCamera.of(CAMERA, new Sensor(0.004, 0.012, 1, 0));

    private InventedFilm() {}

    private interface Profile {
        double gain(int x, int y, LampRegion region);
    }

    static void write(Path file, int quality) throws IOException {
        int width = ShippedFilm.WIDTH;
        byte[][] luma = new byte[FRAMES][];
        byte[] scene = scene();
        for (int n = 0; n < FRAMES; n++) {
            luma[n] = scene.clone();
        }
        film(ShippedFilm.FILAMENT, course(FILAMENT, COOLING::relativeIntensity), InventedFilm::bulb, luma);
        film(ShippedFilm.LED, course(LED, t -> Math.max(0, 1 - t / LED_FALL_S)), InventedFilm::chips, luma);
        try (FilmWriter film = new FilmWriter(file, width, ShippedFilm.HEIGHT, quality)) {
            for (int n = 0; n < FRAMES; n++) {
                film.add(
                        luma[n],
                        tint(luma[n], -16),
                        tint(luma[n], 52),
                        n / ShippedFilm.TAKEN_HZ,
                        1 / ShippedFilm.TAKEN_HZ);
            }
        }
    }

    /** The light of a lamp that is switched on at 0 and off later. */
    private static DoubleUnaryOperator course(OnsetCurve onset, DoubleUnaryOperator decay) {
        double reached = onset.relativeIntensity(OFF_S);
        return t -> t < OFF_S ? onset.relativeIntensity(t) : reached * decay.applyAsDouble(t - OFF_S);
    }

    private static void film(LampRegion region, DoubleUnaryOperator course, Profile profile, byte[][] luma) {
        double[] breaks = {0, 0.004, 0.005, OFF_S, OFF_S + LED_FALL_S};
        for (int y = 0; y < region.height(); y++) {
            for (int x = 0; x < region.width(); x++) {
                double gain = profile.gain(x, y, region);
                if (gain > 0.02) {
                    GreySeries grey = PIXEL.film(
                            region.name() + x + "-" + y,
                            LightCourse.of(course, breaks, STRAY, gain),
                            TimeSpan.seconds(BEGIN_S),
                            FRAMES,
                            1);
                    int at = (region.y() + y) * ShippedFilm.WIDTH + region.x() + x;
                    for (int n = 0; n < FRAMES; n++) {
                        luma[n][at] = (byte) Math.round(grey.grey(n));
                    }
                }
            }
        }
    }

    private static double bulb(int x, int y, LampRegion region) {
        double dx = (x - region.width() / 2.0 + 0.5) / 11;
        double dy = (y - region.height() / 2.0 + 0.5) / 9;
        return 0.7 * Math.exp(-(dx * dx + dy * dy));
    }

    private static double chips(int x, int y, LampRegion region) {
        double dx = x % 10 - 4.5;
        double dy = y % 10 - 4.5;
        return y >= 30 ? 0 : 0.12 + 1.1 * Math.exp(-(dx * dx + dy * dy) / 5);
    }

    /** A dark rear end with two lamp housings, as it looks before. */
    private static byte[] scene() {
        byte[] scene = new byte[ShippedFilm.WIDTH * ShippedFilm.HEIGHT];
        for (int y = 0; y < ShippedFilm.HEIGHT; y++) {
            Arrays.fill(scene, y * ShippedFilm.WIDTH, (y + 1) * ShippedFilm.WIDTH, (byte) (60 - y / 8 * 2));
        }
        int dark = (int) Math.round(CAMERA.scale().grey(TransferCurve.BT709.signal(STRAY)));
        for (LampRegion lamp : new LampRegion[] {ShippedFilm.FILAMENT, ShippedFilm.LED}) {
            for (int y = lamp.y() - 4; y < lamp.y() + lamp.height() + 4; y++) {
                int from = y * ShippedFilm.WIDTH + lamp.x() - 4;
                Arrays.fill(scene, from, from + lamp.width() + 8, (byte) dark);
            }
        }
        return scene;
    }

    /** Gives the colour difference of each square of four pixels: lit pixels are reddish. */
    private static byte[] tint(byte[] luma, int most) {
        int half = ShippedFilm.WIDTH / 2;
        byte[] tint = new byte[luma.length / 4];
        for (int i = 0; i < tint.length; i++) {
            int level = luma[2 * (i / half) * ShippedFilm.WIDTH + 2 * (i % half)] & 0xff;
            tint[i] = (byte) (128 + Math.round(most * Math.min(1, Math.max(0, level - 22) / 90.0)));
        }
        return tint;
    }
}
