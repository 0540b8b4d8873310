package org.lifeline.verify;

import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Stiffness;
import org.lifeline.verify.state.CableIntegration;
import org.lifeline.verify.state.PieceNumbers;
import org.lifeline.verify.state.SpanNumbers;
import org.lifeline.verify.state.StateNumbers;

/** Compatibility: the stretched pieces fill the way between the supports; supports stand where their springs let them. */
final class ShapeChecks {
    private ShapeChecks() {}

    static void check(
            StateNumbers state, StateNumbers installed, CableIntegration integration, String name, CheckLog log) {
        for (SpanNumbers span : state.spans()) {
            double chord = state.chord(span.number());
            String where = name + ", span " + span.number();
            Point reached = cableStart(state, installed, span);
            for (int i = 0; i < span.pieces().size(); i++) {
                PieceNumbers p = span.pieces().get(i);
                String here = where + ", piece " + (i + 1);
                log.add(Check.CONTINUITY, here + ", start", p.start().distance(reached) / chord);
                Vector3 error = integration.shape(p).span().minus(p.end().minus(p.start()));
                log.add(
                        Check.STRETCH,
                        here,
                        p.length() == 0 ? p.start().distance(p.end()) / chord : error.magnitude() / chord);
                reached = p.end();
            }
            log.add(Check.CONTINUITY, where + ", end", reached.distance(cableEnd(state, installed, span)) / chord);
            supportsOf(span, state, where, log);
        }
        springs(state, installed, name, log);
    }

    private static void supportsOf(SpanNumbers span, StateNumbers state, String where, CheckLog log) {
        double chord = state.chord(span.number());
        for (int side = 0; side < 2; side++) {
            int support = span.number() - 1 + side;
            Point expected = state.line()
                    .supports()
                    .get(support)
                    .position()
                    .plus(state.supports().get(support).displacement());
            Point actual = side == 0 ? span.first() : span.second();
            log.add(
                    Check.CONTINUITY,
                    where + ", support " + state.supports().get(support).id(),
                    actual.distance(expected) / chord);
        }
    }

    /** Where the cable of a span begins: at the support, or at the end of the in-line absorber's link. */
    private static Point cableStart(StateNumbers state, StateNumbers installed, SpanNumbers span) {
        if (span.number() > 1) {
            return span.first();
        }
        Vector3 t = span.firstPiece().startTension();
        double link = state.extension(0) - installed.extension(0);
        return span.first().plus(link == 0 ? Vector3.ZERO : t.times(link / t.magnitude()));
    }

    private static Point cableEnd(StateNumbers state, StateNumbers installed, SpanNumbers span) {
        int last = state.spans().size();
        if (span.number() < last) {
            return span.second();
        }
        Vector3 t = span.lastPiece().endTension();
        double link = state.extension(last) - installed.extension(last);
        return span.second().plus(link == 0 ? Vector3.ZERO : t.times(-link / t.magnitude()));
    }

    private static void springs(StateNumbers state, StateNumbers installed, String name, CheckLog log) {
        // Found once: it goes through the whole line.
        double force = state.forceScale();
        for (int i = 0; i < state.supports().size(); i++) {
            SupportReaction r = state.supports().get(i);
            Vector3 change = r.vector().minus(installed.supports().get(i).vector());
            Stiffness k = state.line().supports().get(i).stiffness();
            Vector3 u = r.displacement();
            String where = name + ", support " + r.id();
            double chord = state.chordAt(i);
            log.add(Check.ANCHOR_SPRING, where + ", x", spring(u.x(), change.x(), k.x(), chord, force));
            log.add(Check.ANCHOR_SPRING, where + ", y", spring(u.y(), change.y(), k.y(), chord, force));
            log.add(Check.ANCHOR_SPRING, where + ", z", spring(u.z(), change.z(), k.z(), chord, force));
        }
    }

    /** Error of a spring as a length and as a force; the smaller, because a stiff spring turns rounding into force. */
    private static double spring(double u, double change, double k, double chord, double force) {
        if (Double.isInfinite(k)) {
            return Math.abs(u) / chord;
        }
        double error = u - change / k;
        return Math.min(Math.abs(error) / chord, Math.abs(k * error) / force);
    }
}
