package org.lifeline.report;

import java.util.ArrayList;
import java.util.List;

/** Collects the rows of a table. Not thread-safe. */
final class TableBuilder {
    private final String caption;
    private final List<ReportBlock.Column> columns = new ArrayList<>();
    private final List<ReportBlock.Row> rows = new ArrayList<>();

    TableBuilder(String caption) {
        this.caption = caption;
    }

    TableBuilder text(String heading) {
        columns.add(new ReportBlock.Column(heading, false));
        return this;
    }

    TableBuilder number(String heading) {
        columns.add(new ReportBlock.Column(heading, true));
        return this;
    }

    TableBuilder row(String... cells) {
        rows.add(new ReportBlock.Row(List.of(cells), false));
        return this;
    }

    TableBuilder row(List<String> cells) {
        rows.add(new ReportBlock.Row(cells, false));
        return this;
    }

    TableBuilder total(String... cells) {
        rows.add(new ReportBlock.Row(List.of(cells), true));
        return this;
    }

    ReportBlock.Table build() {
        return new ReportBlock.Table(caption, columns, rows);
    }
}
