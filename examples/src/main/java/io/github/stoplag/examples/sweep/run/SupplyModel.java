package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.sweep.Model;
import io.github.stoplag.sweep.Rejects;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A model of pairs whose lamps' latencies follow from the supply voltage where the lamp is a filament: supply and lamp
 * are then true axes.
 *
 * @param pairs the model with latencies given
 * @param lamps its lamps in order
 * @param tables the lamps that follow from {@code supply_v}, by name
 */
record SupplyModel(Model pairs, List<String> lamps, Map<String, SupplyLamp> tables) implements Model {
    static final String SUPPLY = "supply_v";

    SupplyModel {
        lamps = List.copyOf(lamps);
        tables = Map.copyOf(tables);
    }

    static String latency(String lamp) {
        return AxisKind.LATENCY + lamp + "_s";
    }

    private List<String> derived() {
        return lamps.stream()
                .filter(tables::containsKey)
                .map(SupplyModel::latency)
                .toList();
    }

    @Override
    public List<String> inputs() {
        List<String> inputs = new ArrayList<>(pairs.inputs());
        inputs.removeAll(derived());
        inputs.add(SUPPLY);
        return inputs;
    }

    @Override
    public List<String> outputs() {
        List<String> outputs = new ArrayList<>(pairs.outputs());
        outputs.addAll(derived());
        return outputs;
    }

    @Override
    public Evaluator evaluator() {
        return new WithLatencies(this);
    }

    /** One thread's columns. */
    private static final class WithLatencies implements Evaluator {
        private final Evaluator inner;
        private final List<String> outer;
        private final List<String> wanted;
        private final List<SupplyLamp> tables;
        private final List<String> derived;
        private final int firstDerived;

        WithLatencies(SupplyModel model) {
            inner = model.pairs.evaluator();
            outer = model.inputs();
            wanted = model.pairs.inputs();
            derived = model.derived();
            firstDerived = model.pairs.outputs().size();
            tables = model.lamps.stream()
                    .filter(model.tables::containsKey)
                    .map(model.tables::get)
                    .toList();
        }

        @Override
        public void evaluate(int count, double[][] inputs, double[][] outputs, Rejects rejects) {
            double[] supplyV = inputs[outer.indexOf(SUPPLY)];
            for (int t = 0; t < tables.size(); t++) {
                latencies(tables.get(t), supplyV, count, outputs[firstDerived + t], rejects);
            }
            double[][] pairInputs = new double[wanted.size()][];
            for (int c = 0; c < pairInputs.length; c++) {
                int at = derived.indexOf(wanted.get(c));
                pairInputs[c] = at < 0 ? inputs[outer.indexOf(wanted.get(c))] : outputs[firstDerived + at];
            }
            inner.evaluate(count, pairInputs, outputs, rejects);
        }

        private static void latencies(SupplyLamp table, double[] supplyV, int count, double[] to, Rejects rejects) {
            for (int i = 0; i < count; i++) {
                if (table.covers(supplyV[i])) {
                    to[i] = table.latencyS(supplyV[i]);
                } else {
                    rejects.reject(i, "supply voltage must be in " + table.range() + " of the lamp's table");
                    to[i] = 0;
                }
            }
        }
    }
}
