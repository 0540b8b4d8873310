package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.Vector3;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;

/** Looks for what a reader of an arrest must not overlook. */
final class ResultWarnings {
    /** Strain to which a cable given by its stiffness alone is taken [-]: wire ropes break at 2 to 4 %, common practice. */
    static final double STRAIN = 0.05;

    /** Steepest cable [°]: that of the steepest span of the model. */
    static final double SLOPE = 80;

    /** Way along the cable that counts as running far [m]: our own choice. */
    static final double RUN = 0.5;

    private final ArrestResult arrest;
    private final List<Warning> list = new ArrayList<>();

    private ResultWarnings(ArrestResult arrest) {
        this.arrest = arrest;
    }

    static List<Warning> of(ArrestResult arrest) {
        ResultWarnings w = new ResultWarnings(arrest);
        w.cable();
        w.anchors();
        w.connection();
        return List.copyOf(w.list);
    }

    private void add(Warning.Code code, String where, double value, double limit) {
        if (value > limit) {
            list.add(new Warning(code, where, value, limit));
        }
    }

    private void cable() {
        Cable cable = arrest.line().cable();
        LoadElongation law = cable.elongation();
        double tension = arrest.maximumTension();
        if (law.isStiffnessAlone()) {
            add(Warning.Code.CABLE_STRAIN, "cable", law.strain(tension), STRAIN);
        } else {
            double last = law.corners().get(law.corners().size() - 1).tension();
            add(Warning.Code.CABLE_CURVE, "cable", tension, last);
        }
        cable.breakingStrength()
                .ifPresent(s -> add(Warning.Code.CABLE_STRENGTH, "cable", tension, s * cable.terminationEfficiency()));
        for (SpanState span : arrest.peak().spans()) {
            double steepest = 0;
            for (CablePiece piece : span.pieces()) {
                steepest = Math.max(steepest, Math.max(slope(piece.startTension()), slope(piece.endTension())));
            }
            add(Warning.Code.CABLE_SLOPE, "span " + span.number(), steepest, SLOPE);
        }
    }

    /** Angle to the horizontal [°]; 0 for a piece without tension, whose direction says nothing. */
    private static double slope(Vector3 tension) {
        return tension.magnitude() < Tolerances.NO_TENSION
                ? 0
                : Math.toDegrees(Math.atan2(Math.abs(tension.z()), tension.horizontal()));
    }

    private void anchors() {
        for (Support s : arrest.line().supports()) {
            s.capacity().ifPresent(c -> add(Warning.Code.ANCHOR_CAPACITY, s.id(), arrest.anchorLoad(s.id()), c));
        }
        for (InlineAbsorberState each : arrest.inlineAbsorbers()) {
            if (each.bottomedOut()) {
                double limit = each.extension() + Math.min(0, each.remaining());
                list.add(new Warning(Warning.Code.INLINE_BOTTOMED_OUT, each.supportId(), each.extension(), limit));
            }
        }
    }

    private void connection() {
        if (arrest.bottomedOut()) {
            Worker least = arrest.fall().fallers().get(0);
            for (Worker each : arrest.fall().fallers()) {
                least = each.connection().maximumExtension()
                                < least.connection().maximumExtension()
                        ? each
                        : least;
            }
            list.add(new Warning(
                    Warning.Code.BOTTOMED_OUT,
                    least.id(),
                    arrest.deployment(),
                    least.connection().maximumExtension()));
        }
        if (arrest.isBound()) {
            double heaviest = 0;
            double lightest = Double.POSITIVE_INFINITY;
            for (Worker each : arrest.fall().fallers()) {
                heaviest = Math.max(heaviest, each.mass());
                lightest = Math.min(lightest, each.mass());
            }
            list.add(new Warning(Warning.Code.UNEQUAL_FALLERS, "fallers", heaviest / lightest, 1));
        }
        if (arrest.attachmentLimit().equals(Optional.of(AttachmentLimit.RUNNING))) {
            double run = arrest.attachmentAtPeak().horizontalDistance(arrest.attachmentBefore());
            add(Warning.Code.ATTACHMENT_RUNS, "span " + arrest.span(), run, RUN);
        }
    }
}
