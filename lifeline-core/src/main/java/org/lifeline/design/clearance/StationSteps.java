package org.lifeline.design.clearance;

import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;

/**
 * How a line is cut into stretches, and how their distances are rounded.
 *
 * <p>Immutable and thread-safe.
 *
 * @param step longest stretch [m], above zero; every span starts a new one
 * @param rounding unit of printed distances [m], above zero: required ones are rounded up to it, available ones down
 * @since 1.0.0
 */
public record StationSteps(double step, double rounding) {
    /** Stretches of 1 m, rounded to 0.05 m: what can be measured on site (common practice, no source). */
    public static final StationSteps COMMON = new StationSteps(1, 0.05);

    /** How far a value may be above a multiple of the unit and still count as it, in units [-]: rounding of the division. */
    private static final double EXACT = 1e-9;

    /** Shortest step and finest unit [m]. */
    private static final double LEAST = 1e-3;

    /**
     * Checks both.
     *
     * @param step longest stretch [m]
     * @param rounding unit of printed distances [m]
     */
    public StationSteps {
        Violations v = new Violations();
        v.require(
                step >= LEAST && step <= 1000,
                "step",
                GivenValue.number(step, "m"),
                InputRule.OUTSIDE_RANGE,
                "1 mm",
                "1000 m");
        v.require(
                rounding >= LEAST && rounding <= 1,
                "rounding",
                GivenValue.number(rounding, "m"),
                InputRule.OUTSIDE_RANGE,
                "1 mm",
                "1 m");
        v.throwIfAny();
    }

    /**
     * A required distance on the safe side.
     *
     * @param value distance [m]
     * @return the next multiple of the unit that is not smaller [m]
     */
    public double up(double value) {
        return rounding * Math.ceil(value / rounding - EXACT);
    }

    /**
     * An available distance on the safe side.
     *
     * @param value distance [m]
     * @return the next multiple of the unit that is not larger [m]
     */
    public double down(double value) {
        return rounding * Math.floor(value / rounding + EXACT);
    }
}
