package org.lifeline.report.document;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;

/**
 * Collects the rows of a table. Not thread-safe.
 *
 * @since 1.0.0
 */
public final class TableBuilder {
    private final String caption;
    private final List<ReportBlock.Column> columns = new ArrayList<>();
    private final List<ReportBlock.Row> rows = new ArrayList<>();

    /**
     * An empty table.
     *
     * @param caption what it shows
     */
    public TableBuilder(String caption) {
        this.caption = caption;
    }

    /**
     * A further column of text.
     *
     * @param heading its heading
     * @return this builder
     */
    public TableBuilder text(String heading) {
        columns.add(new ReportBlock.Column(heading, false));
        return this;
    }

    /**
     * A further column of numbers.
     *
     * @param heading its heading
     * @return this builder
     */
    public TableBuilder number(String heading) {
        columns.add(new ReportBlock.Column(heading, true));
        return this;
    }

    /**
     * A further row.
     *
     * @param cells its cells
     * @return this builder
     * @throws java.util.concurrent.CancellationException if the thread is interrupted; its interrupt flag stays set
     */
    public TableBuilder row(String... cells) {
        return add(List.of(cells), false);
    }

    /**
     * A further row.
     *
     * @param cells its cells
     * @return this builder
     * @throws java.util.concurrent.CancellationException if the thread is interrupted; its interrupt flag stays set
     */
    public TableBuilder row(List<String> cells) {
        return add(cells, false);
    }

    /**
     * A further row that is a sum or a result of those above it.
     *
     * @param cells its cells
     * @return this builder
     * @throws java.util.concurrent.CancellationException if the thread is interrupted; its interrupt flag stays set
     */
    public TableBuilder total(String... cells) {
        return add(List.of(cells), true);
    }

    /** Adds a row; an interrupt of the thread ends a long report here. */
    private TableBuilder add(List<String> cells, boolean sum) {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("interrupted");
        }
        rows.add(new ReportBlock.Row(cells, sum));
        return this;
    }

    /**
     * The table.
     *
     * @return the table
     */
    public ReportBlock.Table build() {
        return new ReportBlock.Table(caption, columns, rows);
    }
}
