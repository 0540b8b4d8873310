package org.lifeline.verify.state;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.base.Violations;
import org.lifeline.model.Attachment;

/**
 * Which load hangs at which node of the cable, and what it touches: loads and supports that touch have a piece of no
 * length between them.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class LoadArrangement {
    private final List<AppliedLoad> applied;
    private final StateNumbers state;
    private final StateNumbers installed;
    private final List<List<AppliedLoad>> bySpan = new ArrayList<>();

    private LoadArrangement(StateNumbers state, StateNumbers installed, List<AppliedLoad> applied) {
        this.applied = List.copyOf(applied);
        this.state = state;
        this.installed = installed;
    }

    /**
     * Reads the arrangement of a state whose loads were put on in this order; spans whose loads do not fit are left out.
     *
     * @param state the state
     * @param installed the installed state
     * @param loads the loads in the order in which they were put on
     * @return the arrangement
     * @throws org.lifeline.base.InvalidInputException if something is missing, or if the installed state has fewer spans
     */
    public static LoadArrangement of(StateNumbers state, StateNumbers installed, List<AppliedLoad> loads) {
        Violations.required("state", state);
        Violations.required("installed", installed);
        Violations.requiredAll("loads", loads);
        new Violations()
                .atLeast(
                        "installed.spans",
                        installed.spans().size(),
                        state.spans().size())
                .throwIfAny();
        LoadArrangement arrangement = new LoadArrangement(state, installed, loads);
        for (SpanNumbers span : state.spans()) {
            List<LoadPosition> positions = new ArrayList<>();
            List<AppliedLoad> here = new ArrayList<>();
            for (int i = 0; i < Math.min(loads.size(), state.loads().size()); i++) {
                if (state.loads().get(i).span() == span.number()) {
                    positions.add(state.loads().get(i));
                    here.add(loads.get(i));
                }
            }
            AppliedLoad[] ordered = new AppliedLoad[0];
            if (positions.size() == span.pieces().size() - 1) {
                int[] node = LoadNodes.of(span, positions);
                ordered = here.toArray(new AppliedLoad[0]);
                for (int i = 0; i < node.length; i++) {
                    ordered[node[i]] = here.get(i);
                }
            }
            arrangement.bySpan.add(Arrays.asList(ordered));
        }
        return arrangement;
    }

    /**
     * The loads of a span in the order of its nodes.
     *
     * @param span the span
     * @return the loads; empty where they do not fit
     * @throws org.lifeline.base.InvalidInputException if the state has no such span
     */
    public List<AppliedLoad> in(SpanNumbers span) {
        Violations.required("span", span);
        return bySpan.get(Violations.requiredIndex("span.number", span.number() - 1, bySpan.size()));
    }

    /**
     * The loads that were put on before one.
     *
     * @param load the load
     * @return the loads in their order
     * @throws org.lifeline.base.InvalidInputException if the arrangement has no such load
     */
    public List<AppliedLoad> before(AppliedLoad load) {
        int number = applied.indexOf(Violations.required("load", load));
        return applied.subList(0, Violations.requiredIndex("load", number, applied.size()));
    }

    /**
     * Tells whether no cable can leave the span before a support, or behind it, over the support: a gripped load or the
     * fitting at the end of the cable stands in the way.
     *
     * @param support number of the support, from 0
     * @param behind true for the span behind the support, false for the one before it
     * @return true if something stands in the way
     * @throws org.lifeline.base.InvalidInputException if there is no span on that side
     */
    public boolean isJammed(int support, boolean behind) {
        SpanNumbers span = state.span(behind ? support + 1 : support);
        List<AppliedLoad> loads = in(span);
        int n = Math.min(resting(support, behind), loads.size());
        List<AppliedLoad> touching = behind ? loads.subList(0, n) : loads.subList(loads.size() - n, loads.size());
        return touching.stream().anyMatch(l -> l.attachment() == Attachment.GRIPPED) || isDrawnOut(span, behind);
    }

    private boolean isDrawnOut(SpanNumbers span, boolean behind) {
        boolean outer = span.number() == (behind ? state.spans().size() : 1);
        double kept = StateTolerances.FITTING
                * state.expansion()
                * installed.span(span.number()).length();
        return outer && span.length() <= kept * (1 + StateTolerances.DRAWN_OUT);
    }

    /** Number of loads that rest on a support, one on the other. */
    private int resting(int support, boolean behind) {
        SpanNumbers span = state.span(behind ? support + 1 : support);
        int last = span.pieces().size() - 1;
        int n = 0;
        while (n < last && state.isTouch(span, behind ? n : last - n)) {
            n++;
        }
        return n;
    }
}
