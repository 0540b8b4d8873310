package org.lifeline.report;

import org.lifeline.model.Place;

/** A place on the line in words. */
final class PlaceText {
    private PlaceText() {}

    /** "in span 2 at 6 m" or "at post 1", with an input's digits. */
    static String asInput(Place place, Quantities q) {
        return place.support()
                .map(id -> "at " + InertText.name(id))
                .orElseGet(() -> "in span " + place.span() + " at " + q.input(Measure.LENGTH, place.station()));
    }

    /** "span 2 at 6.00 m" or "at post 1", with a result's digits. */
    static String asResult(Place place, Quantities q) {
        return place.support()
                .map(id -> "at " + InertText.name(id))
                .orElseGet(() -> "span " + place.span() + " at " + q.result(Measure.LENGTH, place.station()));
    }

    /** The span for a column of a table. */
    static String span(Place place) {
        return place.isAtSupport() ? "–" : Integer.toString(place.span());
    }

    /** The station, or the support, for a column of a table. */
    static String station(Place place, String station) {
        return place.support().map(id -> "at " + InertText.name(id)).orElse(station);
    }
}
