package io.github.stoplag.sweep;

import java.util.List;

/** Another model with a value where one of its outputs does not exist. */
record FilledModel(Model model, double value) implements Model {
    @Override
    public List<String> inputs() {
        return model.inputs();
    }

    @Override
    public List<String> outputs() {
        return model.outputs();
    }

    @Override
    public Evaluator evaluator() {
        Evaluator inner = model.evaluator();
        return (count, inputs, outputs, rejects) -> {
            inner.evaluate(count, inputs, outputs, rejects);
            for (double[] output : outputs) {
                for (int i = 0; i < count; i++) {
                    output[i] = Double.isNaN(output[i]) ? value : output[i];
                }
            }
        };
    }
}
