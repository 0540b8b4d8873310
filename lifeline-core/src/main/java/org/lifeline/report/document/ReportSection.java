package org.lifeline.report.document;

import java.util.List;

/**
 * A section of a report.
 *
 * <p>Immutable and thread-safe.
 *
 * @param title the heading
 * @param level 1 for a main section, 2 for one within it
 * @param blocks what it holds
 * @since 1.0.0
 */
public record ReportSection(String title, int level, List<ReportBlock> blocks) {
    /**
     * Copies the list.
     *
     * @param title the heading
     * @param level 1 for a main section, 2 for one within it
     * @param blocks what it holds
     */
    public ReportSection {
        blocks = List.copyOf(blocks);
    }
}
