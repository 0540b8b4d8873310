package org.lifeline.examples.print;

import java.util.ArrayList;
import java.util.List;

/** A table of results: what it is, its symbol, SI, US customary, formula. Not thread-safe. */
final class ResultTable {
    private final UnitChoice units;
    private final List<List<String>> rows = new ArrayList<>();

    ResultTable(UnitChoice units) {
        this.units = units;
        add("quantity", "symbol", new String[] {"SI", "", "US", ""}, "formula");
    }

    ResultTable row(String what, String symbol, Measure measure, double value, String formula) {
        return add(
                what,
                symbol,
                new String[] {measure.si(value), measure.siUnit(), measure.us(value), measure.usUnit()},
                formula);
    }

    ResultTable bare(String what, String symbol, String value, String formula) {
        return add(what, symbol, new String[] {value, "", value, ""}, formula);
    }

    private ResultTable add(String what, String symbol, String[] values, String formula) {
        List<String> row = new ArrayList<>(List.of(what, symbol));
        if (units.si()) {
            row.add(values[0]);
            row.add(values[1]);
        }
        if (units.us()) {
            row.add(values[2]);
            row.add(values[3]);
        }
        row.add(formula);
        rows.add(row);
        return this;
    }

    void print(Sheet sheet) {
        sheet.table("ll" + (units.si() ? "rl" : "") + (units.us() ? "rl" : "") + "l", rows);
    }
}
