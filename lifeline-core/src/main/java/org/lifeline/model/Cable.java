package org.lifeline.model;

import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.Units;
import org.lifeline.base.Violations;

/**
 * The cable of a lifeline: weight, stretch, strength, thermal expansion.
 *
 * <p>Immutable and thread-safe. Build with {@link #builder()}.
 */
public final class Cable {
    /** Thermal expansion of steel rope [1/K], 1.2e-5 (recalled, EN 1993-1-11). */
    public static final double STEEL_EXPANSION = 12e-6;

    private final String name;
    private final double diameter;
    private final double massPerLength;
    private final double weightPerLength;
    private final LoadElongation elongation;
    private final double breakingStrength;
    private final double terminationEfficiency;
    private final double thermalExpansion;
    private final double dampingTime;

    private Cable(Builder b, LoadElongation elongation) {
        this.name = b.name;
        this.diameter = b.diameter;
        this.massPerLength = b.massPerLength;
        this.weightPerLength = b.weightPerLength;
        this.elongation = elongation;
        this.breakingStrength = b.breakingStrength;
        this.terminationEfficiency = b.terminationEfficiency;
        this.thermalExpansion = b.thermalExpansion;
        this.dampingTime = b.dampingTime;
    }

    private Cable(Cable c, LoadElongation elongation, double breakingStrength) {
        this.name = c.name;
        this.diameter = c.diameter;
        this.massPerLength = c.massPerLength;
        this.weightPerLength = c.weightPerLength;
        this.elongation = elongation;
        this.breakingStrength = breakingStrength;
        this.terminationEfficiency = c.terminationEfficiency;
        this.thermalExpansion = c.thermalExpansion;
        this.dampingTime = c.dampingTime;
    }

    /**
     * Starts a cable.
     *
     * @return an empty builder
     */
    public static Builder builder() {
        return new Builder();
    }

    /**
     * Name of the cable.
     *
     * @return the name; empty if none was given
     */
    public String name() {
        return name;
    }

    /**
     * Nominal diameter.
     *
     * @return diameter [m], if stated
     */
    public OptionalDouble diameter() {
        return optional(diameter);
    }

    /**
     * Mass per unstretched length.
     *
     * @param gravity acceleration of gravity by which a weight is turned into a mass [m/s²]
     * @return mass [kg/m], not negative
     */
    public double massPerLength(double gravity) {
        return Double.isNaN(massPerLength) ? weightPerLength / gravity : massPerLength;
    }

    /**
     * Weight per unstretched length.
     *
     * @param gravity acceleration of gravity by which a mass is turned into a weight [m/s²]
     * @return weight w [N/m], not negative
     */
    public double weightPerLength(double gravity) {
        return Double.isNaN(weightPerLength) ? massPerLength * gravity : weightPerLength;
    }

    /**
     * How the cable stretches.
     *
     * @return the load–elongation law
     */
    public LoadElongation elongation() {
        return elongation;
    }

    /**
     * Minimum breaking strength of the cable itself.
     *
     * @return force [N], if stated
     */
    public OptionalDouble breakingStrength() {
        return optional(breakingStrength);
    }

    /**
     * Share of the breaking strength that the terminations hold.
     *
     * @return efficiency [-], above 0, at most 1
     */
    public double terminationEfficiency() {
        return terminationEfficiency;
    }

    /**
     * Coefficient of linear thermal expansion.
     *
     * @return α [1/K]
     */
    public double thermalExpansion() {
        return thermalExpansion;
    }

    /**
     * Internal damping time τ of T = EA(ε + τ dε/dt), for analyses in time.
     *
     * @return τ [s], if stated
     */
    public OptionalDouble dampingTime() {
        return optional(dampingTime);
    }

    /**
     * The same cable with another elongation under load.
     *
     * @param value tension against strain
     * @return the new cable
     */
    public Cable withElongation(LoadElongation value) {
        return new Cable(this, value, breakingStrength);
    }

