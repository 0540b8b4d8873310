package org.lifeline.reference;

import java.util.Map;

/** Units in which the sources print their numbers, as factors into SI. */
final class ReferenceUnits {
    private static final double GRAVITY = 9.80665;
    private static final double POUND_FORCE = 0.45359237 * GRAVITY;
    private static final double FOOT = 0.3048;
    private static final double INCH = 0.0254;

    private static final Map<String, Double> FACTORS = Map.ofEntries(
            Map.entry("-", 1.0),
            Map.entry("m", 1.0),
            Map.entry("mm", 1e-3),
            Map.entry("ft", FOOT),
            Map.entry("in", INCH),
            Map.entry("m2", 1.0),
            Map.entry("mm2", 1e-6),
            Map.entry("in2", INCH * INCH),
            Map.entry("N", 1.0),
            Map.entry("kN", 1e3),
            Map.entry("kgf", GRAVITY),
            Map.entry("lbf", POUND_FORCE),
            Map.entry("kip", 1000 * POUND_FORCE),
            Map.entry("N/m", 1.0),
            Map.entry("kgf/m", GRAVITY),
            Map.entry("lbf/ft", POUND_FORCE / FOOT),
            Map.entry("lbf/in", POUND_FORCE / INCH),
            Map.entry("GPa", 1e9),
            Map.entry("psi", POUND_FORCE / (INCH * INCH)),
            Map.entry("ksi", 1000 * POUND_FORCE / (INCH * INCH)),
            Map.entry("kgf/m2", GRAVITY),
            Map.entry("kg", 1.0),
            Map.entry("lbf.s2/in", POUND_FORCE / INCH),
            Map.entry("lbf.s2/in4", POUND_FORCE / (INCH * INCH * INCH * INCH)),
            Map.entry("kg/m", 1.0),
            Map.entry("kg/100 m", 0.01),
            Map.entry("kg/m3", 1.0),
            Map.entry("m/s2", 1.0),
            Map.entry("in/s2", INCH),
            Map.entry("m/s", 1.0),
            Map.entry("s", 1.0),
            Map.entry("Hz", 1.0),
            Map.entry("rad", 1.0),
            Map.entry("K", 1.0),
            Map.entry("1/K", 1.0),
            Map.entry("deg", Math.PI / 180));

    private ReferenceUnits() {}

    /** One unit in SI. */
    static double factor(String unit) {
        Double factor = FACTORS.get(unit);
        if (factor == null) {
            throw new IllegalArgumentException("unknown unit " + unit);
        }
        return factor;
    }
}
