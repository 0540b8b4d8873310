package org.lifeline.model;

import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;

/**
 * Something below or beside the line that a falling worker must not touch.
 *
 * <p>Immutable and thread-safe.
 *
 * @param from where it begins: horizontal distance along the line from the first support [m]
 * @param to where it ends: horizontal distance along the line from the first support [m]
 * @param elevation elevation of its top [m]
 * @param distance horizontal distance of its nearest part from the vertical plane of the line, to either side [m], not
 *     negative; 0 for what stands below the line
 * @since 1.0.0
 */
public record Obstruction(double from, double to, double elevation, double distance) {
    /**
     * Half the breadth of a person with harness and tools [m]: what stands within it beside the place of a worker is below the
     * worker. Common practice, no source.
     */
    public static final double HALF_BREADTH = 0.3;

    /** Distance of two places that are meant to be one [m]. */
    private static final double ROUNDING = 1e-9;

    /**
     * Below the line.
     *
     * @param from where it begins: horizontal distance along the line from the first support [m]
     * @param to where it ends: horizontal distance along the line from the first support [m]
     * @param elevation elevation of its top [m]
     * @throws org.lifeline.base.InvalidInputException if one is not finite or the range is turned round
     */
    public Obstruction(double from, double to, double elevation) {
        this(from, to, elevation, 0);
    }

    /**
     * Checks the numbers.
     *
     * @param from where it begins: horizontal distance along the line from the first support [m]
     * @param to where it ends: horizontal distance along the line from the first support [m]
     * @param elevation elevation of its top [m]
     * @param distance horizontal distance from the line [m]
     * @throws org.lifeline.base.InvalidInputException if one is not finite, the range is turned round, or the distance negative
     */
    public Obstruction {
        Violations v = new Violations();
        PlausibleRange.COORDINATE.check(v, "from", from);
        PlausibleRange.COORDINATE.check(v, "to", to);
        PlausibleRange.COORDINATE.check(v, "elevation", elevation);
        PlausibleRange.LENGTH.check(v, "distance", distance);
        if (to < from) {
            v.add(Violation.of("to", GivenValue.number(to, "m"), InputRule.BEFORE_START, "from")
                    .allowing(AllowedRange.atLeast(from)));
        }
        v.throwIfAny();
    }

    /**
     * Tells whether the obstruction lies below a place.
     *
     * @param along horizontal distance along the line from the first support [m]
     * @return true if the place is within from and to, or as near to one of them as rounding
     */
    public boolean isBelow(double along) {
        return standsBetween(along, along);
    }

    /**
     * Tells whether any of the obstruction stands between two places. A place is a station and the lengths of the spans before it,
     * and a billionth of a metre beside what was meant: that counts as there.
     *
     * @param along horizontal distance of one place along the line from the first support [m]
     * @param other that of the other, on either side [m]
     * @return true if any of it lies between them, the places themselves included
     */
    public boolean standsBetween(double along, double other) {
        return from - ROUNDING <= Math.max(along, other) && to + ROUNDING >= Math.min(along, other);
    }

    /**
     * Tells whether the obstruction is below the line, or below a worker who stands off it.
     *
     * @param offset horizontal distance of the worker from the line [m], not negative
     * @return true if its distance is no more than the worker's and half the breadth of a person
     */
    public boolean isUnder(double offset) {
        return distance == 0 || distance <= offset + HALF_BREADTH;
    }
}
