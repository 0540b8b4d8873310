package org.lifeline.model;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;

/**
 * Where the line is within reach of those who fall, see {@link Fall#checkReach}.
 *
 * @param fall the fall
 * @param atRest elevation of the line before the fall [m]
 * @param chord elevation of the straight line between the supports [m]
 */
record Reach(Fall fall, double atRest, double chord) {
    /** Length by which a connection may fall short [m]: the rounding of elevations and of the sag. */
    private static final double ROUNDING = 1e-6;

    List<Violation> check() {
        List<Violation> list = new ArrayList<>(0);
        for (int i = 0; i < fall.fallers().size(); i++) {
            Worker w = fall.fallers().get(i);
            if (w.connection().kind() != Connection.Kind.SELF_RETRACTING) {
                reach(w, i, list);
                freeFall(w, list);
            }
        }
        return list;
    }

    private double lifted() {
        return Math.max(atRest, chord);
    }

    private void reach(Worker w, int number, List<Violation> list) {
        double harness = w.harnessElevation();
        double above = harness <= atRest ? atRest - harness : Math.min(0, lifted() - harness);
        double length = w.connection().tautLength(0);
        if (StrictMath.hypot(above, w.offset()) > length + ROUNDING) {
            String where = above > 0 ? " above" : above < 0 ? " below" : " beside";
            list.add(Violation.of(
                            "faller[" + number + "].connection.tautLength",
                            GivenValue.number(length, "m"),
                            InputRule.OUT_OF_REACH,
                            Violations.show(Math.abs(above), "m") + where + " the harness attachment of " + w.id()
                                    + (w.offset() > 0 ? " and " + Violations.show(w.offset(), "m") + " aside" : "")
                                    + (atRest < lifted() && above < 0 ? " when it is lifted straight" : ""))
                    .allowing(AllowedRange.atLeast(StrictMath.hypot(above, w.offset()))));
        }
    }

    private void freeFall(Worker w, List<Violation> list) {
        double length = w.connection().tautLength(0);
        double most = 2 * length + (lifted() - atRest);
        double stated = fall.freeFall().orElse(0);
        if (stated > most + ROUNDING) {
            list.add(Violation.of(
                            "freeFall",
                            GivenValue.number(stated, "m"),
                            InputRule.FREE_FALL_TOO_LONG,
                            w.id(),
                            Violations.show(most, "m"),
                            Violations.show(length, "m"))
                    .allowing(AllowedRange.atLeast(0).upTo(most)));
        }
    }
}
