package org.lifeline.analysis.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.lifeline.base.UnitSystem;
import org.lifeline.base.unit.Dimension;
import org.lifeline.internal.numeric.OrderedWork;

/**
 * A calculation that is written line by line in one system of units, and then settled: every figure is given as many
 * digits as the lines that use it need to come out as printed.
 *
 * <p>Not thread-safe; made and finished within one call.
 */
final class CalculationSheet {
    private static final int MOST_PASSES = 40;
    private static final int MANY = 20;

    /** Digits by which a result may have more than it was given, to break a tie of its last one. */
    private static final int TIE_DIGITS = 2;

    private final UnitSystem system;
    private final List<Row> rows = new ArrayList<>();
    private String section = "";

    /** A line before it is settled. */
    record Row(
            String section,
            String what,
            Figure figure,
            Optional<Expression> formula,
            String source,
            Dimension dimension) {}

    CalculationSheet(UnitSystem system) {
        this.system = system;
    }

    void section(String title) {
        section = title;
    }

    /** A number that is put in, in SI. */
    Figure given(String symbol, String what, double value, Dimension dimension, String source) {
        Figure figure = new Figure(symbol, dimension.in(value, system), dimension, true);
        rows.add(new Row(section, what, figure, Optional.empty(), source, dimension));
        return figure;
    }

    /** A number that follows from numbers above it. */
    Figure row(String symbol, String what, Expression formula, Dimension dimension, String source) {
        OrderedWork.stopIfInterrupted();
        Figure figure = new Figure(symbol, formula.value(Figure::value), dimension, false);
        rows.add(new Row(section, what, figure, Optional.of(formula), source, dimension));
        return figure;
    }

    /** Settles the digits and hands over the lines. */
    List<CalculationStep> finish() {
        for (int pass = 0; pass < MOST_PASSES && settle(); pass++) {
            // Digits gained for one line may be wanted by another.
        }
        List<CalculationStep> steps = new ArrayList<>();
        for (Row row : rows) {
            OrderedWork.stopIfInterrupted();
            steps.add(new CalculationStep(row, row.dimension().unit(system)));
        }
        return List.copyOf(steps);
    }

    /** Goes through the lines from the last to the first; true if a digit was added. */
    private boolean settle() {
        boolean changed = false;
        for (int i = rows.size() - 1; i >= 0; i--) {
            Row row = rows.get(i);
            OrderedWork.stopIfInterrupted();
            if (row.formula().isPresent()) {
                changed |= settle(row.figure(), row.formula().get());
            }
        }
        return changed;
    }

    private static boolean settle(Figure result, Expression formula) {
        Set<Figure> operands = new LinkedHashSet<>();
        formula.figures(operands::add);
        boolean changed = false;
        int more = 0;
        while (!comesOut(result, formula)) {
            // With every digit there is, a tie of the last digit may be left: a digit or two more break it. Else it is
            // a difference that cancels digits: the result has fewer than its operands.
            boolean gained = refineTheWorst(operands, formula) || (more++ < TIE_DIGITS && result.refine());
            if (!gained && !result.coarsen()) {
                return changed;
            }
            changed = true;
        }
        return changed;
    }

    /** Adds a digit to the figure whose rounding changes the result most. */
    private static boolean refineTheWorst(Set<Figure> operands, Expression formula) {
        if (operands.size() > MANY) {
            // A long sum: to try each of them would cost more than the digits it saves.
            boolean refined = false;
            for (Figure each : operands) {
                refined |= each.refine();
            }
            return refined;
        }
        double all = formula.value(CalculationSheet::asPrinted);
        List<Figure> order = new ArrayList<>(operands);
        Map<Figure, Double> effect = new HashMap<>();
        for (Figure each : order) {
            double one = formula.value(f -> f.equals(each) ? f.value() : asPrinted(f));
            effect.put(each, Double.isFinite(one) && Double.isFinite(all) ? Math.abs(one - all) : 0);
        }
        order.sort(Comparator.comparing(effect::get).reversed());
        for (Figure each : order) {
            if (each.refine()) {
                return true;
            }
        }
        return false;
    }

    private static double asPrinted(Figure f) {
        return f.rounded().doubleValue();
    }

    private static boolean comesOut(Figure result, Expression formula) {
        double again = formula.value(CalculationSheet::asPrinted);
        return Double.isFinite(again) && result.round(again).compareTo(result.rounded()) == 0;
    }
}
