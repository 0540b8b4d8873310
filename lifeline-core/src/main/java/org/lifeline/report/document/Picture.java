package org.lifeline.report.document;

import java.util.List;

/**
 * A picture as SVG, with the words and the numbers that stand for it where it cannot be seen.
 *
 * <p>Immutable and thread-safe.
 *
 * @param title what it shows, in a few words
 * @param description what can be read from it, as a sentence or more
 * @param svg the picture: a complete SVG document, self-contained
 * @param data the numbers that are drawn
 * @since 1.0.0
 */
public record Picture(String title, String description, String svg, ReportBlock.Table data) {
    /**
     * A picture whose numbers stand elsewhere.
     *
     * @param title what it shows, in a few words
     * @param description what can be read from it, as a sentence or more
     * @param svg the picture
     */
    public Picture(String title, String description, String svg) {
        this(title, description, svg, new ReportBlock.Table(title, List.of(), List.of()));
    }
}
