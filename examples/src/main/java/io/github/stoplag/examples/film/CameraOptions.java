package io.github.stoplag.examples.film;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.program.Typed;
import io.github.stoplag.film.Camera;
import io.github.stoplag.film.GreyScale;
import io.github.stoplag.film.TransferCurve;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;

/** What the user says of the camera. */
final class CameraOptions {
    @Option(
            names = "--taken-at",
            paramLabel = "RATE",
            description = "frames a second at which the film was taken; in slow motion it plays at fewer. Without it a"
                    + " film's own time stamps count")
    private @Nullable Double takenHz;

    @Option(
            names = "--exposure",
            paramLabel = "TIME",
            converter = ExposureTime.class,
            description = "exposure time of a frame, such as 1/240 or \"4 ms\"; default: unknown, up to a frame")
    private @Nullable TimeSpan exposure;

    @Option(
            names = "--transfer",
            paramLabel = "CURVE",
            description = "how the camera turned light into grey: sRGB, BT.709, linear or \"power 2.2\"; default:"
                    + " unknown: sRGB, BT.709 or a power of 2 to 2.5; for a table linear too")
    private @Nullable TransferCurve transfer;

    @Option(
            names = "--row-time",
            paramLabel = "TIME",
            description = "time between two rows of a rolling shutter, such as \"10 us\"; 0 s for a global shutter")
    private @Nullable TimeSpan rowTime;

    @Option(
            names = "--jitter",
            paramLabel = "TIME",
            description = "standard deviation of the frames' true times about their stamps; default: 0 s")
    private @Nullable TimeSpan jitter;

    @Option(
            names = "--black",
            paramLabel = "GREY",
            description = "grey value of no light; default: by the film's coding")
    private @Nullable Double black;

    @Option(
            names = "--white",
            paramLabel = "GREY",
            description = "grey value of full light; default: by the film's coding")
    private @Nullable Double white;

    /** What is known of the shipped film. */
    static CameraOptions of(double takenHz, TimeSpan exposure, TransferCurve transfer) {
        CameraOptions options = new CameraOptions();
        options.takenHz = takenHz;
        options.exposure = exposure;
        options.transfer = transfer;
        options.rowTime = TimeSpan.seconds(0);
        return options;
    }

    /** Reads an exposure time as cameras write it. */
    static final class ExposureTime implements ITypeConverter<TimeSpan> {
        private static final Pattern FRACTION = Pattern.compile("1/([0-9]+([.][0-9]+)?)( *s)?");

        @Override
        public TimeSpan convert(String text) {
            Matcher fraction = FRACTION.matcher(text.strip());
            return Typed.converted(
                    text,
                    fraction.matches()
                            ? given -> TimeSpan.seconds(1 / Double.parseDouble(fraction.group(1)))
                            : TimeSpan::parse);
        }
    }

    /** Gives the curve for averaging pixels. */
    TransferCurve curve() {
        return transfer == null ? TransferCurve.SRGB : transfer;
    }

    /** Says whether grey values of no or full light were given. */
    boolean hasScale() {
        return black != null || white != null;
    }

    /** Gives the scale to be used where the film's own is this one. */
    GreyScale scale(GreyScale own) {
        if (!hasScale()) {
            return own;
        }
        double no = black == null ? own.black() : black;
        double full = white == null ? own.white() : white;
        return possible(() -> new GreyScale(no, full, Math.max(full, own.top()), own.step()));
    }

    /**
     * Makes the camera.
     *
     * @param rate what the film's own times say, if it has any
     * @param scale the grey values of no and full light
     * @param scaleAssumed whether the scale is a guess
     * @param caveats takes what is to be kept in mind
     */
    Camera camera(Optional<FrameTimes> rate, GreyScale scale, boolean scaleAssumed, List<String> caveats) {
        double taken = takenHz != null ? takenHz : played(rate, caveats);
        return possible(() -> {
            Camera.Builder camera = Camera.takenAt(taken);
            if (scaleAssumed) {
                camera.assumedScale(scale);
            } else {
                camera.scale(scale);
            }
            rate.ifPresent(times -> {
                camera.playedAt(taken / times.slowMotion(taken));
                times.caveat(taken).ifPresent(caveats::add);
            });
            Optional.ofNullable(transfer).ifPresent(camera::transfer);
            Optional.ofNullable(exposure).ifPresent(camera::exposure);
            Optional.ofNullable(rowTime).ifPresent(camera::rowTime);
            Optional.ofNullable(jitter).ifPresent(camera::jitter);
            return camera.build();
        });
    }

    private static double played(Optional<FrameTimes> rate, List<String> caveats) {
        double playedHz = rate.orElseThrow(() -> new InputException(
                        "--taken-at is needed: frames without times; give the frames a second of the camera"))
                .playedHz();
        caveats.add("frame rate taken is not known: taken as the " + Numbers.text(playedHz, 6)
                + " frames/s at which the film plays; of a film in slow motion all times would be too long");
        return playedHz;
    }

    private static <T> T possible(Supplier<T> maker) {
        try {
            return maker.get();
        } catch (IllegalArgumentException e) {
            throw new InputException(String.valueOf(e.getMessage()), e);
        }
    }
}
