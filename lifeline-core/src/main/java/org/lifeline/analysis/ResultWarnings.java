package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.warning.Measured;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.Vector3;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;

/** Looks for what a reader of a result must not overlook. */
final class ResultWarnings {
    /** Strain to which a cable given by its stiffness alone is taken [-]: wire ropes break at 2 to 4 %, common practice. */
    static final double STRAIN = 0.05;

    /** Steepest cable [rad]: that of the steepest span of the model. */
    static final double SLOPE = Math.toRadians(80);

    /** Way along the cable that counts as running far [m]: our own choice. */
    static final double RUN = 0.5;

    /** Tangent of a slope below which none is worked out [-]: a little less than that of the steepest. */
    private static final double NEARLY_STEEP = 0.99 * StrictMath.tan(SLOPE);

    private final LineEquilibrium state;
    private final List<Warning> list = new ArrayList<>();

    private ResultWarnings(LineEquilibrium state) {
        this.state = state;
        cable();
        anchors();
    }

    static List<Warning> of(LineEquilibrium state) {
        return List.copyOf(new ResultWarnings(state).list);
    }

    static List<Warning> of(ArrestResult arrest) {
        ResultWarnings w = new ResultWarnings(arrest.peak());
        w.connection(arrest);
        return List.copyOf(w.list);
    }

    static List<Warning> of(TransientResult result) {
        List<Warning> all = new ArrayList<>(result.arrest().warnings());
        String fall = result.arrest().fall().id();
        if (!result.firstCatchOver()) {
            all.add(Warning.of(Warning.Code.FIRST_CATCH_NOT_OVER, fall));
        }
        if (!result.accurate()) {
            all.add(Warning.of(Warning.Code.MOTION_NOT_ACCURATE, fall)
                    .with(new Measured(result.uncertainty(), "-", result.accuracy())));
        }
        return List.copyOf(all);
    }

    private void add(Warning.Code code, String subject, Measured measured) {
        if (measured.value() > measured.limit()) {
            list.add(Warning.of(code, subject).with(measured));
        }
    }

    private void cable() {
        Cable cable = state.line().cable();
        LoadElongation law = cable.elongation();
        double tension = state.maximumTension();
        if (law.isStiffnessAlone()) {
            add(Warning.Code.CABLE_STRAIN, "cable", new Measured(law.strain(tension), "-", STRAIN));
        } else {
            double last = law.corners().get(law.corners().size() - 1).tension();
            add(Warning.Code.CABLE_CURVE, "cable", new Measured(tension, "N", last));
        }
        cable.breakingStrength()
                .ifPresent(s -> add(
                        Warning.Code.CABLE_STRENGTH,
                        "cable",
                        new Measured(tension, "N", s * cable.terminationEfficiency())));
        for (SpanState span : state.spans()) {
            double steepest = 0;
            for (CablePiece piece : span.pieces()) {
                steepest = Math.max(steepest, Math.max(slope(piece.startTension()), slope(piece.endTension())));
            }
            if (steepest > SLOPE) {
                add(Warning.Code.CABLE_SLOPE, "span " + span.number(), new Measured(steepest, "rad", SLOPE));
            }
        }
    }

    /** Angle to the horizontal [rad]; 0 where it is far from steep, and without tension, when it says nothing. */
    private static double slope(Vector3 tension) {
        double up = Math.abs(tension.z());
        double level = tension.horizontal();
        return up < NEARLY_STEEP * level || tension.magnitude() < Tolerances.NO_TENSION
                ? 0
                : StrictMath.atan2(up, level);
    }

    private void anchors() {
        for (int i = 0; i < state.supports().size(); i++) {
            Support s = state.line().supports().get(i);
            double force = state.supports().get(i).force();
            double capacity = s.capacity().orElse(Double.POSITIVE_INFINITY);
            add(Warning.Code.ANCHOR_CAPACITY, s.id(), new Measured(force, "N", capacity));
        }
        for (InlineAbsorberState each : state.inlineAbsorbers()) {
            if (each.bottomedOut()) {
                double limit = state.line().supports().stream()
                        .filter(s -> s.id().equals(each.supportId()))
                        .flatMap(s -> s.inlineAbsorber().stream())
                        .mapToDouble(a -> a.curve().maximumExtension())
                        .findFirst()
                        .orElseThrow();
                list.add(Warning.of(Warning.Code.INLINE_BOTTOMED_OUT, each.supportId())
                        .with(new Measured(each.extension(), "m", limit)));
            }
        }
    }

    private void connection(ArrestResult arrest) {
        if (arrest.bottomedOut()) {
            Worker least = arrest.fall().fallers().get(0);
            for (Worker each : arrest.fall().fallers()) {
                least = each.connection().maximumExtension()
                                < least.connection().maximumExtension()
                        ? each
                        : least;
            }
            list.add(Warning.of(Warning.Code.BOTTOMED_OUT, least.id())
                    .with(new Measured(
                            arrest.deployment(), "m", least.connection().maximumExtension())));
        }
        if (arrest.isBound()) {
            double heaviest = 0;
            double lightest = Double.POSITIVE_INFINITY;
            for (Worker each : arrest.fall().fallers()) {
                heaviest = Math.max(heaviest, each.mass());
                lightest = Math.min(lightest, each.mass());
            }
            list.add(Warning.of(Warning.Code.UNEQUAL_FALLERS, "fallers")
                    .with(new Measured(heaviest / lightest, "-", 1)));
        }
        if (!arrest.fall().hanging().isEmpty()) {
            for (Support each : arrest.line().supports()) {
                each.inlineAbsorber()
                        .ifPresent(a -> list.add(
                                Warning.of(Warning.Code.INLINE_DRAWN_BEFORE, "in-line absorber at " + each.id())));
            }
        }
        if (arrest.attachmentLimit().equals(Optional.of(AttachmentLimit.RUNNING))) {
            double run = arrest.attachmentAtPeak().horizontalDistance(arrest.attachmentBefore());
            add(Warning.Code.ATTACHMENT_RUNS, "span " + arrest.span(), new Measured(run, "m", RUN));
        }
    }
}
