package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.Empirical;
import io.github.stoplag.chance.Triangular;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The laws that a plan file may give an axis: a word and its arguments. A new law is one entry here; reader, writer and
 * messages follow.
 *
 * @param word what the file writes, for example {@code uniform}
 * @param arguments what each argument is; the last one may stand again up to {@code most}
 * @param most how many arguments there may be
 * @param maker makes the law of them
 * @param parameters gives the arguments of a law of this form, to be written; nothing for any other
 */
record AxisForm(
        String word,
        List<Argument> arguments,
        int most,
        Function<double[], Distribution> maker,
        Function<Distribution, Optional<double[]>> parameters) {
    /** What an argument is. */
    enum Argument {
        /** A value of the axis, with its unit and in its range. */
        VALUE,
        /** How far values spread, with the axis's unit. */
        SPREAD,
        /** A plain number. */
        NUMBER
    }

    private static final int MOST_OBSERVATIONS = 1_000_000;

    private static final List<AxisForm> ALL = List.of(
            form(
                    "uniform",
                    v -> new Distribution.Uniform(v[0], v[1]),
                    Distribution.Uniform.class,
                    u -> new double[] {u.lo(), u.hi()},
                    Argument.VALUE,
                    Argument.VALUE),
            form(
                    "triangular",
                    v -> new Triangular(v[0], v[1], v[2]),
                    Triangular.class,
                    three -> new double[] {three.lo(), three.peak(), three.hi()},
                    Argument.VALUE,
                    Argument.VALUE,
                    Argument.VALUE),
            form(
                    "log-normal",
                    v -> new Distribution.LogNormal(v[0], v[1]),
                    Distribution.LogNormal.class,
                    fit -> new double[] {fit.mu(), fit.sigma()},
                    Argument.NUMBER,
                    Argument.NUMBER),
            new AxisForm(
                    "log-normal-mean-sd",
                    List.of(Argument.VALUE, Argument.SPREAD),
                    2,
                    v -> Distribution.LogNormal.ofMeanAndSd(v[0], v[1]),
                    law -> Optional.empty()),
            form(
                    "truncated-normal",
                    v -> new Distribution.TruncatedNormal(v[0], v[1], v[2], v[3]),
                    Distribution.TruncatedNormal.class,
                    cut -> new double[] {cut.mean(), cut.standardDeviation(), cut.lo(), cut.hi()},
                    Argument.VALUE,
                    Argument.SPREAD,
                    Argument.VALUE,
                    Argument.VALUE),
            new AxisForm(
                    "empirical",
                    List.of(Argument.VALUE, Argument.VALUE),
                    MOST_OBSERVATIONS,
                    Empirical::of,
                    law -> law instanceof Empirical observed
                            ? Optional.of(observed.observations())
                            : Optional.empty()));

    private static <D extends Distribution> AxisForm form(
            String word,
            Function<double[], Distribution> maker,
            Class<D> law,
            Function<D, double[]> parameters,
            Argument... arguments) {
        return new AxisForm(
                word,
                List.of(arguments),
                arguments.length,
                maker,
                any -> law.isInstance(any) ? Optional.of(parameters.apply(law.cast(any))) : Optional.empty());
    }

    static Optional<AxisForm> of(String word) {
        return ALL.stream().filter(form -> form.word.equals(word)).findFirst();
    }

    /** Finds the form that writes a law. */
    static Optional<AxisForm> of(Distribution law) {
        return ALL.stream()
                .filter(form -> form.parameters.apply(law).isPresent())
                .findFirst();
    }

    static Stream<String> words() {
        return ALL.stream().map(AxisForm::word);
    }

    Argument argument(int at) {
        return arguments.get(Math.min(at, arguments.size() - 1));
    }

    /** Writes the arguments of a law of this form. */
    String written(Distribution law, Function<Double, String> value, Function<Double, String> number) {
        double[] all = parameters.apply(law).orElseThrow();
        return IntStream.range(0, all.length)
                .mapToObj(i -> (argument(i) == Argument.NUMBER ? number : value).apply(all[i]))
                .collect(Collectors.joining(", "));
    }
}
