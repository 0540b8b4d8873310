package org.lifeline.design.assessment;

/**
 * Something that a reader must not overlook.
 *
 * <p>Immutable and thread-safe.
 *
 * @param code what kind of warning it is, a fixed name for programs, for example {@code "capacity-exceeded"}
 * @param text the warning in words
 * @param where the support, span, worker or case that it is about
 * @param value what was found [unit of the warning]; NaN where no number is at stake
 * @param limit what it is held against [unit of the warning]; NaN where there is none
 * @param unit SI unit of value and limit; {@code "-"} for bare numbers
 */
public record Warning(String code, String text, String where, double value, double limit, String unit) {}
