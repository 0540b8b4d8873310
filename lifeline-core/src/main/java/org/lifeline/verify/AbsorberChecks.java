package org.lifeline.verify;

import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.verify.state.CableIntegration;
import org.lifeline.verify.state.LoadingTable;
import org.lifeline.verify.state.StateNumbers;

/**
 * In-line absorbers: never above their curve, on it while they grow, giving back only what is elastic.
 *
 * <p>That an absorber which has grown is still on its curve is asked only of a single span with one absorber and one
 * load: other loads, an absorber at the other end, or an end of the cable that jams at an anchor may have unloaded it
 * again on the way.
 */
final class AbsorberChecks {
    private AbsorberChecks() {}

    /** Where an absorber stands: the point of the curve that it was unloaded from, and what remains without a force. */
    record Unloading(double from, double force, double permanent) {

        static Unloading of(LoadingTable curve, double x, double force, double k) {
            double from = curve.unloadedFrom(x, force, k);
            // What the stop carries above the last corner, it gives back.
            double top =
                    Math.min(from == x ? force : curve.lower(from), curve.last().force());
            return new Unloading(from, top, from - top / k);
        }
    }

    /**
     * Checks the absorbers of a state.
     *
     * @param before what came before the state
     */
    static void check(StateNumbers state, History before, CableIntegration integration, String name, CheckLog log) {
        for (InlineAbsorberState each : state.absorbers()) {
            int support = support(state, each.supportId());
            InlineAbsorber absorber =
                    state.line().supports().get(support).inlineAbsorber().orElseThrow();
            LoadingTable curve = new LoadingTable(absorber.curve(), integration.quadrature());
            double k = absorber.initialStiffness();
            double x = each.extension();
            double t = state.endTension(support);
            String where = name + ", support " + each.supportId();
            log.add(Check.ABSORBER_LAW, where, Deviation.over(t, curve.upper(x)) / t);
            Unloading now = Unloading.of(curve, x, t, k);
            double was = before.permanent(support, curve, k);
            double chord = state.chordAt(support);
            log.add(Check.ABSORBER_GROWTH, where + ", within reach", curve.beyondReach(x, t, k) / chord);
            log.add(
                    Check.ABSORBER_GROWTH,
                    where + ", permanent extension",
                    Deviation.over(was, now.permanent()) / chord);
            boolean alone = state.spans().size() == 1 && state.absorbers().size() == 1;
            if (before.monotonic && alone && now.permanent() - was > CheckTolerances.GROWTH * chord) {
                log.add(
                        Check.ABSORBER_GROWTH,
                        where + ", on the curve",
                        Deviation.over(curve.lower(x), t) / curve.lower(x));
            }
            log.add(
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
    static final class History {
        private final @Nullable StateNumbers state;
        private final boolean monotonic;

        private History(@Nullable StateNumbers state, boolean monotonic) {
            this.state = state;
            this.monotonic = monotonic;
        }

        /** Nothing came before: the absorber was new. */
        static History fromNew() {
            return new History(null, true);
        }

        /** Another state, from which the absorber was loaded in one go, or perhaps unloaded again. */
        static History after(StateNumbers state, boolean monotonic) {
            return new History(state, monotonic);
        }

        /** Permanent extension of the absorber at a support [m]. */
        double permanent(int support, LoadingTable curve, double k) {
            return state == null
                    ? 0
                    : Unloading.of(curve, state.extension(support), state.endTension(support), k)
                            .permanent();
        }
    }
}
