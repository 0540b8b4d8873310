package org.lifeline.verify;

import java.util.Locale;
import org.lifeline.base.Vector3;
import org.lifeline.model.Installed;
import org.lifeline.model.Passage;
import org.lifeline.verify.state.CableIntegration;
import org.lifeline.verify.state.PieceNumbers;
import org.lifeline.verify.state.PieceShape;
import org.lifeline.verify.state.SpanNumbers;
import org.lifeline.verify.state.StateNumbers;

/**
 * The installed state is the stated one: tensioned to the stated value, the cable running over every anchor: freely, or against
 * friction toward the end from which it was tensioned, where one was named.
 */
final class InstalledChecks {
    private InstalledChecks() {}

    static void check(StateNumbers state, CableIntegration integration, CheckLog log) {
        Installed stated = state.line().installed();
        double error = Math.abs(value(state, stated, integration) - stated.value());
        if (stated.form() == Installed.Form.INITIAL_SAG) {
            error = Deviation.over(error, state.lastDigits());
        }
        log.add(Check.INSTALLED, "stated " + words(stated), error / stated.value());
        log.add(Check.INSTALLED, "temperature", Math.abs(state.temperature() - stated.temperature()));
        for (int i = 0; i < state.supports().size(); i++) {
            String where = "support " + state.supports().get(i).id();
            Vector3 u = state.supports().get(i).displacement();
            double slip = state.supports().get(i).slip();
            log.add(Check.INSTALLED, where + ", moved", (u.magnitude() + Math.abs(slip)) / state.chordAt(i));
            if (i > 0 && i < state.spans().size()) {
                log.add(Check.INSTALLED, where + ", tension", tensions(state, stated, i));
            }
        }
    }

    /** How far the tensions at a support are from equal, or from the capstan ratio toward the tensioned end. */
    private static double tensions(StateNumbers state, Installed stated, int i) {
        Vector3 before = state.tensionBefore(i);
        Vector3 behind = state.tensionBehind(i);
        Passage passage = state.line().supports().get(i).passage();
        if (stated.tensionedFrom().isEmpty() || passage.kind() != Passage.Kind.FRICTION) {
            return Deviation.difference(before, behind);
        }
        double rise = stated.tensionedFrom().get() == Installed.TensioningEnd.FIRST ? -1 : 1;
        double ratio = StrictMath.log(behind.magnitude() / before.magnitude());
        return Math.abs(ratio - rise * passage.friction() * before.angleTo(behind));
    }

    private static double value(StateNumbers state, Installed stated, CableIntegration integration) {
        return switch (stated.form()) {
            case PRETENSION -> state.tensionBehind(0).magnitude();
            case HORIZONTAL_TENSION ->
                state.span(stated.span()).firstPiece().startTension().horizontal();
            case UNSTRETCHED_LENGTH -> state.length();
            case INITIAL_SAG -> sag(state.span(stated.span()), integration);
        };
    }

    /** Distance from the chord down to where the cable runs parallel to it [m]; 0 if it does so nowhere. */
    private static double sag(SpanNumbers span, CableIntegration integration) {
        PieceNumbers p = span.firstPiece();
        Vector3 t = p.startTension();
        double run = span.first().horizontalDistance(span.second());
        double slope = (span.second().z() - span.first().z()) / run;
        double s = (t.horizontal() * slope - t.z()) / p.weight();
        if (!(s > 0 && s < p.length())) {
            return 0;
        }
        PieceShape shape = integration.shape(p);
        return slope * shape.run(s) - shape.rise(s);
    }

    /** What the installed state was stated by, such as "initial sag". */
    private static String words(Installed stated) {
        return stated.form().name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
