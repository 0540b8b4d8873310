package org.lifeline.report.document;

/**
 * How much a report shows of each arrest. All arrests stand in tables, with their accounts, whatever the detail.
 *
 * @since 1.0.0
 */
public enum ReportDetail {
    /** Tables only: no arrest by itself, no calculation line by line. */
    SHORT,
    /**
     * In full the arrests that govern the end anchor load and the clearance margin, line by line the one that governs the
     * end anchor load.
     */
    GOVERNING,
    /** Every arrest in full and line by line. */
    FULL
}
