package org.lifeline.model;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Point;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;

/**
 * What a line is held to: its supports in their order make a line, with end anchors at both ends and nowhere else, each id
 * once, no span too steep; and what is on it lies on it.
 *
 * @param supports the supports in the order of the line
 * @param paths the path under which a support was given, by its number
 */
record LineRules(List<Support> supports, IntFunction<String> paths) {
    /** Steepest chord of a span that the model takes [-], rise over run: 80°. */
    private static final double STEEPEST = StrictMath.tan(Math.toRadians(80));

    void check(Violations v) {
        int n = supports.size();
        if (n < 2) {
            v.add("support", GivenValue.countOf(n, "supports"), InputRule.TOO_FEW_SUPPORTS);
        }
        Map<String, Integer> seen = new HashMap<>();
        for (int i = 0; i < n; i++) {
            Support s = supports.get(i);
            boolean outer = i == 0 || i == n - 1;
            if (s.isEnd() != outer) {
                v.add(
                        path(i),
                        GivenValue.text(s.isEnd() ? "end" : "intermediate"),
                        outer ? InputRule.END_ANCHOR_NEEDED : InputRule.END_ANCHOR_INSIDE);
            }
            Integer before = seen.putIfAbsent(s.id(), i);
            if (before != null) {
                v.add(path(i) + ".id", GivenValue.text(s.id()), InputRule.ID_TAKEN, path(before));
            }
            if (i > 0) {
                checkChord(v, i);
            }
        }
    }

    private void checkChord(Violations v, int i) {
        Point a = supports.get(i - 1).position();
        Point b = supports.get(i).position();
        double run = a.horizontalDistance(b);
        double rise = Math.abs(b.z() - a.z());
        if (!(run > 0 && rise <= STEEPEST * run)) {
            v.add(
                    path(i) + ".position",
                    GivenValue.text("[" + b.x() + " m, " + b.y() + " m, " + b.z() + " m]"),
                    InputRule.SPAN_TOO_STEEP,
                    run,
                    rise);
        } else {
            PlausibleRange.SPAN_LENGTH.check(v, path(i) + ".position", a.distance(b));
        }
    }

    private String path(int support) {
        return paths.apply(support);
    }

    /** What is wrong with a place on a line. */
    static List<Violation> place(Lifeline line, Place place) {
        if (place.isAtSupport()) {
            String id = place.support().orElseThrow();
            return line.supports().stream().anyMatch(s -> s.id().equals(id))
                    ? List.of()
                    : List.of(Violation.of("support", GivenValue.text(id), InputRule.NO_SUCH_SUPPORT));
        }
        if (place.span() < 1 || place.span() > line.spans()) {
            return spanNumber("span", place.span(), line.spans());
        }
        double run = line.run(place.span());
        if (place.station() > 0 && place.station() < run) {
            return List.of();
        }
        return List.of(
                Violation.of("station", GivenValue.number(place.station(), "m"), InputRule.STATION_OUTSIDE_SPAN, run)
                        .allowing(AllowedRange.inside(Interval.of(0, run))));
    }

    /** What is wrong with the number of a span. */
    static List<Violation> spanNumber(String path, int span, int spans) {
        return new Violations()
                .numbered(path, span, Interval.of(1, Math.max(1, spans)), InputRule.NO_SUCH_SPAN)
                .list();
    }
}
