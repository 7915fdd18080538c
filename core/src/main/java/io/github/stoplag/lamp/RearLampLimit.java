package io.github.stoplag.lamp;

import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a regulation asks of a rear lamp's luminous intensity on its reference axis.
 *
 * <p>The rows, with law, table and standing, stand in {@code rear_lamp_limits.csv}. They are a reading aid: the law in force
 * where the vehicle runs decides, and it also asks for points off the axis, colours and a type approval.
 *
 * @param regulation for example {@code UN R148} or {@code FMVSS 108}
 * @param lamp what lamp: stop, tail, high-mounted stop, rear turn red, rear turn amber, end-outline
 * @param variant the category or the number of lighted sections, empty if there is one only
 * @param least the least intensity on the axis
 * @param most the greatest intensity
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
        Optional<LuminousIntensity> mostByNight,
        String mostWhere,
        Source source) {
    /** How an intensity stands to the limits. */
    public enum Verdict {
        /** Below the least intensity. */
        TOO_DIM,
        /** Within the limits, both included. */
        WITHIN,
        /** Above the greatest intensity. */
        TOO_BRIGHT
    }

    /**
     * A lamp held against a row.
     *
     * @param verdict how it stands
     * @param intensity what was checked
     * @param limit the row used, with its standing
     * @param byNight whether the night limit of a variable lamp was used
     */
    public record Result(Verdict verdict, LuminousIntensity intensity, RearLampLimit limit, boolean byNight) {
        /** {@return what to mind whatever the verdict: an intensity on the axis is no type approval} */
        public List<Caution> cautions() {
            return List.of(Caution.LAMP_LAW, Caution.LICENSED_PRACTICE);
        }

        @Override
        public String toString() {
            LuminousIntensity most = byNight ? limit.mostByNight.orElse(limit.most) : limit.most;
            String words = switch (verdict) {
                case TOO_DIM -> "below";
                case WITHIN -> "within";
                case TOO_BRIGHT -> "above";
            };
            return intensity + " is " + words + " [" + limit.least.inCandela() + ", " + most.inCandela() + "] cd of "
                    + limit + (byNight ? " by night" : "") + ", " + limit.source;
        }
    }

    /** {@return all rows, in the order of the table} */
    public static List<RearLampLimit> all() {
        Table table = Table.read(RearLampLimit.class, "rear_lamp_limits.csv");
        return table.rows().stream().map(row -> read(table, row)).toList();
    }

    /**
     * Finds a row.
     *
     * @param regulation the regulation as the table names it
     * @param lamp the lamp as the table names it
     * @param variant the variant as the table names it
     * @return the row
     * @throws IllegalArgumentException if there is none; the message names those of the regulation
     */
    public static RearLampLimit find(String regulation, String lamp, String variant) {
        List<RearLampLimit> all = all();
        return all.stream()
                .filter(row ->
                        row.regulation.equals(regulation) && row.lamp.equals(lamp) && row.variant.equals(variant))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("rear lamp limit must be one of "
                        + all.stream().map(RearLampLimit::toString).toList() + ", got \"" + regulation + " " + lamp
                        + " "
                        + variant + "\""));
    }

    private static RearLampLimit read(Table table, Map<String, String> row) {
        String night = table.text(row, "night_max_cd");
        return new RearLampLimit(
                table.text(row, "regulation"),
                table.text(row, "lamp"),
                table.text(row, "variant"),
                LuminousIntensity.candela(table.number(row, "min_cd")),
                LuminousIntensity.candela(table.number(row, "max_cd")),
                night.isEmpty()
                        ? Optional.empty()
                        : Optional.of(LuminousIntensity.candela(table.number(row, "night_max_cd"))),
                table.text(row, "max_where"),
                table.source(row));
    }

    /**
     * Checks an intensity on the axis.
     *
     * @param intensity the intensity
     * @return the verdict, with the row it rests on
     */
    public Result check(LuminousIntensity intensity) {
        return check(intensity, most, false);
    }

    /**
     * Checks an intensity by night, when a lamp of variable intensity may give no more than a steady one.
     *
     * @param intensity the intensity
     * @return the verdict, with the row it rests on
     */
    public Result checkByNight(LuminousIntensity intensity) {
        return check(intensity, mostByNight.orElse(most), mostByNight.isPresent());
    }

    private Result check(LuminousIntensity intensity, LuminousIntensity highest, boolean byNight) {
        double cd = intensity.inCandela();
        Verdict verdict = cd < least.inCandela()
                ? Verdict.TOO_DIM
                : cd > highest.inCandela() ? Verdict.TOO_BRIGHT : Verdict.WITHIN;
        return new Result(verdict, intensity, this, byNight);
    }

    @Override
    public String toString() {
        return regulation + " " + lamp + (variant.isEmpty() ? "" : " " + variant);
    }
}
