package org.lifeline.verify;

import java.util.List;
import org.lifeline.analysis.AppliedLoad;
import org.lifeline.base.Vector3;
import org.lifeline.model.Attachment;
import org.lifeline.model.Place;

/**
 * How loads hold on to the cable.
 *
 * <p>A free-running load runs toward the lower tension until both sides are equal, or until it meets another load or a
 * support. Loads that touch have a piece of no length between them; its tension vector is what equilibrium leaves there.
 * A push across the touch holds if that tension is not larger than the tension outside, on the side from which the load
 * was pushed.
 */
final class AttachmentChecks {
    private final StateNumbers state;
    private final StateNumbers installed;
    private final Tools tools;
    private final String name;
    private final Findings findings;

    AttachmentChecks(StateNumbers state, StateNumbers installed, Tools tools, String name, Findings findings) {
        this.state = state;
        this.installed = installed;
        this.tools = tools;
        this.name = name;
        this.findings = findings;
    }

    /** Checks all loads. */
    void check(Hooks hooks) {
        for (SpanNumbers span : state.spans()) {
            groups(span, hooks.in(span));
        }
    }

    private void groups(SpanNumbers span, List<AppliedLoad> hooks) {
        int from = 0;
        for (int k = 0; k < hooks.size(); k++) {
            if (hooks.get(k).attachment() == Attachment.GRIPPED) {
                gripped(span, k, hooks.get(k).place());
            }
            if (k + 1 == hooks.size() || !state.isTouch(span, k + 1)) {
                group(span, hooks, from, k);
                from = k + 1;
            }
        }
    }

    /** Loads from … to touch each other and nothing else, but perhaps a support. */
    private void group(SpanNumbers span, List<AppliedLoad> hooks, int from, int to) {
        Vector3 left = span.pieces().get(from).endTension();
        Vector3 right = span.pieces().get(to + 1).startTension();
        boolean atFirst = from == 0 && state.isTouch(span, 0);
        boolean atSecond = to + 1 == hooks.size() && state.isTouch(span, to + 1);
        int firstHeld = atFirst ? from - 1 : to + 1;
        int lastHeld = atSecond ? to + 1 : from - 1;
        for (int k = from; k <= to; k++) {
            if (hooks.get(k).attachment() == Attachment.GRIPPED) {
                firstHeld = Math.min(firstHeld, k);
                lastHeld = Math.max(lastHeld, k);
            }
        }
        boolean held = atSecond || firstHeld <= to;
        String where = name + ", span " + span.number() + ", load " + (from + 1);
        if (!held) {
            findings.add(Check.FREE_RUNNING, where, PassageChecks.difference(left, right));
        }
        int lastOfLeft = held ? Math.min(firstHeld, to + 1) : to;
        int firstOfRight = held ? Math.max(lastHeld, from - 1) : from;
        for (int gap = from + 1; gap <= Math.min(lastOfLeft, to + (atSecond ? 1 : 0)); gap++) {
            push(span, gap, left, where);
        }
        for (int gap = Math.max(firstOfRight + 1, from + (atFirst ? 0 : 1)); gap <= to; gap++) {
            push(span, gap, right, where);
        }
    }

    private void push(SpanNumbers span, int gap, Vector3 outside, String where) {
        double between = span.pieces().get(gap).startTension().magnitude();
        double excess = PassageChecks.over(between, outside.magnitude()) / outside.magnitude();
        findings.add(Check.FREE_RUNNING, where + ", touch " + gap, excess);
    }

    private void gripped(SpanNumbers span, int joint, Place place) {
        double expected = before(installed, span.number())
                + tools.shape(installed.span(span.number()).firstPiece()).lengthAtRun(place.station());
        double held = before(state, span.number());
        for (int i = 0; i <= joint; i++) {
            held += span.pieces().get(i).length();
        }
        findings.add(
                Check.GRIPPED,
                name + ", span " + span.number() + ", load " + (joint + 1),
                Math.abs(held / state.expansion() - expected) / state.chord(span.number()));
    }

    private static double before(StateNumbers state, int span) {
        double sum = 0;
        for (int i = 1; i < span; i++) {
            sum += state.span(i).length();
        }
        return sum;
    }
}
