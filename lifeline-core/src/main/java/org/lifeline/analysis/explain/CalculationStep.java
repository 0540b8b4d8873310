package org.lifeline.analysis.explain;

/**
 * A line of a calculation: a symbol, what it stands for, the formula, the same with the numbers put in, the result.
 *
 * <p>Numbers are printed with as many digits as it takes for the line to come out as printed when it is worked out
 * from the printed numbers. The formulas use + − · / ², √, ln, arctan, arccos, artanh (the inverse hyperbolic tangent),
 * |…| and max(0; …), in the usual order of precedence. What follows an underscore in a symbol is its index.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class CalculationStep {
    private final String section;
    private final String symbol;
    private final String what;
    private final String formula;
    private final String numbers;
    private final double value;
    private final String printed;
    private final String unit;
    private final String source;

    CalculationStep(CalculationSheet.Row row, String unit) {
        this.section = row.section();
        this.symbol = row.figure().symbol();
        this.what = row.what();
        this.formula = row.formula().map(f -> f.write(false)).orElse("");
        this.numbers = row.formula().map(f -> f.write(true)).orElse("");
        this.value = row.figure().value();
        this.printed = row.figure().printed();
        this.unit = unit;
        this.source = row.source();
    }

    /**
     * Heading under which the line stands.
     *
     * @return the heading; the same for lines that follow each other
     */
    public String section() {
        return section;
    }

    /**
     * Symbol of the result.
     *
     * @return for example {@code "H_2"}
     */
    public String symbol() {
        return symbol;
    }

    /**
     * What the symbol stands for.
     *
     * @return a few words
     */
    public String what() {
        return what;
    }

    /**
     * The formula with symbols.
     *
     * @return the right-hand side; empty for a number that was put in or is a solution of the analysis
     */
    public String formula() {
        return formula;
    }

    /**
     * The formula with numbers put in.
     *
     * @return the right-hand side; empty where there is no formula
     */
    public String numbers() {
        return numbers;
    }

    /**
     * The result.
     *
     * @return the unrounded value [unit of the line]
     */
    public double value() {
        return value;
    }

    /**
     * The result as printed.
     *
     * @return the number with the digits that other lines use
     */
    public String printed() {
        return printed;
    }

    /**
     * Unit of the result.
     *
     * @return for example {@code "N"}; {@code "-"} for a bare number
     */
    public String unit() {
        return unit;
    }

    /**
     * Where the number or the formula comes from.
     *
     * @return the source
     */
    public String source() {
        return source;
    }

    @Override
    public String toString() {
        String middle = formula.isEmpty() ? "" : " = " + formula + " = " + numbers;
        return symbol + middle + " = " + printed + (unit.equals("-") ? "" : " " + unit) + "  (" + what + "; " + source
                + ")";
    }
}
