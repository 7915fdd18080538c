package io.github.stoplag.sight;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What a study found that a lamp's place, surroundings or flashing do to the moment of response, beyond its light.
 *
 * <p>No detector knows of these; they count only where a caller puts one on a detector. Each says where it was found
 * and what field studies found of its kind, those without an effect too: small sums of such effects are not earned by
 * fitting a lamp.
 *
 * <pre>{@code
 * Detector eye = IntegratingEye.of(TimeSpan.seconds(0.1), LuminousIntensity.candela(3));
 * Detector with = AttentionEffect.published("centre-high-traffic").on(eye);
 * LampSignal bulb = LampSignal.of(LaboratoryLamps.standard(), LuminousIntensity.candela(60));
 * with.detect(bulb).time().equals(eye.detect(bulb).time()); // true
 * }</pre>
 *
 * @param id the name of the row
 * @param factor {@code place}, {@code intensity}, {@code flash}, {@code field}, {@code eccentricity} or {@code masking}
 * @param situation what was compared, and where
 * @param range the change of the time, from and to; nothing if no figure was published
 * @param nullResult whether the study found no effect
 * @param source who published it
 * @param note what to know before using it
 */
public record AttentionEffect(
        String id,
        String factor,
        String situation,
        Optional<Shift> range,
        boolean nullResult,
        Source source,
        String note)
        implements Evident {
    private static final Catalogue<AttentionEffect> PUBLISHED = Catalogue.read(
            "attention effect",
            AttentionEffect.class,
            "attention_effects.csv",
            AttentionEffect::of,
            AttentionEffect::id);

    /**
     * Refuses nulls.
     *
     * @param id the name of the row
     * @param factor {@code place}, {@code intensity}, {@code flash}, {@code field}, {@code eccentricity} or {@code
     *     masking}
     * @param situation what was compared, and where
     * @param range the change of the time, from and to; nothing if no figure was published
     * @param nullResult whether the study found no effect
     * @param source who published it
     * @param note what to know before using it
     * @throws NullPointerException if one that is required is null
     */
    public AttentionEffect {
        Objects.requireNonNull(factor, "factor");
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(note, "note");
        Objects.requireNonNull(range, "range");
        Objects.requireNonNull(situation, "situation");
        Objects.requireNonNull(source, "source");
    }

    /**
     * A change of time.
     *
     * @param from its lower end, negative if earlier
     * @param to its upper end
     */
    public record Shift(TimeSpan from, TimeSpan to) {

        /**
         * Refuses nulls.
         *
         * @param from its lower end, negative if earlier
         * @param to its upper end
         * @throws NullPointerException if one that is required is null
         */
        public Shift {
            Objects.requireNonNull(from, "from");
            Objects.requireNonNull(to, "to");
        }

        /** {@return the middle} */
        public TimeSpan middle() {
            return TimeSpan.seconds((from.inSeconds() + to.inSeconds()) / 2);
        }
    }

    /** {@return all published effects, null results among them} */
    public static List<AttentionEffect> published() {
        return PUBLISHED.list();
    }

    /**
     * Finds a published effect.
     *
     * @param id the name of its row, for example {@code centre-high-field}
     * @return the effect
     * @throws IllegalArgumentException if there is none; the message offers the nearest
     */
    public static AttentionEffect published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
    }

    /**
     * Puts the effect on a detector: what it sees is seen earlier or later by the middle of the range, not before 0 s.
     *
     * @param detector the detector
     * @return a detector that names the effect in its criterion and carries its field evidence
     * @throws IllegalArgumentException if no figure was published
     */
    public Detector on(Detector detector) {
        Objects.requireNonNull(detector, "detector");
        double shiftS = range.orElseThrow(() -> new IllegalArgumentException(
                        "effect " + id + " must have a published figure to be applied: " + note))
                .middle()
                .inSeconds();
        return new Detector() {
            @Override
            public String criterion() {
                return detector.criterion() + "; " + id + " " + Numbers.text(1000 * shiftS) + " ms";
            }

            @Override
            public Detection detect(LampSignal signal) {
                Detection plain = detector.detect(signal);
                if (!(plain instanceof Detection.Seen seen)) {
                    return plain.by(criterion());
                }
                double atS = seen.at().inSeconds() + shiftS;
                return new Detection.Seen(
                        TimeSpan.seconds(Math.max(0, atS)),
                        criterion(),
                        seen.evidence()
                                .with(AttentionEffect.this.evidence())
                                .withCaveatIf(atS < 0, id + " is more than the lamp took: taken as seen at switch-on"));
            }
        };
    }

    @Override
    public Evidence evidence() {
        Evidence evidence = Evidence.of(situation, source).withCaveat(situation + ": " + note);
        for (AttentionEffect other : published()) {
            if (other.nullResult() && !other.id().equals(id)) {
                evidence = evidence.withCaveat("found no effect: " + other.situation() + " (" + other.source() + ")");
            }
        }
        return evidence;
    }

    private static AttentionEffect of(Table table, Map<String, String> row) {
        return new AttentionEffect(
                table.text(row, "id"),
                table.text(row, "factor"),
                table.text(row, "situation"),
                table.text(row, "low_ms").isEmpty()
                        ? Optional.empty()
                        : Optional.of(new Shift(
                                TimeSpan.millis(table.number(row, "low_ms")),
                                TimeSpan.millis(table.number(row, "high_ms")))),
                table.text(row, "null_result").equals("yes"),
                table.source(row),
                table.text(row, "note"));
    }
}
