package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.sweep.Model;
import java.util.List;

/** One output of another model with 0 where it does not exist: closing speed, 0 without contact. */
record ImpactModel(Model model, String column) implements Model {
    @Override
    public List<String> inputs() {
        return model.inputs();
    }

    @Override
    public List<String> outputs() {
        return List.of(column);
    }

    @Override
    public Evaluator evaluator() {
        Evaluator inner = model.evaluator();
        int at = model.outputs().indexOf(column);
        double[][] scratch = new double[model.outputs().size()][0];
        return (count, inputs, outputs, rejects) -> {
            for (int c = 0; c < scratch.length; c++) {
                scratch[c] = scratch[c].length < count ? new double[count] : scratch[c];
            }
            inner.evaluate(count, inputs, scratch, rejects);
            for (int i = 0; i < count; i++) {
                outputs[0][i] = Double.isNaN(scratch[at][i]) ? 0 : scratch[at][i];
            }
        };
    }
}
