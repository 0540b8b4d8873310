package org.lifeline.design.criteria;

/** What came of a check. Not a verdict on a design: that is for a qualified person. */
public enum Status {
    /** Demand does not exceed capacity, in every case that was asked for. */
    MET,
    /** Demand exceeds capacity. */
    NOT_MET,
    /** Data are missing, or a case could not be computed. */
    NOT_EVALUATED
}
