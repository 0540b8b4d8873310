package org.lifeline.report.chart;

import java.util.List;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.ReportBlock;

/** Columns of the table below a chart as numbers; NaN where there is a dash. */
final class Columns {
    private final ReportBlock.Table table;

    Columns(Picture p) {
        this.table = p.data();
    }

    double[] of(String heading) {
        List<String> headings =
                table.columns().stream().map(ReportBlock.Column::heading).toList();
        int at = headings.indexOf(heading);
        if (at < 0) {
            throw new AssertionError("no column " + heading + " in " + headings);
        }
        return table.rows().stream()
                .mapToDouble(r -> {
                    String cell = r.cells().get(at);
                    return cell.equals("–") ? Double.NaN : Double.parseDouble(cell.replace('−', '-'));
                })
                .toArray();
    }
}
