package org.lifeline.report.document;

import java.util.List;
import org.lifeline.base.UnitSystem;

/**
 * Which units a report shows.
 *
 * @since 1.0.0
 */
public enum UnitChoice {
    /** SI only. */
    SI,
    /** US customary only. */
    US_CUSTOMARY,
    /** SI with US customary in parentheses. */
    BOTH;

    /**
     * The systems, the leading one first.
     *
     * @return one or two systems; unmodifiable
     */
    public List<UnitSystem> systems() {
        return switch (this) {
            case SI -> List.of(UnitSystem.SI);
            case US_CUSTOMARY -> List.of(UnitSystem.US_CUSTOMARY);
            case BOTH -> List.of(UnitSystem.SI, UnitSystem.US_CUSTOMARY);
        };
    }

    /**
     * The system in which axes and calculations are drawn up.
     *
     * @return the leading system
     */
    public UnitSystem leading() {
        return systems().get(0);
    }
}
