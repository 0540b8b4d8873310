package org.lifeline.report.picture;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.internal.svg.TextWidth;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;

/** What a drawing says of a support. */
final class SupportDetails {
    private static final double WIDEST = 190;

    private SupportDetails() {}

    /** What a support does with the cable, how stiff and how strong it is. */
    static List<String> of(Support s, Quantities q) {
        List<String> list = new ArrayList<>();
        list.add(
                s.isEnd()
                        ? "end anchor"
                        : switch (s.passage().kind()) {
                            case FREE -> "cable passes freely";
                            case FRICTION ->
                                "passes, μ = "
                                        + q.input(
                                                QuantityKind.RATIO, s.passage().friction());
                            case CLAMPED -> "clamped";
                        });
        Stiffness k = s.stiffness();
        if (!k.isRigid()) {
            List<String> parts = new ArrayList<>();
            stiffness(q, parts, "x", k.x());
            stiffness(q, parts, "y", k.y());
            stiffness(q, parts, "z", k.z());
            list.add(String.join(", ", parts));
        }
        s.capacity().ifPresent(f -> list.add("capacity " + q.stated(QuantityKind.FORCE, f)));
        s.inlineAbsorber()
                .ifPresent(a -> list.add("in-line absorber, " + q.stated(QuantityKind.FORCE, most(a.curve()))
                        + ", up to " + q.stated(QuantityKind.LENGTH, a.curve().maximumExtension())));
        return list;
    }

    private static void stiffness(Quantities q, List<String> parts, String axis, double value) {
        if (Double.isFinite(value)) {
            parts.add("k" + axis + " = " + q.stated(QuantityKind.STIFFNESS, value));
        }
    }

    /** The same in rows that are not too wide, broken after commas. */
    static List<String> rows(Support s, Quantities q) {
        List<String> rows = new ArrayList<>();
        of(s, q).forEach(d -> broken(d, rows));
        return rows;
    }

    /** A detail in as many rows as it needs, broken after commas. */
    private static void broken(String detail, List<String> rows) {
        String row = "";
        for (String part : detail.split("(?<=, )", -1)) {
            if (!row.isEmpty() && TextWidth.of(row + part) > WIDEST) {
                rows.add(TextWidth.cut(row.strip(), WIDEST));
                row = "";
            }
            row += part;
        }
        rows.add(TextWidth.cut(row.strip(), WIDEST));
    }

    private static double most(LoadingCurve curve) {
        return curve.corners().stream()
                .mapToDouble(LoadingCurve.Corner::force)
                .max()
                .orElse(0);
    }
}
