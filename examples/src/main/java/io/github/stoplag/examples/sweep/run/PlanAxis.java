package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.Empirical;
import io.github.stoplag.driver.DriverResponse;
import io.github.stoplag.driver.LogNormalReaction;
import io.github.stoplag.driver.ReactionStudy;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Range;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.sweep.Axis;
import io.github.stoplag.sweep.PairModel;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * An axis as a plan file gives it: a form and its arguments, for example {@code uniform 80 km/h, 130 km/h}.
 *
 * @param axis the axis
 * @param canonical its form and arguments in SI units, every digit of them
 * @param caveats what to know about a published set
 */
record PlanAxis(Axis axis, String canonical, List<Caveat> caveats) {
    static final String FORMS = "constant, list, range, uniform, log-normal, log-normal-mean-sd, truncated-normal,"
            + " empirical or, for reaction, study; for responds share";
    static final String SOURCE = ".source";

    private static final String STUDY = "study";
    private static final String SHARE = "share";

    private static final int FIT_DECIMALS = 12;
    private static final Key<Double> MU = Key.number("mu", null, -50, 50, "");
    private static final Key<Double> SIGMA = Key.number("sigma", null, 0, 5, "");
    private static final Key<Double> LEVELS = Key.number("levels", null, 2, 1e6, "");

    /** Reads the axis of a key that the file has. */
    static PlanAxis read(ScenarioFile file, AxisKind kind) {
        PlanAxis read = new Reader(file, kind, file.text(kind.name(), null)).axis();
        String sourceKey = kind.name() + SOURCE;
        return file.has(sourceKey)
                ? new PlanAxis(
                        read.axis.from(source(file, sourceKey, file.text(sourceKey, null))),
                        read.canonical,
                        read.caveats)
                : read;
    }

    /** The latency of a lamp that the supply does not change, as its model gives it. */
    static PlanAxis modelled(AxisKind kind, double latencyS, String lamp) {
        double value = SupplyLamp.rounded(latencyS);
        return new PlanAxis(
                Axis.constant(kind.name(), kind.unit(), value)
                        .from(new Source("the lamp model for " + lamp, "", Standing.DERIVED)),
                Reader.canonical("constant", value),
                List.of());
    }

    /** The drivers of the study that gives the reaction, as far as some of them did not respond. */
    static Optional<PlanAxis> responding(ScenarioFile file) {
        String reaction = file.has(AxisKind.REACTION.name()) ? file.text(AxisKind.REACTION.name(), null) : "";
        String[] words = reaction.split("\\s+", -1);
        if (words.length != 2 || !words[0].equals(STUDY)) {
            return Optional.empty();
        }
        ReactionStudy study = ReactionStudy.published(words[1]);
        return study.response()
                .filter(drivers -> drivers.respondingShare() < 1)
                .map(drivers -> responding(drivers.respondingShare(), study.source()));
    }

    private static PlanAxis responding(double share, Source source) {
        return new PlanAxis(PairModel.responding(share).from(source), SHARE + " " + ExactText.of(share), List.of());
    }

    private static Source source(ScenarioFile file, String key, String text) {
        int colon = text.indexOf(':');
        return file.making(
                List.of(key),
                () -> new Source(
                        text.substring(colon + 1).strip(),
                        "",
                        Standing.of(text.substring(0, Math.max(0, colon)).strip())));
    }

    /** One key's value taken apart. */
    private record Reader(ScenarioFile file, AxisKind kind, String text) {
        PlanAxis axis() {
            String form = text.split("\\s", 2)[0];
            if (kind.equals(AxisKind.RESPONDS) != form.equals(SHARE)) {
                throw file.bad(
                        kind.name(),
                        text,
                        kind.equals(AxisKind.RESPONDS)
                                ? "must be the share of drivers who respond, as in: share 72 %"
                                : "share is for responds only");
            }
            return switch (form) {
                case "constant" -> levels(form, values(1, 1));
                case "list" -> levels(form, values(1, 1000));
                case "range" -> range(form);
                case "uniform" -> {
                    double[] v = values(2, 2);
                    yield drawn(form, making(() -> new Distribution.Uniform(v[0], v[1])), v);
                }
                case "log-normal" -> logNormal(number(0, 2, MU), number(1, 2, SIGMA), List.of());
                case "log-normal-mean-sd" -> ofMeanAndSd(values(2, 2));
                case "truncated-normal" -> {
                    double[] v = values(4, 4);
                    yield drawn(form, making(() -> new Distribution.TruncatedNormal(v[0], v[1], v[2], v[3])), v);
                }
                case "empirical" -> {
                    double[] v = values(2, 1000);
                    Arrays.sort(v);
                    yield drawn(form, Empirical.of(v), v);
                }
                case STUDY -> study();
                case SHARE -> {
                    double share = values(1, 1)[0];
                    yield new PlanAxis(PairModel.responding(share), canonical(form, share), List.of());
                }
                default -> throw file.bad(kind.name(), text, "must start with one of " + FORMS);
            };
        }

