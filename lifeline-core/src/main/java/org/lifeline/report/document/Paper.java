package org.lifeline.report.document;

/**
 * Size of the paper that a report is printed on.
 *
 * @since 1.0.0
 */
public enum Paper {
    /** ISO 216 A4, 210 mm by 297 mm. */
    A4("A4"),
    /** ANSI/ASME Y14.1 size A, 8.5 in by 11 in. */
    LETTER("letter");

    private final String css;

    Paper(String css) {
        this.css = css;
    }

    /**
     * The name of the size in CSS Paged Media.
     *
     * @return the name
     */
    public String css() {
        return css;
    }
}
