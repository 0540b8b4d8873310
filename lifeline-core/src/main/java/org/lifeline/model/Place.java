package org.lifeline.model;

/**
 * A place on the line.
 *
 * <p>Immutable and thread-safe.
 *
 * @param span number of the span, from 1, in the order of the supports
 * @param station horizontal distance from the first support of the span [m]
 */
public record Place(int span, double station) {

    /**
     * A place on the line.
     *
     * @param span number of the span, from 1
     * @param station horizontal distance from the first support of the span [m]
     * @return the place
     */
    public static Place of(int span, double station) {
        return new Place(span, station);
    }

    @Override
    public String toString() {
        return "span " + span + ", station " + station + " m";
    }
}
