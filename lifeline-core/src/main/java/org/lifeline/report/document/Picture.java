package org.lifeline.report.document;

/**
 * A picture as SVG, with the words that stand for it where it cannot be seen.
 *
 * <p>Immutable and thread-safe.
 *
 * @param title what it shows, in a few words
 * @param description what can be read from it, as a sentence or more
 * @param svg the picture: a complete SVG document, self-contained
 */
public record Picture(String title, String description, String svg) {}