    /**
     * The same cable with another minimum breaking strength.
     *
     * @param value strength [N], above zero
     * @return the new cable
     * @throws org.lifeline.base.InvalidInputException if it is not above zero
     */
    public Cable withBreakingStrength(double value) {
        new Violations().positive("minimumBreakingStrength", value, "N").throwIfAny();
        return new Cable(this, elongation, value);
    }

    private static OptionalDouble optional(double value) {
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** Collects what is known of a cable. Not thread-safe. */
    public static final class Builder {
        private String name = "";
        private double diameter = Double.NaN;
        private double massPerLength = Double.NaN;
        private double weightPerLength = Double.NaN;
        private double axialStiffness = Double.NaN;
        private double elasticModulus = Double.NaN;
        private double metallicArea = Double.NaN;
        private @Nullable LoadElongation elongation;
        private double breakingStrength = Double.NaN;
        private double terminationEfficiency = 1;
        private double thermalExpansion = STEEL_EXPANSION;
        private double dampingTime = Double.NaN;
        private @Nullable RopeClass ropeClass;
        private double tensileGrade = Double.NaN;

        private Builder() {}

        /**
         * Names the cable.
         *
         * @param value the name
         * @return this
         */
        public Builder name(String value) {
            name = value;
            return this;
        }

        /**
         * Nominal diameter.
         *
         * @param value diameter [m], above zero
         * @return this
         */
        public Builder diameter(double value) {
            diameter = value;
            return this;
        }

        /**
         * Mass per unstretched length; give this or the weight.
         *
         * @param value mass [kg/m], not negative
         * @return this
         */
        public Builder massPerLength(double value) {
            massPerLength = value;
            return this;
        }

        /**
         * Weight per unstretched length; give this or the mass.
         *
         * @param value weight [N/m], not negative
         * @return this
         */
        public Builder weightPerLength(double value) {
            weightPerLength = value;
            return this;
        }

        /**
         * Axial stiffness; give this, or modulus and area, or a load–elongation law.
         *
         * @param value EA [N], above zero
         * @return this
         */
        public Builder axialStiffness(double value) {
            axialStiffness = value;
            return this;
        }

        /**
         * Effective modulus of elasticity of the rope, on its metallic area.
         *
         * @param value modulus [Pa], above zero
         * @return this
         */
        public Builder elasticModulus(double value) {
            elasticModulus = value;
            return this;
        }

        /**
         * Metallic cross-section.
         *
         * @param value area [m²], above zero
         * @return this
         */
        public Builder metallicArea(double value) {
            metallicArea = value;
            return this;
        }

        /**
         * Load–elongation law of a rope that is not linear.
         *
         * @param value the law
         * @return this
         */
        public Builder elongation(LoadElongation value) {
            elongation = value;
            return this;
        }

        /**
         * Minimum breaking strength of the cable itself.
         *
         * @param value force [N], above zero
         * @return this
         */
        public Builder breakingStrength(double value) {
            breakingStrength = value;
            return this;
        }

        /**
         * Share of the breaking strength that the terminations hold; 1 unless set.
         *
         * @param value efficiency [-], above 0, at most 1
         * @return this
         */
        public Builder terminationEfficiency(double value) {
            terminationEfficiency = value;
            return this;
        }

        /**
         * Coefficient of linear thermal expansion; that of steel unless set.
         *
         * @param value α [1/K]
         * @return this
         */
        public Builder thermalExpansion(double value) {
            thermalExpansion = value;
            return this;
        }

        /**
         * Internal damping time, for analyses in time.
         *
         * @param value τ [s], not negative
         * @return this
         */
        public Builder dampingTime(double value) {
            dampingTime = value;
            return this;
        }

        /**
         * Rope class: with a diameter it gives metallic area, mass and, with a tensile grade, minimum breaking
         * strength, wherever these are not given themselves.
         *
         * @param value the class
         * @return this
         */
        public Builder ropeClass(RopeClass value) {
            ropeClass = value;
            return this;
        }

        /**
         * Tensile grade of the wires, for {@link #ropeClass}.
         *
         * @param value grade [Pa], above zero, for example 1770e6
         * @return this
         */
        public Builder tensileGrade(double value) {
            tensileGrade = value;
            return this;
        }

        /**
         * Checks everything and makes the cable.
         *
         * @return the cable
         * @throws org.lifeline.base.InvalidInputException with all violations
         */
        public Cable build() {
            Violations v = new Violations();
            if (given(diameter)) {
                v.positive("diameter", diameter, "m");
            }
            applyRopeClass(v);
            checkMass(v);
            checkElasticity(v);
            if (given(breakingStrength)) {
                v.positive("minimumBreakingStrength", breakingStrength, "N");
            }
            v.require(
                    terminationEfficiency > 0 && terminationEfficiency <= 1,
                    "terminationEfficiency",
                    Violations.show(terminationEfficiency, ""),
                    "must be above 0 and at most 1");
            v.finite("thermalExpansion", thermalExpansion, "1/K");
            if (given(dampingTime)) {
                v.notNegative("dampingTime", dampingTime, "s");
            }
            v.throwIfAny();
            LoadElongation law = elongation;
            if (law == null) {
                law = LoadElongation.linear(given(axialStiffness) ? axialStiffness : elasticModulus * metallicArea);
            }
            return new Cable(this, law);
        }

        private void applyRopeClass(Violations v) {
            if (ropeClass == null) {
                v.require(
                        !given(tensileGrade),
                        "tensileGrade",
                        Violations.show(tensileGrade, "Pa"),
                        "is of use only together with a ropeClass");
                return;
            }
            if (!given(diameter)) {
                v.add("ropeClass", ropeClass.designation(), "needs the diameter as well");
                return;
            }
            if (!given(massPerLength) && !given(weightPerLength)) {
                massPerLength = ropeClass.massPerLength(diameter);
            }
            if (!given(metallicArea)) {
                metallicArea = ropeClass.metallicArea(diameter);
            }
            if (given(tensileGrade)) {
                v.positive("tensileGrade", tensileGrade, "Pa");
                if (!given(breakingStrength) && tensileGrade > 0) {
                    breakingStrength = ropeClass.minimumBreakingForce(diameter, tensileGrade);
                }
            }
        }

        private void checkMass(Violations v) {
            if (given(massPerLength) == given(weightPerLength)) {
                v.add(
                        "massPerLength",
                        given(massPerLength) ? "given twice" : "missing",
                        "give exactly one of massPerLength and weightPerLength (or a ropeClass with diameter)");
            }
            if (given(massPerLength)) {
                v.notNegative("massPerLength", massPerLength, "kg/m");
            }
            if (given(weightPerLength)) {
                v.notNegative("weightPerLength", weightPerLength, "N/m");
            }
        }

        private void checkElasticity(Violations v) {
            int ways = (given(axialStiffness) ? 1 : 0) + (given(elasticModulus) ? 1 : 0) + (elongation != null ? 1 : 0);
            if (ways != 1) {
                v.add(
                        "axialStiffness",
                        ways == 0 ? "missing" : "given more than once",
                        "give exactly one of axialStiffness, elasticModulus with metallicArea, and loadElongation");
            }
            if (given(axialStiffness)) {
                v.positive("axialStiffness", axialStiffness, "N");
            }
            if (given(elasticModulus)) {
                v.positive("elasticModulus", elasticModulus, "Pa");
                if (!given(metallicArea)) {
                    v.add("metallicArea", "missing", "must be given together with elasticModulus");
                }
            }
            if (given(metallicArea)) {
                v.positive("metallicArea", metallicArea, "m²");
            }
        }

        private static boolean given(double value) {
            return !Double.isNaN(value);
        }
    }

    /**
     * The cable for a diagnostic message.
     *
     * @return name and stiffness
     */
    @Override
    public String toString() {
        return (name.isEmpty() ? "cable" : name) + ", w " + weightPerLength(Units.STANDARD_GRAVITY) + " N/m";
    }
}
