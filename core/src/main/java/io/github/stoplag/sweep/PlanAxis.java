package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.driver.DecelerationStudy;
import io.github.stoplag.driver.DriverResponse;
import io.github.stoplag.driver.LogNormalReaction;
import io.github.stoplag.driver.ReactionStudy;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Units;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * An axis as a plan file gives it: a form and its arguments, for example {@code uniform 80 km/h, 130 km/h}.
 *
 * @param axis the axis
 * @param text its form and arguments, in SI units with every digit
 * @param caveats what to know about a published set
 */
record PlanAxis(Axis axis, String text, List<Caveat> caveats) {
    static final String SOURCE = ".source";

    private static final String CONSTANT = "constant";
    private static final String LIST = "list";
    private static final String RANGE = "range";
    private static final String STUDY = "study";
    private static final String SHARE = "share";
    static final String FORMS =
            Stream.concat(Stream.of(CONSTANT, LIST, RANGE), AxisForm.words()).collect(Collectors.joining(", "))
                    + " or, for reaction, leader_decel and follower_decel, study; for responds share";
    private static final int FIT_DECIMALS = 12;

    /** Reads the axis of a key that the file has. */
    static PlanAxis read(PlanLines lines, String key, PairColumn column) {
        PlanAxis read = new Reader(lines, key, column, lines.text(key, null)).axis();
        String sourceKey = key + SOURCE;
        return lines.has(sourceKey)
                ? new PlanAxis(read.axis.from(source(lines, sourceKey)), read.text, read.caveats)
                : read;
    }

    private static Source source(PlanLines lines, String key) {
        String text = lines.text(key, null);
        int colon = text.indexOf(':');
        return lines.making(
                List.of(key),
                () -> new Source(
                        text.substring(colon + 1).strip(),
                        "",
                        Standing.of(text.substring(0, Math.max(0, colon)).strip())));
    }

    static String written(Source source) {
        String place = source.place().isEmpty() ? "" : ", " + source.place();
        return source.standing() + ": " + source.document() + place;
    }

    /** Writes an axis that a plan in code has. */
    static PlanAxis of(Axis axis) {
        PairColumn column = PairColumn.of(axis.column())
                .orElseThrow(() -> new IllegalArgumentException(
                        "an axis of a plan file must be one of a pair's columns, got " + axis.column()));
        return new PlanAxis(axis, text(axis, column), List.of());
    }

    /** Names the key of its axis: its column without the unit. */
    String key() {
        PairColumn column = PairColumn.of(axis.column()).orElseThrow();
        String name = axis.column();
        return column.unit().isEmpty()
                ? name
                : name.substring(0, name.length() - column.unit().length() - 1);
    }

    private static String text(Axis axis, PairColumn column) {
        Function<Double, String> value =
                si -> (Numbers.exact(si) + " " + column.range().unit()).strip();
        if (axis.distribution().isEmpty()) {
            return text(axis.levels(), axis, value);
        }
        Distribution law = axis.distribution().orElseThrow();
        if (law instanceof Distribution.Bernoulli responds && column == PairColumn.RESPONDS) {
            return SHARE + " " + Numbers.exact(responds.probability());
        }
        AxisForm form = AxisForm.of(law)
                .orElseThrow(() -> new IllegalArgumentException(
                        axis.column() + " must have one of the laws " + FORMS + " to be written, got " + law));
        return form.word() + " " + form.written(law, value, Numbers::exact);
    }

    private static String text(double[] levels, Axis axis, Function<Double, String> value) {
        int last = levels.length - 1;
        if (last == 0) {
            return CONSTANT + " " + value.apply(levels[0]);
        }
        boolean even = levels[0] < levels[last]
                && Arrays.equals(
                        levels,
                        Axis.range(axis.column(), "", levels[0], levels[last], levels.length)
                                .levels());
        if (even && last > 1) {
            return RANGE + " " + value.apply(levels[0]) + ", " + value.apply(levels[last]) + ", " + levels.length;
        }
        return LIST + " " + Arrays.stream(levels).boxed().map(value).collect(Collectors.joining(", "));
    }

    /** The drivers of the study that gives the reaction, as far as some of them did not respond. */
    static Optional<PlanAxis> responding(PlanLines lines) {
        String key = PairColumn.REACTION.axis();
        String[] words = lines.has(key) ? lines.text(key, null).split("\\s+", -1) : new String[0];
        if (words.length != 2 || !words[0].equals(STUDY)) {
            return Optional.empty();
        }
        ReactionStudy study = ReactionStudy.published(words[1]);
        return study.response()
                .filter(drivers -> drivers.respondingShare() < 1)
                .map(drivers ->
                        of(PairModel.responding(drivers.respondingShare()).from(study.source())));
    }

    /** One key's value taken apart. */
    private record Reader(PlanLines lines, String key, PairColumn column, String text) {
        PlanAxis axis() {
            String word = text.split("\\s", 2)[0];
            if ((column == PairColumn.RESPONDS) != word.equals(SHARE)) {
                throw bad(
                        column == PairColumn.RESPONDS
                                ? "must be the share of drivers who respond, as in: share 72 %"
                                : "share is for responds only");
            }
            return switch (word) {
                case CONSTANT -> levels(arguments(1, 1));
                case LIST -> levels(arguments(1, Axis.MOST_LEVELS));
                case RANGE -> range(arguments(3, 3));
                case STUDY -> study();
                case SHARE -> made(PairModel.responding(value(arguments(1, 1).get(0))));
                default -> AxisForm.of(word).map(this::drawn).orElseThrow(() -> bad("must start with one of " + FORMS));
            };
        }

