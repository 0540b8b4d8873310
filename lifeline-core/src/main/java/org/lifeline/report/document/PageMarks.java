package org.lifeline.report.document;

/**
 * What stands in the margin of every printed page, beside the number of the page.
 *
 * <p>Immutable and thread-safe.
 *
 * @param paper size of the paper
 * @param document number of the document; empty if it has none
 * @param revision revision of the document; empty if it has none
 * @param program what computed it, with version
 * @since 1.0.0
 */
public record PageMarks(Paper paper, String document, String revision, String program) {
    /**
     * A4 without document number.
     *
     * @return the marks
     */
    public static PageMarks none() {
        return new PageMarks(Paper.A4, "", "", "");
    }
}
