package org.lifeline.verify;

import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.InlineAbsorberState;
import org.lifeline.model.InlineAbsorber;

/**
 * In-line absorbers: never above their curve, on it while they grow, giving back only what is elastic.
 *
 * <p>That an absorber which has grown is still on its curve is asked only of a single span with one absorber and one
 * load: other loads, an absorber at the other end, or an end of the cable that jams at an anchor may have unloaded it
 * again on the way.
 */
final class AbsorberChecks {
    /** Growth that counts, relative to the chord [-]; below it is rounding. */
    private static final double GROWTH = 1e-9;

    private AbsorberChecks() {}

    /** Where an absorber stands: the point of the curve that it was unloaded from, and what remains without a force. */
    record Standing(double from, double force, double permanent) {

        static Standing of(CurveNumbers curve, double x, double force, double k) {
            double from = curve.unloadedFrom(x, force, k);
            double top = from == x ? force : curve.lower(from);
            return new Standing(from, top, from - top / k);
        }
    }

    /**
     * Checks the absorbers of a state.
     *
     * @param before what came before the state
     */
    static void check(StateNumbers state, Chain before, Tools tools, String name, Findings findings) {
        for (InlineAbsorberState each : state.absorbers()) {
            int support = support(state, each.supportId());
            InlineAbsorber absorber =
                    state.line().supports().get(support).inlineAbsorber().orElseThrow();
            CurveNumbers curve = new CurveNumbers(absorber.curve(), tools.quadrature());
            double k = absorber.initialStiffness();
            double x = each.extension();
            double t = state.endTension(support);
            String where = name + ", support " + each.supportId();
            findings.add(Check.ABSORBER_LAW, where, PassageChecks.over(t, curve.upper(x)) / t);
            Standing now = Standing.of(curve, x, t, k);
            double was = before.permanent(support, curve, k);
            double chord = state.chordAt(support);
            findings.add(
                    Check.ABSORBER_GROWTH,
                    where + ", permanent extension",
                    PassageChecks.over(was, now.permanent()) / chord);
            boolean alone = state.spans().size() == 1 && state.absorbers().size() == 1;
            if (before.monotonic && alone && now.permanent() - was > GROWTH * chord) {
                findings.add(
                        Check.ABSORBER_GROWTH,
                        where + ", on the curve",
                        PassageChecks.over(curve.lower(x), t) / curve.lower(x));
            }
            findings.add(
                    Check.ABSORBER_REMAINING,
                    where,
                    Math.abs(each.remaining() - Math.max(0, curve.last().extension() - x)));
        }
    }

    static int support(StateNumbers state, String id) {
        int last = state.spans().size();
        return state.line().supports().get(0).id().equals(id) ? 0 : last;
    }

    /** What came before a state: another state, or a new absorber. */
    static final class Chain {
        private final @Nullable StateNumbers state;
        private final boolean monotonic;

        private Chain(@Nullable StateNumbers state, boolean monotonic) {
            this.state = state;
            this.monotonic = monotonic;
        }

        /** Nothing came before: the absorber was new. */
        static Chain fromNew() {
            return new Chain(null, true);
        }

        /** Another state, from which the absorber was loaded in one go, or perhaps unloaded again. */
        static Chain after(StateNumbers state, boolean monotonic) {
            return new Chain(state, monotonic);
        }

        /** Permanent extension of the absorber at a support [m]. */
        double permanent(int support, CurveNumbers curve, double k) {
            return state == null
                    ? 0
                    : Standing.of(curve, state.extension(support), state.endTension(support), k)
                            .permanent();
        }
    }
}
