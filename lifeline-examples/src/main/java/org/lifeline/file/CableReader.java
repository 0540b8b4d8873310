package org.lifeline.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.unit.Dimension;
import org.lifeline.file.Fields.Range;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;
import org.lifeline.model.cable.RopeClass;

/** Reads {@code cable}. */
final class CableReader {
    private CableReader() {}

    static @Nullable Cable read(Fields f) {
        Cable.Builder b = Cable.builder();
        String name = f.text("name");
        if (name != null) {
            b.name(name);
        }
        ifGiven(f.quantity("diameter", Dimension.LENGTH, Range.POSITIVE), b::diameter);
        ifGiven(f.quantity("massPerLength", Dimension.MASS_PER_LENGTH, Range.NOT_NEGATIVE), b::massPerLength);
        ifGiven(f.quantity("weightPerLength", Dimension.FORCE_PER_LENGTH, Range.NOT_NEGATIVE), b::weightPerLength);
        ifGiven(f.quantity("axialStiffness", Dimension.FORCE, Range.POSITIVE), b::axialStiffness);
        ifGiven(f.quantity("elasticModulus", Dimension.STRESS, Range.POSITIVE), b::elasticModulus);
        ifGiven(f.quantity("metallicArea", Dimension.AREA, Range.POSITIVE), b::metallicArea);
        ifGiven(f.quantity("tensileGrade", Dimension.STRESS, Range.POSITIVE), b::tensileGrade);
        ifGiven(f.quantity("minimumBreakingStrength", Dimension.FORCE, Range.POSITIVE), b::breakingStrength);
        ifGiven(f.quantity("dampingTime", Dimension.TIME, Range.NOT_NEGATIVE), b::dampingTime);
        ifGiven(f.quantity("thermalExpansion", Dimension.EXPANSION, Range.ANY), b::thermalExpansion);
        efficiency(f, b);
        ropeClass(f, b);
        List<double[]> corners = f.pairs("loadElongation", Dimension.STRAIN, Dimension.FORCE);
        if (!corners.isEmpty()) {
            f.build(() -> b.elongation(LoadElongation.curve(corners.stream()
                    .map(c -> new LoadElongation.Corner(c[0], c[1]))
                    .toList())));
        } else if (f.has("loadElongation") && f.clean()) {
            f.findings().bad(f.path("loadElongation"), f.node("loadElongation"), "must have at least two corners");
        }
        waysGiven(f);
        f.close();
        return f.build(b::build);
    }

    /** Hands on what was read; NaN stands for what is absent or wrong. */
    private static void ifGiven(double read, DoubleConsumer setter) {
        if (!Double.isNaN(read)) {
            setter.accept(read);
        }
    }

    private static void efficiency(Fields f, Cable.Builder b) {
        double value = f.number("terminationEfficiency", Range.POSITIVE);
        if (value > 1) {
            f.findings().bad(f.path("terminationEfficiency"), f.node("terminationEfficiency"), "must be at most 1");
        } else if (!Double.isNaN(value)) {
            b.terminationEfficiency(value);
        }
    }

    private static void ropeClass(Fields f, Cable.Builder b) {
        String text = f.text("ropeClass");
        if (text == null) {
            return;
        }
        Optional<RopeClass> found = Arrays.stream(RopeClass.values())
                .filter(c -> c.designation().equalsIgnoreCase(spelledOut(text)))
                .findFirst();
        if (found.isPresent()) {
            b.ropeClass(found.get());
            return;
        }
        List<String> known =
                Arrays.stream(RopeClass.values()).map(RopeClass::designation).toList();
        JsonNode value = f.node("ropeClass");
        f.findings().bad(f.path("ropeClass"), value, "is not a known rope class; known: " + String.join(", ", known));
    }

    /** The trade's short forms in full: IWRC for an independent wire rope core, FC for fibre core. */
    private static String spelledOut(String text) {
        String s = text.strip().toLowerCase(Locale.ROOT).replace('×', 'x').replaceAll("\\s+", " ");
        s = s.replace("fiber", "fibre").replaceAll(" iwrc$", " steel core").replaceAll(" fc$", " fibre core");
        return switch (s) {
            case "6x7 strand core", "6x7 wsc" -> "7x7";
            case "6x19m strand core", "6x19m wsc" -> "7x19";
            default -> s;
        };
    }

    /** What may be given in several ways, by the keys that are there, whether or not their values are right. */
    private static void waysGiven(Fields f) {
        boolean rope = f.has("ropeClass");
        int mass = f.count("massPerLength", "weightPerLength");
        if (mass == 2 || (mass == 0 && !rope)) {
            f.findings()
                    .say(
                            f.path("massPerLength"),
                            mass == 2 ? "given twice" : "missing",
                            "give exactly one of massPerLength and weightPerLength (or a ropeClass with diameter)");
        }
        int stretch = f.count("axialStiffness", "elasticModulus", "loadElongation");
        if (stretch != 1) {
            f.findings()
                    .say(
                            f.path("axialStiffness"),
                            stretch == 0 ? "missing" : "given more than once",
                            "give exactly one of axialStiffness, elasticModulus with metallicArea, and loadElongation");
        }
        if (f.has("elasticModulus") && !f.has("metallicArea") && !rope) {
            f.findings().missing(f.path("metallicArea"), "must be given together with elasticModulus");
        }
        if (rope && !f.has("diameter")) {
            f.findings().missing(f.path("diameter"), "must be given together with ropeClass");
        }
        if (f.has("tensileGrade") && !rope) {
            f.findings()
                    .bad(f.path("tensileGrade"), f.node("tensileGrade"), "is of use only together with a ropeClass");
        }
    }
}
