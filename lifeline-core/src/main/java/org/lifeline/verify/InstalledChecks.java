package org.lifeline.verify;

import org.lifeline.base.Vector3;
import org.lifeline.model.Installed;

/** The installed state is the stated one: tensioned to the stated value, the cable running freely over every anchor. */
final class InstalledChecks {
    private InstalledChecks() {}

    static void check(StateNumbers state, Tools tools, Findings findings) {
        Installed stated = state.line().installed();
        double error = Math.abs(value(state, stated, tools) - stated.value());
        if (stated.form() == Installed.Form.INITIAL_SAG) {
            error = PassageChecks.over(error, state.lastDigits());
        }
        findings.add(Check.INSTALLED, "stated " + stated.form(), error / stated.value());
        findings.add(Check.INSTALLED, "temperature", Math.abs(state.temperature() - stated.temperature()));
        for (int i = 0; i < state.supports().size(); i++) {
            String where = "support " + state.supports().get(i).id();
            Vector3 u = state.supports().get(i).displacement();
            double slip = state.supports().get(i).slip();
            findings.add(Check.INSTALLED, where + ", moved", (u.magnitude() + Math.abs(slip)) / state.chordAt(i));
            if (i > 0 && i < state.spans().size()) {
                findings.add(
                        Check.INSTALLED,
                        where + ", tension",
                        PassageChecks.difference(state.tensionBefore(i), state.tensionBehind(i)));
            }
        }
    }

    private static double value(StateNumbers state, Installed stated, Tools tools) {
        return switch (stated.form()) {
            case PRETENSION -> state.tensionBehind(0).magnitude();
            case HORIZONTAL_TENSION ->
                state.span(stated.span()).firstPiece().startTension().horizontal();
            case UNSTRETCHED_LENGTH -> state.length();
            case INITIAL_SAG -> sag(state.span(stated.span()), tools);
        };
    }

    /** Distance from the chord down to where the cable runs parallel to it [m]; 0 if it does so nowhere. */
    private static double sag(SpanNumbers span, Tools tools) {
        PieceNumbers p = span.firstPiece();
        Vector3 t = p.startTension();
        double run = span.first().horizontalDistance(span.second());
        double slope = (span.second().z() - span.first().z()) / run;
        double s = (t.horizontal() * slope - t.z()) / p.weight();
        if (!(s > 0 && s < p.length())) {
            return 0;
        }
        PieceShape shape = tools.shape(p);
        return slope * shape.run(s) - shape.rise(s);
    }
}
