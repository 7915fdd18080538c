package io.github.stoplag.approval;

import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What a regulation asks of a rear lamp's luminous intensity: on its reference axis and, where the row has it, in its
 * field.
 *
 * <p>A lamp marked "D" is approved for use with a second one of the same function, the two taken for a single lamp (UN
 * R148, paragraph 4.8.3.2): each has the lower greatest intensity {@link #mostMarked}, both lit together stay within
 * {@link #most}, and either alone still gives {@link #least}. Every check asks how the lamp is used, so that none is
 * judged by the wrong one. Lamps that depend on one another (interdependent) are one single lamp: check what all give
 * together.
 *
 * <p>The rows, with law, table and standing, stand in {@code rear_lamp_limits.csv}. They are a reading aid: the law in
 * force where the vehicle runs decides, and it also asks for the distribution of the light, colours and a type
 * approval.
 *
 * @param regulation for example {@code UN R148} or {@code FMVSS 108}
 * @param lamp what lamp: stop, tail, high-mounted stop, rear turn red, rear turn amber, end-outline
 * @param variant the category or the number of lighted sections, empty if there is one only
 * @param least the least intensity on the axis
 * @param most the greatest intensity of a single lamp, or of two marked ones together
 * @param mostMarked the greatest intensity of one lamp marked "D", if the regulation knows such lamps
 * @param leastInField the least intensity anywhere in the field where the lamp must be visible, if the row has one
 * @param mostByNight the greatest intensity by night of a lamp of variable intensity
 * @param mostWhere where the greatest intensity counts
 * @param source law and table
 */
public record RearLampLimit(
        String regulation,
        String lamp,
        String variant,
        LuminousIntensity least,
        LuminousIntensity most,
        Optional<LuminousIntensity> mostMarked,
        Optional<LuminousIntensity> leastInField,
        Optional<LuminousIntensity> mostByNight,
        String mostWhere,
        Source source) {
    private static final Catalogue<RearLampLimit> PUBLISHED = Catalogue.read(
            "rear lamp limit",
            RearLampLimit.class,
            "rear_lamp_limits.csv",
            RearLampLimit::read,
            RearLampLimit::toString);

    /**
     * Refuses nulls.
     *
     * @param regulation for example {@code UN R148} or {@code FMVSS 108}
     * @param lamp what lamp: stop, tail, high-mounted stop, rear turn red, rear turn amber, end-outline
     * @param variant the category or the number of lighted sections, empty if there is one only
     * @param least the least intensity on the axis
     * @param most the greatest intensity of a single lamp, or of two marked ones together
     * @param mostMarked the greatest intensity of one lamp marked "D", if the regulation knows such lamps
     * @param leastInField the least intensity anywhere in the field where the lamp must be visible, if the row has one
     * @param mostByNight the greatest intensity by night of a lamp of variable intensity
     * @param mostWhere where the greatest intensity counts
     * @param source law and table
     * @throws NullPointerException if one that is required is null
     */
    public RearLampLimit {
        Objects.requireNonNull(lamp, "lamp");
        Objects.requireNonNull(least, "least");
        Objects.requireNonNull(leastInField, "leastInField");
        Objects.requireNonNull(most, "most");
        Objects.requireNonNull(mostByNight, "mostByNight");
        Objects.requireNonNull(mostMarked, "mostMarked");
        Objects.requireNonNull(mostWhere, "mostWhere");
        Objects.requireNonNull(regulation, "regulation");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(variant, "variant");
    }

    /** How a lamp is used, which decides its greatest intensity. */
    public enum Use {
        /** By itself, or several that depend on one another measured together. */
        SINGLE("a single lamp"),
        /** Marked "D": with a second independent lamp of the same function. */
        MARKED_D("a lamp marked \"D\"");

        private final String words;

        Use(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * Two lamps marked "D" that count as one.
     *
     * @param first the one, alone
     * @param second the other, alone
     * @param together both lit
     */
    public record Pair(RearLampCheck first, RearLampCheck second, RearLampCheck together) {

        /**
         * Refuses nulls.
         *
         * @param first the one, alone
         * @param second the other, alone
         * @param together both lit
         * @throws NullPointerException if one that is required is null
         */
        public Pair {
            Objects.requireNonNull(first, "first");
            Objects.requireNonNull(second, "second");
            Objects.requireNonNull(together, "together");
        }

        /** {@return whether each alone and both together are within their limits} */
        public boolean met() {
            return first.within() && second.within() && together.within();
        }
    }

    /** {@return all rows, in the order of the table} */
    public static List<RearLampLimit> published() {
        return PUBLISHED.list();
    }

    /**
     * Finds a row.
     *
     * @param id regulation, lamp and variant, for example {@code UN R148 stop S1} or {@code FMVSS 108 high-mounted
     *     stop}
     * @return the row
     * @throws IllegalArgumentException if there is none; the message offers the nearest
     */
    public static RearLampLimit published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
    }

    private static RearLampLimit read(Table table, Map<String, String> row) {
        return new RearLampLimit(
                table.text(row, "regulation"),
                table.text(row, "lamp"),
                table.text(row, "variant"),
                LuminousIntensity.candela(table.number(row, "min_cd")),
                LuminousIntensity.candela(table.number(row, "max_cd")),
                optional(table, row, "marked_max_cd"),
                optional(table, row, "field_min_cd"),
                optional(table, row, "night_max_cd"),
                table.text(row, "max_where"),
                table.source(row));
    }

    private static Optional<LuminousIntensity> optional(Table table, Map<String, String> row, String column) {
        return table.text(row, column).isEmpty()
                ? Optional.empty()
                : Optional.of(LuminousIntensity.candela(table.number(row, column)));
    }

    /**
     * Gives the greatest intensity of a lamp by its use.
     *
     * @param use how the lamp is used
     * @return {@link #most} or {@link #mostMarked}
     * @throws IllegalArgumentException if the row knows no lamp marked "D"
     */
    public LuminousIntensity most(Use use) {
        return switch (use) {
            case SINGLE -> most;
            case MARKED_D ->
                mostMarked.orElseThrow(() -> new IllegalArgumentException(
                        "use must be a single lamp: " + this + " has no limit for " + use + " (" + source + ")"));
        };
    }

    /**
     * Checks an intensity on the axis.
     *
     * @param intensity the intensity of this one lamp
     * @param use how the lamp is used
     * @return the verdict, with the row it rests on
     * @throws IllegalArgumentException if the row knows no lamp marked "D" and the lamp is used as one
     */
    public RearLampCheck check(LuminousIntensity intensity, Use use) {
        Objects.requireNonNull(intensity, "intensity");
        return check(intensity, least, most(use), use.toString(), List.of());
    }

    /**
     * Checks an intensity on the axis by night, when a lamp of variable intensity may give no more than a steady one.
     *
     * <p>The night limit of a variable lamp marked "D" was not read; half of the single lamp's is used, as the steady
     * lamps have it, with a caveat.
     *
     * @param intensity the intensity of this one lamp
     * @param use how the lamp is used
     * @return the verdict, with the row it rests on
     * @throws IllegalArgumentException if the row knows no lamp marked "D" and the lamp is used as one
     */
    public RearLampCheck checkByNight(LuminousIntensity intensity, Use use) {
        Objects.requireNonNull(intensity, "intensity");
        LuminousIntensity byDay = most(use);
        if (mostByNight.isEmpty()) {
            return check(intensity, use);
        }
        LuminousIntensity single = mostByNight.get();
        boolean marked = use == Use.MARKED_D;
        return check(
                intensity,
                least,
                marked ? LuminousIntensity.candela(single.inCandela() * byDay.inCandela() / most.inCandela()) : single,
                use + " by night",
                marked
                        ? List.of(new Caveat(
                                "the night limit of a lamp marked \"D\" is derived: the single lamp's, reduced as"
                                        + " by day; the regulation's own was not read"))
                        : List.of());
    }

    /**
     * Checks an intensity in some direction of the field in which the lamp must be visible, such as its weakest one.
     *
     * @param intensity the intensity of this one lamp in that direction
     * @param use how the lamp is used
     * @return the verdict, with the row it rests on
     * @throws IllegalArgumentException if the row has no least intensity in the field, or knows no lamp marked "D" and
     *     the lamp is used as one
     */
    public RearLampCheck checkInField(LuminousIntensity intensity, Use use) {
        Objects.requireNonNull(use, "use");
        LuminousIntensity lowest = leastInField.orElseThrow(
                () -> new IllegalArgumentException(this + " has no least intensity in the field (" + source + ")"));
        return check(intensity, lowest, most(use), use + " in its field", List.of());
    }

    /**
     * Checks two independent lamps marked "D" on the axis: each alone, since one may fail, and both together.
     *
     * @param first the intensity of the one
     * @param second the intensity of the other
     * @return the three verdicts
     * @throws IllegalArgumentException if the row knows no lamp marked "D"
     */
    public Pair checkPair(LuminousIntensity first, LuminousIntensity second) {
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(second, "second");
        return new Pair(
                check(first, Use.MARKED_D),
                check(second, Use.MARKED_D),
                check(
                        LuminousIntensity.candela(first.inCandela() + second.inCandela()),
                        least,
                        most,
                        "two lamps marked \"D\" together",
                        List.of()));
    }

    private RearLampCheck check(
            LuminousIntensity intensity,
            LuminousIntensity lowest,
            LuminousIntensity highest,
            String judgedAs,
            List<Caveat> caveats) {
        return new RearLampCheck(intensity, lowest, highest, this, judgedAs, caveats);
    }

    @Override
    public String toString() {
        return regulation + " " + lamp + (variant.isEmpty() ? "" : " " + variant);
    }
}
