package org.lifeline.verify;

import java.util.IntSummaryStatistics;
import java.util.List;
import java.util.stream.IntStream;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.Vector3;
import org.lifeline.model.Attachment;
import org.lifeline.verify.state.CableIntegration;
import org.lifeline.verify.state.LoadArrangement;
import org.lifeline.verify.state.MaterialPoints;
import org.lifeline.verify.state.SpanNumbers;
import org.lifeline.verify.state.StateNumbers;

/**
 * How loads hold on to the cable.
 *
 * <p>A free-running load runs toward the lower tension until both sides are equal, or until it meets another load or a
 * support. Loads that touch have a piece of no length between them. A push across the touch holds if the tension there,
 * were the loads that are pushed to hang on the cable, is not larger than the tension outside.
 */
final class AttachmentChecks {
    private final StateNumbers state;
    private final StateNumbers installed;
    private final CableIntegration integration;
    private final String name;
    private final CheckLog log;

    AttachmentChecks(
            StateNumbers state, StateNumbers installed, CableIntegration integration, String name, CheckLog log) {
        this.state = state;
        this.installed = installed;
        this.integration = integration;
        this.name = name;
        this.log = log;
    }

    /** Checks all loads. */
    void check(LoadArrangement arrangement) {
        for (SpanNumbers span : state.spans()) {
            groups(span, arrangement);
        }
    }

    private void groups(SpanNumbers span, LoadArrangement arrangement) {
        List<AppliedLoad> loads = arrangement.in(span);
        int from = 0;
        for (int k = 0; k < loads.size(); k++) {
            if (loads.get(k).attachment() == Attachment.GRIPPED) {
                gripped(span, k, arrangement);
            }
            if (k + 1 == loads.size() || !state.isTouch(span, k + 1)) {
                group(span, loads, from, k);
                from = k + 1;
            }
        }
    }

    /** Loads from … to touch each other and nothing else, but perhaps a support before or behind. */
    private void group(SpanNumbers span, List<AppliedLoad> arrangement, int from, int to) {
        Vector3 left = span.pieces().get(from).endTension();
        Vector3 right = span.pieces().get(to + 1).startTension();
        // What stands fast: supports, which count as from − 1 and to + 1, and gripped loads.
        IntStream.Builder fast = IntStream.builder();
        if (from == 0 && state.isTouch(span, 0)) {
            fast.add(from - 1);
        }
        for (int k = from; k <= to; k++) {
            if (arrangement.get(k).attachment() == Attachment.GRIPPED) {
                fast.add(k);
            }
        }
        if (to + 1 == arrangement.size() && state.isTouch(span, to + 1)) {
            fast.add(to + 1);
        }
        IntSummaryStatistics all = fast.build().summaryStatistics();
        String where = name + ", span " + span.number() + ", load " + (from + 1);
        if (all.getCount() == 0) {
            log.add(Check.FREE_RUNNING, where, Deviation.difference(left, right));
        }
        int first = all.getCount() == 0 ? to : all.getMin();
        int last = all.getCount() == 0 ? to : all.getMax();
        double carried = 0;
        for (int k = from; k < first; k++) {
            carried += arrangement.get(k).force();
            pushed(left, carried, where + ", touch after load " + (k + 1));
        }
        carried = 0;
        for (int k = to; k > last; k--) {
            carried -= arrangement.get(k).force();
            pushed(right, carried, where + ", touch before load " + (k + 1));
        }
    }

    /** A load runs toward the lower tension: it is pushed where the tension behind it would not be higher. */
    private void pushed(Vector3 outside, double carried, String where) {
        double behind = outside.plus(new Vector3(0, 0, carried)).magnitude();
        log.add(Check.FREE_RUNNING, where, Deviation.over(behind, outside.magnitude()) / outside.magnitude());
    }

    private void gripped(SpanNumbers span, int joint, LoadArrangement arrangement) {
        AppliedLoad load = arrangement.in(span).get(joint);
        double held = new MaterialPoints(state, integration).lengthBefore(span.number());
        for (int i = 0; i <= joint; i++) {
            held += span.pieces().get(i).length() / state.expansion();
        }
        double chord = state.chord(span.number());
        double error = Math.abs(held - new MaterialPoints(installed, integration).lengthTo(load.place())) / chord;
        if (error > log.limit(Check.GRIPPED)) {
            error = Math.abs(held - regripped(load, arrangement)) / chord;
        }
        log.add(Check.GRIPPED, name + ", span " + span.number() + ", load " + (joint + 1), error);
    }

    /** The point that hung at the station when the load was hooked on, if the installed one had left the span by then. */
    private double regripped(AppliedLoad load, LoadArrangement arrangement) {
        StateNumbers then = StateNumbers.of(Statics.withDefaults()
                .withTemperature(state.temperature())
                .solve(state.line(), arrangement.before(load)));
        double asInstalled = new MaterialPoints(installed, integration).lengthTo(load.place());
        MaterialPoints material = new MaterialPoints(then, integration);
        return material.isInSpan(load.place().span(), asInstalled) ? asInstalled : material.lengthTo(load.place());
    }
}
