package org.lifeline.verify;

import org.lifeline.base.Vector3;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.verify.state.LoadArrangement;
import org.lifeline.verify.state.StateNumbers;

/**
 * The tensions on both sides of the intermediate anchors.
 *
 * <p>A gripped load that rests on an anchor, or the fitting at the end of the cable, lets no cable pass there toward the
 * far side: a higher tension may stand on that side. A free-running load that rests on an anchor is carried by it, and
 * the cable passes both.
 */
final class PassageChecks {
    private PassageChecks() {}

    static void check(StateNumbers state, LoadArrangement arrangement, String name, CheckLog log) {
        for (int i = 1; i < state.spans().size(); i++) {
            Support s = state.line().supports().get(i);
            Passage.Kind kind = s.passage().kind();
            if (kind == Passage.Kind.CLAMPED) {
                continue;
            }
            Vector3 before = state.tensionBefore(i);
            Vector3 behind = state.tensionBehind(i);
            double ratio = StrictMath.log(behind.magnitude() / before.magnitude());
            // The cable wants to run toward the higher tension, unless something on it stands in its way.
            boolean held = ratio > 0 ? arrangement.isJammed(i, false) : arrangement.isJammed(i, true);
            double unheld = held ? 0 : Math.abs(ratio);
            String where = name + ", support " + s.id();
            if (kind == Passage.Kind.FREE) {
                log.add(Check.PASSAGE_FREE, where, unheld);
            } else {
                double angle = before.angleTo(behind);
                log.add(
                        Check.PASSAGE_FRICTION,
                        where,
                        Deviation.over(unheld, s.passage().friction() * angle));
            }
        }
    }
}
