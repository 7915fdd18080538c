package io.github.stoplag.examples.circuit;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.Evidence;
import java.util.List;

/**
 * One question about the circuit and its answer.
 *
 * @param title the part it is about
 * @param answers what comes of it, in sentences
 * @param rows its figures
 * @param evidence what they rest on
 */
record CircuitSection(String title, List<String> answers, List<Row> rows, Evidence evidence) {
    private static final int EXACT = 6;

    /**
     * A figure.
     *
     * @param quantity what it is
     * @param value its value, or a word
     * @param shown its value rounded to what it is worth
     * @param unit its unit, empty for a plain ratio or a word
     * @param basis the rule that gives it
     */
    record Row(String quantity, String value, String shown, String unit, String basis) {
        static Row of(String quantity, double value, String unit, String basis) {
            return new Row(quantity, Numbers.text(value, EXACT), Text.digits(value), unit, basis);
        }

        static Row word(String quantity, Object word, String basis) {
            return new Row(quantity, word.toString(), word.toString(), "", basis);
        }
    }
}
