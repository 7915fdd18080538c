package io.github.stoplag.worked;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.source.Caution;
import io.github.stoplag.worked.Expression.Symbol;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A worked solution as data: given, find, assumptions, steps, answer, checks, cautions.
 *
 * <p>{@link #document()} writes it as text, as Markdown with LaTeX, or as HTML with MathML.
 *
 * @param title what the problem is about
 * @param units the system of units it calculates in
 * @param givens the given quantities
 * @param find what is asked for
 * @param assumptions what the model takes for granted
 * @param steps the steps in order
 * @param answer the answer
 * @param checks second ways to the answer and limiting cases
 * @param cautions what to mind before acting on the answer
 */
public record Solution(
        String title,
        UnitSystem units,
        List<GivenLine> givens,
        String find,
        List<String> assumptions,
        List<Step> steps,
        Answer answer,
        List<Verification> checks,
        List<Caution> cautions) {
    /**
     * A given quantity with its name and symbol.
     *
     * @param name what it is
     * @param symbol its symbol
     * @param given number, unit and where from
     */
    public record GivenLine(String name, Symbol symbol, Given given) {

        /**
         * Refuses nulls.
         *
         * @param name what it is
         * @param symbol its symbol
         * @param given number, unit and where from
         * @throws NullPointerException if one that is required is null
         */
        public GivenLine {
            Objects.requireNonNull(given, "given");
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(symbol, "symbol");
        }
    }

    /**
     * The answer.
     *
     * @param symbol its symbol
     * @param carried the number as the last step carries it
     * @param exact the number in the same unit as it comes without any rounding on the way
     * @param rounding how it is rounded for print
     */
    public record Answer(Symbol symbol, Amount carried, BigDecimal exact, Rounding rounding) {

        /**
         * Refuses nulls.
         *
         * @param symbol its symbol
         * @param carried the number as the last step carries it
         * @param exact the number in the same unit as it comes without any rounding on the way
         * @param rounding how it is rounded for print
         * @throws NullPointerException if one that is required is null
         */
        public Answer {
            Objects.requireNonNull(carried, "carried");
            Objects.requireNonNull(exact, "exact");
            Objects.requireNonNull(rounding, "rounding");
            Objects.requireNonNull(symbol, "symbol");
        }

        /**
         * Says whether the working carries digits enough: what it carries rounds to what is printed.
         *
         * @return false if a reader who rounds the last step gets another last digit than {@link #printed()}
         */
        public boolean carriesEnough() {
            return rounding.apply(carried.number().doubleValue())
                            .compareTo(printed().number())
                    == 0;
        }

        /** The number without any rounding on the way. */
        Amount unrounded() {
            return new Amount(exact, carried.unit());
        }

        /**
         * Gives the exact number, rounded once to the digits it is worth.
         *
         * @return number and unit
         */
        public Amount printed() {
            return new Amount(rounding.apply(exact.doubleValue()), carried.unit());
        }
    }

    /**
     * A second way to the answer, or a limiting case.
     *
     * @param step the second way
     * @param verdict how it compares, in words
     * @param agrees true if it comes to the same
     */
    public record Verification(Step step, String verdict, boolean agrees) {

        /**
         * Refuses nulls.
         *
         * @param step the second way
         * @param verdict how it compares, in words
         * @param agrees true if it comes to the same
         * @throws NullPointerException if one that is required is null
         */
        public Verification {
            Objects.requireNonNull(step, "step");
            Objects.requireNonNull(verdict, "verdict");
        }
    }

    /**
     * Makes the lists immutable.
     *
     * @param title what the problem is about
     * @param units the system of units it calculates in
     * @param givens the given quantities
     * @param find what is asked for
     * @param assumptions what the model takes for granted
     * @param steps the steps in order
     * @param answer the answer
     * @param checks second ways to the answer and limiting cases
     * @param cautions what to mind before acting on the answer
     */
    public Solution {
        Objects.requireNonNull(answer, "answer");
        Objects.requireNonNull(find, "find");
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(units, "units");
        givens = Check.copyOf("givens", givens);
        assumptions = Check.copyOf("assumptions", assumptions);
        steps = Check.copyOf("steps", steps);
        checks = Check.copyOf("checks", checks);
        cautions = Check.copyOf("cautions", cautions);
    }

    /**
     * Writes the solution down.
     *
     * @return the document
     */
    public Document document() {
        List<Document.Block> blocks = new ArrayList<>();
        blocks.add(new Document.Heading(1, title));
        blocks.addAll(body(2));
        return new Document(title, blocks);
    }

    /**
     * Writes the same problem worked in two systems of units side by side.
     *
     * @param other the solution in the other system
     * @return the document; one below the other in text and Markdown, two columns in HTML
     */
    public Document beside(Solution other) {
        Objects.requireNonNull(other, "other");
        List<Document.Block> left = new ArrayList<>(List.of(new Document.Heading(2, "In " + units + " units")));
        left.addAll(body(3));
        List<Document.Block> right = new ArrayList<>(List.of(new Document.Heading(2, "In " + other.units + " units")));
        right.addAll(other.body(3));
        return new Document(title, List.of(new Document.Heading(1, title), new Document.Columns(List.of(left, right))));
    }

    /** The solution under headings of a level. */
    List<Document.Block> body(int level) {
        List<Document.Block> blocks = new ArrayList<>();
        blocks.add(new Document.Heading(level, "Given"));
        for (GivenLine line : givens) {
            blocks.add(new Document.Equation(
                    line.name,
                    List.of(
                            line.symbol,
                            new Expression.Num(
                                    line.given.amount().number(),
                                    line.given.amount().unit())),
                    true,
                    line.given.from()));
        }
        blocks.add(new Document.Heading(level, "Find"));
        blocks.add(new Document.Paragraph(find));
        list(blocks, level, "Assumptions", assumptions);
        blocks.add(new Document.Heading(level, "Working"));
        steps.forEach(step -> blocks.add(step.equation()));
        blocks.add(new Document.Heading(level, "Answer"));
        blocks.add(new Document.Equation(
                find,
                List.of(
                        answer.symbol,
                        new Expression.Num(
                                answer.printed().number(), answer.printed().unit())),
                answer.printed().number().compareTo(answer.carried.number()) == 0,
                ""));
        if (!checks.isEmpty()) {
            blocks.add(new Document.Heading(level, "Check"));
        }
        for (Verification check : checks) {
            Document.Equation line = check.step.equation();
            blocks.add(new Document.Equation(line.label(), line.sides(), line.exact(), check.verdict));
        }
        list(blocks, level, "Caution", cautions.stream().map(Caution::text).toList());
        return blocks;
    }

    private static void list(List<Document.Block> blocks, int level, String heading, List<String> lines) {
        if (!lines.isEmpty()) {
            blocks.add(new Document.Heading(level, heading));
            blocks.add(new Document.Bullets(lines));
        }
    }
}
