package org.lifeline.base;

/**
 * The two systems in which people read quantities. Each is coherent: formulas hold without factors in both.
 *
 * @since 1.0.0
 */
public enum UnitSystem {
    /** Metre, newton, kilogram, degree Celsius. */
    SI,
    /** Foot, pound-force, pound, degree Fahrenheit. */
    US_CUSTOMARY
}
