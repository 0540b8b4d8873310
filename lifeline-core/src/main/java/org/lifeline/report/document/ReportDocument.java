package org.lifeline.report.document;

import java.util.List;

/**
 * A report before it is written: what it says, not how it looks.
 *
 * <p>Immutable and thread-safe.
 *
 * @param title title of the design
 * @param identity lines that say what was computed from what, by which version
 * @param sections the sections in order
 * @param marks what stands on every printed page
 * @since 1.0.0
 */
public record ReportDocument(String title, List<String> identity, List<ReportSection> sections, PageMarks marks) {
    /**
     * Copies the lists.
     *
     * @param title title of the design
     * @param identity lines that say what was computed from what, by which version
     * @param sections the sections in order
     * @param marks what stands on every printed page
     */
    public ReportDocument {
        identity = List.copyOf(identity);
        sections = List.copyOf(sections);
    }
}
