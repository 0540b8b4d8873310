package org.lifeline.report.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.lifeline.base.InertText;
import org.lifeline.base.UnitSystem;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.TableBuilder;

/** The numbers of a chart as a table: every line at evenly spaced places of the horizontal axis. */
final class ChartTable {
    /** Intervals of the horizontal axis. */
    static final int INTERVALS = 20;

    private final UnitSystem system;
    private final ChartAxis horizontal;

    ChartTable(UnitSystem system, ChartAxis horizontal) {
        this.system = system;
        this.horizontal = horizontal;
    }

    ReportBlock.Table of(String title, List<ChartPanel> panels) {
        List<ChartSeries> series =
                panels.stream().flatMap(p -> p.series().stream()).toList();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        TableBuilder t = new TableBuilder(title).number(heading(horizontal.label(), horizontal));
        for (ChartPanel p : panels) {
            for (ChartSeries s : p.series()) {
                t.number(heading(s.name(), p.axis()));
            }
        }
        for (ChartSeries s : series) {
            if (s.size() > 0) {
                low = Math.min(low, s.x(0));
                high = Math.max(high, s.x(s.size() - 1));
            }
        }
        for (int k = 0; k <= INTERVALS && low <= high; k++) {
            double x = k == INTERVALS ? high : low + (high - low) * k / INTERVALS;
            List<String> cells = new ArrayList<>(List.of(horizontal.measure().number(x, system)));
            for (ChartPanel p : panels) {
                for (ChartSeries s : p.series()) {
                    double y = at(s, x);
                    cells.add(Double.isFinite(y) ? p.axis().measure().number(y, system) : "–");
                }
            }
            t.row(cells);
        }
        return t.build();
    }

    private String heading(String name, ChartAxis axis) {
        String unit = axis.measure().unit(system);
        return InertText.plain(name) + (unit.isEmpty() ? "" : " [" + unit + "]");
    }

    /**
     * The ordinate at a place, linear between points, behind a step at that very place; NaN outside the line and where it is
     * broken.
     */
    static double at(ChartSeries s, double x) {
        int n = s.size();
        if (n == 0 || x < s.x(0) || x > s.x(n - 1)) {
            return Double.NaN;
        }
        double[] abscissas = new double[n];
        Arrays.setAll(abscissas, s::x);
        int found = Arrays.binarySearch(abscissas, x);
        if (found >= 0) {
            int last = found;
            while (last + 1 < n && s.x(last + 1) == x) {
                last++;
            }
            return s.y(last);
        }
        int i = -found - 1;
        double share = (x - s.x(i - 1)) / (s.x(i) - s.x(i - 1));
        return s.y(i - 1) + share * (s.y(i) - s.y(i - 1));
    }
}
