package org.lifeline.model.absorber;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
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
        if (corners.isEmpty()) {
            v.add("curve", GivenValue.text("[]"), InputRule.TOO_FEW_CORNERS, "one corner");
        }
        PlausibleRange.CORNERS.checkNumber(v, "curve", corners.size());
        for (int i = 0; i < corners.size(); i++) {
            check(v, corners, i);
        }
        stiffness(v, "initialStiffness", initialStiffness, "start");
        stiffness(v, "stopStiffness", stopStiffness, "stop");
        v.throwIfAny();
        List<Corner> list = meet(corners, initialStiffness, v);
        v.throwIfAny();
        if (!(list.get(list.size() - 1).force() > 0 || Double.isFinite(stopStiffness))) {
            v.add("curve", GivenValue.countOf(list.size(), "corners"), InputRule.NO_FORCE);
        }
        v.throwIfAny();
        return list;
    }

    private static void check(Violations v, List<Corner> corners, int i) {
        Corner c = Violations.required("curve[" + i + "]", corners.get(i));
        String extension = "curve[" + i + "][0]";
        String force = "curve[" + i + "][1]";
        PlausibleRange.LENGTH.check(v, extension, c.extension());
        PlausibleRange.ARREST_FORCE.check(v, force, c.force());
        if (i == 0) {
            if (c.extension() != 0) {
                v.add(extension, GivenValue.number(c.extension(), "m"), InputRule.EXTENSION_START);
            }
            return;
        }
        Corner b = corners.get(i - 1);
        if (c.extension() <= b.extension()) {
            v.add(Violation.of(extension, GivenValue.number(c.extension(), "m"), InputRule.NOT_RISING, "extension")
                    .allowing(AllowedRange.above(b.extension())));
        }
        if (c.force() < b.force()) {
            v.add(Violation.of(force, GivenValue.number(c.force(), "N"), InputRule.FALLING, "force")
                    .allowing(AllowedRange.atLeast(b.force())));
        }
    }

    private static void stiffness(Violations v, String path, double value, String end) {
        if (value > 0) {
            PlausibleRange.STIFFNESS.checkOrRigid(v, path, value);
        } else {
            v.add(Violation.of(path, GivenValue.number(value, "N/m"), InputRule.RATE_NOT_ABOVE_ZERO, end)
                    .allowing(AllowedRange.above(0)));
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
        if (list.size() <= 1) {
            v.add("initialStiffness", GivenValue.number(k, "N/m"), InputRule.RISE_TOO_SOFT);
        }
        return list;
    }

    private static double slope(Corner a, Corner b) {
        return (b.force() - a.force()) / (b.extension() - a.extension());
    }
}
