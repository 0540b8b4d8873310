package org.lifeline.design.criteria;

/**
 * Where a value comes from.
 *
 * <p>Immutable and thread-safe.
 *
 * @param citation document and clause
 * @param jurisdiction where it holds
 * @param kind whether the value was read there
 */
public record Source(String citation, Jurisdiction jurisdiction, SourceKind kind) {}
