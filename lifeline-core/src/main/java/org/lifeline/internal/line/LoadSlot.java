package org.lifeline.internal.line;

/**
 * A place for a vertical load on the line: its span and whether it grips the cable. Slots of one span are ordered along
 * the cable.
 *
 * @param span span from 0
 * @param gripped true if it holds a material point
 * @param coordinate material coordinate within the span as installed, at which it is hooked on [m]
 */
public record LoadSlot(int span, boolean gripped, double coordinate) {}
