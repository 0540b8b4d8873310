package org.lifeline.verify;

import java.util.List;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Place;
import org.lifeline.verify.state.LoadNodes;
import org.lifeline.verify.state.PieceNumbers;
import org.lifeline.verify.state.SpanNumbers;
import org.lifeline.verify.state.StateNumbers;

/** Equilibrium of forces: loads, pieces, supports, the whole line. */
final class ForceChecks {
    private ForceChecks() {}

    static void check(StateNumbers state, String name, CheckLog log) {
        double scale = state.forceScale();
        Vector3 total = Vector3.ZERO;
        for (SpanNumbers span : state.spans()) {
            for (int i = 0; i < span.pieces().size(); i++) {
                PieceNumbers p = span.pieces().get(i);
                String where = name + ", span " + span.number() + ", piece " + (i + 1);
                Vector3 weight = new Vector3(0, 0, p.weight() * p.length());
                total = total.minus(weight);
                log.add(
                        Check.PIECE_EQUILIBRIUM,
                        where,
                        p.endTension().minus(p.startTension()).minus(weight).magnitude() / scale);
                if (i + 1 < span.pieces().size()) {
                    Vector3 jump = span.pieces().get(i + 1).startTension().minus(p.endTension());
                    log.add(
                            Check.LOAD_EQUILIBRIUM,
                            where,
                            jump.minus(new Vector3(0, 0, p.load())).magnitude() / scale);
                }
            }
        }
        for (LoadPosition load : state.loads()) {
            total = total.minus(new Vector3(0, 0, load.force()));
        }
        for (int i = 0; i < state.supports().size(); i++) {
            SupportReaction r = state.supports().get(i);
            Vector3 pull = state.tensionBehind(i)
                    .minus(state.tensionBefore(i))
                    .minus(new Vector3(0, 0, state.resting(r.id())));
            log.add(
                    Check.SUPPORT_REACTION,
                    name + ", support " + r.id(),
                    r.vector().minus(pull).magnitude() / scale);
            total = total.minus(r.vector());
        }
        log.add(Check.GLOBAL_EQUILIBRIUM, name, total.magnitude() / scale);
        double weight = state.line().weightPerLength() / state.expansion();
        state.pieces().forEach(p -> log.add(Check.WEIGHT, name, deviation(p.weight(), weight)));
    }

    /** The loads are those that were applied, and hang at the kinks of the cable. */
    static void checkLoads(StateNumbers state, List<AppliedLoad> applied, String name, CheckLog log) {
        boolean same = applied.size() == state.loads().size();
        for (int i = 0; same && i < applied.size(); i++) {
            LoadPosition load = state.loads().get(i);
            Place place = applied.get(i).place();
            same = load.span() == (place.isAtSupport() ? 0 : place.span())
                    && load.force() == applied.get(i).force();
            if (same && place.isAtSupport()) {
                checkAtSupport(state, load, place, name, log);
            }
        }
        log.add(Check.LOADS, name + ", as applied", same ? 0 : 1);
        for (SpanNumbers span : state.spans()) {
            List<LoadPosition> here = state.loads().stream()
                    .filter(l -> l.span() == span.number())
                    .toList();
            String where = name + ", span " + span.number();
            int joints = span.pieces().size() - 1;
            log.add(Check.LOADS, where + ", joints", Math.abs(here.size() - joints));
            log.add(
                    Check.LOADS,
                    where + ", load at the support",
                    span.lastPiece().load() == 0 ? 0 : 1);
            if (here.size() == joints) {
                checkJoints(state, span, here, log, where);
            }
        }
    }

    /** A load at a support rests on the support at which it was hooked on, where that now is. */
    private static void checkAtSupport(StateNumbers state, LoadPosition load, Place place, String name, CheckLog log) {
        int support = state.line().supportOf(place);
        Point at = state.line()
                .supports()
                .get(support)
                .position()
                .plus(state.supports().get(support).displacement());
        String where = name + ", load at " + state.supports().get(support).id();
        boolean rests = load.restsOn().equals(place.support());
        log.add(Check.LOADS, where + ", support", rests ? 0 : 1);
        log.add(
                Check.LOADS,
                where + ", place",
                load.point().distance(at) / state.chord(state.line().spanOf(place)));
    }

    private static void checkJoints(
            StateNumbers state, SpanNumbers span, List<LoadPosition> loads, CheckLog log, String where) {
        int[] joint = LoadNodes.of(span, loads);
        for (int k = 0; k < joint.length; k++) {
            PieceNumbers p = span.pieces().get(joint[k]);
            LoadPosition load = loads.get(k);
            double gap = p.end().distance(load.point()) / state.chord(span.number());
            double carried = load.restsOn().isPresent() ? 0 : load.force();
            double most = Math.max(Math.max(p.load(), load.force()), Double.MIN_NORMAL);
            double force = Math.abs(p.load() - carried) / most;
            log.add(Check.LOADS, where + ", joint " + (joint[k] + 1), Math.max(gap, force));
        }
    }

    /** Relative; a weightless cable that is slack may be computed with next to no weight, which gives it a shape. */
    private static double deviation(double found, double weight) {
        if (weight > 0) {
            return Math.abs(found - weight) / weight;
        }
        return found >= 0 && found <= CheckTolerances.NEXT_TO_WEIGHTLESS ? 0 : Math.abs(found);
    }
}
