package io.github.stoplag.film;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A camera as far as it shapes what a film shows of a lamp.
 *
 * <pre>
 *   frame n begins at   n/f            without time stamps
 *                       stamp · p/f    with time stamps of a film played at another rate than it was taken
 *   exposure of row y   from  begin + s (1/f − e) + y r  for the time e
 *   grey                black + (white − black) · V(mean light over the exposure), clipped, rounded
 * </pre>
 *
 * <p>Symbols: f frame rate taken, (0, 1e5] 1/s; p frame rate played, the same unless set (slow motion: taken at 240,
 * played at 30); e exposure time, (0, 1/f] s; s its place in the frame, [0, 1], 0 where it begins with the frame; r row
 * time of a rolling shutter, [0, 1] ms; V transfer curve. Jitter is the standard deviation of a frame's true time about
 * the constant or stamped one, [0, 0.1] s.
 *
 * <p>Defaults, all assumed and told as caveats until set: exposure unknown, anywhere up to the frame interval; sRGB;
 * eight bits, full range; no jitter; no rolling shutter. An unknown exposure leaves the difference of two lamps in one
 * film almost untouched and shifts times since a known switch-on. Of an unknown curve sRGB, BT.709 and powers of
 * 2, 2.2 and 2.5 count as equally likely; of a table whose scale is assumed too, a linear one, and black at 16/255 of
 * white beside none.
 *
 * <p>Immutable.
 */
public final class Camera {
    private static final List<TransferCurve> VIDEO = List.of(
            TransferCurve.SRGB,
            TransferCurve.BT709,
            TransferCurve.power(2),
            TransferCurve.power(2.2),
            TransferCurve.power(2.5));
    private static final List<TransferCurve> ANY = List.of(
            TransferCurve.LINEAR,
            TransferCurve.SRGB,
            TransferCurve.BT709,
            TransferCurve.power(2.2),
            TransferCurve.power(2.5));
    /** Where black lies in limited range, over full scale. */
    private static final double VIDEO_BLACK = 16.0 / 255;

    /** How grey values are read as light. */
    record Reading(TransferCurve curve, GreyScale scale) {}

    private final double takenHz;
    private final double playedHz;
    private final Optional<TimeSpan> exposure;
    private final double exposurePlace;
    private final TimeSpan jitter;
    private final Optional<TimeSpan> rowTime;
    private final Optional<TransferCurve> transfer;
    private final GreyScale scale;
    private final boolean scaleAssumed;

    private Camera(Builder b) {
        takenHz = b.takenHz;
        playedHz = b.playedHz;
        exposure = b.exposure;
        exposurePlace = b.exposurePlace;
        jitter = b.jitter;
        rowTime = b.rowTime;
        transfer = b.transfer;
        scale = b.scale;
        scaleAssumed = b.scaleAssumed;
    }

    /**
     * Starts a camera from the rate at which its frames were taken.
     *
     * @param framesPerSecond the frame rate f, (0, 1e5] 1/s
     * @return the builder, everything else as assumed
     * @throws IllegalArgumentException if the rate is out of range
     */
    public static Builder takenAt(double framesPerSecond) {
        return new Builder(Check.above("frame rate taken", framesPerSecond, 0, 1e5, "frames/s"));
    }

    private Camera(Camera other, Reading reading) {
        takenHz = other.takenHz;
        playedHz = other.playedHz;
        exposure = other.exposure;
        exposurePlace = other.exposurePlace;
        jitter = other.jitter;
        rowTime = other.rowTime;
        transfer = Optional.of(reading.curve);
        scale = reading.scale;
        scaleAssumed = false;
    }

    /** The same camera with a transfer curve and a scale that are taken as known. */
    Camera with(Reading reading) {
        return new Camera(this, reading);
    }

    /**
     * The ways in which grey values may have come from light, each as likely as another; equal ones side by side.
     *
     * @param darkest a grey value of the dark, below which black must lie
     */
    List<Reading> readings(double darkest) {
        if (!scaleAssumed) {
            return (transferIsKnown() ? List.of(transfer()) : VIDEO)
                    .stream().map(curve -> new Reading(curve, scale)).toList();
        }
        double video = scale.black() + VIDEO_BLACK * (scale.white() - scale.black());
        GreyScale above = darkest > 0.9 * video
                ? new GreyScale(Math.min(video, darkest), scale.white(), scale.top(), scale.step())
                : scale;
        List<Reading> all = new ArrayList<>();
        for (TransferCurve curve : transferIsKnown() ? List.of(transfer()) : ANY) {
            all.add(new Reading(curve, scale));
            all.add(new Reading(curve, above));
        }
        return all;
    }

    /** {@return the frame rate at which the film was taken, in frames a second} */
    public double takenHz() {
        return takenHz;
    }

    /** {@return the frame rate at which the file plays, in frames a second} */
    public double playedHz() {
        return playedHz;
    }

    /** {@return the time 1/f between frames} */
    public TimeSpan frameInterval() {
        return TimeSpan.seconds(1 / takenHz);
    }

    /** {@return the exposure time if it is known} */
    public Optional<TimeSpan> exposure() {
        return exposure;
    }

    /** {@return the place s of the exposure in the frame, 0 at its begin, 1 at its end} */
    public double exposurePlace() {
        return exposurePlace;
    }

    /** {@return the standard deviation of a frame's true time} */
    public TimeSpan jitter() {
        return jitter;
    }

    /** {@return the time between two rows of a rolling shutter, if it is known} */
    public Optional<TimeSpan> rowTime() {
        return rowTime;
    }

    /** {@return the transfer curve: as set, else sRGB} */
    public TransferCurve transfer() {
        return transfer.orElse(TransferCurve.SRGB);
    }