        private static PlanAxis made(Axis axis) {
            return PlanAxis.of(axis);
        }

        private PlanAxis drawn(AxisForm form) {
            List<String> texts = arguments(form.arguments().size(), form.most());
            double[] arguments = new double[texts.size()];
            for (int i = 0; i < arguments.length; i++) {
                arguments[i] = argument(form.argument(i), texts.get(i));
            }
            return made(axis(making(() -> form.maker().apply(arguments))));
        }

        private Axis axis(Distribution law) {
            return Axis.drawn(key, column.unit(), law);
        }

        private double argument(AxisForm.Argument kind, String argument) {
            return switch (kind) {
                case VALUE -> value(argument);
                case SPREAD -> spread(argument);
                case NUMBER -> si(Units.NUMBER, argument);
            };
        }

        private double value(String argument) {
            double si = si(column.units(), argument);
            if (!column.range().contains(si)) {
                throw lines.bad(
                        key,
                        argument,
                        column.refusal() + ", got "
                                + (Numbers.text(si) + " " + column.range().unit()).strip());
            }
            return si;
        }

        /** A difference of two values: degrees Celsius, which have another zero, are none. */
        private double spread(String argument) {
            if (column.units() == Units.TEMPERATURE && !argument.endsWith("K")) {
                throw lines.bad(key, argument, "a spread of temperatures must be in K");
            }
            return si(column.units(), argument);
        }

        private double si(Units units, String argument) {
            try {
                return units.parseSi(argument);
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException(
                        lines.bad(key, argument, String.valueOf(e.getMessage())).getMessage(), e);
            }
        }

        private PlanAxis levels(List<String> texts) {
            double[] levels = texts.stream().mapToDouble(this::value).toArray();
            return made(Axis.list(key, column.unit(), levels));
        }

        private PlanAxis range(List<String> texts) {
            double count = si(Units.NUMBER, texts.get(2));
            if (!(count >= 2 && count <= Axis.MOST_LEVELS && count == Math.rint(count))) {
                throw bad("the number of levels must be whole and in [2, " + Axis.MOST_LEVELS + "], got "
                        + Numbers.text(count));
            }
            double lo = value(texts.get(0));
            double hi = value(texts.get(1));
            return made(making(() -> Axis.range(key, column.unit(), lo, hi, (int) count)));
        }

        private PlanAxis study() {
            return switch (column) {
                case REACTION -> reaction(arguments(1, 1).get(0));
                case LEADER_DECEL, FOLLOWER_DECEL -> deceleration(arguments(2, 2));
                default -> throw bad("study is for reaction, leader_decel and follower_decel only");
            };
        }

        private PlanAxis deceleration(List<String> texts) {
            DecelerationStudy study = making(() -> DecelerationStudy.published(texts.get(0)));
            double mostMps2 = value(texts.get(1));
            Distribution law =
                    making(() -> study.upTo(Deceleration.mps2(mostMps2)).distribution());
            List<Caveat> caveats = study.note().isEmpty() ? List.of() : List.of(new Caveat(study.note()));
            String canonical = STUDY + " " + study.id() + ", " + Numbers.exact(mostMps2) + " "
                    + column.range().unit();
            return new PlanAxis(axis(law).from(study.source()), canonical, caveats);
        }

        private PlanAxis reaction(String id) {
            ReactionStudy study = making(() -> ReactionStudy.published(id));
            if (study.response().map(DriverResponse::reaction).orElse(null) instanceof LogNormalReaction fit) {
                // the fit uses Math, which may differ in the last bit between JDKs
                Distribution law = new Distribution.LogNormal(rounded(fit.mu()), rounded(fit.sigma()));
                return new PlanAxis(axis(law).from(study.source()), STUDY + " " + id, study.caveats());
            }
            throw bad("the study must give a log-normal, as these do: "
                    + ReactionStudy.published().stream()
                            .filter(s ->
                                    s.response().map(DriverResponse::reaction).orElse(null)
                                            instanceof LogNormalReaction)
                            .map(ReactionStudy::id)
                            .collect(Collectors.joining(", ")));
        }

        private static double rounded(double value) {
            return BigDecimal.valueOf(value)
                    .setScale(FIT_DECIMALS, RoundingMode.HALF_EVEN)
                    .doubleValue();
        }

        private List<String> arguments(int least, int most) {
            String[] parts = text.split("\\s+", 2);
            List<String> all = Stream.of(parts.length < 2 ? new String[0] : parts[1].split(",", -1))
                    .map(String::strip)
                    .toList();
            if (all.size() < least || all.size() > most || all.contains("")) {
                throw bad(parts[0] + " must have " + (least == most ? least : least + " to " + most)
                        + " values separated by commas, got " + all.size());
            }
            return all;
        }

        private <T> T making(Supplier<T> maker) {
            return lines.making(List.of(key), maker);
        }

        private IllegalArgumentException bad(String why) {
            return lines.bad(key, text, why);
        }
    }
}
