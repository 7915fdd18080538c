package io.github.stoplag.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.PublishedTableTest;
import io.github.stoplag.source.Source;
import java.util.List;
import org.junit.jupiter.api.Test;

class TransferCurveTest extends PublishedTableTest {
    private static final Source WEDGE = Source.assumed("invented grey wedge");

    @Override
    protected List<String> tables() {
        return List.of("transfer_curves.csv");
    }

    @Override
    protected double compute(Row row) {
        TransferCurve curve = TransferCurve.parse(row.text("case"));
        if (row.text("quantity").startsWith("slope")) {
            return curve.signal(row.number("light")) / row.number("light");
        }
        return row.text("light").isBlank() ? curve.light(row.number("signal")) : curve.signal(row.number("light"));
    }

    @Test
    void everyCurveRisesAndComesBack() {
        TransferCurve wedge =
                TransferCurve.measured(new double[] {0, 0.2, 0.5, 1}, new double[] {0.02, 0.5, 0.8, 0.98}, WEDGE);
        for (TransferCurve curve : List.of(
                TransferCurve.LINEAR, TransferCurve.SRGB, TransferCurve.BT709, TransferCurve.power(2.2), wedge)) {
            double before = Double.NEGATIVE_INFINITY;
            for (double light = -0.05; light <= 1.1; light += 0.0007) {
                double signal = curve.signal(light);
                assertThat(signal).as(curve + " at " + light).isGreaterThan(before);
                assertThat(curve.light(signal)).as(curve.label()).isCloseTo(light, within(1e-7));
                before = signal;
            }
        }
        assertThat(wedge.signal(0.35)).isCloseTo(0.65, within(1e-12));
    }

    @Test
    void refusesWhatIsNoCurve() {
        assertThatThrownBy(() -> TransferCurve.parse("gamma"))
                .hasMessage("transfer curve must be one of linear, sRGB, BT.709, power <gamma>, got \"gamma\"");
        assertThat(TransferCurve.parse("power 2.2")).hasToString("power 2.2");
        assertThatThrownBy(() -> TransferCurve.power(Double.NaN))
                .hasMessage("gamma of a transfer curve must be in [1, 4], got NaN");
        assertThatThrownBy(() -> TransferCurve.measured(new double[] {0, 1}, new double[] {0.5, 0.5}, WEDGE))
                .hasMessage("signal of point 1 of a transfer curve must be above that of point 0, 0.5, got 0.5");
        assertThatThrownBy(() -> TransferCurve.measured(new double[] {0.1, 1}, new double[] {0, 1}, WEDGE))
                .hasMessage("light of a measured transfer curve must go from 0 to 1, got 0.1 to 1");
    }
}
