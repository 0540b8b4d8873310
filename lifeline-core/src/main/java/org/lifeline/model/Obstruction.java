package org.lifeline.model;

import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;

/**
 * Something below the line that a falling worker must not touch.
 *
 * <p>Immutable and thread-safe.
 *
 * @param from where it begins: horizontal distance along the line from the first support [m]
 * @param to where it ends: horizontal distance along the line from the first support [m]
 * @param elevation elevation of its top [m]
 */
public record Obstruction(double from, double to, double elevation) {

    /**
     * Checks the numbers.
     *
     * @param from where it begins: horizontal distance along the line from the first support [m]
     * @param to where it ends: horizontal distance along the line from the first support [m]
     * @param elevation elevation of its top [m]
     * @throws org.lifeline.base.InvalidInputException if one is not finite or the range is turned round
     */
    public Obstruction {
        Violations v = new Violations();
        PlausibleRange.COORDINATE.check(v, "from", from);
        PlausibleRange.COORDINATE.check(v, "to", to);
        PlausibleRange.COORDINATE.check(v, "elevation", elevation);
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
     * @return true if the place is within from and to
     */
    public boolean isBelow(double along) {
        return along >= from && along <= to;
    }
}
