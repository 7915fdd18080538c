package io.github.stoplag.sweep;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.TreeMap;

/**
 * A model of pairs whose lamps' latencies follow from supply, wiring, temperature or filament where the lamp is
 * tabulated: circuit and filament are then true axes, and lamps that share them vary together.
 *
 * <p>Latencies of tabulated lamps turn from inputs into outputs; circuit and filament become inputs.
 *
 * <p>A scenario in which such a lamp is never seen is rejected.
 */
public final class LatencyModel implements Model {
    private final Model pairs;
    private final NavigableMap<String, LatencyTable> tables;
    private final List<String> circuit;

    private LatencyModel(Model pairs, NavigableMap<String, LatencyTable> tables, List<String> circuit) {
        this.pairs = pairs;
        this.tables = tables;
        this.circuit = circuit;
    }

    /**
     * Lets latencies follow from tables.
     *
     * @param pairs a model that is given latencies in the columns of {@link PairColumn#LATENCY}
     * @param tables the tables by the names of the lamps
     * @param circuit the columns of circuit and filament that a plan has, among them those of the tables; one that no
     *     table has, because it never changes, plays no part
     * @return the model
     * @throws IllegalArgumentException if the model takes no latency of such a lamp, or a table's column is not there
     */
    public static LatencyModel of(Model pairs, Map<String, LatencyTable> tables, List<String> circuit) {
        Objects.requireNonNull(circuit, "circuit");
        Objects.requireNonNull(tables, "tables");
        Objects.requireNonNull(pairs, "pairs");
        tables.forEach((lamp, table) -> {
            if (!pairs.inputs().contains(PairColumn.LATENCY.column(lamp)) || !circuit.containsAll(table.inputs())) {
                throw new IllegalArgumentException("a tabulated lamp must have its latency among " + pairs.inputs()
                        + " and its columns among " + circuit + ", got " + lamp + " with " + table.inputs());
            }
        });
        return new LatencyModel(pairs, new TreeMap<>(tables), List.copyOf(circuit));
    }

    private List<String> derived() {
        return tables.keySet().stream().map(PairColumn.LATENCY::column).toList();
    }

    @Override
    public List<String> inputs() {
        List<String> inputs = new ArrayList<>(pairs.inputs());
        inputs.removeAll(derived());
        inputs.addAll(circuit);
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

    /** One table on one thread and where its columns are. */
    private static final class Lookup {
        private final LatencyTable.Evaluator table;
        private final int[] at;
        private final double[][] columns;
        private final String unseen;

        Lookup(String lamp, LatencyTable table, List<String> inputs) {
            this.table = table.evaluator();
            at = table.inputs().stream().mapToInt(inputs::indexOf).toArray();
            columns = new double[at.length][];
            unseen = "the lamp " + lamp + " must be seen at all";
        }

        void fill(int count, double[][] inputs, double[] latencyS, Rejects rejects) {
            for (int c = 0; c < at.length; c++) {
                columns[c] = inputs[at[c]];
            }
            table.latenciesS(count, columns, latencyS, rejects);
            for (int i = 0; i < count; i++) {
                if (Double.isNaN(latencyS[i])) {
                    rejects.reject(i, unseen);
                    latencyS[i] = 0;
                }
            }
        }
    }

    private static final class WithLatencies implements Evaluator {
        private final Evaluator inner;
        private final List<Lookup> lookups = new ArrayList<>();
        private final int firstDerived;
        private final int[] from;
        private final double[][] pairInputs;

        WithLatencies(LatencyModel model) {
            inner = model.pairs.evaluator();
            List<String> inputs = model.inputs();
            List<String> derived = model.derived();
            model.tables.forEach((lamp, table) -> lookups.add(new Lookup(lamp, table, inputs)));
            firstDerived = model.pairs.outputs().size();
            // those that are derived are counted from −1 downwards
            from = model.pairs.inputs().stream()
                    .mapToInt(
                            column -> derived.contains(column) ? -1 - derived.indexOf(column) : inputs.indexOf(column))
                    .toArray();
            pairInputs = new double[from.length][];
        }

        @Override
        public void evaluate(int count, double[][] inputs, double[][] outputs, Rejects rejects) {
            for (int t = 0; t < lookups.size(); t++) {
                lookups.get(t).fill(count, inputs, outputs[firstDerived + t], rejects);
            }
            for (int c = 0; c < from.length; c++) {
                pairInputs[c] = from[c] < 0 ? outputs[firstDerived - 1 - from[c]] : inputs[from[c]];
            }
            inner.evaluate(count, pairInputs, outputs, rejects);
        }
    }
}
