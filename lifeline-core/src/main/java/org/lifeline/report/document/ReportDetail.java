package org.lifeline.report.document;

/** How much a report shows of each arrest. Results and accounts of every arrest are in all of them. */
public enum ReportDetail {
    /** No pictures and no calculation line by line: what fits a terminal. */
    SHORT,
    /** Pictures of the arrests that govern, calculation of those that govern the end anchor load and the clearance. */
    GOVERNING,
    /** Pictures and calculation of every arrest. */
    FULL
}
