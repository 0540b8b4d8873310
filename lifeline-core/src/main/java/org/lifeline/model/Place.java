package org.lifeline.model;

import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.Violations;

/**
 * A place where somebody is hooked on: a station of a span, where the connection holds the cable, or a support, where it
 * pulls on the anchor itself and not on the cable.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Place {
    private final int span;
    private final double station;
    private final @Nullable String support;

    private Place(int span, double station, @Nullable String support) {
        this.span = span;
        this.station = station;
        this.support = support;
    }

    /**
     * A place on the cable.
     *
     * @param span number of the span, from 1, in the order of the supports
     * @param station horizontal distance from the first support of the span [m]
     * @return the place
     * @throws org.lifeline.base.InvalidInputException if the station is not finite; whether a line has the place is told by {@link
     *     Lifeline#check}
     */
    public static Place of(int span, double station) {
        if (!Double.isFinite(station)) {
            new Violations().finite("station", station, "m").throwIfAny();
        }
        return new Place(span, station, null);
    }

    /**
     * A place at a support, an end anchor or an intermediate one: on the anchor side of an in-line absorber.
     *
     * @param id the support
     * @return the place
     * @throws org.lifeline.base.InvalidInputException if there is no id
     */
    public static Place atSupport(String id) {
        Violations.required("id", id);
        return new Place(0, 0, Violations.required("id", id));
    }

    /**
     * The support at which the place is.
     *
     * @return its id; empty for a place on the cable
     */
    public Optional<String> support() {
        return Optional.ofNullable(support);
    }

    /**
     * Tells a place at a support from one on the cable.
     *
     * @return true at a support
     */
    public boolean isAtSupport() {
        return support != null;
    }

    /**
     * Number of the span, for a place on the cable; see {@link Lifeline#spanOf} for any place.
     *
     * @return number of the span, from 1
     * @throws IllegalStateException at a support
     */
    public int span() {
        refuseSupport();
        return span;
    }

    /**
     * Horizontal distance from the first support of the span, for a place on the cable; see {@link Lifeline#stationOf} for
     * any place.
     *
     * @return station [m]
     * @throws IllegalStateException at a support
     */
    public double station() {
        refuseSupport();
        return station;
    }

    private void refuseSupport() {
        if (support != null) {
            throw new IllegalStateException("the place is at the support " + support + ", in no span: ask the line");
        }
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Place p
                && span == p.span
                && Double.compare(station, p.station) == 0
                && Objects.equals(support, p.support);
    }

    @Override
    public int hashCode() {
        return Objects.hash(span, station, support);
    }

    @Override
    public String toString() {
        return support != null ? "support " + support : "span " + span + ", station " + station + " m";
    }
}
