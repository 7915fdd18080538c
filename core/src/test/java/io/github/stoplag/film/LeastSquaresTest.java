package io.github.stoplag.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Objects;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** NIST Statistical Reference Datasets: one of lower, two of higher difficulty, from their published starts. */
class LeastSquaresTest {
    private static double model(String set, double x, double[] b) {
        return switch (set) {
            case "misra1a" -> b[0] * -Math.expm1(-b[1] * x);
            case "mgh09" -> b[0] * (x * x + x * b[1]) / (x * x + x * b[2] + b[3]);
            default -> (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1 + x * (b[4] + x * (b[5] + x * b[6])));
        };
    }

    @ParameterizedTest
    @CsvSource({
        "misra1a, start1",
        "misra1a, start2",
        "mgh09, start1",
        "mgh09, start2",
        "thurber, start1",
        "thurber, start2"
    })
    void reachesTheCertifiedValues(String set, String start) {
        double[] x = column(set, "x");
        double[] y = column(set, "y");
        double[] certified = column(set, "certified");
        double[] deviation = column(set, "deviation");
        double squares = column(set, "squares")[0];
        int n = certified.length;
        double[] lo = new double[n];
        double[] hi = new double[n];
        Arrays.fill(lo, Double.NEGATIVE_INFINITY);
        Arrays.fill(hi, Double.POSITIVE_INFINITY);
        LeastSquares.Solution solution = LeastSquares.solve(
                b -> {
                    double[] residual = new double[x.length];
                    for (int i = 0; i < x.length; i++) {
                        residual[i] = model(set, x[i], b) - y[i];
                    }
                    return residual;
                },
                column(set, start),
                Arrays.stream(certified).map(b -> 1e-5 * b).toArray(),
                lo,
                hi);
        assertThat(solution.sumOfSquares()).isCloseTo(squares, within(1e-9 * squares));
        double variance = solution.sumOfSquares() / (x.length - n);
        for (int k = 0; k < n; k++) {
            assertThat(solution.point().getEntry(k)).isCloseTo(certified[k], within(2e-6 * certified[k]));
            assertThat(Math.sqrt(variance * solution.covariance().getEntry(k, k)))
                    .isCloseTo(deviation[k], within(2e-5 * deviation[k]));
        }
    }

    private static double[] column(String set, String kind) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(LeastSquaresTest.class.getResourceAsStream("strd.csv")),
                StandardCharsets.UTF_8))) {
            return reader.lines()
                    .map(line -> line.split(","))
                    .filter(cells -> cells[0].equals(set) && cells[1].equals(kind))
                    .flatMap(cells -> Arrays.stream(cells[2].split(" ")))
                    .mapToDouble(Double::parseDouble)
                    .toArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
