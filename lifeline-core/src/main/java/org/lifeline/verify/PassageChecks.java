package org.lifeline.verify;

import org.lifeline.base.Vector3;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;

/**
 * The tensions on both sides of the intermediate anchors.
 *
 * <p>A gripped load that rests on an anchor, or the fitting at the end of the cable, lets no cable pass there toward the
 * far side: a higher tension may stand on that side. A free-running load that rests on an anchor is carried by it, and
 * the cable passes both.
 */
final class PassageChecks {
    private PassageChecks() {}

    static void check(StateNumbers state, Hooks hooks, String name, Findings findings) {
        for (int i = 1; i < state.spans().size(); i++) {
            Support s = state.line().supports().get(i);
            Passage.Kind kind = s.passage().kind();
            if (kind == Passage.Kind.CLAMPED) {
                continue;
            }
            Vector3 before = state.tensionBefore(i);
            Vector3 behind = state.tensionBehind(i);
            double ratio = Math.log(behind.magnitude() / before.magnitude());
            // The cable wants to run toward the higher tension, unless something on it stands in its way.
            boolean held = ratio > 0 ? hooks.isJammed(i, false) : hooks.isJammed(i, true);
            double unheld = held ? 0 : Math.abs(ratio);
            String where = name + ", support " + s.id();
            if (kind == Passage.Kind.FREE) {
                findings.add(Check.PASSAGE_FREE, where, unheld);
            } else {
                double angle = before.angleTo(behind);
                findings.add(
                        Check.PASSAGE_FRICTION, where, over(unheld, s.passage().friction() * angle));
            }
        }
    }

    /** Difference of two magnitudes relative to the larger [-]. */
    static double difference(Vector3 a, Vector3 b) {
        double most = Math.max(a.magnitude(), b.magnitude());
        return Math.abs(a.magnitude() - b.magnitude()) / most;
    }

    /** By how much a value exceeds a bound; 0 when it does not, NaN when one is not a number. */
    static double over(double value, double bound) {
        double excess = value - bound;
        return excess <= 0 ? 0 : excess;
    }
}
