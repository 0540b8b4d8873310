package org.lifeline.design.occupancy;

/**
 * How workers are arranged when the last of them falls.
 *
 * @since 1.0.0
 */
public enum ArrangementKind {
    /** One alone. */
    ALONE("one worker alone"),
    /** All fall together at one place. */
    TOGETHER("all fall together at one place"),
    /** All in one span, one after the other. */
    IN_SEQUENCE("one after the other in one span"),
    /** Some hang in the span, the others fall together there. */
    SOME_TOGETHER("some hang, the others fall together in the same span"),
    /** The span is full, the others hang in the spans nearest to it. */
    FULL_SPAN("the span is full, the others hang in the nearest spans"),
    /** One falls, the others hang in the neighbouring spans. */
    NEIGHBOURS("the others hang in the neighbouring spans");

    private final String words;

    ArrangementKind(String words) {
        this.words = words;
    }

    /**
     * The arrangement in words.
     *
     * @return for example {@code "all fall together at one place"}
     */
    public String words() {
        return words;
    }
}
