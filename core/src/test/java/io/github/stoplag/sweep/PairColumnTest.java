package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The columns of a pair: one list from which checks, messages and names follow. */
class PairColumnTest {
    private static final List<String> LAMPS = List.of("led");

    private static Plan planOf(PairColumn changed, double value) {
        Plan plan = Plan.of(Design.grid(), 1);
        for (PairColumn column : PairColumn.values()) {
            PairColumn otherGap = changed == PairColumn.GAP ? PairColumn.TIME_GAP : PairColumn.GAP;
            if (column != otherGap && !column.isOfCircuit()) {
                double usual = column == PairColumn.RESPONDS ? 1 : column == PairColumn.GRADE ? 0 : 0.5;
                plan = plan.axis(Axis.constant(column.axis("led"), column.unit(), column == changed ? value : usual));
            }
        }
        return plan;
    }

    private static List<String> rejections(PairColumn column, double value) {
        Plan plan = planOf(column, value);
        PairModel model = PairModel.of(plan, "led");
        return Sweep.of(plan, model).withThreads(1).run(() -> new PairTally(model)).rejects().stream()
                .map(Rejects.Entry::reason)
                .toList();
    }

    @Test
    void everyColumnIsCheckedAgainstItsNamedRange() {
        List<String> checked = new ArrayList<>();
        for (PairColumn column : PairColumn.values()) {
            if (!column.isOfCircuit() && column != PairColumn.RESPONDS) {
                double above = Math.nextUp(column.range().hi());
                double below = column.range().open()
                        ? column.range().lo()
                        : -Double.MIN_VALUE + column.range().lo();
                String reason = column.range().name() + " must be in " + column.range();
                assertThat(rejections(column, above)).as("%s", column).containsExactly(reason);
                if (!column.range().contains(below)) {
                    assertThat(rejections(column, below)).as("%s", column).containsExactly(reason);
                }
                checked.add(column.column());
            }
        }
        assertThat(checked).hasSize(PairColumn.values().length - 6);
        assertThat(rejections(PairColumn.RESPONDS, 0.5)).containsExactly("responds must be 0 or 1");
        assertThat(rejections(PairColumn.TIME_GAP, 2)).isEmpty();
    }

    @Test
    void namesAreThoseOfTheAxes() {
        for (PairColumn column : PairColumn.values()) {
            String name = Axis.constant(column.axis("led"), column.unit(), 1).column();
            assertThat(column.column("led")).isEqualTo(name);
            assertThat(PairColumn.of(name)).contains(column);
            assertThat(column.meaning()).isNotBlank();
            assertThat(column.absent()).isNotBlank();
        }
        assertThat(Stream.of("lamp_latency__s", "speed", "lamp_latency_led").map(PairColumn::of))
                .allMatch(found -> found.isEmpty());
        assertThat(PairColumn.SPEED).hasToString("speed_mps: the leader's speed, in [0, 150] m/s; if absent: needed");
    }

    @Test
    void outputsAreFoundByName() {
        PairModel model = PairModel.of(planOf(PairColumn.GAP, 0.5), "led");
        assertThat(model.outputs())
                .containsExactlyElementsOf(Stream.of(PairOutput.values())
                        .map(output -> output.column("led"))
                        .toList());
        assertThat(model.lamps()).isEqualTo(LAMPS);
        assertThat(model.reference()).isEqualTo("led");
        assertThat(model.others()).isEmpty();
    }
}
