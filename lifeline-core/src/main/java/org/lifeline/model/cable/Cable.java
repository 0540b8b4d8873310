package org.lifeline.model.cable;

import java.util.Objects;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.Units;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;

/**
 * The cable of a lifeline: weight, stretch, strength, thermal expansion.
 *
 * <p>Immutable and thread-safe. Build with {@link #builder()}.
 *
 * @since 1.0.0
 */
public final class Cable implements Canonical {
    /** Thermal expansion of steel rope [1/K], 1.2e-5 (recalled, EN 1993-1-11). */
    public static final double STEEL_EXPANSION = 12e-6;

    /**
     * Termination efficiency where none is stated [-], 0.8: the lowest of the terminations of the EN 13411 series (splice,
     * wire rope grip, wedge socket; recalled). A knot in a fibre rope holds less: state it.
     */
    public static final double LOWEST_TERMINATION_EFFICIENCY = 0.8;

    private final String name;
    private final @Nullable Double diameter;
    private final @Nullable Double massPerLength;
    private final double weightPerLength;
    private final LoadElongation elongation;
    private final @Nullable Double breakingStrength;
    private final @Nullable Double terminationEfficiency;
    private final double thermalExpansion;
    private final @Nullable Double dampingTime;

    private Cable(Builder b, CableValues values, LoadElongation elongation) {
        this.name = b.name;
        this.diameter = b.diameter;
        this.massPerLength = values.massPerLength();
        this.weightPerLength = b.weightPerLength == null ? 0 : b.weightPerLength;
        this.elongation = elongation;
        this.breakingStrength = values.breakingStrength();
        this.terminationEfficiency = b.terminationEfficiency;
        this.thermalExpansion = b.thermalExpansion;
        this.dampingTime = b.dampingTime;
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
        return massPerLength == null ? weightPerLength / gravity : massPerLength;
    }

    /**
     * Tells whether the mass is known, from which the weight follows by gravity, or the weight, from which the mass does.
     *
     * @return true for a cable given by its mass, or by a rope class
     */
    public boolean isGivenByMass() {
        return massPerLength != null;
    }

    /**
     * Weight per unstretched length.
     *
     * @param gravity acceleration of gravity by which a mass is turned into a weight [m/s²]
     * @return weight w [N/m], not negative
     */
    public double weightPerLength(double gravity) {
        return massPerLength == null ? weightPerLength : massPerLength * gravity;
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
     * @return efficiency [-], above 0, at most 1; {@link #LOWEST_TERMINATION_EFFICIENCY} where none was stated
     */
    public double terminationEfficiency() {
        return terminationEfficiency == null ? LOWEST_TERMINATION_EFFICIENCY : terminationEfficiency;
    }

    /**
     * Tells whether the termination efficiency was stated.
     *
     * @return false if {@link #LOWEST_TERMINATION_EFFICIENCY} stands in for it
     */
    public boolean isTerminationEfficiencyStated() {
        return terminationEfficiency != null;
    }

    /**
     * What the terminations hold.
     *
     * @return breaking strength times termination efficiency [N], if the strength is stated
     */
    public OptionalDouble terminationStrength() {
        return breakingStrength == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(breakingStrength * terminationEfficiency());
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
     * A builder that starts from this cable.
     *
     * @return a builder with everything that is known of this cable
     */
    public Builder toBuilder() {
        Builder b = builder().name(name).elongation(elongation).thermalExpansion(thermalExpansion);
        b.diameter = diameter;
        b.massPerLength = massPerLength;
        b.weightPerLength = massPerLength == null ? (Double) weightPerLength : null;
        b.breakingStrength = breakingStrength;
        b.terminationEfficiency = terminationEfficiency;
        b.dampingTime = dampingTime;
        return b;
    }

    /**
     * The same cable with another elongation under load.
     *
     * @param value tension against strain
     * @return the new cable
     * @throws org.lifeline.base.InvalidInputException if the rope is softer or stiffer than any
     */
    public Cable withElongation(LoadElongation value) {
        return toBuilder().elongation(value).build();
    }

    /**
     * The same cable with another minimum breaking strength.
     *
     * @param value strength [N], above zero
     * @return the new cable
     * @throws org.lifeline.base.InvalidInputException if it is not above zero
     */
    public Cable withBreakingStrength(double value) {
        return toBuilder().breakingStrength(value).build();
    }

    private static OptionalDouble optional(@Nullable Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /**
     * Compares values.
     *
     * @param other another object
     * @return true for a cable of the same name with the same data
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Cable c
                && name.equals(c.name)
                && Objects.equals(diameter, c.diameter)
                && Objects.equals(massPerLength, c.massPerLength)
                && Double.compare(weightPerLength, c.weightPerLength) == 0
                && elongation.equals(c.elongation)
                && Objects.equals(breakingStrength, c.breakingStrength)
                && Objects.equals(terminationEfficiency, c.terminationEfficiency)
                && Double.compare(thermalExpansion, c.thermalExpansion) == 0
                && Objects.equals(dampingTime, c.dampingTime);
    }

    @Override
    public int hashCode() {
        return Objects.hash(
                name,
                diameter,
                massPerLength,
                weightPerLength,
                elongation,
                breakingStrength,
                terminationEfficiency,
                thermalExpansion,
                dampingTime);
    }

    @Override
    public CanonicalForm canonicalForm() {
        CanonicalForm.Builder b =
                CanonicalForm.builder("cable").text("name", name).number("diameter", diameter(), "m");
        b.number("massPerLength", optional(massPerLength), "kg/m");
        if (massPerLength == null) {
            b.number("weightPerLength", weightPerLength, "N/m");
        }
        if (elongation.isStiffnessAlone()) {
            b.number("axialStiffness", elongation.corners().get(1).tension(), "N");
        } else {
            for (int i = 0; i < elongation.corners().size(); i++) {
                String corner = CanonicalForm.Builder.element("elongation", i);
                b.number(corner + ".strain", elongation.corners().get(i).strain(), "");
                b.number(corner + ".tension", elongation.corners().get(i).tension(), "N");
            }
        }
        return b.number("breakingStrength", breakingStrength(), "N")
                .number("terminationEfficiency", optional(terminationEfficiency), "")
                .number("thermalExpansion", thermalExpansion, "1/K")
                .number("dampingTime", dampingTime(), "s")
                .build();
    }

    /**
     * Collects what is known of a cable. Not thread-safe.
     *
     * @since 1.0.0
     */
    public static final class Builder {
        String name = "";

        @Nullable
        Double diameter;

        @Nullable
        Double massPerLength;

        @Nullable
        Double weightPerLength;

        @Nullable
        Double axialStiffness;

        @Nullable
        Double elasticModulus;

        @Nullable
        Double metallicArea;

        @Nullable
        LoadElongation elongation;

        @Nullable
        Double breakingStrength;

        @Nullable
        Double terminationEfficiency;

        double thermalExpansion = STEEL_EXPANSION;

        @Nullable
        Double dampingTime;

        @Nullable
        RopeClass ropeClass;

        @Nullable
        Double tensileGrade;

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
         * Share of the breaking strength that the terminations hold; unless set {@link #LOWEST_TERMINATION_EFFICIENCY}.
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
            CableValues values = CableValues.of(this, v);
            v.throwIfAny();
            return new Cable(this, values, Objects.requireNonNull(values.elongation()));
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
