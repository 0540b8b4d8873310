package org.lifeline.model.absorber;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violations;
import org.lifeline.model.absorber.LoadingCurve.Corner;

/** The stated corners of a loading curve, checked, and the first rise worked in. */
final class LoadingCurveCorners {
    private LoadingCurveCorners() {}

    /**
     * The corners of a curve.
     *
     * @throws org.lifeline.base.InvalidInputException with all violations
     */
    static List<Corner> of(List<Corner> corners, double initialStiffness, double stopStiffness) {
        Violations v = new Violations();
        Violations.required("curve", corners);
        v.require(!corners.isEmpty(), "curve", "[]", "must have at least one corner");
        v.require(
                corners.size() <= PlausibleRange.CORNERS.highest(),
                "curve",
                corners.size() + " corners",
                PlausibleRange.CORNERS.reason());
        for (int i = 0; i < corners.size(); i++) {
            check(v, corners, i);
        }
        stiffness(v, "initialStiffness", initialStiffness, "must be above zero (leave it out for a rigid start)");
        stiffness(v, "stopStiffness", stopStiffness, "must be above zero (leave it out for a rigid stop)");
        v.throwIfAny();
        List<Corner> list = meet(corners, initialStiffness, v);
        v.throwIfAny();
        v.require(
                        list.get(list.size() - 1).force() > 0 || Double.isFinite(stopStiffness),
                        "curve",
                        list.size() + " corners",
                        "must reach a force above zero")
                .throwIfAny();
        return list;
    }

    private static void check(Violations v, List<Corner> corners, int i) {
        Corner c = Violations.required("curve[" + i + "]", corners.get(i));
        String extension = "curve[" + i + "][0]";
        String force = "curve[" + i + "][1]";
        PlausibleRange.LENGTH.check(v, extension, c.extension());
        PlausibleRange.ARREST_FORCE.check(v, force, c.force());
        if (i == 0) {
            v.require(c.extension() == 0, extension, Violations.show(c.extension(), "m"), "must start at extension 0");
            return;
        }
        Corner b = corners.get(i - 1);
        v.require(
                !(c.extension() <= b.extension()),
                extension,
                Violations.show(c.extension(), "m"),
                "must be larger than the extension before it");
        v.require(
                !(c.force() < b.force()),
                force,
                Violations.show(c.force(), "N"),
                "must not be lower than the force before it");
    }

    private static void stiffness(Violations v, String path, double value, String rule) {
        if (value > 0) {
            PlausibleRange.STIFFNESS.checkOrRigid(v, path, value);
        } else {
            v.add(path, Violations.show(value, "N/m"), rule);
        }
    }

    /** Replaces the start of the curve by the first rise F = k x up to the point where the two meet. */
    private static List<Corner> meet(List<Corner> corners, double k, Violations v) {
        if (corners.get(0).force() == 0 || Double.isInfinite(k)) {
            return corners;
        }
        List<Corner> list = new ArrayList<>();
        list.add(new Corner(0, 0));
        for (int i = 0; i < corners.size(); i++) {
            Corner a = corners.get(i);
            if (list.size() > 1) {
                list.add(a);
                continue;
            }
            boolean end = i == corners.size() - 1;
            double slope = end ? 0 : slope(a, corners.get(i + 1));
            double x = k > slope ? (a.force() - slope * a.extension()) / (k - slope) : Double.POSITIVE_INFINITY;
            if (end ? x <= a.extension() : x < corners.get(i + 1).extension()) {
                list.add(new Corner(x, a.force() + slope * (x - a.extension())));
            }
        }
        v.require(
                list.size() > 1,
                "initialStiffness",
                Violations.show(k, "N/m"),
                "is so low that the deployment force is not reached within the maximum extension");
        return list;
    }

    private static double slope(Corner a, Corner b) {
        return (b.force() - a.force()) / (b.extension() - a.extension());
    }
}
