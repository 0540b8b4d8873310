package org.lifeline.examples.print;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.lifeline.base.Units;

/** How results of one kind are printed: units and decimals in SI and in US customary units. */
enum Measure {
    /** Distances and elevations. */
    LENGTH("m", 1, 3, "ft", 1 / Units.FOOT, 2),
    /** Slips and displacements. */
    SMALL_LENGTH("mm", 1e3, 1, "in", 1 / Units.INCH, 2),
    /** Forces. */
    FORCE("kN", 1e-3, 2, "lbf", 1 / Units.POUND_FORCE, 0),
    /** Masses. */
    MASS("kg", 1, 1, "lb", 1 / Units.POUND, 1),
    /** Energies. */
    ENERGY("J", 1, 1, "ft·lbf", 1 / (Units.FOOT * Units.POUND_FORCE), 1),
    /** Weight per length. */
    WEIGHT_PER_LENGTH("N/m", 1, 3, "lbf/ft", Units.FOOT / Units.POUND_FORCE, 4),
    /** Temperatures. */
    TEMPERATURE("°C", 1, 1, "°F", 1.8, 1),
    /** Angles. */
    ANGLE("°", 180 / Math.PI, 1, "°", 180 / Math.PI, 1);

    private final String siUnit;
    private final double siFactor;
    private final int siDecimals;
    private final String usUnit;
    private final double usFactor;
    private final int usDecimals;

    Measure(String siUnit, double siFactor, int siDecimals, String usUnit, double usFactor, int usDecimals) {
        this.siUnit = siUnit;
        this.siFactor = siFactor;
        this.siDecimals = siDecimals;
        this.usUnit = usUnit;
        this.usFactor = usFactor;
        this.usDecimals = usDecimals;
    }

    String siUnit() {
        return siUnit;
    }

    String usUnit() {
        return usUnit;
    }

    double inSi(double value) {
        return value * siFactor;
    }

    double inUs(double value) {
        return value * usFactor + (this == TEMPERATURE ? 32 : 0);
    }

    int siDecimals() {
        return siDecimals;
    }

    int usDecimals() {
        return usDecimals;
    }

    /** The number in SI, without unit. */
    String si(double value) {
        return fixed(inSi(value), siDecimals);
    }

    /** The number in US customary units, without unit. */
    String us(double value) {
        return fixed(inUs(value), usDecimals);
    }

    /** The number with its unit, in one system or both: {@code 6.00 kN (1349 lbf)}. */
    String text(double value, UnitChoice units) {
        String si = si(value) + " " + siUnit;
        String us = us(value) + " " + usUnit;
        return switch (units) {
            case SI -> si;
            case US -> us;
            case BOTH -> si + " (" + us + ")";
        };
    }

    /** A decimal number with a point, the same in every locale, never minus zero. */
    static String fixed(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return Double.isNaN(value) ? "-" : value > 0 ? "infinite" : "-infinite";
        }
        BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return rounded.signum() == 0 ? rounded.abs().toPlainString() : rounded.toPlainString();
    }
}
