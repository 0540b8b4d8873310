package org.lifeline.internal.line;

/**
 * A place for a vertical load on the line: its span and whether it grips the cable. Slots of one span are ordered along
 * the cable.
 *
 * @param span span from 0
 * @param gripped true if it holds a material point
 * @param coordinate material coordinate within the span as installed, at which it is hooked on [m]
 * @param support support from 0 on which it pulls; −1 for a load on the cable
 */
public record LoadSlot(int span, boolean gripped, double coordinate, int support) {
    /** A load on the cable. */
    public LoadSlot(int span, boolean gripped, double coordinate) {
        this(span, gripped, coordinate, -1);
    }

    /** A load that pulls on a support and not on the cable; its span is one beside the support. */
    public static LoadSlot atSupport(int support, int span) {
        return new LoadSlot(span, true, 0, support);
    }
}
