package org.lifeline.file.units;

/** What a quantity of a design file measures. */
public enum Dimension {
    /** Length [m]. */
    LENGTH("length", "1.8 m"),
    /** Force [N]. */
    FORCE("force", "3.5 kN"),
    /** Mass [kg]. */
    MASS("mass", "100 kg"),
    /** Force per length: stiffness, or weight per length [N/m]. */
    FORCE_PER_LENGTH("force per length", "300 kN/m"),
    /** Mass per length [kg/m]. */
    MASS_PER_LENGTH("mass per length", "0.576 kg/m"),
    /** Stress, modulus or tensile grade [Pa]. */
    STRESS("stress", "120 GPa"),
    /** Area [m²]. */
    AREA("area", "64.7 mm²"),
    /** Energy [J]. */
    ENERGY("energy", "1.2 kJ"),
    /** Time [s]. */
    TIME("time", "0.4 ms"),
    /** Temperature, not a difference [°C]. */
    TEMPERATURE("temperature", "-30 °C"),
    /** Thermal expansion [1/K]. */
    EXPANSION("thermal expansion", "12e-6 /K"),
    /** Strain [-]. */
    STRAIN("strain", "0.4 %"),
    /** Acceleration [m/s²]. */
    ACCELERATION("acceleration", "9.81 m/s²"),
    /** Moment of a force [N·m]. */
    MOMENT("moment", "12 kN·m"),
    /** Second moment of area [m⁴]. */
    SECOND_MOMENT("second moment of area", "1840 cm⁴"),
    /** Angle [rad]. */
    ANGLE("angle", "15°");

    private final String label;
    private final String sample;

    Dimension(String label, String sample) {
        this.label = label;
        this.sample = sample;
    }

    /**
     * The dimension in words.
     *
     * @return for example {@code "force per length"}
     */
    public String label() {
        return label;
    }

    /**
     * The dimension in words, with its article.
     *
     * @return for example {@code "an area"}
     */
    public String withArticle() {
        return (label.startsWith("a") || label.startsWith("e") ? "an " : "a ") + label;
    }

    /**
     * How a quantity of this dimension is written.
     *
     * @return for example {@code "1.8 m"}
     */
    public String sample() {
        return sample;
    }
}
