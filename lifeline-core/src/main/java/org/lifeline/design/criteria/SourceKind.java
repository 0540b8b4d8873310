package org.lifeline.design.criteria;

/**
 * How a value came to be known.
 *
 * @since 1.0.0
 */
public enum SourceKind {
    /** Value and clause were seen in the stated source or an official copy of it. */
    PUBLISHED("published"),
    /** From memory: a person must check it in the document before relying on it. */
    RECALLED("recalled"),
    /** A habit of the trade without a source. */
    COMMON_PRACTICE("common practice"),
    /** Stated by whoever wrote the design. */
    STATED("stated in the design");

    private final String words;

    SourceKind(String words) {
        this.words = words;
    }

    /**
     * The mark in a report.
     *
     * @return for example {@code "common practice"}
     */
    public String words() {
        return words;
    }
}