        private <T> T making(Supplier<T> maker) {
            return file.making(List.of(kind.name()), maker);
        }

        private List<String> arguments(int least, int most) {
            String[] parts = text.split("\\s+", 2);
            List<String> all = Stream.of(parts.length < 2 ? new String[0] : parts[1].split(",", -1))
                    .map(String::strip)
                    .toList();
            if (all.size() < least || all.size() > most || all.contains("")) {
                throw file.bad(
                        kind.name(),
                        text,
                        parts[0] + " must have " + (least == most ? least : least + " to " + most)
                                + " values separated by commas, got " + all.size());
            }
            return all;
        }

        private double[] values(int least, int most) {
            return arguments(least, most).stream()
                    .mapToDouble(argument -> file.parse(kind.key(), argument))
                    .toArray();
        }

        private double number(int at, int of, Key<Double> key) {
            Range plain =
                    Range.closed(kind.name(), key.range().lo(), key.range().hi(), "");
            return file.parse(
                    new Key<>(kind.name(), null, key.parse(), key.measure(), plain),
                    arguments(of, of).get(at));
        }

        private PlanAxis levels(String form, double[] levels) {
            return new PlanAxis(Axis.list(kind.name(), kind.unit(), levels), canonical(form, levels), List.of());
        }

        private PlanAxis range(String form) {
            List<String> arguments = arguments(3, 3);
            double lo = file.parse(kind.key(), arguments.get(0));
            double hi = file.parse(kind.key(), arguments.get(1));
            double count = number(2, 3, LEVELS);
            if (count != Math.rint(count)) {
                throw file.bad(kind.name(), text, "the number of levels must be whole, got " + Numbers.text(count));
            }
            Axis axis = making(() -> Axis.range(kind.name(), kind.unit(), lo, hi, (int) count));
            return new PlanAxis(axis, canonical(form, lo, hi, count), List.of());
        }

        private PlanAxis drawn(String form, Distribution distribution, double... parameters) {
            return new PlanAxis(
                    Axis.drawn(kind.name(), kind.unit(), distribution), canonical(form, parameters), List.of());
        }

        private PlanAxis logNormal(double mu, double sigma, List<Caveat> caveats) {
            PlanAxis drawn = drawn("log-normal", making(() -> new Distribution.LogNormal(mu, sigma)), mu, sigma);
            return new PlanAxis(drawn.axis, drawn.canonical, caveats);
        }

        private PlanAxis ofMeanAndSd(double[] v) {
            if (!(v[0] > 0 && v[1] > 0)) {
                throw file.bad(kind.name(), text, "mean and standard deviation must be above 0");
            }
            double variance = StrictMath.log1p((v[1] / v[0]) * (v[1] / v[0]));
            return logNormal(StrictMath.log(v[0]) - variance / 2, StrictMath.sqrt(variance), List.of());
        }

        private PlanAxis study() {
            if (!kind.equals(AxisKind.REACTION)) {
                throw file.bad(kind.name(), text, "study is for reaction only");
            }
            ReactionStudy study =
                    making(() -> ReactionStudy.published(arguments(1, 1).get(0)));
            if (study.response().map(DriverResponse::reaction).orElse(null) instanceof LogNormalReaction fit) {
                // the fit uses Math, which may differ in the last bit between JDKs
                PlanAxis drawn = logNormal(rounded(fit.mu()), rounded(fit.sigma()), study.caveats());
                return new PlanAxis(drawn.axis.from(study.source()), drawn.canonical, drawn.caveats);
            }
            throw file.bad(
                    kind.name(),
                    text,
                    "the study must give a log-normal, as these do: "
                            + ReactionStudy.published().stream()
                                    .filter(s -> s.response()
                                                    .map(DriverResponse::reaction)
                                                    .orElse(null)
                                            instanceof LogNormalReaction)
                                    .map(ReactionStudy::id)
                                    .collect(Collectors.joining(", ")));
        }

        private static double rounded(double value) {
            return BigDecimal.valueOf(value)
                    .setScale(FIT_DECIMALS, RoundingMode.HALF_EVEN)
                    .doubleValue();
        }

        private static String canonical(String form, double... values) {
            return form + " " + DoubleStream.of(values).mapToObj(ExactText::of).collect(Collectors.joining(", "));
        }
    }
}