    /** {@return whether the transfer curve is known, not assumed} */
    public boolean transferIsKnown() {
        return transfer.isPresent();
    }

    /** {@return the grey values of no and full signal} */
    public GreyScale scale() {
        return scale;
    }

    /**
     * {@return the true time in seconds at which a frame begins: by its stamp if it has one, else by its number}
     *
     * @param number the frame's number
     * @param stampS its time stamp in seconds as the file has it, NaN for none
     */
    public double frameTimeS(int number, double stampS) {
        return Double.isNaN(stampS) ? number / takenHz : stampS * (playedHz / takenHz);
    }

    /** {@return what the camera's description rests on, with a caveat for everything assumed} */
    public Evidence evidence() {
        return Evidence.of(
                        "camera: taken at " + Numbers.text(takenHz) + " frames/s"
                                + (playedHz == takenHz ? "" : ", played at " + Numbers.text(playedHz) + " frames/s")
                                + ", exposure "
                                + exposure.map(TimeSpan::toString).orElse("unknown") + ", jitter "
                                + jitter + ", row time "
                                + rowTime.map(TimeSpan::toString).orElse("unknown") + ", given by the caller",
                        "transfer curve " + transfer().label() + ", "
                                + transfer().source() + "; " + scale)
                .withCaveatIf(
                        exposure.isEmpty(),
                        "exposure time is not known: taken as anything up to the frame interval of " + frameInterval())
                .withCaveatIf(
                        transfer.isEmpty(),
                        "transfer curve is not known: taken as sRGB, BT.709 or a power of 2 to 2.5"
                                + (scaleAssumed ? ", or linear" : "")
                                + ", each as likely; of a camera with none of these, intervals can be too narrow")
                .withCaveatIf(
                        scaleAssumed,
                        "which grey values are black and white is not known: taken as " + Numbers.text(scale.black())
                                + " and " + Numbers.text(scale.white())
                                + ", or black at 16/255 of that where the dark frames allow it")
                .withCaveatIf(
                        rowTime.isEmpty(),
                        "row time is not known: a rolling shutter shows a lamp lower in the picture later, by up to"
                                + " the frame interval; keep the lamps at one height or give the row time");
    }

    /** Collects what is known of a camera. */
    public static final class Builder {
        private final double takenHz;
        private double playedHz;
        private Optional<TimeSpan> exposure = Optional.empty();
        private double exposurePlace;
        private TimeSpan jitter = TimeSpan.seconds(0);
        private Optional<TimeSpan> rowTime = Optional.empty();
        private Optional<TransferCurve> transfer = Optional.empty();
        private GreyScale scale = GreyScale.FULL_8_BIT;
        private boolean scaleAssumed;

        private Builder(double takenHz) {
            this.takenHz = takenHz;
            playedHz = takenHz;
        }

        /**
         * Sets the rate at which the file plays, if its time stamps are in slow motion.
         *
         * @param framesPerSecond the frame rate played, (0, 1e5] 1/s
         * @return this builder
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder playedAt(double framesPerSecond) {
            playedHz = Check.above("frame rate played", framesPerSecond, 0, 1e5, "frames/s");
            return this;
        }

        /**
         * Sets the exposure time.
         *
         * @param time the exposure e, above 0 and at most the frame interval
         * @return this builder
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder exposure(TimeSpan time) {
            Check.above("exposure time", time.inSeconds(), 0, 1.0000001 / takenHz, "s");
            exposure = Optional.of(time);
            return this;
        }

        /**
         * Sets where in the frame the exposure lies.
         *
         * @param share 0 if it begins with the frame, 1 if it ends with it, [0, 1]
         * @return this builder
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder exposurePlace(double share) {
            exposurePlace = Check.inRange("place of the exposure in the frame", share, 0, 1, "");
            return this;
        }

        /**
         * Sets by how much a frame's true time scatters.
         *
         * @param standardDeviation the standard deviation, [0, 0.1] s
         * @return this builder
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder jitter(TimeSpan standardDeviation) {
            Objects.requireNonNull(standardDeviation, "standardDeviation");
            Check.inRange("jitter of frame times", standardDeviation.inSeconds(), 0, 0.1, "s");
            jitter = standardDeviation;
            return this;
        }

        /**
         * Sets the time between rows of a rolling shutter, 0 for a global one.
         *
         * @param time the row time r, [0, 0.001] s
         * @return this builder
         * @throws IllegalArgumentException if it is out of range
         */
        public Builder rowTime(TimeSpan time) {
            Check.inRange("row time of the shutter", time.inSeconds(), 0, 0.001, "s");
            rowTime = Optional.of(time);
            return this;
        }

        /**
         * Sets the transfer curve.
         *
         * @param curve how light becomes signal
         * @return this builder
         */
        public Builder transfer(TransferCurve curve) {
            Objects.requireNonNull(curve, "curve");
            transfer = Optional.of(curve);
            return this;
        }

        /**
         * Sets the grey values of no and full signal.
         *
         * @param greyScale the scale
         * @return this builder
         */
        public Builder scale(GreyScale greyScale) {
            Objects.requireNonNull(greyScale, "greyScale");
            scale = greyScale;
            scaleAssumed = false;
            return this;
        }

        /**
         * Sets the grey values of no and full signal as a guess, of numbers whose origin is not known: black may also
         * lie at 16/255 of white, and a curve that is not set may be linear.
         *
         * @param greyScale the scale
         * @return this builder
         */
        public Builder assumedScale(GreyScale greyScale) {
            Objects.requireNonNull(greyScale, "greyScale");
            scale = greyScale;
            scaleAssumed = true;
            return this;
        }

        /** {@return the camera} */
        public Camera build() {
            return new Camera(this);
        }
    }
}
