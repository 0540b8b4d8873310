package org.lifeline.report.document;

import org.lifeline.base.InertText;
import org.lifeline.model.Place;

/**
 * A place on the line in words.
 *
 * @since 1.0.0
 */
public final class PlaceText {
    private PlaceText() {}

    /**
     * A place with an input's digits.
     *
     * @param place the place
     * @param q how quantities are written
     * @return for example {@code "in span 2 at 6 m"} or {@code "at post 1"}
     */
    public static String asInput(Place place, Quantities q) {
        return place.support()
                .map(id -> "at " + InertText.name(id))
                .orElseGet(() -> "in span " + place.span() + " at " + q.input(QuantityKind.LENGTH, place.station()));
    }

    /**
     * A place with a result's digits.
     *
     * @param place the place
     * @param q how quantities are written
     * @return for example {@code "span 2 at 6.00 m"} or {@code "at post 1"}
     */
    public static String asResult(Place place, Quantities q) {
        return place.support()
                .map(id -> "at " + InertText.name(id))
                .orElseGet(() -> "span " + place.span() + " at " + q.result(QuantityKind.LENGTH, place.station()));
    }

    /**
     * The span for a column of a table.
     *
     * @param place the place
     * @return its number; a dash at a support
     */
    public static String span(Place place) {
        return place.isAtSupport() ? "–" : Integer.toString(place.span());
    }

    /**
     * The station for a column of a table.
     *
     * @param place the place
     * @param station the station as it is written
     * @return that, or the support
     */
    public static String station(Place place, String station) {
        return place.support().map(id -> "at " + InertText.name(id)).orElse(station);
    }
}
