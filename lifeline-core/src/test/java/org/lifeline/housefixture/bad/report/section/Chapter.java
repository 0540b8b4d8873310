package org.lifeline.housefixture.bad.report.section;

/** A chapter of a report. */
public final class Chapter {}
