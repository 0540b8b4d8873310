package org.lifeline.design.clearance;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.CablePiece;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.base.Violations;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.Basis;
import org.lifeline.design.assessment.FollowedArrest;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;
import org.lifeline.model.Support;

/**
 * Clearance along a line, from its assessment: for every stretch what is required below the line and below the walking level, what
 * is available there, how far a worker swings, and where the line must not be used.
 *
 * <p>The falls are those of the assessment's envelope, by energy balance, in all its combinations and at both limits of an
 * attachment that can run. What any arrest in time needs beyond its own energy balance is added everywhere, with what its mesh
 * may hide, as the verdicts of the assessment have it. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class ClearanceAlongLine {
    /** Distance from a support at which a fall still counts to the span [m], or over the stretch where that is short [-]. */
    private static final double INSET = 1e-3;

    /** Halvings when the cable is looked for at a station: 2⁻⁶⁰ of a span is below rounding. */
    private static final int HALVINGS = 60;

    private final StationSteps steps;

    private ClearanceAlongLine(StationSteps steps) {
        this.steps = steps;
    }

    /**
     * With {@link StationSteps#COMMON}.
     *
     * @return the analysis
     */
    public static ClearanceAlongLine withDefaults() {
        return new ClearanceAlongLine(StationSteps.COMMON);
    }

    /**
     * The same with other stretches.
     *
     * @param value step and rounding
     * @return the new analysis
     */
    public ClearanceAlongLine withSteps(StationSteps value) {
        Violations.required("value", value);
        return new ClearanceAlongLine(value);
    }

    /**
     * How the line is cut into stretches.
     *
     * @return step and rounding
     */
    public StationSteps steps() {
        return steps;
    }

    /**
     * Draws up the clearance.
     *
     * @param assessment the assessment of the design
     * @return the clearance, stretch by stretch
     */
    public ClearanceAlongLineResult solve(AssessmentResult assessment) {
        Violations.required("assessment", assessment);
        LifelineDesign design = assessment.design();
        Envelope envelope =
                Envelope.withDefaults().withTolerances(assessment.envelope().tolerances());
        LineEquilibrium installed = Statics.withDefaults().solve(design.line(), List.of());
        ClearanceAlongLineResult.Addition addition = addition(assessment);
        List<ClearanceStretch> list = new ArrayList<>();
        double start = 0;
        for (int span = 1; span <= design.line().spans(); span++) {
            double run = design.line().run(span);
            int parts = (int) Math.ceil(run / steps.step() - INSET);
            for (int i = 0; i < Math.max(1, parts); i++) {
                Interval stations = Interval.of(i * steps.step(), i + 1 >= parts ? run : (i + 1) * steps.step());
                StretchFalls falls = new StretchFalls(design);
                falls.run(envelope, places(span, stations, run), supports(design, span, stations));
                Interval along = Interval.of(start + stations.low(), start + stations.high());
                list.add(falls.stretch(
                        new ClearanceStretch.Extent(span, stations, along),
                        elevations(installed.span(span), stations),
                        addition.distance()));
            }
            start += run;
        }
        return new ClearanceAlongLineResult(design, steps, list, addition);
    }

    private static List<Place> places(int span, Interval stations, double run) {
        double inset = Math.min(INSET, INSET * run);
        double low = Math.max(stations.low(), inset);
        double high = Math.min(stations.high(), run - inset);
        return List.of(Place.of(span, low), Place.of(span, 0.5 * (low + high)), Place.of(span, high));
    }

    private static List<Place> supports(LifelineDesign design, int span, Interval stations) {
        List<Support> all = design.line().supports();
        List<Place> list = new ArrayList<>();
        if (stations.low() == 0) {
            list.add(Place.atSupport(all.get(span - 1).id()));
        }
        if (stations.high() == design.line().run(span)) {
            list.add(Place.atSupport(all.get(span).id()));
        }
        return list;
    }

    /** Lowest and highest elevation of the installed line within a stretch; a cable hangs below its chord. */
    private static Interval elevations(SpanState span, Interval stations) {
        double a = elevation(span, stations.low());
        double b = elevation(span, stations.high());
        double middle = elevation(span, 0.5 * (stations.low() + stations.high()));
        // A cable is convex: its lowest point in the stretch is no lower than the vertex through three of its points.
        double low = Math.min(StretchFalls.vertex(a, middle, b), Math.min(a, b));
        return Interval.of(low, Math.max(a, b));
    }

    private static double elevation(SpanState span, double station) {
        CablePiece piece = span.pieces().get(0);
        Point first = span.firstSupport();
        double low = 0;
        double high = piece.unstretchedLength();
        for (int i = 0; i < HALVINGS; i++) {
            double s = 0.5 * (low + high);
            if (piece.pointAt(s).horizontalDistance(first) < station) {
                low = s;
            } else {
                high = s;
            }
        }
        return piece.pointAt(0.5 * (low + high)).z();
    }

    /**
     * What an arrest in time needs below that of its own energy balance, the largest of all that were followed [m]; with what its
     * mesh may hide, as verdicts count it. The same for the line at rest with a rescuer, and for a second fall within the first
     * second, both against the energy balance of the first fall.
     */
    private static ClearanceAlongLineResult.Addition addition(AssessmentResult assessment) {
        List<ComputedCase> cases = new ArrayList<>(assessment.rescueStates());
        if (assessment.basis() != Basis.ENERGY_BALANCE) {
            for (FollowedArrest each : assessment.followed()) {
                cases.add(new ComputedCase(each.fallCase(), each.arrest()));
            }
        }
        LifelineDesign design = assessment.design();
        double most = 0;
        int arrests = 0;
        for (ComputedCase each : cases) {
            ArrestResult fast = each.arrest();
            try {
                ArrestResult slow = EnergyBalance.withDefaults()
                        .withTemperature(fast.temperature())
                        .withSide(fast.side())
                        .withClearance(design.clearance())
                        .withAttachmentLimit(each.fallCase().attachmentLimit().orElse(AttachmentLimit.RUNNING))
                        .solve(fast.line(), each.fallCase().firstFall());
                double needed = Extremes.ofCases(design, List.of(each))
                        .of(Quantity.REQUIRED_ELEVATION)
                        .orElseThrow()
                        .value();
                most = Math.max(most, Quantity.REQUIRED_ELEVATION.value(slow, design.modelFactors()) - needed);
                arrests++;
            } catch (InvalidInputException | NoEquilibriumException e) {
                // The assessment lists what its own energy balance could not compute.
            }
        }
        return new ClearanceAlongLineResult.Addition(most, arrests);
    }
}
