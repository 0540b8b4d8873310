package org.lifeline.model.cable;

import org.jspecify.annotations.Nullable;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;

/**
 * What follows from what was stated of a cable: the values of a rope class stand in where none is given, and every value
 * is checked. The builder itself is not changed, so that it can be used again.
 *
 * <p>Immutable and thread-safe.
 *
 * @param massPerLength mass [kg/m]; null where the weight is stated
 * @param elongation tension against strain; null where it does not follow from what was stated
 * @param breakingStrength minimum breaking strength [N]; null where none is stated
 */
record CableValues(
        @Nullable Double massPerLength,
        @Nullable LoadElongation elongation,
        @Nullable Double breakingStrength) {

    /**
     * Smallest mass per length that is computed, unless there is none [kg/m]. The lightest cords that hold a person have 1e-2; what
     * is lighter stands for a cable without weight. Of arrests on lines with an in-line absorber 12 % broke the continuity of the
     * slack cable at 1e-11 kg/m, 6 % at 1e-9 and none from 1e-6 on; what is broken fails the independent check.
     */
    private static final double LEAST_MASS = 1e-9;

    /** The same as a weight [N/m]. */
    private static final double LEAST_WEIGHT = 1e-8;

    /** Works out the values; what is wrong is added to the violations. */
    static CableValues of(Cable.Builder b, Violations v) {
        if (b.name == null) {
            v.missing("name");
        }
        check(PlausibleRange.ROPE_DIAMETER, v, "diameter", b.diameter);
        RopeClass type = usable(b, v);
        Double d = b.diameter;
        Double mass = b.massPerLength;
        Double area = b.metallicArea;
        Double strength = b.breakingStrength;
        if (type != null && d != null) {
            mass = mass == null && b.weightPerLength == null ? (Double) type.massPerLength(d) : mass;
            area = area == null ? (Double) type.metallicArea(d) : area;
            Double grade = b.tensileGrade;
            strength = strength == null && grade != null ? (Double) type.minimumBreakingForce(d, grade) : strength;
        }
        checkMass(b, mass, v);
        LoadElongation law = elongation(b, area, v);
        check(PlausibleRange.STRENGTH, v, "breakingStrength", b.breakingStrength);
        Double efficiency = b.terminationEfficiency;
        if (efficiency != null) {
            if (!(efficiency > 0 && efficiency <= 1)) {
                GivenValue given = GivenValue.number(efficiency, "");
                v.add(Violation.of("terminationEfficiency", given, InputRule.NOT_ABOVE_AND_AT_MOST, 0, 1)
                        .allowing(AllowedRange.above(0).upTo(1)));
            }
        }
        check(PlausibleRange.THERMAL_EXPANSION, v, "thermalExpansion", b.thermalExpansion);
        check(PlausibleRange.DAMPING_TIME, v, "dampingTime", b.dampingTime);
        return new CableValues(mass, law, strength);
    }

    private static void check(PlausibleRange range, Violations v, String path, @Nullable Double value) {
        if (value != null) {
            range.check(v, path, value);
        }
    }

    private static @Nullable RopeClass usable(Cable.Builder b, Violations v) {
        RopeClass type = b.ropeClass;
        Double grade = b.tensileGrade;
        if (grade != null) {
            PlausibleRange.TENSILE_GRADE.check(v, "tensileGrade", grade);
            if (type == null) {
                v.add("tensileGrade", GivenValue.number(grade, "Pa"), InputRule.ROPE_CLASS_NEEDED);
            }
        }
        if (type != null && b.diameter == null) {
            v.add("ropeClass", GivenValue.text(type.designation()), InputRule.DIAMETER_NEEDED);
        }
        return type;
    }

    private static void checkMass(Cable.Builder b, @Nullable Double mass, Violations v) {
        boolean twice = b.massPerLength != null && b.weightPerLength != null;
        if (twice || (mass == null && b.weightPerLength == null)) {
            v.add("massPerLength", GivenValue.text(twice ? "given twice" : "missing"), InputRule.MASS_OR_WEIGHT);
        }
        check(PlausibleRange.MASS_PER_LENGTH, v, "massPerLength", b.massPerLength);
        notNextToNothing(v, "massPerLength", b.massPerLength, "kg/m");
        check(PlausibleRange.WEIGHT_PER_LENGTH, v, "weightPerLength", b.weightPerLength);
        notNextToNothing(v, "weightPerLength", b.weightPerLength, "N/m");
    }

    /** A slack cable has the shape of its weight, and next to a load of kilonewtons a weight that small is lost. */
    private static void notNextToNothing(Violations v, String path, @Nullable Double value, String unit) {
        double least = unit.equals("N/m") ? LEAST_WEIGHT : LEAST_MASS;
        if (value != null && value > 0 && value < least) {
            v.add(Violation.of(
                            path,
                            GivenValue.number(value, unit),
                            InputRule.NEXT_TO_WEIGHTLESS,
                            Violations.show(least, unit))
                    .allowing(AllowedRange.atLeast(least)));
        }
    }

    private static @Nullable LoadElongation elongation(Cable.Builder b, @Nullable Double area, Violations v) {
        Double stiffness = b.axialStiffness;
        Double modulus = b.elasticModulus;
        int ways = (stiffness != null ? 1 : 0) + (modulus != null ? 1 : 0) + (b.elongation != null ? 1 : 0);
        if (ways != 1) {
            v.add(
                    "axialStiffness",
                    GivenValue.text(ways == 0 ? "missing" : "given more than once"),
                    InputRule.ONE_STIFFNESS);
        }
        check(PlausibleRange.AXIAL_STIFFNESS, v, "axialStiffness", stiffness);
        check(PlausibleRange.ELASTIC_MODULUS, v, "elasticModulus", modulus);
        check(PlausibleRange.METALLIC_AREA, v, "metallicArea", b.metallicArea);
        if (modulus != null && area == null) {
            v.add("metallicArea", GivenValue.missing(), InputRule.AREA_NEEDED);
        }
        if (!v.isEmpty()) {
            return null;
        }
        if (modulus != null && area != null) {
            PlausibleRange.AXIAL_STIFFNESS.check(v, "axialStiffness", modulus * area);
            return v.isEmpty() ? LoadElongation.linear(modulus * area) : null;
        }
        return stiffness != null ? LoadElongation.linear(stiffness) : b.elongation;
    }
}
