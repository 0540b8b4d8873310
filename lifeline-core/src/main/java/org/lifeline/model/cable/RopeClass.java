package org.lifeline.model.cable;

/**
 * Classes of stranded wire rope, with the factors of EN 12385-4 as printed in K. Feyrer, <i>Wire Ropes</i>,
 * Table 1.9: metallic area A = C d² [mm²], mass W d²/100 [kg/m], minimum breaking force F = K d² R/1000 [kN], d the
 * nominal diameter in mm and R the tensile grade in N/mm².
 *
 * @since 1.0.0
 */
public enum RopeClass {
    /** 6x7 with fibre core. */
    C6X7_FIBRE("6x7 fibre core", 0.345, 0.369, 0.332),
    /** 6x7 with steel core. */
    C6X7_STEEL("6x7 steel core", 0.384, 0.432, 0.359),
    /** 7x7: 6x7 with strand core. */
    C7X7("7x7", 0.384, 0.432, 0.388),
    /** 6x19 with fibre core. */
    C6X19_FIBRE("6x19 fibre core", 0.359, 0.384, 0.330),
    /** 6x19 with steel core. */
    C6X19_STEEL("6x19 steel core", 0.400, 0.449, 0.356),
    /** 6x36 with fibre core. */
    C6X36_FIBRE("6x36 fibre core", 0.367, 0.393, 0.330),
    /** 6x36 with steel core. */
    C6X36_STEEL("6x36 steel core", 0.409, 0.460, 0.356),
    /** 6x19M with fibre core. */
    C6X19M_FIBRE("6x19M fibre core", 0.346, 0.357, 0.307),
    /** 6x19M with steel core. */
    C6X19M_STEEL("6x19M steel core", 0.381, 0.418, 0.332),
    /** 7x19: 6x19M with strand core. */
    C7X19("7x19", 0.381, 0.418, 0.362),
    /** 18x7 with fibre core. */
    C18X7_FIBRE("18x7 fibre core", 0.382, 0.408, 0.328),
    /** 18x7 with steel core. */
    C18X7_STEEL("18x7 steel core", 0.401, 0.433, 0.328);

    private final String designation;
    private final double massFactor;
    private final double areaFactor;
    private final double strengthFactor;

    RopeClass(String designation, double massFactor, double areaFactor, double strengthFactor) {
        this.designation = designation;
        this.massFactor = massFactor;
        this.areaFactor = areaFactor;
        this.strengthFactor = strengthFactor;
    }

    /**
     * The class in the words of the trade.
     *
     * @return for example {@code "6x19 steel core"}
     */
    public String designation() {
        return designation;
    }

    /**
     * Metallic cross-section.
     *
     * @param diameter nominal diameter [m]
     * @return area [m²]
     */
    public double metallicArea(double diameter) {
        return areaFactor * diameter * diameter;
    }

    /**
     * Mass per length.
     *
     * @param diameter nominal diameter [m]
     * @return mass [kg/m]
     */
    public double massPerLength(double diameter) {
        return massFactor * 1e4 * diameter * diameter;
    }

    /**
     * Minimum breaking force.
     *
     * @param diameter nominal diameter [m]
     * @param grade tensile grade R [Pa], for example 1770e6
     * @return force [N]
     */
    public double minimumBreakingForce(double diameter, double grade) {
        return strengthFactor * diameter * diameter * grade;
    }
}
